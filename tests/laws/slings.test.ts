// Parallel slings below a spreader hand on no couple: their length changes nothing, from the plan's rigging to the lean.
// Source: statics of the linkage, lean = -y / (e + d), in which the sling length does not stand; from memory.

import { expect, test } from "vitest";
import { leanOf, solveState } from "../../src/mechanics/index.ts";
import { takeOff } from "../../src/plan/index.ts";
import {
  type Pose,
  planeLevel,
  plumbOf,
  prepareContext,
  type SetContext,
  solvePose,
  startSituation,
} from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";
import { upward } from "./balance.ts";

/** Mass put on the left girder at its middle, t, so that the set's CG lies well off its axis. */
const OFF_AXIS = 4;

/** The demonstration's set hung from its two hooks alone, lines plumb; rigging changed and a mass put on one side. */
function hung(rigging: { slingLength_m?: number; hookPinHeight_m?: number }): {
  ctx: SetContext;
  pose: Pose;
} {
  const plan = scenario("demo", (p) => {
    for (const r of p.rigging) Object.assign(r, rigging);
    const [set] = p.sets;
    set.attachments.push({ ...set.attachments[0], name: "on the left", at_m: 30, mass_t: OFF_AXIS });
  });
  const ctx = prepareContext(plan, plan.sets[0].id);
  const start = startSituation(ctx);
  const cranes = start.cranes.map((c) => {
    const pick = ctx.set.picks.find((p) => p.crane === c.id);
    if (!pick) throw new Error(`no pick of ${c.id}`);
    return {
      ...c,
      hooked: true,
      tip: plumbOf(ctx, start, c.id),
      tautAt: planeLevel(start, pick.at_m, 0) + 0.4,
    };
  });
  const trains = start.trains.map((t) => ({ ...t, under: false }));
  const pose = solvePose(ctx, { ...start, cranes, trains }, 0, 0);
  expect(pose.solution.status, pose.solution.motion).toBe("solved");
  return { ctx, pose };
}

test("spreaders with slings of 3, 5.5 and 12 m: the same forces and the same lean, to the last bit", () => {
  const [a, ...others] = [3, 5.5, 12].map((slingLength_m) => hung({ slingLength_m }).pose);
  expect(a.forces.some((F) => F > 0)).toBe(true);
  for (const b of others) {
    expect(b.forces).toEqual(a.forces);
    expect(leanOf(b.solution)).toBe(leanOf(a.solution));
  }
});

test("made very stiff, the set leans by its CG's offset over the height of spreader pin and picks above the CG", () => {
  for (const slingLength_m of [3, 12])
    for (const hookPinHeight_m of [0.6, 1.1, 2]) {
      const { ctx, pose } = hung({ slingLength_m, hookPinHeight_m });
      const [, y, z] = takeOff(ctx.set).cg;
      const [pick] = ctx.set.picks;
      const { state } = pose;
      const up = upward(state);
      const answer = solveState({
        ...state,
        E: state.E * 1e9,
        G: state.G * 1e9,
        girders: state.girders.map(({ name, y, pieces }) => ({ name, y, pieces })),
      });
      expect(answer.status).toBe("solved");
      // Against the plane through the wheels' path, to which true up leans by the crossfall.
      const lean = -(y * up[2]) / (hookPinHeight_m + pick.height_m - z) - up[1];
      expect(Math.abs(lean)).toBeGreaterThan(0.02);
      // Bound as for the linkage at random (hung.test.ts): what is left of the elastic set.
      expect(Math.abs(answer.lean - lean)).toBeLessThan(1e-6);
    }
});
