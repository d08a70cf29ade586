// Forms that are drawn: charts, hydraulic groups, girders, weights, path, seats and what is moved along a set, by keyboard and pointer.
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { onePage } from "./onePage.ts";

let page: Page;

onePage(
  "/",
  (opened) => {
    page = opened;
  },
  "solved",
);

interface Desk {
  document(): { draftHash: string; errors: string[]; labels: string[]; index: number };
  edit(label: string, path: (string | number)[], value: unknown): void;
  undo(): void;
}

const desk = () => page.evaluate(() => (window as unknown as { __handspan: Desk }).__handspan.document());
const undo = () => page.evaluate(() => (window as unknown as { __handspan: Desk }).__handspan.undo());
const edit = (path: (string | number)[], value: unknown) =>
  page.evaluate(
    ([at, it]) =>
      (window as unknown as { __handspan: Desk }).__handspan.edit("test", at as (string | number)[], it),
    [path, value] as const,
  );
const lastLabel = async () => {
  const { labels, index } = await desk();
  return labels[index];
};

async function part(name: string): Promise<void> {
  if (!(await page.locator(".data-sheet").isVisible())) {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press("e");
  }
  await page.locator(".data-sheet nav").getByRole("button", { name, exact: true }).click();
  await expect(page.locator(".data-part h2")).toHaveText(name);
  await expect(page.locator(".drawn-form")).toBeVisible();
}

test("a chart shows the radii of the steps with the load on the hook; a rising row is named", async () => {
  await part("Cranes");
  const form = page.locator(".drawn-form");
  await expect(form.locator(".curve path")).toHaveCount(1);
  const steps = form.locator("tbody tr");
  await expect(steps.first()).toBeVisible();
  await expect(form.locator(".used")).toHaveCount(await steps.count());
  // Of the rated load, in percent, is load over rating, both as shown: within rounding of a whole percent.
  const cells = await form
    .getByRole("row", { name: /^far-takes/ })
    .getByRole("cell")
    .allTextContents();
  const [, load, rated, share] = cells.map(Number);
  expect(Math.abs((100 * load) / rated - share)).toBeLessThanOrEqual(0.51);
  await expect(form.locator(".flags")).toHaveCount(0);
  await edit(["cranes", 0, "chart", "rows", 3, "rated_t"], 900);
  await expect(form.locator(".flags")).toContainText("Row 4 rates");
  await undo();
  await expect(form.locator(".flags")).toHaveCount(0);
});

test("wheels are picked by keyboard into a new group, merged back, renamed; steps follow", async () => {
  const before = await desk();
  await part("Transporters");
  const form = page.locator(".drawn-form");
  await form.getByRole("checkbox", { name: /^wheel 1L/ }).focus();
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Space");
  await expect(form.getByRole("checkbox", { name: /^wheel 1R/ })).toHaveAttribute("aria-checked", "true");
  await page.keyboard.press("g");
  expect(await lastLabel()).toBe("rear: wheels 1L, 1R to new group rear 4");
  await expect(form.getByRole("checkbox", { name: "wheel 1R, group rear 4" })).toBeFocused();
  await expect(form.getByRole("list", { name: "Groups" }).getByRole("listitem")).toHaveCount(4);
  // A click on a wheel picks it too.
  await form.getByRole("checkbox", { name: /^wheel 2L/ }).click();
  await expect(form.getByRole("checkbox", { name: /^wheel 2L/ })).toHaveAttribute("aria-checked", "true");
  await page.keyboard.press("Escape");
  await expect(form.getByRole("checkbox", { name: /^wheel 2L/ })).toHaveAttribute("aria-checked", "false");
  const last = form.getByRole("list", { name: "Groups" }).getByRole("listitem").nth(3);
  await last.getByRole("combobox").selectOption("rear aft");
  expect((await desk()).errors).toEqual([]);
  await expect(form.getByRole("list", { name: "Groups" }).getByRole("listitem")).toHaveCount(3);
  const name = form.getByRole("textbox", { name: "Name of group A" });
  await name.fill("rear stern");
  await name.press("Enter");
  expect(await lastLabel()).toBe("rear: rename group rear aft to rear stern");
  expect((await desk()).errors).toEqual([]);
  for (let i = 0; i < 3; i++) await undo();
  expect((await desk()).draftHash).toBe(before.draftHash);
});

test("a wheel in no group is said while the last good plan stays", async () => {
  await part("Transporters");
  await edit(["transporters", 0, "groups", 1, "wheels"], ["4L", "5L"]);
  await expect(page.locator(".drawn-form [role=status]")).toHaveText(
    "◆ Wheel 6L is in no group: pick and assign.",
  );
  await undo();
});

