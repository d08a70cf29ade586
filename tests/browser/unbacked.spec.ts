// Unbacked parts and ways back: the row under the bands, the marks of the steps and the panel of the step tell what the
// command line tells of the same plan.

import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import { ask, openPlan, projectFile, solvedText, untilStage } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;

onePage(
  "/",
  (opened) => {
    page = opened;
  },
  "solved",
);

// Each test solves a plan twice, here and on the command line: a ceiling, not a wait.
test.beforeEach(() => {
  test.setTimeout(300_000);
});

/** Opens a plan and waits until losses and ways back are there; low and high may still come. */
async function openWhole(text: string): Promise<void> {
  await openPlan(page, text);
  await untilStage(page, /^low and high|^everything/);
}

type Stretches = NonNullable<ResultJson["sets"][0]["unbacked"]>;

/** The pieces of the row: step, from, to, and whether it is a stop. */
const pieces = () =>
  page.locator(".unbacked-row .piece").evaluateAll((all) =>
    all.map((one) => ({
      step: Number(one.getAttribute("data-step")),
      from: Number(one.getAttribute("data-from")),
      to: Number(one.getAttribute("data-to")),
      stop: one.classList.contains("stop"),
    })),
  );

async function expectRow(stretches: Stretches, stop: boolean): Promise<void> {
  expect(stretches.length).toBeGreaterThan(5);
  const seen = await pieces();
  expect(seen.map(({ step, stop: open }) => [step, open])).toEqual(stretches.map(({ step }) => [step, stop]));
  // Edges are found to 1/1000 of the step; the same in both engines but for the last bits.
  seen.forEach(({ from, to }, i) => {
    expect(from).toBeCloseTo(stretches[i].from, 6);
    expect(to).toBeCloseTo(stretches[i].to, 6);
  });
}

/** Points at the row in the middle of a stretch. */
async function pointAt(stretch: Stretches[0]): Promise<void> {
  const box = await page.locator(`.unbacked-row .piece[data-step="${stretch.step}"]`).first().boundingBox();
  if (box === null) throw new Error("the piece has no place on the page");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
}

const told = () => page.getByRole("list", { name: "Unbacked parts and ways back" });

test("accepted stretches stand lightly hatched under their steps, and say what falls, how long, and who accepted", async () => {
  const text = projectFile("scenarios/demo.json");
  const { json } = solvedText(text);
  await openWhole(text);
  const { unbacked } = json.sets[0];
  if (unbacked === null) throw new Error("the command line did not work it out");
  await expectRow(unbacked, false);
  // The row lies directly under the bands.
  const row = await page.locator(".unbacked-row .paper").boundingBox();
  const bands = await page.locator(".share .bands > .paper").first().boundingBox();
  expect(Math.abs((row?.y ?? 0) - ((bands?.y ?? 0) + (bands?.height ?? 0)))).toBeLessThanOrEqual(1);
  const long = unbacked.find(({ motion }) => motion === "rolled");
  if (long === undefined) throw new Error("no stretch rolls");
  await pointAt(long);
  const hover = page.locator(".hover");
  await expect(hover).toContainText(
    `${long.length.toFixed(2)} m rolled, ${(long.minutes ?? 0).toFixed(0)} min`,
  );
  for (const fall of long.falls) {
    await expect(hover).toContainText(`with ${fall.support} lost`);
    await expect(hover).toContainText(fall.words);
    await expect(hover).toContainText(`accepted by ${fall.accepted?.by}`);
  }
  const sentences = await told().getByRole("listitem").allTextContents();
  expect(sentences).toHaveLength(unbacked.length);
  sentences.forEach((sentence, i) => {
    expect(sentence).toMatch(new RegExp(`^step ${unbacked[i].step + 1} `));
    for (const fall of unbacked[i].falls) expect(sentence).toContain(fall.words);
  });
  await page.mouse.move(5, 5);
});

