// AISC, Steel Construction Manual, 15th ed., Tables 3-22c and 3-23 (beam diagrams and formulas).
//
// Formulas from memory, results confirmed by independent recomputation; the coefficients 0.100 and 0.600 and the
// deflection w L^4/145 of three equal spans were read in a text that quotes the diagrams. Bounds beside each check;
// deflections within 0.05 %, or 0.3 % where the table prints a rounded divisor.

import { expect, test } from "vitest";
import {
  diagramsOf,
  greatestIn,
  momentAt,
  shearAt,
  solveState,
  solveStatics,
} from "../../src/mechanics/index.ts";
import { beamState } from "../mechanics/states.ts";
import { solveBeam, spans, supportsOf } from "./beams.ts";
import { within } from "./close.ts";

const EI = 2e9;
const L = 20;
const w = 30e3;

/**
 * Greatest deflection of a propped cantilever over w L^4 / (E I): v = x (1 - 3 x^2 + 2 x^3) / 48 at
 * x = (1 + sqrt 33) / 16 from the simple end. The table rounds it to 1/185, 0.2 % less.
 */
const propped = (() => {
  const x = (1 + Math.sqrt(33)) / 16;
  return (x * (1 - 3 * x ** 2 + 2 * x ** 3)) / 48;
})();

/** Greatest downward displacement between two stations, by golden section (one dip in between). */
function deepest(at: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  for (let i = 0; i < 60; i++) {
    const c = b - ratio * (b - a);
    const d = a + ratio * (b - a);
    if (at(c) < at(d)) b = d;
    else a = c;
  }
  return -at((a + b) / 2);
}

test("overhang at one end, uniform load throughout (Table 3-23)", () => {
  const [q, l, a, I] = [27e3, 30, 20, 0.06];
  const answer = solveState(
    beamState(
      50,
      I,
      q,
      [
        ["R1", 0],
        ["R2", l],
      ],
      { ask: { droopAt: [l + a] } },
    ),
  );
  const beam = solveBeam(spans([l, a], [q, q], 2.1e11 * I), supportsOf([l], true));
  for (const [R1, R2] of [
    [answer.forces["bearing R1"], answer.forces["bearing R2"]],
    [beam.forces[0], beam.forces[1]],
  ]) {
    within(R1, (q * (l * l - a * a)) / (2 * l), 1e-6);
    within(R1, 225e3, 1e-3);
    within(R2, (q * (l + a) ** 2) / (2 * l), 1e-6);
    within(R2, 1125e3, 1e-3);
  }
  within(beam.moment(l), -5400e3, 1e-3);
  within(beam.moment(beam.forces[0] / q), 937.5e3, 1e-3);
  const tip = (q * a * (4 * a * a * l - l ** 3 + 3 * a ** 3)) / (24 * 2.1e11 * I);
  within(-answer.droop.G[0], tip, 3e-5); // its seats of 1e12 N/m give way by 2e-5 of that
  within(-answer.droop.G[0], 80.357e-3, 2e-3);
  within(-beam.w(l + a), tip, 1e-6);
});

test("two equal spans, uniform load (Table 3-23), within 0.05 %", () => {
  const beam = solveBeam(spans([L, L], [w, w], EI), supportsOf([L, L], true));
  [0.375, 1.25, 0.375].forEach((c, i) => {
    within(beam.forces[i] / (w * L), c, 5e-4);
  });
  within(-beam.moment(L) / (w * L * L), 0.125, 5e-4);
  const drop = deepest(beam.w, 0.3 * L, 0.6 * L) / ((w * L ** 4) / EI);
  within(drop, propped, 1e-4);
  within(drop, 1 / 185, 3e-3);
});

test("three equal spans, uniform load (Table 3-22c), within 0.05 %", () => {
  const beam = solveBeam(spans([L, L, L], [w, w, w], EI), supportsOf([L, L, L], true));
  [0.4, 1.1, 1.1, 0.4].forEach((c, i) => {
    within(beam.forces[i] / (w * L), c, 5e-4);
  });
  within(-beam.moment(L) / (w * L * L), 0.1, 5e-4);
  within((w * L - beam.forces[0]) / (w * L), 0.6, 5e-4);
  within(beam.moment(0.4 * L) / (w * L * L), 0.08, 5e-4);
  within(deepest(beam.w, 0.3 * L, 0.6 * L) / ((w * L ** 4) / EI), 1 / 145.27, 5e-4);
});