test("a piece is chosen in the elevation by keyboard; its sizes are typed beside its section", async () => {
  await part("Girders and pieces");
  const form = page.locator(".drawn-form");
  await form.getByRole("radio", { name: /^L1/ }).focus();
  await page.keyboard.press("ArrowRight");
  await expect(form.getByRole("radio", { name: /^L2/ })).toBeFocused();
  await expect(form.getByRole("table", { name: "Section of L L2" })).toBeVisible();
  const web = form.getByRole("textbox", { name: "web, thickness" });
  await web.fill("20");
  await web.press("Enter");
  expect(await lastLabel()).toContain("web, thickness 18 mm to 20 mm");
  // Depth 45 + 2400 + 50 mm; area 600 x 45 + 2400 x 20 + 650 x 50 mm2.
  await expect(form.getByRole("row", { name: /^area A/ })).toContainText("107500 mm²");
  await undo();
  await form.getByRole("button", { name: "Row of L2" }).click();
  await expect(page.locator('td[role="gridcell"]:focus')).toHaveText("600");
  // And back: the row that has the focus is the piece that is drawn.
  await page.keyboard.press("ArrowDown");
  await expect(form.getByRole("radio", { name: /^L3/ })).toHaveAttribute("aria-checked", "true");
});

test("the ledger says what the solver weighs and judges each line as the check does", async () => {
  await part("Weight ledger");
  const form = page.locator(".drawn-form");
  await expect(form).toContainText(/The solver weighs the take-off: 118\.\d t/);
  await expect(form.locator("[data-verdict=inside]")).toHaveCount(2);
  await edit(["sets", 0, "ledger", 1, "mass_t"], { low: 100, best: 105, high: 110 });
  await expect(form.locator("[data-verdict=above]")).toContainText("■ take-off above high");
  await undo();
});

test("path and seats are drawn, with what needs a look in words", async () => {
  await part("Path");
  await expect(page.locator(".drawn-form .footprint")).toHaveCount(2);
  await edit(["sets", 0, "start", "rearEnd_m"], 110);
  await expect(page.locator(".drawn-form .flags")).toContainText("axle lines of rear stand beyond the path");
  await undo();
  await part("Seats");
  await expect(page.locator(".drawn-form .seat").first()).toContainText("+2 mm");
  await edit(["site", "seats", 0, "asBuilt_m"], null);
  await expect(page.locator(".drawn-form .flags")).toHaveText("◆ Not surveyed: near L.");
  await undo();
});

test("a pick is moved along the set by arrows, by typing and by dragging: one entry each", async () => {
  const before = await desk();
  await part("Picks");
  const form = page.locator(".drawn-form");
  const pick = form.getByRole("slider", { name: "pick of far-crane" });
  await pick.focus();
  await page.keyboard.press("ArrowLeft");
  await expect(pick).toHaveAttribute("aria-valuenow", "54.9");
  expect((await desk()).index).toBe(before.index + 1);
  expect(await lastLabel()).toBe("pick of far-crane moved 0.1 m back, to 54.9 m");
  const field = form.getByRole("textbox", { name: /^pick of far-crane/ });
  await field.fill("54 m");
  await field.press("Enter");
  await expect(pick).toHaveAttribute("aria-valuenow", "54");
  const box = await pick.boundingBox();
  if (box === null) throw new Error("the pick is not on the screen");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2 + 8];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 40, y, { steps: 4 });
  await expect(form.locator(".slider.moving")).toHaveCount(1);
  expect((await desk()).index).toBe(before.index + 2);
  await page.mouse.up();
  expect((await desk()).index).toBe(before.index + 3);
  const now = Number(await pick.getAttribute("aria-valuenow"));
  expect(now).toBeLessThan(54);
  for (let i = 0; i < 3; i++) await undo();
  expect((await desk()).draftHash).toBe(before.draftHash);
});

for (const theme of ["light", "dark"] as const) {
  test(`drawn forms have no fault that a machine can find, ${theme}`, async () => {
    // Seven forms are searched one after another, on a machine that may be busy.
    test.slow();
    await page.getByRole("combobox", { name: "Theme" }).selectOption(theme);
    for (const name of [
      "Cranes",
      "Transporters",
      "Girders and pieces",
      "Weight ledger",
      "Path",
      "Seats",
      "Picks",
    ]) {
      await part(name);
      const found = await new AxeBuilder({ page }).include(".drawn-form").analyze();
      expect(
        found.violations.map(({ id, nodes }) => `${name}: ${id} ${nodes[0].html.slice(0, 160)}`),
      ).toEqual([]);
    }
  });
}
