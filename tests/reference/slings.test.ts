// Slings against published tables and rules.
//
// 29 CFR 1918 (Longshoring), Appendix II, Table 2: rated capacities of slings of natural fibre rope, 1 1/2 in, in lb:
// vertical 3700; basket with its legs at 0, 30, 45 and 60 degrees from the vertical 7400, 6400, 5200, 3700.
// Rigging handbooks: capacity of a leg by its angle from the horizontal, 90, 75, 60, 45, 30 degrees: 100, 96.6, 86.6, 70.7, 50 %.
// 0027/ND Rev 11.2 (2016), Guidelines for Marine Lifting and Lowering Operations, 5.6.12 (skew load factor of matched
// slings laid single: 1.25 on each diagonal pair) and 5.6.13 (wire slings: E 80 000 N/mm2, area 0.785 d2).
// Other values: statics worked by hand, beside each.

import { describe, expect, test } from "vitest";
import {
  apexOf,
  basketCapacity,
  bridle,
  fourLegsOf,
  fourLegTensions,
  skewFactor,
  spreaderCompression,
  stretch,
  tensionFactor,
  wireStiffness,
} from "../../src/mechanics/index.ts";

const rad = (deg: number) => (deg * Math.PI) / 180;
const within = (value: number, expected: number, relative: number) =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(relative);

// Bound: the published capacities are rounded to 0.1 %, the factors to three decimals.
test.each([
  [90, 100, 1000],
  [75, 96.6, 1035],
  [60, 86.6, 1155],
  [45, 70.7, 1414],
  [30, 50.0, 2000],
])(
  "a leg at %d degrees from the horizontal: %d %% of its capacity, %d thousandths of the load",
  (deg, pct, thousandths) => {
    within(100 / tensionFactor(rad(deg)), pct, 1e-3);
    within(tensionFactor(rad(deg)), thousandths / 1000, 1e-3);
  },
);

test("a level leg is refused", () => {
  expect(() => tensionFactor(0)).toThrow(/measure from the horizontal/);
});

// Bound: the table is rounded to 100 lb of some 7000, 1.5 %.
test.each([
  [0, 7400],
  [30, 6400],
  [45, 5200],
  [60, 3700],
])("29 CFR 1918 App. II Table 2: a basket at %d degrees from the vertical carries %d lb", (deg, lb) => {
  within(basketCapacity(3700, rad(deg)), lb, 0.015);
});

test("a spreader below 84 t with top slings at 60 degrees from the horizontal: half the load over tan 60 deg", () => {
  const load = 84e3 * 9.80665;
  // 823.76 kN / 2 / 1.7321 = 237.8 kN; leg 411.88 / 0.8660 = 475.6 kN. Bound: four digits by hand.
  within(spreaderCompression(load, rad(30)), 237.8e3, 2e-4);
  within((load / 2) * tensionFactor(rad(60)), 475.6e3, 2e-4);
});

test("a bridle of unequal legs, hook above the CG: levers and slopes by hand", () => {
  // 400 kN, picks at 1.0 and 2.5 m, hook 3.0 m above: 400 x 2.5 / 3.5 and 400 x 1.0 / 3.5; slopes 3.1623/3 and 3.9051/3.
  const [first, second] = bridle(400e3, 1, 2.5, 3);
  // Bound: five digits by hand.
  within(first.vertical, 285.71e3, 5e-5);
  within(second.vertical, 114.29e3, 5e-5);
  within(first.tension, 301.17e3, 5e-5);
  within(second.tension, 148.77e3, 5e-5);
  within(first.horizontal, 95.24e3, 5e-5);
  expect(Math.abs(first.horizontal - second.horizontal)).toBeLessThan(1e-6);
  // Slings of those lengths put the hook there again: 0.75 m from the middle toward the first.
  const apex = apexOf(first.length, second.length, 3.5);
  within(apex.toward, 0.75, 1e-12);
  within(apex.height, 3, 1e-12);
});

test("slings too short to meet, and a hook beside its picks, are refused", () => {
  expect(() => apexOf(1, 1, 2.5)).toThrow(/do not meet/);
  expect(() => bridle(1, 1, 1, 0)).toThrow(/height above 0/);
});

test("0027/ND 5.6.13: a wire sling of 60 mm and 12 m gives way by 21.23 mm under 400 kN", () => {
  // 400 000 x 12 000 / (80 000 x 0.785 x 3600). Bound: four digits.
  within(stretch(400e3, wireStiffness(0.06), 12), 21.23e-3, 2e-4);
});

describe("0027/ND 5.6.12: four matched slings at 60 degrees, 400 kN", () => {
  // Slope 60 degrees: picks at 1 m from the plumb line, hook 1.7321 m above; EA that stretches.
  const depth = Math.tan(rad(60));
  const r = Math.SQRT1_2;
  const picks = [
    [r, r, depth],
    [r, -r, depth],
    [-r, -r, depth],
    [-r, r, depth],
  ] as const;
  const legs = fourLegsOf(picks, [1e8, 1e8, 1e8, 1e8]);

  test("100 kN over sin 60 deg each, and 144.34 kN in the loaded pair", () => {
    const T = fourLegTensions(legs, 400e3, [0, 0, 0, 0]) ?? [];
    for (const one of T) {
      within(one, 115.47e3, 5e-5);
      within(one * skewFactor, 144.34e3, 5e-5);
    }
  });

  test("an error of length that gives the rule's 1.25 leaves 0.75 in the other pair; a great one hangs it on two", () => {
    // By hand: of equal legs L, a pair longer by e gives up EA e / (2 L) a leg.
    const L = Math.hypot(1, depth);
    const e = (0.25 * 115.470054e3 * 2 * L) / 1e8;
    const T = fourLegTensions(legs, 400e3, [e, 0, e, 0]) ?? [];
    within(T[0], 0.75 * 115.470054e3, 1e-6);
    within(T[1], 1.25 * 115.470054e3, 1e-6);
    const two = fourLegTensions(legs, 400e3, [0.05, 0, 0.05, 0]) ?? [];
    expect(two[0]).toBe(0);
    expect(two[2]).toBe(0);
    within(two[1], 230.940108e3, 1e-8);
  });
});
