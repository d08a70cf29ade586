// A planner at the desk: surveys and charts pasted from a real clipboard, a set copied and confirmed, a hundred edits undone and
// redone, and files that are no plans.
import { expect, type Page, test } from "@playwright/test";
import { type Answers, firstPlan } from "../../src/checks/index.ts";
import { copySet, type Plan } from "../../src/plan/index.ts";
import { brokenFiles } from "../app/brokenFiles.ts";
import { ask, drop, openPlan, projectFile, untilReady } from "./handle.ts";
import { documentOf, Hands, planIn, untilAnswered } from "./hands.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let hands: Hands;

onePage(
  "/?example=one-girder",
  async (opened) => {
    page = opened;
    hands = new Hands(opened);
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  },
  "solved",
);

const grid = (name: string) => page.getByRole("grid", { name, exact: true });

/** Puts a text on the clipboard of the system, as another program would, and presses Ctrl+V where the focus is. */
async function pasteFromClipboard(text: string): Promise<void> {
  await page.evaluate((it) => navigator.clipboard.writeText(it), text);
  await hands.press("Control+v");
}

/** Opens the plan data at a part. */
async function part(name: string): Promise<void> {
  if (!(await page.locator(".data-sheet").isVisible())) {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await hands.press("e");
  }
  await hands.click(
    page.locator(".data-sheet nav").getByRole("button", { name: new RegExp(`^${name}( [◇▲]|$)`) }),
  );
  await expect(page.locator(".data-part h2")).toHaveText(name);
}

const rows = (pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([radius_m, rated_t]) => ({ radius_m, rated_t }));
const train = { lines: 6, pitch_m: 1.4, gauge_m: 2.1, allowedLine_kN: 205 };
/** An invented bridge of two sets with three girders each: twelve seats. */
const twelveSeats: Answers = {
  title: "Twelve seats (invented)",
  gap: { kind: "clear", clear_m: 40 },
  bearings: { kind: "behind", behind_m: 1 },
  elevation_m: 31,
  grade_pct: 0.5,
  crossfall_pct: 0.5,
  sets: {
    count: 2,
    girders: 3,
    spacing_m: 2.5,
    length_m: 43,
    depth_m: 2.2,
    steel: { kind: "mass", mass_t_per_m: 0.8 },
  },
  transporters: { rear: train, front: train },
  cranes: {
    fromFaces: true,
    far: {
      chainage_m: 7,
      y_m: 12,
      boom_m: 60,
      rows: rows([
        [10, 300],
        [30, 100],
        [50, 60],
      ]),
    },
    near: {
      chainage_m: 14,
      y_m: 14,
      boom_m: 42,
      rows: rows([
        [8, 290],
        [20, 139],
        [40, 74],
      ]),
    },
  },
};

/** The survey of a seat, m: its place among the twelve, so that each has a level of its own. */
const surveyed = (i: number) => 30.9 + 0.003 * i;

test("a survey of twelve seats in another order, with other heads and in mm, lands on the right seats", async () => {
  test.setTimeout(120_000);
  const made = firstPlan(twelveSeats);
  if (!made.ok) throw new Error(JSON.stringify(made.errors));
  const seats = made.plan.site.seats;
  expect(seats).toHaveLength(12);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: "twelve.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(made.plan)),
    });
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(twelveSeats.title);
  await part("Seats");
  await hands.click(grid("Seats").getByRole("gridcell").first());
  // Every fifth seat in turn: 5 has no divisor in common with 12, so that each comes once and none at its own place but the first.
  const order = seats.map((_, i) => (i * 5) % 12);
  const line = (i: number) => {
    const { girder, line: at, set } = seats[i];
    return [girder, set ?? "", (1000 * surveyed(i)).toFixed(0), at, "Nobody, by hand", "total station"].join(
      "\t",
    );
  };
  const heads = ["Girder", "Set", "Surveyed level (mm)", "Bearing line", "Weather of the day", "Source"];
  const stray = ["G9", "", "30000", "far", "", ""].join("\t");
  await pasteFromClipboard([heads.join("\t"), ...order.map(line), stray, "\t\t\t\t\t"].join("\r\n"));
  const dialog = page.getByRole("dialog", { name: "Paste" });
  await expect(dialog.getByRole("heading")).toHaveText("Paste 13 seats");
  await expect(dialog).toContainText("Not pasted, since no column was chosen for it: Weather of the day.");
  await expect(dialog).toContainText("12 of 13 rows found by name");
  await expect(dialog).toContainText('Row 13: there is no seat "far G9".');
  await hands.click(dialog.getByRole("button", { name: "Paste the 12 found by name alone" }));
  await expect(dialog).toBeHidden();
  const after = (await planIn(page)).site.seats;
  expect(after.map(({ asBuilt_m }) => asBuilt_m)).toEqual(
    seats.map((_, i) => expect.closeTo(surveyed(i), 9)),
  );
  expect(after).toEqual(
    seats.map((seat, i) => ({ ...seat, asBuilt_m: after[i].asBuilt_m, source: "total station" })),
  );
  const { labels, index, errors } = await documentOf(page);
  expect(labels[index]).toBe("seats: paste, 24 cells");
  expect(errors).toEqual([]);
  await hands.press("Control+z");
  expect((await planIn(page)).site.seats).toEqual(seats);
});