test("what nobody accepted is hatched densely as a stop, in the row, in the words and in the findings", async () => {
  const plan = JSON.parse(projectFile("scenarios/demo.json")) as {
    header: { title: string };
    accept: unknown[];
  };
  plan.header.title = "Nobody accepted";
  plan.accept = [];
  const text = JSON.stringify(plan);
  const { json } = solvedText(text);
  await openWhole(text);
  const { unbacked } = json.sets[0];
  if (unbacked === null) throw new Error("the command line did not work it out");
  await expectRow(unbacked, true);
  await expect(page.locator(".unbacked-row .band-label")).toHaveText("stop");
  await pointAt(unbacked[2]);
  await expect(page.locator(".hover")).toContainText("accepted by nobody: a stop");
  await page.mouse.move(5, 5);
  const stops = json.findings.filter(({ check, level }) => check === "unbacked" && level === "stop");
  expect(stops.length).toBeGreaterThan(0);
  for (const { id } of stops)
    await expect(page.locator(`button.finding.stop[data-finding="${id}"]`)).toHaveCount(1);
  for (const theme of ["dark", "light"]) {
    await page.getByLabel("Theme").selectOption(theme);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual(
      [],
    );
  }
});

test("a step past the point of no return is marked, says why, and shows its ways back with their verdicts", async () => {
  const text = projectFile("scenarios/planted-faults.json");
  const { json } = solvedText(text);
  await openWhole(text);
  const set = json.sets[0];
  const ways = set.waysBack ?? [];
  const lost = ways.filter(({ source, from }) => source !== "proposed" && from.some(({ ok }) => !ok));
  expect(lost.length).toBeGreaterThan(0);
  const marks = page.locator(".step-names > g[data-no-return]");
  await expect(marks).toHaveCount(lost.length);
  const steps = await page
    .locator(".step-names > g")
    .evaluateAll((all) => all.flatMap((one, i) => (one.hasAttribute("data-no-return") ? [i] : [])));
  expect(steps).toEqual(lost.map(({ step }) => step));

  // Under the pointer: why.
  const box = await marks.first().locator(".no-return").boundingBox();
  if (box === null) throw new Error("the mark has no place on the page");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const bad = lost[0].from.find(({ ok }) => !ok);
  await expect(page.locator(".hover")).toContainText("past the point of no return from");
  await expect(page.locator(".hover")).toContainText(bad?.words ?? "?");
  // A click goes to the step and shows the panel.
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  expect((await ask(page, "cursor")).step).toBe(lost[0].step);
  await expect(page.getByRole("tab", { name: /way back/ })).toHaveAttribute("aria-selected", "true");
  await page.mouse.move(5, 5);

  // Every step: whether its way back is stated or proposed, and its verdict from start, middle and end.
  const panel = page.getByRole("tabpanel");
  const words = {
    plan: "stated in the plan",
    proposed: "not stated; proposed",
    none: "past the point of no return",
  };
  for (const way of ways.filter(({ step }) => [2, 7, lost[0].step, 16].includes(step))) {
    await ask(page, "setCursor", way.step, 0);
    await expect(panel.locator("[data-source]")).toHaveAttribute("data-source", way.source);
    await expect(panel.locator("[data-source]")).toContainText(words[way.source]);
    await expect(panel.locator("tr[data-try]")).toHaveCount(way.from.length);
    for (const one of way.from) {
      const row = panel.locator(`tr[data-try="${one.progress}"]`);
      await expect(row).toContainText(one.ok ? "works" : "fails");
      await expect(row.locator("ol > li")).toHaveCount(one.steps.length);
      await expect(row).toContainText(one.words);
    }
  }
});

test("keys change between the findings and the step, and go through the tabs", async () => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("f");
  const tab = (name: RegExp) => page.getByRole("tab", { name });
  await expect(tab(/^Findings/)).toBeFocused();
  await page.keyboard.press("b");
  await expect(tab(/way back/)).toBeFocused();
  await expect(tab(/way back/)).toHaveAttribute("aria-selected", "true");
  await page.keyboard.press("ArrowLeft");
  await expect(tab(/^Findings/)).toBeFocused();
  await expect(page.getByRole("region", { name: "Findings" })).toBeVisible();
});
