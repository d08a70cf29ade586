// The sheet of plan data by keyboard: typed values with units, refusals, pasted surveys and charts, errors that lead to cells.
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

async function part(name: string): Promise<void> {
  if (!(await page.locator(".data-sheet").isVisible())) {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press("e");
  }
  await page.locator(".data-sheet nav").getByRole("button", { name, exact: true }).click();
  await expect(page.locator(".data-part h2")).toHaveText(name);
}

/** Pastes a text where the focus is, as Ctrl+V does with a spreadsheet's cells on the clipboard. */
const paste = (text: string) =>
  page.evaluate((it) => {
    const data = new DataTransfer();
    data.setData("text/plain", it);
    const event = new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(event);
  }, text);

/** The last label of the history. */
const lastLabel = async () => {
  const { labels, index } = await desk();
  return labels[index];
};

test("a crane's mass is typed by keyboard, in another unit too, and undone", async () => {
  const before = await desk();
  await part("Cranes");
  const cell = page
    .getByRole("row", { name: /^mass, t/ })
    .getByRole("gridcell")
    .first();
  await cell.click();
  await page.keyboard.type("800");
  await page.keyboard.press("Enter");
  await expect(cell).toHaveText("800");
  expect(await lastLabel()).toBe("far-crane: mass 780 t to 800 t");
  // The cursor went down; back up, and a value in pounds: 1 lb = 0.45359237 kg exactly.
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("F2");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("1 800 000 lb");
  await page.keyboard.press("Enter");
  await expect(cell).toHaveText("816.4663");
  expect(await lastLabel()).toBe("far-crane: mass 800 t to 816.4663 t");
  await undo();
  await undo();
  await expect(cell).toHaveText("780");
  expect((await desk()).draftHash).toBe(before.draftHash);
});

test("a comma is refused with a sentence, the typed text stays, and Escape brings back what stood there", async () => {
  await part("Site");
  const field = page.getByRole("textbox", { name: "near bearing" });
  const stood = await field.inputValue();
  const { index } = await desk();
  await field.fill("212,5");
  await field.press("Enter");
  await expect(page.locator(".data-form .problem", { hasText: "Not taken" })).toContainText("has a comma");
  await expect(field).toHaveValue("212,5");
  await field.press("Escape");
  await expect(field).toHaveValue(stood);
  await field.fill("212.1 m");
  await field.press("Tab");
  expect((await desk()).index).toBe(index + 1);
  await undo();
  await expect(field).toHaveValue(stood);
});

test("a survey of seats with heads in another order and in mm is shown before it is taken", async () => {
  await part("Seats");
  await page.getByRole("gridcell").first().click();
  const rows = ["Girder\tSurveyed level (mm)\tBearing line\tSource"];
  for (const line of ["near", "far"]) {
    for (const girder of ["L", "R"])
      rows.push(`${girder}\t${line === "near" ? 30990 : 31340}\t${line}\ttotal station`);
  }
  await paste(rows.join("\r\n"));
  const dialog = page.getByRole("dialog", { name: "Paste" });
  await expect(dialog.getByRole("combobox", { name: "Pasted column 2 goes to" })).toHaveValue("4");
  await dialog.getByRole("button", { name: "Paste by name" }).click();
  const third = page.getByRole("row", { name: /^far L/ }).getByRole("gridcell");
  await expect(third.nth(4)).toHaveText("31.34");
  await expect(third.nth(6)).toHaveText("total station");
  expect(await lastLabel()).toBe("seats: paste, 8 cells");
  expect((await desk()).errors).toEqual([]);
  await undo();
});

test("a chart of 40 rows with decimal commas asks once, in place of all rows; one entry of history", async () => {
  await part("Cranes");
  await page
    .getByRole("row", { name: /^chart(?! rows)/ })
    .getByRole("gridcell")
    .first()
    .focus();
  await page.keyboard.press("Enter");
  const opened = page.locator(".data-opened");
  await opened.getByRole("button", { name: /entries/ }).click();
  const table = opened.getByRole("grid");
  await table.getByRole("gridcell").first().click();
  const rows = Array.from({ length: 40 }, (_, i) => `${10 + i},5\t78\t${300 - 5 * i},25`);
  await paste(rows.join("\n"));
  const dialog = page.getByRole("dialog", { name: "Paste" });
  await dialog.getByRole("button", { name: "In place of all rows" }).click();
  await dialog.getByRole("button", { name: /decimal sign/ }).click();
  await expect(table).toHaveAttribute("aria-rowcount", "41");
  await expect(table.getByRole("row").nth(40).getByRole("gridcell")).toHaveText(["49.5", "78", "105.25"]);
  expect(await lastLabel()).toBe("far-crane: rows: paste in place of all, 40 rows");
  await undo();
  await page.keyboard.press("Escape");
});

