// A load chart that may not be interpolated gives no load that it does not list; one that may, none beyond its neighbours.
// Source: the next larger listed radius governs, common practice, no source; charts at random, invented.

import fc from "fast-check";
import { expect, test } from "vitest";
import { ratedLoad } from "../../src/checks/index.ts";
import type { Chart } from "../../src/plan/index.ts";

const seed = 40913;
const g = 9.80665;
const BOOM = 42;

/** Rows of one boom length: radii a metre or more apart, ratings that fall with the radius; and a radius among them. */
const charts = fc
  .record({
    first: fc.integer({ min: 4, max: 20 }),
    strides: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 9 }),
    drops: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 9, maxLength: 9 }),
    least: fc.integer({ min: 5, max: 30 }),
    part: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    at: fc.nat(),
  })
  .map(({ first, strides, drops, least, part, at }) => {
    let radius_m = first;
    let rated_t = least + drops.slice(0, strides.length).reduce((a, b) => a + b, 0);
    const rows = [{ radius_m, boom_m: BOOM, rated_t }];
    strides.forEach((stride, i) => {
      radius_m += stride;
      rated_t -= drops[i];
      rows.push({ radius_m, boom_m: BOOM, rated_t });
    });
    const i = at % strides.length;
    return { rows, i, radius: rows[i].radius_m + part * strides[i] };
  });

/** What a plan may say without allowing it: nothing, a page alone, a wish without the page that grants it. */
const refusals: Partial<Chart>[] = [
  { interpolation: false },
  { interpolation: false, page: "p. 4" },
  { interpolation: true },
  { interpolation: true, page: "" },
];

test(`500 random charts without leave to interpolate: the row of the next larger radius, exactly (seed ${seed})`, () => {
  fc.assert(
    fc.property(charts, fc.constantFrom(...refusals), ({ rows, i, radius }, words) => {
      const chart: Chart = { invented: true, interpolation: false, rows, ...words };
      const rated = ratedLoad(chart, radius, BOOM, g);
      expect(rows.map((r) => r.rated_t * 1000 * g)).toContain(rated);
      expect(rated).toBe(rows[i + 1].rated_t * 1000 * g);
    }),
    { seed, numRuns: 500 },
  );
});

test(`500 random charts with the page that grants it: on the straight line between both rows (seed ${seed + 1})`, () => {
  fc.assert(
    fc.property(charts, ({ rows, i, radius }) => {
      const chart: Chart = { invented: true, interpolation: true, page: "p. 4", rows };
      const rated = (ratedLoad(chart, radius, BOOM, g) ?? Number.NaN) / (1000 * g);
      const [a, b] = [rows[i], rows[i + 1]];
      expect(rated).toBeLessThan(a.rated_t);
      expect(rated).toBeGreaterThan(b.rated_t);
      // Same slope on both sides, multiplied out; 1e-9 of some 100 t times metres is rounding.
      const cross = (rated - a.rated_t) * (b.radius_m - radius) - (b.rated_t - rated) * (radius - a.radius_m);
      expect(Math.abs(cross)).toBeLessThan(1e-9 * 400 * 6);
    }),
    { seed: seed + 1, numRuns: 500 },
  );
});
