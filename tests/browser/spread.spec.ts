// Low and high of what is uncertain: in the table at stored poses only, as bands in the strips with their corner, in the lane
// of a chosen support; all of it as the command line says.
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import { parseCsv } from "../tools/recompute.mjs";
import { ask, solvedByCommandLine } from "./handle.ts";
import { onePage } from "./onePage.ts";

const scenario = "scenarios/one-girder.json";
let page: Page;
let json: ResultJson;
let rows: Record<string, string>[] = [];
let out = "";

onePage("/?example=one-girder", (opened) => {
  page = opened;
  const solved = solvedByCommandLine(scenario, ["--spread", "chosen"]);
  json = solved.json;
  out = solved.out;
  rows = parseCsv(solved.csv);
});

/** The worst of a limit as the command line prints it: percent, step, progress, corner. */
function printedWorst(
  check: string,
  subject: string,
): { use: string; step: string; at: number; corner: string } {
  const line = out.split("\n").find((one) => one.startsWith(`${check}, ${subject}  `));
  const [, use, step, at, corner] = /\s(\d+) %\s.*\sstep (\d+) at ([\d.]+)\s+(.+)$/.exec(line ?? "") ?? [];
  return { use, step, at: Number(at), corner: corner?.replace(/^-$/, "best values") };
}

const uses = () => page.getByRole("list", { name: "Highest uses of limits" }).getByRole("listitem");

test("low and high in the table are those of the command line at stored poses, and nowhere between", async () => {
  for (const step of [0, 3]) {
    await ask(page, "setCursor", step, 1);
    const own = rows.filter(
      (r) => r.step_number === String(step + 1) && r.progress === "1" && r.band === "yes",
    );
    expect(own.length).toBeGreaterThan(3);
    for (const { support, share_low_kN, share_high_kN } of own) {
      const row = page.locator(`tr[data-support="${support}"]`);
      for (const [end, value] of [
        ["low", share_low_kN],
        ["high", share_high_kN],
      ]) {
        const shown = Number(await row.locator(`.range.${end}`).textContent());
        // 0.1 kN is one unit of the last digit shown.
        expect(Math.abs(shown - Number(value)), `${support}, ${end}`).toBeLessThanOrEqual(0.1);
      }
    }
  }
  await ask(page, "setCursor", 0, 0.333);
  for (const cell of await page.locator(".reactions .range").all()) await expect(cell).toHaveText("");
});

test("the worst use of every subject, its limit, place and corner are those of the command line", async () => {
  const sentences = await uses().allTextContents();
  expect(sentences.length).toBeGreaterThan(5);
  for (const sentence of sentences) {
    const [, subject, best, high, check, step, at, corner] =
      /^(.+): highest use (\d+) %; over what is uncertain (\d+) % of (.+) in step (\d+) at (\d+) %, corner: (.+)$/.exec(
        sentence,
      ) ?? [];
    expect(subject, sentence).toBeTruthy();
    const printed = printedWorst(check, subject);
    expect({ use: high, step, corner }, sentence).toEqual({
      use: printed.use,
      step: printed.step,
      corner: printed.corner,
    });
    expect(Math.abs(Number(at) - 100 * printed.at), sentence).toBeLessThanOrEqual(0.5001);
    expect(Number(high)).toBeGreaterThanOrEqual(Number(best));
    // No limit of this subject is used more anywhere, as far as it has a strip at all.
    const most = json.sets[0].spread?.worst.find((one) => one.check === check && one.subject === subject);
    expect(Math.round(100 * (most?.use ?? 0))).toBe(Number(high));
  }
});

test("every strip has its band, its low line and its high line, and names the worst corner under the pointer", async () => {
  const strips = page.locator(".share .strip");
  const count = await strips.count();
  expect(count).toBeGreaterThanOrEqual(4);
  for (const part of [".between", ".low", ".high", ".use"])
    await expect(page.locator(`.share .strip ${part}`)).toHaveCount(count);
  for (let i = 0; i < count; i++) {
    const strip = strips.nth(i);
    const subject = (await strip.getAttribute("data-strip")) ?? "";
    const sentence = (await uses().allTextContents()).find((one) => one.startsWith(`${subject}:`)) ?? "";
    const [, high, corner] = /uncertain (\d+) % of .*, corner: (.+)$/.exec(sentence) ?? [];
    const numbers = strip.locator("[data-use]");
    await expect(numbers).toHaveAttribute("data-high", high);
    const box = await strip.locator(".row").boundingBox();
    if (box === null) throw new Error("a strip has no place on the page");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await expect(page.locator(".hover")).toContainText(subject);
    await expect(page.locator(".hover")).toContainText(`highest of all: ${high} %`);
    await expect(page.locator(".hover")).toContainText(`corner: ${corner}`);
  }
  await page.mouse.move(5, 5);
  await expect(page.locator(".hover")).toHaveCount(0);
});

test("a chosen support stands alone with low, best and high, its ends marked and told with their corner", async () => {
  const set = json.sets[0];
  await expect(page.locator(".share .own")).toHaveCount(0);
  const button = page.getByRole("button", { name: "far crane", exact: true });
  await button.focus();
  await page.keyboard.press("Enter");
  const lane = page.locator('.share .own[data-own="far crane"]');
  await expect(lane).toBeVisible();
  for (const part of [".fill", ".use", ".between", ".low", ".high"])
    await expect(lane.locator(part)).toHaveCount(1);
  const { low, high } = set.spread?.supports.find(({ name }) => name === "far crane") ?? {};
  if (!low || !high) throw new Error("the far crane has no low and high");
  const ends = lane.locator("[data-lowest]");
  const shown = async (name: string) => Number(await ends.getAttribute(name));
  // Newton; the last bits differ between engines.
  expect(Math.abs((await shown("data-lowest")) - low.value)).toBeLessThan(1e-3);
  expect(Math.abs((await shown("data-highest")) - high.value)).toBeLessThan(1e-3);
  await expect(lane).toContainText(`▲ ${(high.value / 1000).toFixed(1)}`);
  const told = page.locator(".share .unseen p");
  await expect(told).toContainText(
    `highest ${(high.value / 1000).toFixed(1)} kN in step ${set.poses[high.pose].number}`,
  );
  await expect(told).toContainText("corner: ");
  // The strip of the same support comes first, and its band in the picture is outlined.
  await expect(page.locator(".share .strip").first()).toHaveAttribute("data-strip", "far crane");
  await expect(page.locator(".share .band.chosen")).toHaveAttribute("data-band", "far crane");
  await page.keyboard.press("Enter");
  await expect(page.locator(".share .own")).toHaveCount(0);
});
