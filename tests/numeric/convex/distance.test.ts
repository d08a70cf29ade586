// Distance of convex bodies against closed forms, and against everything that can be nearest on random bodies.

import { describe, expect, test } from "vitest";
import { type Convex, convexDistance, newGap, reach } from "../../../src/numeric/index.ts";
import { apart, depth, segmentSegment, type Vec } from "./features.ts";

/** The search ends when its bounds are 1e-9 m apart; rounding at places of some hundred metres adds less. */
const BOUND = 5e-9;

function random(seed: number): () => number {
  let x = seed;
  return () => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return x / 2 ** 31 - 1;
  };
}

const whole = (count: number, radius = 0, disc = 0): Convex => ({ first: 0, count, radius, disc });
const flat = (points: readonly Vec[]): Float64Array => Float64Array.from(points.flat());

function between(a: readonly Vec[], b: readonly Vec[], [ra, rb] = [0, 0], [da, db] = [0, 0]) {
  const gap = newGap();
  convexDistance(whole(a.length, ra, da), flat(a), whole(b.length, rb, db), flat(b), gap);
  return gap;
}

const box = (low: Vec, high: Vec): Vec[] =>
  [low[0], high[0]].flatMap((x) =>
    [low[1], high[1]].flatMap((y) => [low[2], high[2]].map((z): Vec => [x, y, z])),
  );

describe("closed forms", () => {
  test("two capsules are as far apart as their axes, less both radii: 500 random pairs, seed 11", () => {
    const next = random(11);
    const point = (): Vec => [200 + 10 * next(), 10 * next(), 30 + 10 * next()];
    for (let i = 0; i < 500; i++) {
      const [p, q, r, s] = [point(), point(), point(), point()];
      const axes = segmentSegment(p, q, r, s);
      const gap = between([p, q], [r, s], [0.3, 0.2]);
      expect(Math.abs(gap.distance - (axes - 0.5)), `pair ${i}`).toBeLessThan(BOUND);
    }
  });

  test("two level boxes: Pythagoras over the gaps along the axes, 500 random pairs, seed 12", () => {
    const next = random(12);
    for (let i = 0; i < 500; i++) {
      const low = (): Vec => [8 * next(), 8 * next(), 8 * next()];
      const [a, b] = [low(), low()];
      const size = (): Vec => [1 + next(), 1 + next(), 1 + next()].map((x) => x + 0.01) as unknown as Vec;
      const [sa, sb] = [size(), size()];
      const gaps = [0, 1, 2].map((k) => Math.max(b[k] - a[k] - sa[k], a[k] - b[k] - sb[k]));
      const top = (l: Vec, s: Vec): Vec => [l[0] + s[0], l[1] + s[1], l[2] + s[2]];
      const gap = between(box(a, top(a, sa)), box(b, top(b, sb)));
      const outside = gaps.map((g) => Math.max(0, g));
      const known = gaps.every((g) => g < 0) ? Math.max(...gaps) : Math.hypot(...outside);
      expect(Math.abs(gap.distance - known), `pair ${i}: ${gap.distance} against ${known}`).toBeLessThan(
        BOUND,
      );
    }
  });

  test("a point above, beside, at the corner of and inside a box", () => {
    const it = box([0, 0, 0], [4, 2, 1]);
    const at = (p: Vec) => between([p], it).distance;
    expect(at([2, 1, 3])).toBeCloseTo(2, 9);
    expect(at([7, 1, 0.5])).toBeCloseTo(3, 9);
    expect(at([7, 6, 1])).toBeCloseTo(5, 9);
    expect(at([2, 1, 0.9])).toBeCloseTo(-0.1, 9);
  });

  test("an upright cylinder and a ball, beside it, above it and off its edge", () => {
    const drum: Vec[] = [
      [10, 0, 0],
      [10, 0, 2],
    ];
    const ball = (p: Vec) => between(drum, [p], [0, 0.5], [3, 0]).distance;
    expect(ball([14, 3, 1])).toBeCloseTo(5 - 3 - 0.5, 8);
    expect(ball([11, 1, 6])).toBeCloseTo(4 - 0.5, 8);
    // 4 m out at 3-4-5 beyond the edge and 3 m above it.
    expect(ball([10 + 7 * 0.6, 7 * 0.8, 5])).toBeCloseTo(5 - 0.5, 8);
  });

  test("two cylinders whose edges cross overlap by what their radii have too much", () => {
    const drum = (x: number): Vec[] => [
      [x, 0, 0],
      [x, 0, 5],
    ];
    // A plane of a hull through sampled directions cannot be nearer than the round edge by more than 1e-6 m here.
    expect(between(drum(0), drum(4), [0, 0], [3, 2]).distance).toBeCloseTo(-1, 5);
  });

  test("crossing axes of two capsules overlap by both radii", () => {
    const gap = between(
      [
        [-1, 0, 0],
        [1, 0, 0],
      ],
      [
        [0, -1, 0],
        [0, 1, 0],
      ],
      [0.1, 0.2],
    );
    expect(gap.distance).toBeCloseTo(-0.3, 9);
    expect(Math.abs(gap.normal[2])).toBeCloseTo(1, 9);
  });
});