test("a chart of forty rows with decimal commas is asked about once, and for the next crane no more", async () => {
  test.setTimeout(120_000);
  await part("Cranes");
  const chart = ["Radius (m)", "Rated load (t)", "Boom (m)"].join("\t");
  const text = [chart, ...Array.from({ length: 40 }, (_, i) => `${8 + i},5\t${300 - 5 * i},25\t60`)].join(
    "\n",
  );
  const dialog = page.getByRole("dialog", { name: "Paste" });
  for (const [i, asked] of [true, false].entries()) {
    await hands.click(
      grid("Cranes")
        .getByRole("row", { name: /^chart(?! rows)/ })
        .getByRole("gridcell")
        .nth(i),
    );
    await hands.press("Enter");
    const opened = page.locator(".data-opened");
    await hands.click(opened.getByRole("button", { name: /entries/ }));
    await hands.click(opened.getByRole("grid").getByRole("gridcell").first());
    await pasteFromClipboard(text);
    await hands.click(dialog.getByRole("button", { name: "In place of all rows" }));
    if (asked) {
      await expect(dialog).toContainText("It is asked once.");
      await hands.click(dialog.getByRole("button", { name: /^The comma is the decimal sign/ }));
    }
    await expect(dialog).toBeHidden();
    await expect(opened.getByRole("grid")).toHaveAttribute("aria-rowcount", "41");
    await hands.press("Escape");
  }
  for (const { chart: taken } of (await planIn(page)).cranes) {
    expect(taken.rows).toHaveLength(40);
    expect(taken.rows[39]).toEqual({ radius_m: 47.5, rated_t: 105.25, boom_m: 60 });
  }
});

test("more columns than there are, and rows where none can be added, are refused with a sentence", async () => {
  const { draftHash } = await documentOf(page);
  await part("Seats");
  await hands.click(grid("Seats").getByRole("gridcell").last());
  await pasteFromClipboard("1\t2\t3\n");
  await expect(page.locator(".grid-status").first()).toContainText(
    "2 of the pasted cells lie beyond the last column. Choose a cell further left, or paste fewer columns.",
  );
  await part("Transporters");
  await hands.click(grid("Transporters").getByRole("gridcell").last());
  await pasteFromClipboard("1\n2\n3\n");
  await expect(page.locator(".grid-status").first()).toContainText(
    "2 of the pasted rows lie below the last row, and none can be added here. Choose a cell further up, or paste fewer rows.",
  );
  expect((await documentOf(page)).draftHash).toBe(draftHash);
});

test("set 1 copied to set 2 is marked at its cells and found; confirmed, marks and findings are gone", async () => {
  test.setTimeout(240_000);
  const plan = JSON.parse(projectFile("scenarios/one-girder.json")) as Plan;
  const [{ id }] = plan.sets;
  await openPlan(page, JSON.stringify(copySet(plan, id, "second", "Second", 3)));
  const unconfirmed = async () =>
    ((await ask(page, "result"))?.findings ?? []).filter((one) => one.id.startsWith("unconfirmed data:"))
      .length;
  await untilAnswered(page);
  expect(await unconfirmed()).toBeGreaterThan(0);
  await page.getByRole("combobox", { name: "Set", exact: true }).selectOption({ label: "Second" });
  await part("Girders and pieces");
  const doubted = page.locator(".data-part td .mark", { hasText: "not confirmed" });
  const marks = await doubted.count();
  expect(marks).toBeGreaterThan(3);
  // A value that is typed is confirmed by it; another by Ctrl+Enter, once it is said who confirms.
  const cells = page.locator(".data-part tbody td.number", { hasText: "not confirmed" });
  await hands.click(cells.first());
  await hands.over("0.5 m");
  await expect(doubted).toHaveCount(marks - 1);
  await hands.click(cells.first());
  const who = page.getByLabel("Confirmed by");
  await who.fill("");
  await cells.first().focus();
  await hands.press("Control+Enter");
  await expect(page.locator(".grid-status", { hasText: "Say who confirms" })).toBeVisible();
  await who.fill("B. Checker");
  await cells.first().focus();
  await hands.press("Control+Enter");
  await expect(doubted).toHaveCount(marks - 2);
  const { labels, index } = await documentOf(page);
  expect(labels[index]).toMatch(/^Confirm .+ of .+ \(B\. Checker, \d{4}-\d\d-\d\d\)$/);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await hands.press("s");
  const sets = page.getByRole("dialog", { name: "Sets side by side" });
  await sets.getByLabel("Confirmed by").fill("B. Checker");
  await hands.click(sets.getByRole("button", { name: "Confirm all of Second" }));
  await hands.click(sets.getByRole("button", { name: "Back to the plan" }));
  await expect(doubted).toHaveCount(0);
  await expect(page.locator(".data-sheet nav .mark")).toHaveCount(0);
  await untilAnswered(page);
  expect(await unconfirmed()).toBe(0);
});