test("three equal spans, only the outer two loaded (Table 3-22c), within 0.05 %", () => {
  const beam = solveBeam(spans([L, L, L], [w, 0, w], EI), supportsOf([L, L, L], true));
  [0.45, 0.55, 0.55, 0.45].forEach((c, i) => {
    within(beam.forces[i] / (w * L), c, 5e-4);
  });
  within(-beam.moment(L) / (w * L * L), 0.05, 5e-4);
  within(beam.moment(0.45 * L) / (w * L * L), 0.10125, 5e-4);
});

test("three equal spans, the first two loaded (Table 3-22c): uplift at the far end, within 0.05 %", () => {
  const stretches = spans([L, L, L], [w, w, 0], EI);
  const beam = solveBeam(stretches, supportsOf([L, L, L]));
  [23 / 60, 1.2, 0.45, -1 / 30].forEach((c, i) => {
    within(beam.forces[i] / (w * L), c, 5e-4);
  });
  within(-beam.moment(L) / (w * L * L), 0.1167, 5e-4);
  within(-beam.moment(2 * L) / (w * L * L), 1 / 30, 5e-4);

  // A bearing that cannot pull opens; the rest is two equal spans with an idle overhang.
  const open = solveBeam(stretches, supportsOf([L, L, L], true));
  expect(open.settled).toBe(true);
  expect(open.forces[3]).toBe(0);
  expect(open.w(3 * L)).toBeGreaterThan(0);
  [0.375, 1.25, 0.375].forEach((c, i) => {
    within(open.forces[i] / (w * L), c, 5e-4);
  });
});

test("propped cantilever, uniform load (Table 3-23; Roark, Table 8.1), within 0.05 %", () => {
  const [q, length] = [25e3, 40];
  const beam = solveBeam(spans([length], [q], EI), [
    { at: 0, kind: "w" },
    { at: 0, kind: "turn" },
    { at: length, kind: "w", pushesOnly: true },
  ]);
  within(beam.forces[2], 375e3, 5e-4);
  within(beam.forces[0], 625e3, 5e-4);
  within(beam.forces[1], 5000e3, 5e-4);
  const drop = deepest(beam.w, 0.4 * length, 0.8 * length) / ((q * length ** 4) / EI);
  within(drop, propped, 1e-4);
  within(drop, 1 / 185, 3e-3);
});

/** Diagrams of equal spans, solved as a State on stiff seats: their give, 1e12 N/m, stays below 0.01 %. */
function spansState(count: number) {
  const seats = Array.from({ length: count + 1 }, (_, i) => [`R${i}`, i * L] as const);
  const d = diagramsOf(solveStatics(beamState(count * L, EI / 2.1e11, w, seats)));
  return { d, M: w * L * L, V: w * L };
}

test("diagrams of an overhang, uniform load throughout (Table 3-23), within 0.1 %", () => {
  const [q, l, a] = [27e3, 30, 20];
  const seats = [
    ["R1", 0],
    ["R2", l],
  ] as const;
  const d = diagramsOf(solveStatics(beamState(l + a, 0.06, q, seats)));
  within(momentAt(d, 0, l), -5400e3, 1e-3);
  const { most, least } = greatestIn(d, 0, 0, l + a);
  within(most.M, 937.5e3, 1e-3);
  within(most.x, (l - (a * a) / l) / 2, 1e-6);
  within(least.x, l, 1e-9);
  within(shearAt(d, 0, l, 1), q * a, 1e-6);
  within(shearAt(d, 0, l, -1), (-q * (l * l + a * a)) / (2 * l), 1e-6);
});

test("diagrams of two and three equal spans, uniform load (Tables 3-22c, 3-23), within 0.05 %", () => {
  const two = spansState(2);
  within(momentAt(two.d, 0, L), -0.125 * two.M, 5e-4);
  within(shearAt(two.d, 0, L, -1), -0.625 * two.V, 5e-4);
  within(greatestIn(two.d, 0, 0, L).most.M, (9 / 128) * two.M, 5e-4);
  const three = spansState(3);
  within(momentAt(three.d, 0, L), -0.1 * three.M, 5e-4);
  within(shearAt(three.d, 0, L, -1), -0.6 * three.V, 5e-4);
  within(shearAt(three.d, 0, L, 1), 0.5 * three.V, 5e-4);
  const { most } = greatestIn(three.d, 0, 0, L);
  within(most.M, 0.08 * three.M, 5e-4);
  within(most.x, 0.4 * L, 5e-4);
  within(greatestIn(three.d, 0, L, 2 * L).most.M, 0.025 * three.M, 1e-3);
});
