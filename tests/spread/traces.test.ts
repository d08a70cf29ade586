// Findings of the spread are traced at their corner: it is followed again to their place, and gives their number there.

import { expect, test } from "vitest";
import {
  checkList,
  chosenCorners,
  cornerOf,
  inSpread,
  runSpread,
  solvePlan,
  traceOf,
  withSpread,
} from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { type Pose, prepareContext, runSet } from "../../src/sequence/index.ts";
import { expectTrue } from "../checks/girders/formulas.ts";
import { cutAfter, readScenario } from "../coverage/plans.ts";

const short = (plan: Plan) => cutAfter(plan, "far-takes");

/** Greatest reading of a check of a subject over the best run, N. */
function greatest(): (check: string, subject: string) => number {
  const plan = readScenario("demo", short);
  const ctx = prepareContext(plan, plan.sets[0].id);
  const poses: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => poses.push(pose) });
  const measures = checkList.makers.flatMap((make) => make(ctx));
  return (check, subject) => {
    const own = measures.filter((m) => m.check === check && m.subject === subject);
    const values = poses.flatMap((pose) => own.map((m) => m.read(pose).value));
    return Math.max(...values.filter((value) => !Number.isNaN(value)));
  };
}

/** Line loads, and brakes, good for a little more than the best run asks for. */
const most = greatest();
const plan = readScenario("demo", (changed) => {
  short(changed);
  for (const t of changed.transporters) {
    t.allowedLine_kN = (1.002 * most("line load", t.id)) / 1000;
    t.brakeLimit_kN = (1.002 * most("brake", t.id)) / 1000;
  }
});
const solved = solvePlan(plan);
const ctx = prepareContext(plan, plan.sets[0].id);
const spread = runSpread(ctx, solved.sets[0], [
  ...chosenCorners(plan, ctx.set).slice(0, 4),
  cornerOf(plan, { weight_pct: 5 }),
  cornerOf(plan, { weight_pct: 5, cgAlong_m: 0.2, wind: 1 }),
  cornerOf(plan, { settlement: { under: "front", mm: 10 } }),
]);
const result = withSpread(solved, spread);
/** With a number of a check of a pose; what a motion met at a corner has none. */
const met = "in the spread: meant to carry";
const findings = spread.findings.filter((f) => f.value !== null && f.worst !== null && f.check !== met);

test("what the corners bring has numbers of several checks", () => {
  const checks = new Set(findings.map(({ check }) => check));
  expect([...checks]).toContain("in the spread: line load");
  expect(checks.size).toBeGreaterThan(1);
});

test.each(findings.map((f) => [f.check, f.subject, f] as const))("%s of %s", (_check, _subject, finding) => {
  const traced = traceOf(plan, result, finding, ctx);
  if (!traced.found) throw new Error(traced.why);
  expect(finding.words.endsWith(`; corner: ${traced.corner}`)).toBe(true);
  expect(`${inSpread}${traced.measure.check}`).toBe(finding.check);
  const { factor } = traced.measure;
  // The corner is followed by the same code again: what differs is where the iterations of the statics begin.
  const value = finding.value ?? Number.NaN;
  expect(Math.abs(traced.value.value * factor - value)).toBeLessThanOrEqual(1e-6 * Math.abs(value));
  const limit = finding.limit ?? Number.NaN;
  expect(Math.abs((traced.limit?.value ?? Number.NaN) * factor - limit)).toBeLessThanOrEqual(1e-6 * limit);
  expectTrue(traced.trace, plan);
});

test("asked without its finding, or of a run without its spread, no corner is known, and that is said", () => {
  const { check, subject, set, worst } = findings[0];
  const bare = traceOf(plan, result, { check, subject, set, step: worst?.step ?? 0, progress: 1 }, ctx);
  expect(bare.found ? "" : bare.why).toMatch(/traced by its finding/);
  expect(traceOf(plan, solved, findings[0], ctx).found).toBe(false);
  const happened = spread.findings.find((f) => f.check === met);
  if (happened === undefined) throw new Error("nothing was met");
  const none = traceOf(plan, result, happened, ctx);
  expect(none.found ? "" : none.why).toMatch(/where a check of a pose gave it/);
});
