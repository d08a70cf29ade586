// What the girders feel, on the page: diagrams of the pose at the cursor and the stages that buckle, as the command line
// says, by keys alone; the buckled shape in the scene and in its words.
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import { ask, solvedByCommandLine } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let json: ResultJson;
let out = "";

onePage("/", async (opened) => {
  page = opened;
  ({ json, out } = solvedByCommandLine("scenarios/demo.json", ["--buckling", "stages"]));
  await page.keyboard.press("g");
});

const drawing = () => page.getByRole("img", { name: /^Girder L, / });

test("a lane for every girder; the greatest sagging moment of the day is the command line's", async () => {
  const line = out.split("\n").find((one) => /^L\s+sagging moment/.test(one)) ?? "";
  const [, value, step, progress] =
    /moment\s+([\d.]+)\s+kNm\s+[\d.]+\s+(\d+) \S+\s+([\d.]+)$/.exec(line) ?? [];
  await ask(page, "setCursor", Number(step) - 1, Number(progress));
  await expect(page.locator(".girder-diagrams [data-girder]")).toHaveCount(2);
  await expect(drawing()).toHaveAttribute(
    "aria-label",
    new RegExp(`Girder L, moment: ${Math.round(Number(value))} kN m at `),
  );
  await page.getByRole("combobox", { name: "Along the girders" }).selectOption("shear");
  await expect(drawing()).toHaveAttribute("aria-label", /Girder L, shear: [\d.]+ kN at /);
  await page.getByRole("combobox", { name: "Along the girders" }).selectOption("moment");
});

test("pointing at the diagram says the values there", async () => {
  const box = await drawing().boundingBox();
  if (box === null) throw new Error("the diagram has no place on the page");
  await page.mouse.move(box.x + box.width / 2, box.y + 40);
  await expect(page.locator(".girder-diagrams figcaption")).toContainText(
    /m from the rear end: L -?\d+ kN m, R -?\d+ kN m/,
  );
});

test("the stages buckle at the command line's factors; a chosen one shows its shape", async () => {
  await page.getByRole("button", { name: "Find the factors" }).press("Enter");
  const stages = json.sets[0].buckling?.stages ?? [];
  const rows = page.locator(".stages tbody tr");
  await expect(rows).toHaveCount(stages.length, { timeout: 120_000 });
  const factors = await page
    .locator("[data-factor]")
    .evaluateAll((cells) => cells.map((cell) => Number((cell as HTMLElement).dataset.factor)));
  factors.forEach((factor, i) => {
    // Engines differ in last bits, which Lanczos steps carry on: 1e-7.
    expect(Math.abs(factor / (stages[i].factor ?? Number.NaN) - 1)).toBeLessThan(1e-7);
  });
  const least = Math.min(...stages.map((stage) => stage.factor ?? Number.POSITIVE_INFINITY));
  await expect(rows.filter({ hasText: "(least)" })).toContainText(least.toFixed(2));
  await rows.filter({ hasText: "(least)" }).getByRole("button").press("Enter");
  const picture = page.locator(".stage canvas");
  await expect(picture).toHaveAttribute("aria-label", new RegExp(`buckles at ${least.toFixed(2)} times`));
  await page.getByLabel("Draw the buckled shape").press("Space");
  await expect(picture).not.toHaveAttribute("aria-label", /buckles/);
});

test("nothing stands in the way of people with other eyes and hands, in both themes", async () => {
  for (const theme of ["light", "dark"]) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, theme);
    const { violations } = await new AxeBuilder({ page }).include("aside").analyze();
    expect(violations.map(({ id, nodes }) => `${theme} ${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
});
