// A new plan from nothing, by keyboard alone: the set-up, its errors and its drawing, the search with its stop, the plan on screen.
import AxeBuilder from "@axe-core/playwright";
import { ask, untilReady } from "./handle.ts";
import { expect, test } from "./page.ts";

/** The search takes half a minute on two quiet cores, and several times that beside other work. */
const patience = 420_000;

test.use({ viewport: { width: 1280, height: 720 } });

test("from N to a plan on screen by keyboard alone; a search that is stopped changes nothing", async ({
  page,
}) => {
  test.setTimeout(patience + 120_000);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  const before = (await ask(page, "result"))?.planHash;
  await page.keyboard.press("n");
  const start = page.getByRole("dialog", { name: "New plan" });
  await expect(start).toBeVisible();
  await expect(start.getByText("The drawing begins with the gap: give it first.")).toBeVisible();
  await expect(
    start.getByRole("button", { name: /Alder Cut Bridge, set 1 \(invented\)\s*A whole day/ }),
  ).toBeVisible();

  // Nothing is answered: Enter goes to the first open question, and says what it lacks.
  const gap = start.getByLabel("Clear gap", { exact: true });
  await gap.focus();
  await page.keyboard.press("Enter");
  await expect(gap).toBeFocused();
  await expect(start.getByText("▲ Not answered yet.").first()).toBeVisible();

  // Ambiguous and foreign units: refused with a sentence, or understood.
  await page.keyboard.type("56,8 m");
  await expect(start.getByText(/▲ .*56,8/)).toBeVisible();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("186 ft 4 in");
  await expect(start.getByRole("img", { name: "Elevation: gap of 56.79 m" })).toBeVisible();

  await start.getByRole("button", { name: "Fill in an invented example" }).focus();
  await page.keyboard.press("Enter");
  await expect(
    start.getByRole("img", { name: "Elevation: gap of 56.8 m, set of 60 m behind it" }),
  ).toBeVisible();
  await expect(start.getByText(/^Everything is answered/)).toBeVisible();
  const axe = await new AxeBuilder({ page }).include("dialog.start").analyze();
  expect(axe.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join("; ")}`)).toEqual(
    [],
  );

  // Begun, and stopped at once.
  await start.getByRole("button", { name: "Make the plan" }).focus();
  await page.keyboard.press("Enter");
  await expect(start.getByRole("progressbar")).toBeVisible();
  await start.getByRole("button", { name: "Stop", exact: true }).focus();
  await page.keyboard.press("Enter");
  await expect(start.getByText("The search was stopped. Nothing was changed.")).toBeVisible();
  expect((await ask(page, "result"))?.planHash).toBe(before);

  // Begun again, to its end: Enter leads to the plan.
  await start.getByRole("button", { name: "Make the plan" }).focus();
  await page.keyboard.press("Enter");
  await expect(start.getByText(/✓ Set 1: every step solves with no stop/)).toBeVisible({ timeout: patience });
  await expect(start.getByRole("button", { name: "Look at the plan" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(start).toBeHidden();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Example of the set-up (invented)");
  await untilReady(page);
  const result = await ask(page, "result");
  expect(result?.sets[0].steps.length).toBeGreaterThan(10);
  const unconfirmed = result?.findings.filter((f) => f.id.startsWith("unconfirmed data:")) ?? [];
  expect(unconfirmed.length).toBeGreaterThan(10);
  expect(unconfirmed.every((f) => f.level === "caution")).toBe(true);
  expect(unconfirmed.map((f) => f.id)).toContain("unconfirmed data::cranes[0]");
});

test("a bundled plan is opened from the start; Escape leads back", async ({ page }) => {
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await page.getByRole("button", { name: "New plan" }).click();
  const start = page.getByRole("dialog", { name: "New plan" });
  await expect(start).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog.start")).toHaveCount(0);
  await page.keyboard.press("n");
  await start.getByRole("button", { name: /Alder Cut Bridge, set 1 \(invented\)\s*A whole day/ }).click();
  await expect(start).toBeHidden();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Alder Cut Bridge, set 1 (invented)");
});
