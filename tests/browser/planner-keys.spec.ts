// The main job without a mouse, and typed values with units: what is understood stands in the file in its unit, what can be
// misread is refused.
import { expect, type Page, test } from "@playwright/test";
import { ask } from "./handle.ts";
import { documentOf, Hands, planIn, untilAnswered } from "./hands.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let hands: Hands;

onePage(
  "/",
  async (opened) => {
    page = opened;
    hands = new Hands(opened);
    // A browser without pickers of its own saves by a download, which a test can read.
    await opened.evaluate(() => {
      for (const name of ["showSaveFilePicker", "showOpenFilePicker"])
        Object.defineProperty(window, name, { value: undefined, configurable: true });
    });
  },
  "solved",
);

/** Does what the finder finds first for these words. */
async function act(words: string, finds: string | RegExp): Promise<void> {
  await hands.press("Control+k");
  await hands.type(words);
  await expect(page.locator('#found [aria-selected="true"]')).toContainText(finds);
  await hands.press("Enter");
  await expect(page.locator("#found")).toHaveCount(0);
}

/** From the head of a part into its first table, by Tab alone. */
async function toTable(name: string): Promise<void> {
  await hands.tabTo(page.getByRole("grid", { name, exact: true }).locator('td[tabindex="0"]'));
}

const focused = () => page.locator(":focus");

test("open, find, edit, see the answer, scrub, look at a finding, undo and save, by keyboard alone", async () => {
  test.setTimeout(300_000);
  // Any click or touch from here on is a mistake of the test.
  await page.evaluate(() => {
    for (const kind of ["mousedown", "pointerdown", "touchstart"])
      window.addEventListener(kind, () => console.error(`a ${kind} in a test without a mouse`), true);
  });
  await act("open the bundled plan one girder", "Open the bundled plan one girder");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^One girder/);
  await untilAnswered(page);
  const opened = await documentOf(page);

  await act("edit seats", "Edit seats");
  await toTable("Seats");
  const heads = await page.getByRole("grid", { name: "Seats" }).locator("thead th").allTextContents();
  const built = heads.findIndex((head) => head.startsWith("elevation as built")) - 1;
  for (let i = 0; i < built; i++) await hands.press("ArrowRight");
  const stood = Number(await focused().textContent());
  await hands.over(String(stood - 0.02));
  const change = page.getByRole("region", { name: "The last change, old against new" });
  await untilAnswered(page);
  const edited = await documentOf(page);
  expect(edited.index).toBe(opened.index + 1);
  expect(edited.draftHash).not.toBe(opened.draftHash);
  await expect(change).toBeVisible();

  await hands.press("Escape", "Escape");
  await expect(page.locator(".data-sheet")).toHaveCount(0);
  await hands.press("End");
  const end = await ask(page, "cursor");
  await hands.press("ArrowLeft");
  expect(await ask(page, "cursor")).not.toEqual(end);
  await hands.press("PageUp");
  expect((await ask(page, "cursor")).step).toBeLessThan(end.step);

  await hands.press("f");
  await expect(page.locator("#tab-findings")).toBeFocused();
  const finding = page.locator("button.finding").first();
  await hands.tabTo(page.locator(".findings summary").first());
  for (let i = 0; i < 60 && !(await finding.evaluate((it) => it === document.activeElement)); i++) {
    if (await finding.isVisible()) await hands.press("ArrowDown");
    else await hands.press("Enter", "ArrowDown");
  }
  await expect(finding).toBeFocused();
  await hands.press("Enter");
  await expect(finding.locator(".more")).toBeVisible();

  await hands.press("Control+z");
  expect((await documentOf(page)).draftHash).toBe(opened.draftHash);
  await hands.press("Control+y");
  const waiting = page.waitForEvent("download");
  await hands.press("Control+s");
  expect((await waiting).suggestedFilename()).toMatch(/\.json$/);
  await expect.poll(async () => (await documentOf(page)).changes).toBe(0);
  console.log(`the main job without a mouse: ${hands.count} actions`);
});

test("with US customary units, feet and inches, kips and tonnes typed in cells stand in the file as what they are", async () => {
  test.setTimeout(240_000);
  await act("open the bundled plan demo", "Open the bundled plan demo");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Alder Cut/);
  await untilAnswered(page);
  await act("units us customary", "Units: US customary");
  await act("edit transporters", "Edit transporters");
  const grid = page.getByRole("grid", { name: "Transporters", exact: true });
  /** Types a text in the first transporter's field of this name. */
  const into = async (field: RegExp, text: string) => {
    await grid.getByRole("row", { name: field }).getByRole("gridcell").first().focus();
    await hands.over(text);
  };
  const status = page.locator(".grid-status").first();
  await into(/^gauge/, "6 ft 10 in");
  await into(/^allowed/, "85 kip");
  await into(/^mass/, "31.2 t");
  const [first] = (await planIn(page)).transporters;
  // Exact by definition: 1 ft = 0.3048 m, 1 in = 0.0254 m (international yard and pound agreement, 1959).
  expect(first.gauge_m).toBeCloseTo(6 * 0.3048 + 10 * 0.0254, 12);
  // 1 lbf = 0.45359237 kg times 9.80665 m/s2 by definition; 1 kip = 1000 lbf.
  expect(first.allowedLine_kN).toBeCloseTo(85 * 0.45359237 * 9.80665, 9);
  expect(first.mass_t).toBeCloseTo(31.2, 12);

  await act("edit lashings", "Edit lashings");
  const lashings = page.getByRole("grid", { name: "Lashings", exact: true });
  const length = lashings.locator("tbody tr").first().getByRole("gridcell").nth(4);
  await length.focus();
  await hands.over("12 ft 6 in");
  expect(JSON.stringify((await planIn(page)).lashings[0])).toContain("3.81");

  const before = await documentOf(page);
  await act("edit transporters", "Edit transporters");
  for (const [text, says] of [
    ["1,234", /Not taken: .*"1,234".*comma/],
    ["3 tons", /Not taken: .*"tons" can mean more than one unit/],
  ] as const) {
    await into(/^mass/, text);
    await expect(status).toContainText(says);
    await hands.press("Escape");
  }
  expect((await documentOf(page)).draftHash).toBe(before.draftHash);
  await act("units si loads in kn", "Units: SI, loads in kN");
});
