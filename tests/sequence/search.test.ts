// Searches on one variable, on functions whose answer is known: root within the tolerance and on the side of b,
// and no more evaluations than stated. Every solved pose costs one evaluation, so counts matter. No source needed.

import { describe, expect, test } from "vitest";
import { crossing, peak } from "../../src/sequence/index.ts";

const TOLERANCE = 1e-9;

function counted(g: (x: number) => number): { g: (x: number) => number; calls: () => number } {
  let calls = 0;
  return {
    g: (x) => {
      calls++;
      return g(x);
    },
    calls: () => calls,
  };
}

/** Name, function, bracket, root, most evaluations. */
const functions: [string, (x: number) => number, number, number, number, number][] = [
  ["straight", (x) => 3 * (x - 0.3), 0, 1, 0.3, 3],
  ["straight, falling", (x) => 0.3 - x, 0, 1, 0.3, 3],
  ["straight, from the right", (x) => x - 0.3, 1, 0, 0.3, 3],
  ["square root of 2", (x) => x * x - 2, 0, 2, Math.SQRT2, 12],
  ["steep", (x) => Math.exp(40 * (x - 0.3)) - 1, 0, 1, 0.3, 40],
  ["flat at its root", (x) => (x - 0.3) ** 3, 0, 1, 0.3, 125],
  ["corner at its root", (x) => (x < 0.3 ? 1e-6 : 1e6) * (x - 0.3), 0, 1, 0.3, 80],
  ["two straight pieces", (x) => (x < 0.7 ? x - 0.5 : 100 * (x - 0.7) + 0.2), 0, 1, 0.5, 20],
  ["jump", (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3, 60],
  ["jump between unlike heights", (x) => (x < 0.3 ? -1e-6 : 1e6), 0, 1, 0.3, 150],
];

describe("crossing", () => {
  test.each(functions)("%s", (_, f, a, b, root, most) => {
    const { g, calls } = counted(f);
    const x = crossing(g, a, b, f(a), f(b), TOLERANCE);
    expect(Math.abs(x - root)).toBeLessThanOrEqual(TOLERANCE);
    expect(Math.sign(f(x)), "the side on which the sign of a is left").not.toBe(Math.sign(f(a)));
    expect(calls()).toBeLessThanOrEqual(most);
  });

  test("never more evaluations than five for each halving, whatever the function", () => {
    const halvings = Math.ceil(Math.log2(1 / TOLERANCE));
    for (let k = 1; k < 40; k++) {
      const root = k / 40;
      for (const power of [0, 1, 5, 21]) {
        const f = (x: number) => Math.sign(x - root) * Math.abs(x - root) ** power || 1;
        const { g, calls } = counted(f);
        const x = crossing(g, 0, 1, f(0), f(1), TOLERANCE);
        expect(Math.abs(x - root)).toBeLessThanOrEqual(TOLERANCE);
        expect(calls()).toBeLessThanOrEqual(5 * (halvings + 1));
      }
    }
  });

  test("what has no number counts as the side of b", () => {
    const f = (x: number) => (x < 0.25 ? -1 : Number.NaN);
    const x = crossing(f, 0, 1, -1, Number.NaN, TOLERANCE);
    expect(x).toBeGreaterThanOrEqual(0.25);
    expect(x).toBeLessThanOrEqual(0.25 + TOLERANCE);
  });

  test.each<[string, (x: number) => number]>([
    ["rising to zero and staying there", (x) => (x < 0.7 ? -1 : 0)],
    ["falling to zero and staying there", (x) => (x < 0.7 ? 1 : 0)],
    ["rising from zero", (x) => (x < 0.7 ? 0 : 1)],
    ["falling from zero", (x) => (x < 0.7 ? 0 : -1)],
  ])("%s: the place of the change, not an end of the bracket", (_, f) => {
    const x = crossing(f, 0, 1, f(0), f(1), TOLERANCE);
    expect(x).toBeGreaterThanOrEqual(0.7);
    expect(x).toBeLessThanOrEqual(0.7 + TOLERANCE);
  });

  test("a bracket already within the tolerance costs nothing", () => {
    const { g, calls } = counted((x) => x);
    expect(crossing(g, -1e-10, 1e-10, -1, 1, TOLERANCE)).toBe(1e-10);
    expect(calls()).toBe(0);
  });
});

describe("peak", () => {
  // Golden section keeps 0.618 of the bracket for every evaluation: 1e-6 of it takes 29, and two to begin with.
  const most = 2 + Math.ceil(Math.log(1e-6) / Math.log((Math.sqrt(5) - 1) / 2));

  test.each<[string, (x: number) => number, number]>([
    ["parabola", (x) => -((x - 0.37) ** 2), 0.37],
    ["corner", (x) => -Math.abs(x - 0.81), 0.81],
    ["lopsided", (x) => (x < 0.2 ? 100 * (x - 0.2) : 0.2 - x), 0.2],
    ["at the left end", (x) => -x, 0],
    ["at the right end", (x) => x, 1],
  ])("%s", (_, f, top) => {
    const { g, calls } = counted(f);
    expect(Math.abs(peak(g, 0, 1, 1e-6) - top)).toBeLessThanOrEqual(1e-6);
    expect(calls()).toBeLessThanOrEqual(most);
  });
});
