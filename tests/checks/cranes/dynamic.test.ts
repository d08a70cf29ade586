// The hook load in motion. Guidelines for Marine Lifting and Lowering Operations, 0027/ND Rev 11.2 (2016), 6.2.2 to 6.2.4,
// 13.2.1 and table 5-1 (read; the worked case recomputed).

import { describe, expect, test } from "vitest";
import { hookLoadOf } from "../../../src/checks/index.ts";
import { hookLoadChain } from "../../../src/mechanics/index.ts";
import { byId, type Plan } from "../../../src/plan/index.ts";
import { lift160 } from "../../reference/lift160.ts";
import { near, ranScenario } from "../../sequence/plans.ts";
import { readingOf } from "../readings.ts";
import { madePose } from "./made.ts";

const g = 9.80665;
const r = ranScenario("one-girder");

/** Context of the one-girder plan with limits and a far crane that has nothing but 6 t of rigging below its tip. */
function under(limits: Partial<Plan["limits"]>) {
  const plan = structuredClone(r.plan);
  plan.limits = { use: [], rules: [], overrides: [], ...limits };
  const crane = byId(plan.cranes, "far-crane");
  crane.deductions = { block_t: 0, rope_kg_per_m: 0 };
  crane.chart.rows = [1, 60].map((radius_m) => ({ radius_m, boom_m: crane.boomLength_m, rated_t: 500 }));
  for (const rig of plan.rigging) rig.mass_t = 6;
  return { ...r.ctx, plan };
}
/** A pose in which the far hook holds so many tonnes of the set. */
const holding = (tonnes: number) =>
  madePose({ crane: "far-crane", tip: [66, 6], lifts: tonnes * 1000 * g, pulls: [0, 0], rope: 20 });
const dynamic = (limits: Partial<Plan["limits"]>, tonnes: number) =>
  readingOf(under(limits), holding(tonnes), "dynamic hook load", "far crane");

describe("with the published factors", () => {
  const use = ["marine-0027"];

  test("160 t shared by hooks 27 and 29 m from the CG, 6 t of rigging each: 102.00 and 95.40 t", () => {
    const heavy = hookLoadChain(lift160);
    for (const [k, share, printed] of [
      [0, (160 * 29) / 56, 102],
      [1, (160 * 27) / 56, 95.4],
    ]) {
      // Both lie below 100 t standing, where the table says 1.10; the worked case takes 1.05.
      const { value, where } = dynamic({ use }, share);
      near(value / (1000 * g), (heavy.dynamic[k] / 1.05) * 1.1, 1e-12);
      expect(where).toContain("factor 1.1, contingency 1.1");
      const rules = [["dynamic factor", 1.05] as const, ["weight contingency", 1.1] as const].map(
        ([id, value]) => ({ id, value, unit: "1", source: "job", chosenBy: "engineer" }) as const,
      );
      const own = dynamic({ rules }, share).value / (1000 * g);
      near(own, heavy.dynamic[k], 1e-12);
      near(own, printed, 5e-4);
    }
  });

  test.each([
    [50, 1.1],
    [85.4, 1.1],
    [85.5, 1.05],
    [800, 1.05],
    [904, 1.03],
  ])("%f t of the set, 1.10 of it and 6 t of rigging standing: factor %f", (tonnes, factor) => {
    near(dynamic({ use }, tonnes).value / (1000 * g), (1.1 * tonnes + 6) * factor, 1e-12);
  });

  test("is held against the whole rating, and left out where no factor was chosen", () => {
    near(dynamic({ use }, 50).limit, 500e3 * g, 1e-12);
    expect(() => dynamic({}, 50)).toThrow("no check 'dynamic hook load'");
  });
});

test("every part below the tip stands in it: leaving the rigging out takes off its weight times the factor", () => {
  const ctx = under({ use: ["marine-0027"] });
  const bare = structuredClone(ctx.plan);
  for (const rig of bare.rigging) rig.mass_t = 0;
  const pose = holding(50);
  const load = hookLoadOf(ctx, pose, byId(ctx.plan.cranes, "far-crane"));
  expect(load?.rigging).toBeCloseTo(6000 * g, 6);
  const whole = readingOf(ctx, pose, "dynamic hook load", "far crane").value;
  const less = readingOf({ ...ctx, plan: bare }, pose, "dynamic hook load", "far crane").value;
  near(whole - less, 6000 * g * 1.1, 1e-9);
});
