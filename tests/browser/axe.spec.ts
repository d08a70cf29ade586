// Nothing stands in the way of people with other eyes and hands, wherever the page leads: every view, panel, part of the plan
// data and dialog, in both themes. The rules are those of axe-core 4.13 (WCAG 2.2 level A and AA and best practices).
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { planParts } from "../../src/app/index.ts";
import { frames, openPlan, projectFile, untilAllIsThere } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;

onePage("/", (opened) => {
  page = opened;
});

/** What axe finds in the whole page or a part of it, each with the elements it is about. */
async function violations(part = "html"): Promise<string[]> {
  const found: string[] = [];
  for (const theme of ["dark", "light"] as const) {
    await page.evaluate((chosen) => {
      document.documentElement.dataset.theme = chosen;
      for (const dialog of document.querySelectorAll<HTMLElement>("dialog[data-theme]"))
        dialog.dataset.theme = chosen;
    }, theme);
    await frames(page);
    const { violations } = await new AxeBuilder({ page }).include(part).analyze();
    for (const { id, nodes } of violations)
      found.push(`${theme}, ${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join(" | ")}`);
  }
  return found;
}

/** Finds an action by its words and does it, as by hand. */
async function act(words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.getByRole("combobox", { name: "Words of the action" }).fill(words);
  await page.keyboard.press("Enter");
}

const settled = () => frames(page, 6);

test("every view of the scene, and every strip", async () => {
  test.setTimeout(240_000);
  for (const key of ["1", "2", "3", "4", "5", "u"]) {
    await page.locator("body").press(key);
    await settled();
    expect.soft(await violations(), `after key ${key}`).toEqual([]);
  }
  await page.keyboard.press("u");
});

test("every panel", async () => {
  test.setTimeout(240_000);
  for (const key of ["f", "b", "g", "h", "t"]) {
    await page.locator("body").press(key);
    await settled();
    expect.soft(await violations("aside"), `panel of key ${key}`).toEqual([]);
  }
  await act("tables wind");
  await expect(page.locator(".table-panel table").first()).toBeVisible({ timeout: 60_000 });
  expect.soft(await violations("aside"), "tables about wind").toEqual([]);
  await page.locator(".findings .finding").or(page.locator("body")).first().press("f");
  await page.locator(".findings .finding").first().click();
  expect.soft(await violations("aside"), "a chosen finding").toEqual([]);
  await page.keyboard.press("Escape");
});

for (const [from, to] of [
  [0, 8],
  [8, 16],
  [16, planParts.length],
])
  test(`parts ${from + 1} to ${to} of the plan data`, async () => {
    test.setTimeout(300_000);
    for (const part of planParts.slice(from, to)) {
      await page.locator("body").press("Control+k");
      await page.getByRole("combobox", { name: "Words of the action" }).fill("edit plan data");
      await page.locator(`[data-action="edit ${part}"]`).click();
      await expect(page.locator(".data-part h2").first()).toBeVisible();
      await settled();
      expect.soft(await violations(".data-sheet"), part).toEqual([]);
    }
    await page.keyboard.press("Escape");
  });

test("a limit that is opened, a form that is opened, and a draft with errors", async () => {
  test.setTimeout(240_000);
  await act("edit limits");
  await page.getByRole("button", { name: /^tandem use/ }).click();
  expect.soft(await violations(".data-sheet"), "a limit").toEqual([]);
  await act("edit steps");
  await page.getByRole("button", { name: "All of the step" }).click();
  await settled();
  expect.soft(await violations(".data-sheet"), "a step").toEqual([]);
  await page.evaluate(() => {
    const handle = (window as unknown as { __handspan: { edit: (...all: unknown[]) => void } }).__handspan;
    handle.edit("A fault", ["cranes", 0, "mass_t"], -1);
  });
  await settled();
  expect.soft(await violations(), "errors of the draft").toEqual([]);
  await page.keyboard.press("Control+z");
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
});

test("every dialog", async () => {
  test.setTimeout(300_000);
  const dialogs = [
    ["new plan", "dialog.start"],
    ["sets side by side", "dialog[open]"],
    ["plans that were open lately", "dialog.recent"],
    ["all keys", "dialog.key-sheet"],
  ];
  for (const [words, dialog] of dialogs) {
    await act(words);
    await expect(page.locator(dialog)).toBeVisible();
    await settled();
    expect.soft(await violations("dialog[open]"), words).toEqual([]);
    await page.keyboard.press("Escape");
    await expect(page.locator("dialog[open]")).toHaveCount(0);
  }
  await page.keyboard.press("Control+k");
  expect.soft(await violations("dialog[open]"), "the finder").toEqual([]);
  await page.getByRole("combobox", { name: "Words of the action" }).fill("undo");
  expect.soft(await violations("dialog[open]"), "the finder with something typed").toEqual([]);
  await page.keyboard.press("Escape");
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: "broken.json",
      mimeType: "application/json",
      buffer: Buffer.from('{"format": 1}'),
    });
  await expect(page.locator("dialog.errors[open]")).toBeVisible();
  expect.soft(await violations("dialog[open]"), "a file that was not opened").toEqual([]);
  await page.keyboard.press("Escape");
});

test("a plan with stops", async () => {
  test.setTimeout(240_000);
  await openPlan(page, projectFile("scenarios/planted-faults.json"));
  await untilAllIsThere(page);
  await page.locator("body").press("f");
  await settled();
  expect.soft(await violations(), "findings with stops").toEqual([]);
});
