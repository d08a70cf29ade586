// Laws of the diagrams of every solved pose: each cut balances what lies behind it, ends are free, joints balance.
// Source: statics of a cut body; no published numbers. Cases of handbooks: tests/reference.

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  answerOf,
  crossFrameForces,
  diagramsOf,
  greatestIn,
  momentAt,
  type Solution,
  type State,
  shearAt,
  solveStatics,
  torsionAt,
} from "../../src/mechanics/index.ts";
import { actionsOn } from "./balance.ts";
import { states } from "./states.ts";

const seed = 88211;
const runs = { seed, numRuns: 500 };

const asking = (s: State): State => ({ ...s, ask: { droopAt: (s.hoists ?? []).map((h) => h.at) } });

/** Calls `look` for every solved state of the family, with its weight and length; gives how many there were. */
function everySolved(look: (state: State, s: Solution, W: number, L: number) => void): number {
  let solved = 0;
  fc.assert(
    fc.property(states(), (plain) => {
      const state = asking(plain);
      const s = solveStatics(state);
      if (s.status !== "solved") return;
      solved++;
      look(state, s, s.model.mass * state.gravity, s.model.length);
    }),
    runs,
  );
  return solved;
}

test(`500 random states: moment, shear and torsion at any cut are those of all that lies behind it (seed ${seed})`, () => {
  const solved = everySolved((state, s, W, L) => {
    const answer = answerOf(s);
    const d = diagramsOf(s);
    const axis = s.model.axisHeight;
    const start = Math.max(...s.model.girders.map((g) => g.from));
    const end = Math.min(...s.model.girders.map((g) => g.to));
    for (const part of [0.013, 0.21, 0.377, 0.5001, 0.637, 0.83, 0.991]) {
      const x = start + part * (end - start);
      const { f, m } = actionsOn(state, answer, s, x);
      const sum = { V: 0, M: 0, T: 0 };
      s.model.girders.forEach((g, i) => {
        const V = shearAt(d, i, x, -1);
        sum.V += V;
        sum.M += momentAt(d, i, x);
        sum.T += torsionAt(d, i, x) + V * g.y;
      });
      // 1e-9 of W and W L, the bound of the residual, and as much again for the cut.
      expect(Math.abs(sum.V - f[2])).toBeLessThan(2e-9 * W);
      expect(Math.abs(sum.M - (m[1] + x * f[2] - axis * f[0]))).toBeLessThan(2e-9 * W * L);
      // The lean of a lone girder is held by what the State does not name.
      if (s.model.girders.length > 1)
        expect(Math.abs(sum.T - (m[0] + axis * f[1]))).toBeLessThan(2e-9 * W * L);
    }
  });
  // Fewer solved states would mean that the law looked at next to nothing.
  expect(solved).toBeGreaterThan(300);
});

test(`500 random states: every front end is free, and girders hand on at their joints what frames bring (seed ${seed})`, () => {
  everySolved((_, s, W, L) => {
    const d = diagramsOf(s);
    const jumps = new Map<number, [number, number, number]>();
    for (const frame of crossFrameForces(s)) {
      const nodes = s.model.crossElements.find(
        (c) => c.x === frame.x && c.girders[0] === frame.girders[0] && c.girders[1] === frame.girders[1],
      )?.nodes as [number, number];
      [-frame.shear, frame.shear].forEach((V, k) => {
        const known = jumps.get(nodes[k]) ?? [0, 0, 0];
        jumps.set(nodes[k], [known[0] + V, known[1] + frame.couples[k], known[2]]);
      });
    }
    const lone = s.model.girders.length === 1;
    for (const [i, g] of d.girders.entries()) {
      const end = s.model.girders[i].to;
      // Frames at the very end hand their part to it: the joint there is looked at like any other, below.
      const last = s.model.girders[i].elements.at(-1)?.node2 as number;
      const [framed, turned] = jumps.get(last) ?? [0, 0];
      expect(Math.abs(shearAt(d, i, end, 1) + framed)).toBeLessThan(1e-8 * W);
      expect(Math.abs(momentAt(d, i, end, 1))).toBeLessThan(1e-8 * W * L);
      // The lean of a lone girder is held by what the State does not name: a torque may stand anywhere.
      if (!lone) expect(Math.abs(torsionAt(d, i, end, 1) + turned)).toBeLessThan(1e-8 * W * L);
      for (let e = 1; e < g.elements.length; e++) {
        const x = g.elements[e].from;
        // At a node the diagram ahead begins with what the one behind hands on, and what a frame adds.
        const here = g.points.filter((p) => p.x === x);
        const force = here.reduce((sum, p) => sum + p.force, 0);
        const couple = here.reduce((sum, p) => sum + p.aboutX, 0);
        const [V, T] = jumps.get(g.elements[e].node1) ?? [0, 0];
        const jump = shearAt(d, i, x, 1) - shearAt(d, i, x, -1);
        expect(Math.abs(jump - force - V)).toBeLessThan(1e-8 * W);
        const twist = torsionAt(d, i, x, 1) - torsionAt(d, i, x, -1);
        if (!lone) expect(Math.abs(twist - couple - T)).toBeLessThan(1e-8 * W * L);
      }
    }
  });
});

test(`500 random states: the greatest and least moment between two stations are those of a fine walk (seed ${seed})`, () => {
  everySolved((_, s, W, L) => {
    const d = diagramsOf(s);
    s.model.girders.forEach((g, i) => {
      const from = g.from + 0.117 * (g.to - g.from);
      const to = g.from + 0.683 * (g.to - g.from);
      const { most, least } = greatestIn(d, i, from, to);
      for (let k = 0; k <= 400; k++) {
        const x = from + ((to - from) * k) / 400;
        for (const side of [-1, 1] as const) {
          if ((k === 0 && side < 0) || (k === 400 && side > 0)) continue;
          const M = momentAt(d, i, x, side);
          expect(M).toBeLessThanOrEqual(most.M + 1e-10 * W * L);
          expect(M).toBeGreaterThanOrEqual(least.M - 1e-10 * W * L);
        }
      }
      for (const { x, M } of [most, least]) {
        const beside = ([-1, 1] as const).map((side) => Math.abs(momentAt(d, i, x, side) - M));
        expect(Math.min(...beside)).toBeLessThan(1e-9 * W * L);
      }
    });
  });
});
