// A planner makes a plan from nothing to a set on its bearings, by hand and without the file's text; every action is counted.
import { expect, type Page, test } from "@playwright/test";
import { ask, untilStage } from "./handle.ts";
import { documentOf, Hands, planIn, untilAnswered } from "./hands.ts";
import { onePage } from "./onePage.ts";

/** The search for a sequence takes half a minute on two quiet cores, and several times that beside other work. */
const patience = 420_000;
/** So many actions are a morning's work at most; more would mean that the page asks for what it could know. */
const mostActions = 400;

let page: Page;
let hands: Hands;

onePage(
  "/?example=one-girder",
  (opened) => {
    page = opened;
    hands = new Hands(opened);
  },
  "solved",
);

/** An invented bridge: what is asked, in the order in which the form asks it. */
const answers: readonly (readonly [string | RegExp, string])[] = [
  ["Title of the plan", "Plan of the test (invented)"],
  ["Clear gap", "40"],
  ["Bearing lines behind the faces", "1"],
  ["Elevation of the path at the near abutment", "31"],
  ["Grade", "0.5"],
  ["Crossfall", "0.5"],
  ["Number of sets", "1"],
  ["Girders in a set", "2"],
  ["Spacing of girders", "3"],
  ["Length of a set", "43"],
  ["Depth of a girder", "2.2"],
  ["Weight of one girder per length", "800"],
];
const trains = ["6", "1.4", "2.1", "205"];
const cranes = [
  ["7", "12", "60", "10 300\n16 190\n24 130\n32 95\n40 75\n50 60"],
  ["14", "14", "42", "8 290\n12 213\n16 168\n20 139\n26 110\n32 91\n40 74"],
];

/** Goes to a part of the plan data by its name, as a planner who knows no key but one. */
async function part(name: string): Promise<void> {
  await hands.press("Control+k");
  await hands.type(`edit ${name.toLowerCase()}`);
  await expect(chosen()).toContainText(`Edit ${name.toLowerCase()}`);
  await hands.press("Enter");
  await expect(page.locator("#found")).toHaveCount(0);
  await expect(page.locator(".data-part h2")).toHaveText(name);
}

/** The action that the finder would do. */
const chosen = () => page.locator('#found [aria-selected="true"]');

const grid = (name: string) => page.getByRole("grid", { name, exact: true });

/** A cell of a table by the head of its row and by the head of its column. */
function cell(table: string, row: string | RegExp, column: string) {
  return {
    async at() {
      const heads = await grid(table).locator("thead th").allTextContents();
      const index = heads.findIndex((head) => head.startsWith(column)) - 1;
      expect(index, `column ${column} among ${heads.join(", ")}`).toBeGreaterThanOrEqual(0);
      return grid(table)
        .getByRole("row")
        .filter({ has: page.getByRole("rowheader", { name: row }) })
        .getByRole("gridcell")
        .nth(index);
    },
  };
}

const lastLabel = async () => {
  const { labels, index } = await documentOf(page);
  return labels[index];
};

test.describe.configure({ mode: "serial" });

test("the guided set-up is answered by keyboard and ends in a plan whose every step solves", async () => {
  test.setTimeout(patience + 60_000);
  await hands.press("n");
  const start = page.getByRole("dialog", { name: "New plan" });
  for (const [label, text] of answers) {
    await hands.tabTo(start.getByLabel(label, { exact: true }));
    await hands.type(text);
  }
  for (const [i, name] of ["Rear transporter", "Front transporter", "Far crane", "Near crane"].entries()) {
    const fields = start.getByRole("group", { name, exact: true }).getByRole("textbox");
    for (const [j, text] of (i < 2 ? trains : cranes[i - 2]).entries()) {
      await hands.tabTo(fields.nth(j));
      await hands.type(text);
    }
  }
  await expect(start.getByText(/^Everything is answered/)).toBeVisible();
  await hands.tabTo(start.getByRole("button", { name: "Make the plan" }));
  await hands.press("Enter");
  await expect(start.getByText(/✓ Set 1: every step solves with no stop/)).toBeVisible({ timeout: patience });
  await hands.press("Enter");
  await expect(start).toBeHidden();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Plan of the test (invented)");
  await untilAnswered(page);
});