test("a hundred edits of ten kinds, undone and redone through the page, give the same content hashes", async () => {
  test.setTimeout(300_000);
  await openPlan(page, projectFile("scenarios/one-girder.json"));
  await untilReady(page);
  const first = await documentOf(page);
  const label = async () => {
    const { labels, index } = await documentOf(page);
    return labels[index];
  };
  for (let i = 0; i < 10; i++) {
    await part("Seats");
    const seats = grid("Seats");
    await hands.click(seats.getByRole("gridcell").nth(3));
    await hands.over(`${31 + i / 100}`);
    await hands.click(seats.getByRole("row").nth(1).getByRole("gridcell").nth(3));
    await hands.press("Shift+ArrowDown", "Control+d");
    await hands.click(seats.getByRole("row").nth(2).getByRole("gridcell").nth(7));
    await pasteFromClipboard(`2026-06-0${i}`);
    await hands.click(page.getByRole("button", { name: "Add seat" }));
    await hands.click(seats.getByRole("row").nth(3).getByRole("gridcell").first());
    await hands.click(page.getByRole("button", { name: "Remove seat" }));
    expect((await documentOf(page)).errors).toEqual([]);

    await part("Header");
    const title = page.getByRole("textbox", { name: "title", exact: true });
    await title.fill(`Edited ${i}`);
    await hands.press("Enter");

    await part("Steps");
    const steps = grid("Steps");
    const tools = page.locator(".grid-tools").first();
    await hands.click(tools.getByRole("button", { name: "Copy step" }));
    await hands.click(steps.getByRole("row").nth(2).getByRole("gridcell").first());
    await hands.press("Alt+ArrowDown");
    await hands.click(steps.getByRole("row").nth(2).getByRole("gridcell").first());
    await hands.over(`named-${i}`);
    expect(await label()).toContain(`to named-${i}`);
    await hands.click(steps.getByRole("row").nth(3).getByRole("gridcell").nth(3));
    await hands.press("F2", "Space", "Enter");
  }
  const last = await documentOf(page);
  expect(last.index, last.labels.join("\n")).toBe(first.index + 100);
  await page.locator(".data-sheet nav button").first().focus();
  for (let i = 0; i < 100; i++) await page.keyboard.press("Control+z");
  expect(await documentOf(page)).toMatchObject({ draftHash: first.draftHash, index: first.index });
  for (let i = 0; i < 100; i++) await page.keyboard.press("Control+y");
  expect(await documentOf(page)).toMatchObject({ draftHash: last.draftHash, index: last.index });
});

test("thirty files that are no plans, picked and dropped in turn, leave the plan on screen", async () => {
  test.setTimeout(240_000);
  await openPlan(page, projectFile("scenarios/one-girder.json"));
  const before = await documentOf(page);
  const title = await page.getByRole("heading", { level: 1 }).textContent();
  const files = brokenFiles(JSON.parse(projectFile("scenarios/demo.json")) as object);
  expect(files.length).toBeGreaterThanOrEqual(30);
  const dialog = page.getByRole("dialog");
  for (const [i, [name, body]] of files.entries()) {
    if (typeof body === "string" && i % 2 === 1) await drop(page, `${name}.json`, body);
    else
      await page
        .locator('input[type="file"]')
        .first()
        .setInputFiles({
          name: `${name}.json`,
          mimeType: "application/json",
          buffer: Buffer.from(body as string),
        });
    await expect(dialog, name).toContainText(`${name}.json was not opened`);
    await expect(dialog.locator("tbody tr").first(), name).toHaveText(/.+/);
    await hands.press("Escape");
    await expect(dialog, name).toBeHidden();
    expect(await documentOf(page), name).toEqual(before);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(title ?? "");
  }
  expect(await ask(page, "ready")).toBe(true);
});
