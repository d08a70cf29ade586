// What hangs from cranes alone: on grade and crossfall it settles in a few passes, nothing drives it sideways, and it
// leans as the linkage of hook, spreader, slings and set does.
// Source: statics of the linkage, lean = -y/(e + d) on a spreader with parallel slings; from memory.

import fc from "fast-check";
import { expect, test } from "vitest";
import { answerOf, solveState, solveStatics } from "../../src/mechanics/index.ts";
import { balanceOf, massOf, upward } from "./balance.ts";
import { states } from "./states.ts";

const seed = 11939;

const hung = states({ girders: [2, 3], plans: ["hung"] })
  .filter((s) => (s.crossFrames ?? []).length > 0)
  .map(({ wind: _calm, ...s }) => ({ ...s, ask: { droopAt: (s.hoists ?? []).map((h) => h.at) } }));

test(`500 sets hung by take-up on spreaders, points and separate lines, on slopes: settled in 5 passes (seed ${seed})`, () => {
  let solved = 0;
  fc.assert(
    fc.property(hung, (state) => {
      const s = solveStatics(state);
      expect(s.passes).toBeLessThanOrEqual(5);
      // Pins below the centre of gravity let it fall over; that is all that may happen to it.
      if (s.status === "mechanism") {
        expect(s.motion).toMatch(/leans|end up/);
        return;
      }
      expect(s.status).toBe("solved");
      solved++;
      const b = balanceOf(state, answerOf(s), s);
      expect(Math.max(b.set, b.sideways)).toBeLessThan(1e-9);
      // The lines hang along true up: together they carry all of the weight.
      const W = massOf(state).mass * state.gravity;
      expect(Math.abs(s.hoistForce.reduce((a, T) => a + T, 0) - W)).toBeLessThan(1e-9 * W);
    }),
    { seed, numRuns: 500 },
  );
  expect(solved).toBeGreaterThan(450);
});

test(`500 stiff sets on spreaders or points: the lean is that of the linkage (seed ${seed + 1})`, () => {
  let solved = 0;
  fc.assert(
    fc.property(
      hung.filter((s) => (s.hoists ?? []).every((h) => h.rigging !== "separate" && !h.offset)),
      (drawn) => {
        const state = {
          ...drawn,
          E: drawn.E * 1e9,
          G: drawn.G * 1e9,
          girders: drawn.girders.map(({ name, y, pieces }) => ({ name, y, pieces })),
        };
        const answer = solveState(state);
        if (answer.status !== "solved") return;
        solved++;
        const { cg } = massOf(state);
        const up = upward(state);
        const hoists = state.hoists ?? [];
        const W = hoists.reduce((sum, h) => sum + answer.forces[`hoist ${h.name}`], 0);
        // Sum of T (e + pick - z) over W: the height of the pins above the centre of gravity, by their loads.
        const arm =
          hoists.reduce((sum, h) => {
            const T = answer.forces[`hoist ${h.name}`];
            return sum + T * ((h.pinHeight ?? 0) + h.pickHeight - cg[2]);
          }, 0) / W;
        // On a crossfall the set hangs as far from the path's normal as true up does.
        const lean = -(cg[1] * up[2]) / arm - up[1];
        expect(Math.abs(answer.lean - lean)).toBeLessThan(1e-6);
      },
    ),
    { seed: seed + 1, numRuns: 500 },
  );
  expect(solved).toBeGreaterThan(450);
});