test("seats as surveyed, a row of a chart and the packing are typed; what is typed is confirmed by it", async () => {
  test.setTimeout(120_000);
  await part("Seats");
  const open = async () => {
    const words = (await page.locator(".data-doubts .mark").textContent()) ?? "";
    return Number(/\d+/.exec(words)?.[0]);
  };
  const before = await open();
  const first = await cell("Seats", /near/, "elevation as built").at();
  await hands.click(first.first());
  const designs = await grid("Seats").getByRole("row").allTextContents();
  expect(designs).toHaveLength(5);
  for (const text of ["30.996", "30.994", "31.204", "31.206"]) await hands.over(text);
  await expect(first.first()).toHaveText("30.996");
  // Nobody guessed what was surveyed; what was designed is a starter value until it is typed.
  expect(await open()).toBe(before);
  await hands.click((await cell("Seats", /near/, "elevation as designed").at()).first());
  await hands.over("31.002 m");
  expect(await open()).toBe(before - 1);

  await part("Cranes");
  const charts = grid("Cranes").getByRole("row", { name: /^chart(?! rows)/ });
  await hands.click(charts.getByRole("gridcell").first());
  await hands.press("Enter");
  await hands.click(page.locator(".data-opened").getByRole("button", { name: /entries/ }));
  const rows = page.locator(".data-opened").getByRole("grid");
  await hands.click(rows.getByRole("row").nth(1).getByRole("gridcell").last());
  await hands.over("305 t");
  await expect(rows.getByRole("row").nth(1).getByRole("gridcell").last()).toHaveText("305");

  await hands.press("Escape");

  await part("On transporters");
  await hands.click((await cell("On transporters", /^rear/, "packing").at()).first());
  await hands.press("Enter");
  const packing = page.locator(".data-opened").getByRole("grid");
  await hands.click(packing.getByRole("gridcell").first());
  await hands.over("25 mm");
  await hands.over("2.5 cm");
  await expect(packing.getByRole("gridcell")).toHaveText(["25", "25"]);
  await untilAnswered(page);
  expect((await documentOf(page)).errors).toEqual([]);
});

test("starter values are confirmed part by part, by name, and the findings about them go", async () => {
  test.setTimeout(240_000);
  const open = async () =>
    ((await ask(page, "result"))?.findings ?? []).filter(({ id }) => id.startsWith("unconfirmed data:"))
      .length;
  expect(await open()).toBeGreaterThan(5);
  const parts = page.locator(".data-sheet nav button").filter({ hasText: "not confirmed" });
  for (let left = await parts.count(); left > 0; left--) {
    await hands.click(parts.first());
    const doubts = page.locator(".data-doubts");
    if ((await doubts.getByLabel("Confirmed by").inputValue()) === "") {
      await hands.click(doubts.getByLabel("Confirmed by"));
      await hands.type("A. Planner");
    }
    await hands.click(doubts.getByRole("button", { name: /^Confirm all of/ }));
    await expect(parts).toHaveCount(left - 1);
  }
  expect(await lastLabel()).toMatch(/^Confirm .* of .* \(A\. Planner, \d{4}-\d\d-\d\d\)$/);
  await untilAnswered(page);
  expect(await open()).toBe(0);
});

test("steps are added, split, copied, moved and removed, and every step is solved", async () => {
  test.setTimeout(180_000);
  await part("Steps");
  const tools = page.locator(".grid-tools").first();
  const table = grid("Steps");
  const rows = () => table.getByRole("rowheader").allTextContents();
  const before = await rows();
  await hands.choose(tools.getByRole("combobox").first(), { label: "roll-out roll" });
  const split = tools.getByRole("textbox", { name: /Split after/ });
  await hands.click(split);
  await hands.type("5 m");
  await hands.press("Enter");
  expect(await rows()).toEqual(before.flatMap((one) => (one === "roll-out" ? [one, "roll-out-2"] : [one])));

  await hands.choose(tools.getByLabel("Action of a new step"), "hold");
  await hands.click(tools.getByRole("button", { name: "Add it behind" }));
  const opened = page.locator(".data-opened");
  await expect(opened.getByRole("heading")).toHaveText("hold");
  // What a step carries is ticked from the supports that there are.
  const carries = opened.getByRole("group", { name: "carries" });
  await expect(carries.getByRole("checkbox")).not.toHaveCount(0);
  await expect(carries.getByRole("checkbox", { checked: true })).toHaveCount(6);
  await hands.press("Escape");

  await hands.click(tools.getByRole("button", { name: "Copy step" }));
  await expect(table.getByRole("rowheader", { name: "hold-2" })).toBeVisible();
  await hands.click(
    table
      .getByRole("row", { name: /^hold-2/ })
      .getByRole("gridcell")
      .first(),
  );
  await hands.press("Alt+ArrowUp");
  expect(await lastLabel()).toMatch(/^Move step hold-2 to place \d+$/);
  await hands.press("Control+-");
  expect(await lastLabel()).toBe("Remove step hold-2");
  await expect(table.getByRole("rowheader", { name: "hold-2" })).toHaveCount(0);
  expect((await documentOf(page)).errors).toEqual([]);
  await untilAnswered(page);
  const solved = (await ask(page, "result"))?.sets[0].steps ?? [];
  expect(solved).toHaveLength(before.length + 2);
});

