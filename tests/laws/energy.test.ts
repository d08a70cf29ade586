// The solved pose has the least potential: 1/2 q K q - f q + sum of F^2 / 2k does not drop under small changes of q.
// Source: theorem of least total potential energy; the changes are random.

import fc from "fast-check";
import { expect, test } from "vitest";
import { recoverField, type Solution, solveStatics } from "../../src/mechanics/index.ts";
import { bandedMultiply } from "../../src/numeric/index.ts";
import { massOf } from "./balance.ts";
import { states } from "./states.ts";

const seed = 70123;

/** A small generator of even numbers in -1 .. 1, so that a failing case is the same again (mulberry32). */
function noise(start: number): () => number {
  let a = start;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

/** Weight of the set on its unknowns: girders element by element, frames and other masses to where they hang. */
function weightLoad(s: Solution): Float64Array {
  const { model, state } = s;
  const f = new Float64Array(model.factor.n);
  const point = (girder: number, x: number, P: number) => {
    const e = model.girders[girder].elements.findLast((el) => el.from <= x + 1e-12);
    if (!e) throw new Error(`no element at ${x}`);
    // Timoshenko shape functions, by their own formula: work of the load on w1, thetaY1, w2, thetaY2.
    const t = (x - e.from) / e.length;
    const c = 1 / (1 + e.phi);
    const N1 = c * (1 - 3 * t * t + 2 * t ** 3 + e.phi * (1 - t));
    const N2 = c * e.length * (t - 2 * t * t + t ** 3 + (e.phi * (t - t * t)) / 2);
    const N4 = c * e.length * (t ** 3 - t * t - (e.phi * (t - t * t)) / 2);
    f[3 * e.node1] -= P * N1;
    f[3 * e.node1 + 2] += P * N2;
    f[3 * e.node2] -= P * (1 - N1);
    f[3 * e.node2 + 2] += P * N4;
  };
  const g = state.gravity;
  state.girders.forEach((girder, i) => {
    for (const e of model.girders[i].elements)
      for (const p of girder.pieces) {
        const from = Math.max(p.from, e.from);
        const to = Math.min(p.to, e.from + e.length);
        if (to <= from) continue;
        // Three Gauss points integrate the cubic shapes exactly.
        const [half, mid] = [(to - from) / 2, (to + from) / 2];
        const r = Math.sqrt(0.6) * half;
        const q = p.massPerMetre * g * half;
        point(i, mid - r, (q * 5) / 9);
        point(i, mid, (q * 8) / 9);
        point(i, mid + r, (q * 5) / 9);
      }
  });
  const across = state.girders.map((_, i) => i).sort((a, b) => state.girders[a].y - state.girders[b].y);
  for (const frame of state.crossFrames ?? [])
    for (let i = 1; i < across.length; i++)
      for (const girder of [across[i - 1], across[i]])
        point(girder, frame.at, (frame.mass * g) / (across.length - 1) / 2);
  for (const m of state.pointMasses ?? [])
    point(
      state.girders.findIndex((x) => x.name === m.girder),
      m.at,
      m.mass * g,
    );
  (state.hoists ?? []).forEach((h) => {
    if (h.mode === "load")
      for (const name of h.girders)
        point(
          state.girders.findIndex((x) => x.name === name),
          h.at,
          -(h.load ?? 0) / h.girders.length,
        );
  });
  return f;
}

test(`500 random states, 12 changes each: the potential is least (seed ${seed})`, () => {
  let solved = 0;
  fc.assert(
    fc.property(states({ sideways: false }), fc.integer(), (state, start) => {
      const s = solveStatics(state);
      if (s.status !== "solved") return;
      solved++;
      const { model, devices, contact, layout } = s;
      const random = noise(start);
      const q = recoverField(s);
      const Kq = bandedMultiply(model.matrix, q);
      const f = weightLoad(s);
      const W = massOf(state).mass * state.gravity;
      const decks = layout.trains.length;
      for (let trial = 0; trial < 12; trial++) {
        // Smooth changes of 1e-5 to 1e-8 m: as small that the first order shows, which must vanish.
        const size = 10 ** (-5 - (trial % 4));
        const waves = 1 + Math.floor(trial / 4);
        const [c, lean, cx, ly] = [random(), random(), random(), random()].map((v) => v * size);
        const dq = new Float64Array(q.length);
        for (let i = 0; i < model.nodeX.length; i++) {
          const k = (Math.PI * waves) / model.length;
          const x = k * (model.nodeX[i] - model.origin);
          const y = model.nodeY[i] / 3;
          dq[3 * i] = c + cx * Math.sin(x) + (lean + ly * Math.cos(x)) * y;
          dq[3 * i + 1] = (lean + ly * Math.cos(x)) / 3;
          dq[3 * i + 2] = -k * (cx * Math.cos(x) - ly * Math.sin(x) * y);
        }
        const turn = Float64Array.from({ length: 3 * decks }, () => size * random());
        const Kd = bandedMultiply(model.matrix, dq);
        let change = 0;
        for (let i = 0; i < q.length; i++) {
          change += dq[i] * (0.5 * Kd[i] + Kq[i] - f[i]);
        }
        layout.trains.forEach((t, i) => {
          change += t.mass * state.gravity * turn[3 * i];
        });
        devices.forEach((d, j) => {
          let dv = 0;
          d.rows.forEach((row, i) => {
            row.dofs.forEach((dof, k) => {
              dv += d.factors[i] * row.coefficients[k] * dq[dof];
            });
          });
          d.decks.forEach((deck, i) => {
            for (let c = 0; c < 3; c++) dv += d.deckFactors[3 * i + c] * turn[3 * deck + c];
          });
          if (!d.oneSided && d.stiffness === 0) return;
          const before = d.datum - contact.v[j];
          const after = before - dv;
          const press = (x: number) => (d.oneSided ? Math.max(0, x) : x);
          change += (d.stiffness / 2) * (press(after) - press(before)) * (press(after) + press(before));
        });
        // A wrong force of a billionth of the weight would show; below that is rounding.
        expect(change).toBeGreaterThan(-1e-9 * W * size);
      }
    }),
    { seed, numRuns: 500 },
  );
  expect(solved).toBeGreaterThan(300);
});