describe("random bodies", () => {
  test("1000 pairs of hulls of 1 to 9 points, apart and overlapping, seed 21", () => {
    const next = random(21);
    const count = () => 1 + Math.floor(4.499 * (1 + next()));
    let overlaps = 0;
    for (let i = 0; i < 1000; i++) {
      const stretch: Vec = [i % 3 === 0 ? 30 : 2, 2, i % 5 === 0 ? 0.05 : 2];
      const body = (x: number): Vec[] =>
        Array.from({ length: count() }, () => [
          x + stretch[0] * next(),
          stretch[1] * next(),
          stretch[2] * next(),
        ]);
      const [a, b] = [body(0), body(2.5 + 2 * next())];
      const gap = between(a, b);
      const deep = depth(a, b);
      const overlap = deep > 0 && Number.isFinite(deep);
      if (overlap) overlaps++;
      const known = overlap ? -deep : apart(a, b);
      expect(Math.abs(gap.distance - known), `pair ${i}: ${gap.distance} against ${known}`).toBeLessThan(
        BOUND,
      );
      // The points told are that far apart, each is in its body, and the plane between them keeps both apart.
      const across = [0, 1, 2].reduce((s, k) => s + (gap.b[k] - gap.a[k]) * gap.normal[k], 0);
      expect(Math.abs(across - gap.distance), `pair ${i}`).toBeLessThan(BOUND);
      const [nx, ny, nz] = gap.normal;
      const plane =
        -reach(whole(b.length), flat(b), -nx, -ny, -nz) - reach(whole(a.length), flat(a), nx, ny, nz);
      expect(Math.abs(plane - gap.distance), `plane of pair ${i}`).toBeLessThan(2e-6);
    }
    expect(overlaps).toBeGreaterThan(50);
  });

  test("a search that is cut off tells a distance that is not too great, 300 pairs, seed 22", () => {
    const next = random(22);
    let cut = 0;
    for (let i = 0; i < 300; i++) {
      const body = (x: number): Vec[] =>
        Array.from({ length: 8 }, () => [x + 2 * next(), 2 * next(), 2 * next()]);
      const [a, b] = [body(0), body(6 + 3 * next())];
      const gap = newGap();
      convexDistance(whole(8), flat(a), whole(8), flat(b), gap, 1);
      const full = between(a, b).distance;
      if (gap.exact) expect(gap.distance).toBeCloseTo(full, 8);
      else {
        cut++;
        expect(gap.distance).toBeLessThanOrEqual(full + BOUND);
        expect(gap.distance).toBeGreaterThan(1);
      }
    }
    expect(cut).toBeGreaterThan(50);
  });

  test("coordinates that are no numbers are refused", () => {
    expect(() => between([[Number.NaN, 0, 0]], [[1, 0, 0]])).toThrow(RangeError);
  });
});
