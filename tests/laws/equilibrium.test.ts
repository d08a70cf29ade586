// Laws of every solved pose: it balances from coordinates, contacts push or stand open, groups share and keep their oil.
// Source: statics; the form of the laws from the theory of unilateral contact (Signorini), no published numbers.

import fc from "fast-check";
import { expect, test } from "vitest";
import {
  answerOf,
  rowDisplacement,
  type Solution,
  type State,
  solveStatics,
} from "../../src/mechanics/index.ts";
import { balanceOf } from "./balance.ts";
import { states } from "./states.ts";

const seed = 20417;
const runs = { seed, numRuns: 700 };

const asking = (s: State): State => ({ ...s, ask: { droopAt: (s.hoists ?? []).map((h) => h.at) } });

test(`700 random states: the residual is below 1e-9, as reported and as summed from the answer (seed ${seed})`, () => {
  let solved = 0;
  fc.assert(
    fc.property(states(), (plain) => {
      const state = asking(plain);
      const solution = solveStatics(state);
      const answer = answerOf(solution);
      if (answer.status !== "solved") return;
      solved++;
      expect(answer.residual.force).toBeLessThan(1e-9);
      expect(answer.residual.moment).toBeLessThan(1e-9);
      const b = balanceOf(state, answer, solution);
      expect(b.set).toBeLessThan(1e-9);
      expect(b.decks).toBeLessThan(1e-9);
      expect(b.sideways).toBeLessThan(1e-9);
    }),
    runs,
  );
  // The family is made to stand: fewer solved states would mean that the law looked at next to nothing.
  expect(solved).toBeGreaterThan(450);
});

/** Displacement along a device, from the forces that act on the set and the motions of the decks. */
function along(s: Solution, j: number): number {
  const d = s.devices[j];
  const own = s.model.modes.length;
  let v = 0;
  d.rows.forEach((row, i) => {
    v += d.factors[i] * rowDisplacement(s, row);
  });
  d.decks.forEach((deck, i) => {
    for (let q = 0; q < 3; q++) v += d.deckFactors[3 * i + q] * s.contact.a[own + 3 * deck + q];
  });
  return v;
}

test(`700 random states: no support pulls, no gap is negative, and no open support carries (seed ${seed + 1})`, () => {
  fc.assert(
    fc.property(states(), (state) => {
      const s = solveStatics(state);
      if (s.status !== "solved") return;
      const W = s.model.mass * state.gravity;
      s.devices.forEach((d, j) => {
        if (!d.oneSided) return;
        const F = s.contact.F[j];
        const v = along(s, j);
        expect(F).toBeGreaterThanOrEqual(0);
        // Closed: F = k (d - v). Open: v at or beyond the datum. Bounds: 1e-8 W in force, 1e-8 m in gap.
        if (F > 0) expect(Math.abs(d.datum - v - F / d.stiffness)).toBeLessThan(1e-8 * (1 + W / d.stiffness));
        else expect(v - d.datum).toBeGreaterThan(-1e-8);
      });
      const answer = answerOf(s);
      // A line's share of a hook that hardly pulls is a difference of what the last pass may leave: 1e-8 W.
      for (const [name, F] of Object.entries(answer.forces))
        expect(F, name).toBeGreaterThanOrEqual(name.startsWith("line ") ? -1e-8 * W : 0);
      for (const [name, gap] of Object.entries(answer.gaps)) expect(gap, name).toBeGreaterThan(-1e-11);
    }),
    { ...runs, seed: seed + 1 },
  );
});

test(`700 random states: a group's cylinders push alike, and their strokes add up to the command (seed ${seed + 2})`, () => {
  let groups = 0;
  let stopped = 0;
  const trains = states({ plans: ["two trains", "one train", "rear train and hook"] });
  fc.assert(
    fc.property(trains, (state) => {
      const answer = answerOf(solveStatics(state));
      if (answer.status !== "solved") return;
      const travel = new Map((state.trains ?? []).map((t) => [t.name, t]));
      for (const [name, ids] of Object.entries(state.groups ?? {})) {
        const free = ids.filter((id) => {
          const t = travel.get(id.split(":")[0]);
          const up = t?.strokeUp ?? Number.POSITIVE_INFINITY;
          const down = t?.strokeDown ?? Number.POSITIVE_INFINITY;
          expect(answer.strokes[id]).toBeLessThanOrEqual(up + 1e-9);
          expect(answer.strokes[id]).toBeGreaterThanOrEqual(-down - 1e-9);
          return answer.strokes[id] < up && answer.strokes[id] > -down;
        });
        stopped += ids.length - free.length;
        if (free.length === 0) continue;
        const force = answer.forces[`cylinder ${free[0]}`];
        for (const id of free) expect(answer.forces[`cylinder ${id}`]).toBe(force);
        // Cylinders without pressure keep no oil: their deck has left them.
        if (force === 0) continue;
        groups++;
        const sum = ids.reduce((s, id) => s + answer.strokes[id], 0);
        expect(Math.abs(sum - (state.groupLift?.[name] ?? 0) * ids.length)).toBeLessThan(1e-9);
      }
    }),
    { ...runs, seed: seed + 2 },
  );
  expect(groups).toBeGreaterThan(1000);
  expect(stopped).toBeGreaterThan(100);
});
