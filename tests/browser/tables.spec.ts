// Tables on one matter: worked out when chosen, told with how far they are, kept; the same as on the command line. By keys alone.
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { solvedByCommandLine } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let out = "";

onePage("/?example=one-girder", async (opened) => {
  page = opened;
  ({ out } = solvedByCommandLine("scenarios/one-girder.json", ["--also", "all"]));
  await page.keyboard.press("t");
});

const chooser = () => page.getByRole("combobox", { name: "About" });
const panel = () => page.locator(".table-panel");

/** Chooses a matter and waits until its tables stand. */
async function choose(matter: string): Promise<void> {
  await chooser().selectOption(matter);
  await expect(panel().locator("h2").first()).toBeVisible({ timeout: 120_000 });
  await expect(panel().getByRole("status")).toHaveCount(0, { timeout: 120_000 });
}

/** Cells of all tables on the page, row by row, blanks left out. */
const rowsOnPage = () =>
  panel()
    .locator("tbody tr")
    .evaluateAll((rows) =>
      rows.map((row) =>
        [...row.querySelectorAll("td")]
          .map((cell) => (cell.textContent ?? "").trim())
          .filter((t) => t !== ""),
      ),
    );

test("the key goes to the panel, whose chooser stands first and names every matter", async () => {
  await expect(page.locator("#tab-tables")).toBeFocused();
  await expect(chooser()).toBeVisible();
  const options = await chooser().locator("option").allTextContents();
  expect(options.length).toBeGreaterThanOrEqual(5);
  expect(options.join(" ")).toMatch(/landing.*wind.*coverage/s);
});

for (const matter of ["landing", "wind", "clearance", "rigging", "coverage"]) {
  test(`${matter}: every row of the page stands in the command line's text`, async () => {
    await choose(matter);
    const rows = await rowsOnPage();
    expect(rows.length).toBeGreaterThan(0);
    const lines = out.split("\n").map((line) => line.replace(/\s+/g, " ").trim());
    for (const row of rows) expect(lines).toContain(row.join(" ").replace(/\s+/g, " "));
  });
}

test("tables that are there are not worked out again", async () => {
  await choose("landing");
  await chooser().selectOption("wind");
  await chooser().selectOption("landing");
  await expect(panel().getByRole("button", { name: "Work it out" })).toHaveCount(0);
  await expect(panel().locator("h2").first()).toBeVisible();
});

test("the panel has no fault of access", async () => {
  const found = await new AxeBuilder({ page }).include(".table-panel").analyze();
  expect(found.violations.map((v) => `${v.id}: ${v.help}`)).toEqual([]);
});
