// Traces of the checks of cranes, evaluated by a general-purpose expression library: every formula gives its number, every
// leaf stands in the plan, and value and limit are those of the check.

import { describe, expect, test } from "vitest";
import { checkList, traceOf } from "../../../src/checks/index.ts";
import { byId, type Plan } from "../../../src/plan/index.ts";
import { type Ran, ran, scenario, step, upTo } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const rules = ["queensland-2006", "railway-150", "osha-1926-751", "bc-14-1", "marine-0027"];

/** The one-girder plan up to both cranes carrying, or a walk with load at its end; all rules chosen. */
function plan(id: string, change: (p: Plan) => void = () => {}): Ran {
  return ran(
    scenario("one-girder", (p) => {
      p.limits.use.push(...rules);
      for (const crane of p.cranes) Object.assign(crane, { travelWithLoad: true, travelSource: "invented" });
      p.sets[0].steps = upTo(p, id);
      change(p);
    }),
  );
}

const walk = (p: Plan) => {
  byId(p.cranes, "far-crane").allowedSideLoad_pct = 1.5;
  // Outward: the tip comes nearer to its crane than the picks.
  const rest = { dx_m: 0.3, dy_m: 0.4, hook: "goes along", outOfLevel_pct: 0.4 };
  p.sets[0].steps.push(step({ do: "walk", crane: "far-crane", ...rest }));
};
const nearChart = (p: Plan) => {
  const { chart } = byId(p.cranes, "far-crane");
  chart.rows = chart.rows.map((row) => ({ ...row, radius_m: row.radius_m + 40 }));
};

const charted = ["hook load", "little capacity left", "critical lift", "dynamic hook load", "boom angle"];

describe.each([
  ["both cranes carrying", plan("rear-down"), "rear-down", "near crane", charted],
  [
    "a walk with load",
    plan("far-takes", walk),
    "walk",
    "far crane",
    [...charted, "line lean", "boom side load"],
  ],
  // Neither rated load nor angle where the chart begins beyond the boom's reach.
  ["nearer than the first row", plan("far-takes", nearChart), "far-takes", "far crane", []],
] as const)("%s", (_, r, id, subject, more) => {
  const stated = [...checkList.makers, ...checkList.onDemand]
    .flatMap((make) => make(r.ctx))
    .filter((m) => m.subject === subject && m.trace !== undefined);

  test("every check of the crane writes one, with true formulas", () => {
    const seen = stated.flatMap(({ check }) => {
      const asked = { check, subject, set: r.run.setId, step: r.step(id).index, progress: 0.75 };
      const traced = traceOf(r.plan, r.run, asked, r.ctx);
      if (!traced.found) return [];
      expect(traced.value.value).toBe(traced.reading.value);
      expect(traced.limit?.value).toBe(traced.reading.limit);
      expectTrue(traced.trace, r.plan);
      return [check];
    });
    const always = ["chart left", "crane level", "line pull", "wraps left", "hook under tip"];
    expect(seen).toEqual(expect.arrayContaining([...always, ...more]));
  });
});

test("a line that leans outward stands in the radius, with the level error of the way", () => {
  const r = plan("far-takes", walk);
  const asked = {
    check: "hook load",
    subject: "far crane",
    set: r.run.setId,
    step: r.step("walk").index,
    progress: 1,
  };
  const traced = traceOf(r.plan, r.run, asked, r.ctx);
  if (!traced.found) throw new Error(traced.why);
  const text = JSON.stringify(traced.trace);
  expect(text).not.toContain("the plan states none: nothing is counted");
  const chart = traceOf(r.plan, r.run, { ...asked, check: "chart left" }, r.ctx);
  if (!chart.found) throw new Error(chart.why);
  const part = (symbol: string) => chart.value.from.find((t) => t.symbol === symbol)?.value ?? Number.NaN;
  expect(part("r_level")).toBeGreaterThan(0.05);
  expect(part("r_lean")).toBeGreaterThan(0.1);
});
