// A draft that was saved with errors in it is opened to be mended: its data with the errors, no scene until it is whole.
import AxeBuilder from "@axe-core/playwright";
import { openPlan, projectFile } from "./handle.ts";
import { expect, test } from "./page.ts";

interface Handle {
  document(): { name: string; planHash: string; errors: string[] } | null;
  edit(label: string, path: (string | number)[], value: unknown): void;
}
type InPage = { __handspan?: Handle };

test("a file with two values at fault is opened to be mended, mended in its sheet, and solved", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const plan = JSON.parse(projectFile("scenarios/one-girder.json"));
  const { title } = plan.header;
  await page.goto("/?example=one-girder");
  await openPlan(page, JSON.stringify(plan));
  await page.evaluate(() => (window as InPage).__handspan?.edit("Notes", ["header", "notes"], "not filed"));
  const bad = structuredClone(plan);
  bad.header.title = "To be mended";
  bad.transporters[0].mass_t = -3;
  bad.cranes[0].mass_t = undefined;
  const given = {
    name: "draft.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(bad)),
  };
  await page.locator('input[type="file"]').first().setInputFiles(given);
  const dialog = page.getByRole("dialog");
  await expect(dialog).toContainText("draft.json was not opened: 2 errors");
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  await dialog.getByRole("button", { name: "Open it to mend" }).click();

  await expect(page.getByRole("heading", { level: 1 })).toHaveText("To be mended");
  await expect(
    page.getByText("Nothing is drawn yet: this plan has 2 errors to mend in its data (E)."),
  ).toBeAttached();
  await expect(page.getByText("Old: the last plan without errors")).toHaveCount(0);
  const foot = page.getByRole("button", { name: /^2 errors in the plan/ });
  await expect(foot).toBeVisible();
  const short = await page.evaluate(() => (window as InPage).__handspan?.document() ?? null);
  expect(short).toMatchObject({ name: "draft.json", planHash: "" });
  expect([...(short?.errors ?? [])].sort()).toEqual(["cranes[0].mass_t", "transporters[0].mass_t"]);
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);

  // Every part of its data can be shown.
  const parts = page.getByRole("navigation", { name: "Parts of the plan" }).getByRole("button");
  for (let i = 0; i < (await parts.count()); i++) await parts.nth(i).click();

  for (const [path, value] of [
    [["transporters", 0, "mass_t"], 7],
    [["cranes", 0, "mass_t"], 110],
  ] as const)
    await page.evaluate(
      ([place, given]) => (window as InPage).__handspan?.edit("Mended", [...place], given),
      [path, value] as const,
    );
  await expect(foot).toHaveCount(0);
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(page.getByText(/^Nothing is drawn yet/)).toHaveCount(0);
  await expect(page.getByRole("row").nth(2)).toBeVisible({ timeout: 60_000 });

  // What was open before is on the list of plans.
  await page.getByRole("button", { name: /^Recent/ }).click();
  await expect(page.getByRole("dialog")).toContainText(title);
});
