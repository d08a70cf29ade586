// The list of findings: those of the run, of losses, of ways back and of the spread in one, by level; filtered and gone through
// by keys alone; numbers in the chosen units. Compared with the command line.

import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import { convert } from "../../src/units/index.ts";
import { ask, solvedByCommandLine } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let json: ResultJson;

// Named in the address, so that the list of examples has it.
onePage("/?example=order-faults", (opened) => {
  page = opened;
  ({ json } = solvedByCommandLine("scenarios/order-faults.json", ["--spread", "chosen"]));
});

const listed = () =>
  page
    .locator("button.finding")
    .evaluateAll((all) => all.map((one) => one.getAttribute("data-finding") ?? ""));
const itemOf = (id: string) => page.locator(`button.finding[data-finding="${id}"]`);

test("every finding of the command line is in the list once, under its level", async () => {
  expect((await listed()).sort()).toEqual(json.findings.map(({ id }) => id).sort());
  const placed = json.findings.filter(({ worst, from }) => worst !== null || from !== null);
  for (const level of ["stop", "caution", "note"] as const) {
    const own = placed.filter((one) => one.level === level);
    if (own.length === 0) continue;
    const group = page.locator(".findings > details", {
      has: page.locator(`summary.${level}`),
    });
    await expect(group.locator("button.finding")).toHaveCount(own.length);
    await expect(group.locator("summary")).toContainText(String(own.length));
  }
  const checks = new Set(json.findings.map(({ check }) => check));
  expect(checks.has("unbacked")).toBe(true);
  expect([...checks].some((check) => check.startsWith("in the spread: "))).toBe(true);
  await expect(page.getByRole("tab", { name: /^Findings/ })).toContainText(String(json.findings.length));
});

test("those of the spread name their corner, and stand hollow among the others", async () => {
  const own = json.findings.filter(
    ({ check, worst }) => check.startsWith("in the spread: ") && worst !== null,
  );
  expect(own.length).toBeGreaterThan(3);
  for (const { id, words } of own) {
    expect(words).toContain("corner: ");
    await expect(itemOf(id)).toContainText(words);
    await expect(itemOf(id).locator(".shape.hollow")).toHaveCount(1);
  }
  const run = json.findings.find(
    ({ check, worst }) => !check.startsWith("in the spread: ") && worst !== null,
  );
  await expect(itemOf(run?.id ?? "").locator(".shape.hollow")).toHaveCount(0);
});

test("keys alone filter the list, go down it, and Enter goes where a finding is worst", async () => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("f");
  await expect(page.getByRole("tab", { name: /^Findings/ })).toBeFocused();
  // Levels: stops stay, cautions and notes go.
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "show stops" })).toBeFocused();
  await page.keyboard.press("Tab");
  await page.keyboard.press(" ");
  await page.keyboard.press("Tab");
  await page.keyboard.press(" ");
  const stops = json.findings.filter(({ level }) => level === "stop");
  await expect(page.locator("button.finding")).toHaveCount(stops.length);
  // Kind: the spread.
  await page.keyboard.press("Tab");
  await expect(page.getByLabel("Kind of finding")).toBeFocused();
  await page.getByLabel("Kind of finding").selectOption("spread");
  const spread = stops.filter(({ check }) => check.startsWith("in the spread: "));
  await expect(page.locator("button.finding")).toHaveCount(spread.length);
  // Words, of which every one must occur.
  await page.keyboard.press("Tab");
  await expect(page.getByRole("searchbox")).toBeFocused();
  await page.keyboard.type("front");
  const front = spread.filter(({ check, subject, words }) =>
    `${check} ${subject} ${words}`.includes("front"),
  );
  expect(front.length).toBeGreaterThan(0);
  expect(front.length).toBeLessThan(spread.length);
  await expect(page.locator("button.finding")).toHaveCount(front.length);
  await expect(page.locator(".findings > [role=status]")).toHaveText(
    `${front.length} of ${json.findings.length} findings shown`,
  );
  // Down the list and to the place.
  await page.keyboard.press("Tab");
  await expect(page.locator(".findings summary").first()).toBeFocused();
  await page.keyboard.press("ArrowDown");
  const item = page.locator("button.finding").first();
  await expect(item).toBeFocused();
  const id = await item.getAttribute("data-finding");
  const { worst } = json.findings.find((one) => one.id === id) ?? {};
  await ask(page, "setCursor", 0, 0);
  await page.keyboard.press("Enter");
  const cursor = await ask(page, "cursor");
  expect(cursor.step).toBe(worst?.step);
  expect(cursor.progress).toBeCloseTo(worst?.progress ?? Number.NaN, 6);
  await expect(item).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("ArrowUp");
  await expect(page.locator(".findings summary").first()).toBeFocused();

  await page.getByRole("searchbox").fill("");
  await page.getByLabel("Kind of finding").selectOption("all");
  for (const name of ["show cautions", "show notes"]) await page.getByRole("button", { name }).click();
  await expect(page.locator("button.finding")).toHaveCount(json.findings.length);
});

test("numbers follow the units chosen; a sentence in other units says so", async () => {
  const loads = json.findings.filter(
    ({ unit, value, limit, worst }) => unit === "kN" && value !== null && limit !== null && worst !== null,
  );
  const lengths = json.findings.filter(({ unit, value }) => unit === "m" && value !== null);
  expect(loads.length).toBeGreaterThan(0);
  const shown = async (id: string) =>
    ((await itemOf(id).locator(".numbers").textContent()) ?? "").match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
  for (const { id, value, limit } of loads) {
    const [a, b] = await shown(id);
    expect(Math.abs(a - (value ?? 0)), id).toBeLessThanOrEqual(0.0501);
    expect(Math.abs(b - (limit ?? 0)), id).toBeLessThanOrEqual(0.0501);
  }
  await expect(page.locator(".plan-units")).toHaveCount(0);
  await page.getByLabel("Units").selectOption("US");
  for (const { id, value, limit, words } of loads) {
    await expect(itemOf(id).locator(".numbers")).toContainText("kip");
    const [a, b] = await shown(id);
    expect(Math.abs(a - convert(value ?? 0, "kN", "kip")), id).toBeLessThanOrEqual(0.0501);
    expect(Math.abs(b - convert(limit ?? 0, "kN", "kip")), id).toBeLessThanOrEqual(0.0501);
    if (/\d kN\b/.test(words)) await expect(itemOf(id).locator(".plan-units")).toHaveCount(1);
  }
  for (const { id, value } of lengths) {
    await expect(itemOf(id).locator(".numbers")).toContainText("ft");
    expect(Math.abs((await shown(id))[0] - convert(value ?? 0, "m", "ft"))).toBeLessThanOrEqual(0.00501);
  }
  await page.getByLabel("Units").selectOption("SI");
});

test("nothing stands in the way of people with other eyes and hands, in both themes", async () => {
  for (const theme of ["dark", "light"]) {
    await page.getByLabel("Theme").selectOption(theme);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual(
      [],
    );
  }
});
