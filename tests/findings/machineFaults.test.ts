// The plan with faults of machines, ground, rigging and landing shows just the stops that it is made to show, and their
// numbers follow by hand from the plan's own. Levers and closed forms: common practice; sources where a line names one.

import { expect, test } from "vitest";
import { completeResult, type Finding, solvePlan } from "../../src/checks/index.ts";
import { readScenario } from "../coverage/plans.ts";

const plan = readScenario("machine-faults");
const [set] = plan.sets;
const result = solvePlan(plan);
const stepOf = (f: Finding) => (f.from ? set.steps[f.from.step].id : "");
const stopsOf = (findings: readonly Finding[]) =>
  findings.filter((f) => f.level === "stop").map((f) => `${f.check} | ${f.subject} | ${stepOf(f)}`);
const expected = (plan.expected ?? []).map((e) => `${e.check} | ${e.subject} | ${e.step}`);
const found = (check: string): number => {
  const one = result.findings.find((f) => f.level === "stop" && f.check === check);
  return one?.value ?? Number.NaN;
};
/** A value by hand, and the part of it that the hand value leaves out. */
const near = (check: string, hand: number, part: number) =>
  expect(Math.abs(found(check) / hand - 1), `${check}: ${found(check)}, by hand ${hand}`).toBeLessThan(part);

test("the stops are those that the plan expects, no more and no fewer", () => {
  expect(expected.length).toBe(11);
  expect(stopsOf(result.findings).sort()).toEqual([...expected].sort());
  expect(result.complete).toBe(true);
});

test("losses and ways back add no stop", () => {
  const complete = completeResult(plan, result);
  expect(stopsOf(complete?.findings ?? []).sort()).toEqual([...expected].sort());
});

test("their numbers by hand", () => {
  // Half of 622 kN (lever rule, the front train gone) on three lines 0.7, 2.1 and 3.5 m from the bunk.
  near("spine moment", (622 / 2) * 2.1, 0.02);
  // Path 30.70 m, bunk 1.62 m, girder 2.48 m, camber about 0.13 m where it passes below: 34.9 m, the line at 38 m.
  near("clearance", 38 - 34.9, 0.03);
  // H3 of the soil-mechanics texts, along the tracks alone: the moment across adds some 10 %.
  expect(found("track pressure")).toBeGreaterThan((2 * 8258) / (3 * 12.8 * (5.1 - 3.01)));
  near("track pressure", 1.1 * ((2 * 8258) / (3 * 12.8 * (5.1 - 3.01))), 0.03);
  // Mat as a cantilever beyond the track: q Lc^2 / 2 (Duerr 2010, as published).
  const cantilever = (8.08 - 1.5) / 2;
  near("mat bending", ((1712 / 8.08) * cantilever ** 2) / 2, 0.01);
  // Rope left over the way round the drum; the hook's depth below the tip is printed to 0.1 m, eight parts of it.
  expect(Math.abs(found("wraps left") - (296 - 47 - 8 * 31) / (Math.PI * 0.7))).toBeLessThan(
    (8 * 0.05) / (Math.PI * 0.7) + 0.05,
  );
  // Half of some 579 kN to each girder, two slings a girder; the heavier end takes a few percent more.
  near("part of rigging", 579 / 4, 0.06);
  expect(found("release condition")).toBe(3);
});
