// Sets as siblings on screen: copied, compared, confirmed by name, undone; the landed set stands in the scene.
import AxeBuilder from "@axe-core/playwright";
import type { SceneHandle } from "../../src/scene/handle.ts";
import { ask, untilReady } from "./handle.ts";
import { expect, test } from "./page.ts";

test.use({ viewport: { width: 1280, height: 720 } });

test("copy set 1 to set 2, confirm one value, a part and all; the history says who, and undo takes it back", async ({
  page,
}) => {
  test.setTimeout(180_000);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await page.keyboard.press("s");
  const sets = page.getByRole("dialog", { name: "Sets side by side" });
  await sets.getByLabel("what differs").check();
  await expect(sets.getByText(/There is one set alone/)).toBeVisible();
  await sets.getByRole("button", { name: "Copy One girder" }).click();
  await page.keyboard.press("Enter");
  const head = sets.getByRole("columnheader", { name: /^Set 2/ });
  await expect(head).toContainText(/◇ \d+ not confirmed/);
  const open = async () => Number(/(\d+) not confirmed/.exec((await head.textContent()) ?? "")?.[1] ?? "0");
  const all = await open();
  expect(all).toBeGreaterThan(40);
  // The copy lies 2 m aside, and starts so: nothing else of it differs but that.
  await expect(sets.getByRole("rowheader", { name: /start\.y_m/ })).toBeVisible();

  await sets.getByLabel("not confirmed").check();
  await sets.getByLabel("Confirmed by").fill("");
  const one = sets.getByRole("button", { name: "Confirm yield_MPa of Set 2" });
  await expect(one).toBeDisabled();
  await sets.getByLabel("Confirmed by").fill("A. Planner");
  await one.click();
  await expect.poll(open).toBe(all - 1);
  await sets.getByRole("button", { name: "Confirm part girders[0]" }).click();
  await expect.poll(open).toBeLessThan(all - 5);
  const axe = await new AxeBuilder({ page }).include("dialog.sets").analyze();
  expect(axe.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join("; ")}`)).toEqual(
    [],
  );
  await sets.getByRole("button", { name: "Confirm all of Set 2" }).click();
  await expect(head).toContainText("all confirmed");
  await expect(sets.getByText("Everything is confirmed.")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog.sets")).toHaveCount(0);

  await untilReady(page);
  const unconfirmed = async () =>
    (await ask(page, "result"))?.findings.filter((f) => f.id.startsWith("unconfirmed data:")).length;
  expect(await unconfirmed()).toBe(0);
  await page.keyboard.press("h");
  const history = page.getByRole("list", { name: "History, newest first" });
  await expect(history).toContainText(/Confirm all values of Set 2 \(A\. Planner, \d{4}-\d\d-\d\d\)/);
  await expect(history).toContainText("Confirm yield_MPa of Set 2 (A. Planner");
  await expect(history).toContainText("Copy One girder to Set 2");
  await page.keyboard.press("Control+z");
  await untilReady(page);
  await expect.poll(unconfirmed).toBeGreaterThan(0);
});

test("a set is deleted only after a second word, and comes back by undo", async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await page.keyboard.press("s");
  const sets = page.getByRole("dialog", { name: "Sets side by side" });
  await expect(sets.getByRole("button", { name: "Delete One girder" })).toBeDisabled();
  await sets.getByRole("button", { name: "Copy One girder" }).click();
  await page.keyboard.press("Enter");
  await sets.getByRole("button", { name: "Delete Set 2" }).click();
  await page.keyboard.press("Enter");
  await expect(sets.getByRole("columnheader")).toHaveCount(2);
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog.sets")).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await page.keyboard.press("s");
  await expect(sets.getByRole("columnheader")).toHaveCount(3);
});

test("the second set is chosen by its label, and the landed first set stands in the scene", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await page.keyboard.press("s");
  const sets = page.getByRole("dialog", { name: "Sets side by side" });
  await sets.getByRole("button", { name: "Copy One girder" }).click();
  await page.keyboard.press("Enter");
  await expect(sets.getByRole("columnheader", { name: /^Set 2/ })).toContainText(/not confirmed/);
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog.sets")).toHaveCount(0);
  await untilReady(page);
  // Both sets have the same steps and machines: what is drawn more is the set that landed before.
  const triangles = () =>
    page.evaluate(() => {
      return (globalThis as unknown as { __handspan: SceneHandle }).__handspan.info().triangles;
    });
  const alone = await triangles();
  await page.getByLabel("Set", { exact: true }).selectOption({ label: "Set 2" });
  await expect.poll(async () => (await ask(page, "cursor")).set).toBe(1);
  // The landed girder has three plates of a box each, 12 triangles a box, and two bearings.
  await expect.poll(triangles).toBeGreaterThanOrEqual(alone + 5 * 12);
});
