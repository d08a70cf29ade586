// The section on a landing: its tables hold the numbers of the checks, and say what is not known.

import { expect, test } from "vitest";
import { proposeShims, solvePlan } from "../../src/checks/index.ts";
import { sections, type Table } from "../../src/report/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { landingRun, shortPlan, warpSeats } from "../checks/landing/hung.ts";

function tablesOf(change: Parameters<typeof shortPlan>[0]): {
  tables: Table[];
  of: (title: string) => Table;
} {
  const { ctx, run } = landingRun(shortPlan(change));
  const section = sections.find((s) => s.name === "landing");
  if (section === undefined) throw new Error("no section 'landing'");
  const work = section.begin(ctx, { ...run, name: "", strips: [] });
  expect(work.next()).toBe(true);
  expect(work.next()).toBe(false);
  const tables = work.tables();
  return { tables, of: (title) => tables.find((t) => t.title.startsWith(title)) as Table };
}

test("seats, order, stages and shims of warped seats, with as many cells as heads", () => {
  const { tables, of } = tablesOf((plan) => warpSeats(plan, { "near B": -0.006 }));
  for (const t of tables) {
    expect(t.sides.length, t.title).toBe(t.head.length);
    for (const row of t.rows) expect(row.length, t.title).toBe(t.head.length);
  }
  const seat = of("seats").rows.find(([name]) => name === "near B") as string[];
  expect(seat[of("seats").head.indexOf("off mm")]).toBe("-6.0");
  expect(seat.at(-1)).toBe("0.0");
  expect(of("bearings in the order").rows.at(-1)).toEqual(["6", "near B", "never", "", "", ""]);
  const stages = of("landing stage by stage");
  expect(stages.rows.at(-1)?.[stages.head.indexOf("near B")]).toMatch(/ mm$/);
  const shims = of("shims proposed");
  const row = shims.rows.find(([name]) => name === "near B") as string[];
  expect(Number(row[shims.head.indexOf("least mm")])).toBeGreaterThan(4);
});

test("without temperatures an offset is not known, never nought", () => {
  const { of } = tablesOf((plan) => {
    plan.site.temperature_C = undefined;
  });
  const rows = of("room").rows.filter(([where]) => where.startsWith("sole"));
  expect(rows.length).toBe(6);
  for (const row of rows) expect(row[1]).toBe("not known");
});

test("without stations of the soles there is no proposal, and the table says why", () => {
  const plan = shortPlan((p) => {
    p.sets[0].soleStations_m = undefined;
  });
  expect(proposeShims(prepareContext(plan, plan.sets[0].id))).toContain("soles");
  const notes = solvePlan(plan).findings.filter((f) => f.check === "missing data");
  expect(notes.map((f) => f.subject)).toContain("sets[0].soleStations_m");
});