/** Waits until it is known which poses stand with one hook or group lost. */
const untilLossesAreThere = (on: Page): Promise<void> => untilStage(on, /^(low and high are|everything is) /);

test("the steps that stand on one hook alone are accepted by name, pasted from a spreadsheet", async () => {
  test.setTimeout(120_000);
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  const { steps, id } = (await planIn(page)).sets[0];
  // As a planner reads them in the list once the losses are worked out: which support, from which step to which.
  await untilLossesAreThere(page);
  const { findings } = (await ask(page, "result")) ?? { findings: [] };
  const alone = findings.filter(({ check, level }) => check === "unbacked" && level === "stop");
  expect(alone.length).toBeGreaterThan(0);
  const line = (subject: string) => (step: { id: string }) => [
    ...["unbacked", subject, id, step.id],
    ...["A. Planner", "2026-06-01", "fall zone empty (invented)"],
  ];
  const lines = alone.flatMap(({ subject, from, to }) =>
    steps.slice(from?.step, (to?.step ?? -1) + 1).map(line(subject)),
  );
  const text = [["check", "subject", "set", "step", "by", "date", "reason"], ...lines]
    .map((line) => line.join("\t"))
    .join("\n");
  await page.evaluate((it) => navigator.clipboard.writeText(it), text);
  await part("Accepted and recorded");
  const section = page.getByRole("region", { name: "Accepted findings" });
  await hands.click(section.getByRole("button", { name: "Paste" }));
  await hands.click(
    page.getByRole("dialog", { name: "Paste" }).getByRole("button", { name: "In place of all rows" }),
  );
  await expect(section.getByRole("grid")).toHaveAttribute("aria-rowcount", String(lines.length + 1));
  expect((await documentOf(page)).errors).toEqual([]);
  await untilAnswered(page);
});

test("the last step shows the set on its bearings, and no stop is left but for missing data", async () => {
  test.setTimeout(120_000);
  await hands.press("Escape", "End");
  await untilAnswered(page);
  await untilLossesAreThere(page);
  const result = await ask(page, "result");
  const stops = (result?.findings ?? []).filter(({ level }) => level === "stop").map(({ id }) => id);
  expect(stops.filter((id) => !/^(unconfirmed|missing) data:/.test(id))).toEqual([]);
  const last = await ask(page, "cursor");
  expect(last.step).toBe((result?.sets[0].steps.length ?? 0) - 1);
  // All of the weight on the four seats, by the reactions at the cursor. They stand square to the plane of the designed
  // bearings, so that its grade and crossfall, under 2 % here, take up to 2e-4 of the weight off their sum.
  const shares = await ask(page, "shares");
  const onSeats = ["near G1", "near G2", "far G1", "far G2"].map((name) => shares[name]);
  expect(Math.min(...onSeats)).toBeGreaterThan(0);
  const weight = result?.sets[0].weight ?? 0;
  expect(Math.abs(onSeats.reduce((a, b) => a + b, 0) - weight)).toBeLessThan(2e-4 * weight);
  await expect(page.locator("aside").getByRole("row", { name: /^far G1/ })).toContainText(/\d+\.\d/);
});

test("saved and opened again it is equal, in fewer actions than a morning has", async () => {
  test.setTimeout(120_000);
  const before = await documentOf(page);
  const waiting = page.waitForEvent("download");
  await hands.press("Control+k");
  await hands.type("download the plan");
  await expect(chosen()).toContainText("Download the plan");
  await hands.press("Enter");
  const file = await (await waiting).path();
  await page.locator('input[type="file"]').first().setInputFiles(file);
  hands.count++;
  await expect.poll(async () => (await documentOf(page)).opened).not.toBe(before.opened);
  const after = await documentOf(page);
  expect(after).toMatchObject({
    draftHash: before.draftHash,
    planHash: before.planHash,
    changes: 0,
    errors: [],
  });
  console.log(`a plan from nothing to a landed set: ${hands.count} actions`);
  expect(hands.count).toBeLessThan(mostActions);
});
