// The dual simplex method against all corners of small programmes, each found by solving its equations.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type AtMost, leastCost } from "../../src/numeric/index.ts";

test("two unknowns: 2 x + 3 y with x + y >= 4 and x <= 3 is least at (3, 1)", () => {
  const rows = [
    { coefficients: [-1, -1], limit: -4 },
    { coefficients: [1, 0], limit: 3 },
  ];
  expect(leastCost([2, 3], rows)).toEqual([3, 1]);
});

test("nothing meets x <= 1 and x >= 2", () => {
  const rows = [
    { coefficients: [1], limit: 1 },
    { coefficients: [-1], limit: -2 },
  ];
  expect(leastCost([1], rows)).toBeNull();
});

/** Least cost over all corners of a programme of two unknowns: where two of its lines or axes cross. */
function overCorners(costs: readonly number[], rows: readonly AtMost[]): number {
  const lines = [...rows, { coefficients: [-1, 0], limit: 0 }, { coefficients: [0, -1], limit: 0 }];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < lines.length; i++)
    for (let j = 0; j < i; j++) {
      const [[a, b], [c, d]] = [lines[i].coefficients, lines[j].coefficients];
      const det = a * d - b * c;
      if (Math.abs(det) < 1e-9) continue;
      const x = (lines[i].limit * d - b * lines[j].limit) / det;
      const y = (a * lines[j].limit - lines[i].limit * c) / det;
      if (lines.every((l) => l.coefficients[0] * x + l.coefficients[1] * y <= l.limit + 1e-7))
        least = Math.min(least, costs[0] * x + costs[1] * y);
    }
  return least;
}

test("500 random programmes of two unknowns and four inequalities (seed 3309)", () => {
  const whole = (from: number, to: number) => fc.integer({ min: from, max: to });
  const row = fc.record({ coefficients: fc.tuple(whole(-5, 5), whole(-5, 5)), limit: whole(-10, 10) });
  let met = 0;
  fc.assert(
    fc.property(
      fc.tuple(whole(1, 5), whole(1, 5)),
      fc.array(row, { minLength: 4, maxLength: 4 }),
      (costs, rows) => {
        const least = overCorners(costs, rows);
        const found = leastCost(costs, rows);
        if (found === null) expect(least).toBe(Number.POSITIVE_INFINITY);
        else {
          met++;
          for (const x of found) expect(x).toBeGreaterThanOrEqual(0);
          // Whole numbers up to 10: roundings stay far below this.
          expect(Math.abs(costs[0] * found[0] + costs[1] * found[1] - least)).toBeLessThan(1e-6);
        }
      },
    ),
    { seed: 3309, numRuns: 500 },
  );
  expect(met).toBeGreaterThan(100);
});