test("cells that cannot be read are told, and nothing of the paste is taken", async () => {
  const { draftHash } = await desk();
  await part("Lashings");
  await page.getByRole("gridcell").nth(4).click();
  await paste("12 m\nabout 7\n");
  const dialog = page.getByRole("dialog", { name: "Paste" });
  await expect(dialog).toContainText("1 of 2 cells could not be taken");
  await dialog.getByRole("button", { name: "Close" }).click();
  expect((await desk()).draftHash).toBe(draftHash);
});

test("a rectangle is copied, filled down and cleared by keyboard", async () => {
  await part("Lashings");
  const column = page.locator('.data-sheet tbody td[role="gridcell"]:nth-child(6)');
  await column.first().click();
  await page.keyboard.type("5.5 m");
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Control+d");
  await expect(column).toHaveText([/./, /./, /./, /./]);
  await expect(column.nth(2)).toHaveText("5.5");
  expect(await lastLabel()).toBe("lashings: fill down, 2 cells");
  await undo();
  await undo();
});

test("an error leads to its cell, which is marked by shape and word", async () => {
  await page.evaluate(() =>
    (window as unknown as { __handspan: Desk }).__handspan.edit(
      "test",
      ["sets", 0, "picks", 0, "rigging"],
      "no such",
    ),
  );
  await page.getByRole("button", { name: /1 error in the plan/ }).click();
  await page.getByRole("button", { name: "sets[0].picks[0].rigging", exact: true }).click();
  await expect(page.locator(".data-part h2")).toHaveText("Picks");
  const focused = page.locator('td[role="gridcell"]:focus');
  await expect(focused).toContainText("▲ error");
  await expect(page.locator(".grid-status").first()).toContainText("sets[0].picks[0].rigging");
  await undo();
});

test("a step is added, copied, split, moved and removed, each as one entry", async () => {
  const before = await desk();
  await part("Steps");
  const tools = page.locator(".grid-tools").first();
  const table = page.getByRole("grid");
  const count = Number(await table.getAttribute("aria-rowcount"));
  await tools.getByRole("combobox").first().selectOption({ label: "first-roll roll" });
  await tools.getByRole("textbox", { name: /Split after/ }).fill("5 m");
  await tools.getByRole("textbox", { name: /Split after/ }).press("Enter");
  await expect(table).toHaveAttribute("aria-rowcount", String(count + 1));
  expect(await lastLabel()).toMatch(/^Split step first-roll after 5 m, the rest as first-roll-2/);
  expect((await desk()).errors).toEqual([]);
  await tools.getByRole("button", { name: "Copy step" }).click();
  await expect(table).toHaveAttribute("aria-rowcount", String(count + 2));
  await table.getByRole("gridcell").first().focus();
  await page.keyboard.press("Alt+ArrowDown");
  expect(await lastLabel()).toBe("Move step lash-down to place 2");
  expect((await desk()).index).toBe(before.index + 3);
  for (let i = 0; i < 3; i++) await undo();
  expect((await desk()).draftHash).toBe(before.draftHash);
});

for (const theme of ["light", "dark"] as const) {
  test(`tables and forms have no faults of accessibility, ${theme}`, async () => {
    test.setTimeout(120_000);
    await page.getByRole("combobox", { name: "Theme" }).selectOption(theme);
    for (const name of ["Site", "Cranes", "Steps", "Limits"]) {
      await part(name);
      const { violations } = await new AxeBuilder({ page }).include(".data-sheet").analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    }
  });
}

test("Escape closes the sheet, and E opens it again", async () => {
  await page.locator(".data-sheet nav button").first().focus();
  await page.keyboard.press("Escape");
  await expect(page.locator(".data-sheet")).toHaveCount(0);
  await page.keyboard.press("e");
  await expect(page.locator(".data-sheet")).toBeVisible();
});
