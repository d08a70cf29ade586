// Moments of a transporter's spine against closed forms of statics and against a sum taken at many stations.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type SpineForce, spineMoment, worstLineLost } from "../../../src/mechanics/index.ts";
import { within } from "../../reference/close.ts";

const up = (x: number, F: number): SpineForce => ({ x, up: F, couple: 0 });
/** Equal cylinders on n lines of a pitch, about the middle, carrying F together. */
const lines = (n: number, pitch: number, F: number) =>
  Array.from({ length: n }, (_, i) => up((i - (n - 1) / 2) * pitch, F / n));

describe("spine moments", () => {
  test("one bunk in the middle of 8 lines: the half of the lines times their mean arm, F/2 x 2.8 m", () => {
    const m = spineMoment([...lines(8, 1.4, 1000), up(0, -1000)], 11.2, 0);
    within(m.moment, 1400, 1e-12);
    expect(m.x).toBe(0);
  });

  test("own weight alone, spread as evenly as its lines, bends by its ends: against w l^2/8 of each overhang", () => {
    // Two lines 4 m apart below a spine of 8 m: overhangs of 2 m hog by w 2^2/2, and so does nothing sag beyond them.
    const m = spineMoment([up(-2, 40), up(2, 40)], 8, 10);
    within(m.moment, -20, 1e-12);
  });

  test("lines at both ends only: own weight sags by w L^2/8, found between the forces", () => {
    const m = spineMoment([up(-5, 50), up(5, 50)], 10, 10);
    within(m.moment, 125, 1e-12);
    within(1 + m.x, 1, 1e-12);
  });

  test("a bunk pushed along at a height turns the spine by a couple that the groups balance", () => {
    // 30 kN at 1.5 m on a deck on two lines 3 m apart: 15 kN down behind, 15 kN up before.
    const m = spineMoment([up(-1.5, -15), up(1.5, 15), { x: 0, up: 0, couple: 45 }], 4, 0);
    within(Math.abs(m.moment), 22.5, 1e-12);
  });

  test("random spines in balance: no station has more than the greatest found (seed 11)", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.double({ min: -50, max: 50, noNaN: true })), {
          minLength: 2,
          maxLength: 8,
        }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (drawn, weight) => {
          const forces = drawn.map(([x, F]) => up(x / 10, F));
          // Two more forces at the ends bring it into balance.
          const sum = forces.reduce((s, f) => s + f.up, 0) - weight * 10;
          const turn = forces.reduce((s, f) => s + f.up * f.x, 0);
          forces.push(up(-5, -sum / 2 + turn / 10), up(5, -sum / 2 - turn / 10));
          const moment = (x: number) =>
            forces.reduce((s, f) => s + (f.x < x ? f.up * (x - f.x) : 0), 0) - (weight * (x + 5) ** 2) / 2;
          let most = 0;
          for (let i = 0; i <= 2000; i++) most = Math.max(most, Math.abs(moment(-5 + i / 200)));
          const found = Math.abs(spineMoment(forces, 10, weight).moment);
          // Between stations 5 mm apart a parabola rises by w d^2 / 8 at most.
          expect(found).toBeGreaterThanOrEqual(most - 1e-9 * (1 + most));
          expect(found).toBeLessThanOrEqual(most + (weight * 0.005 ** 2) / 8 + 1e-9 * (1 + most));
        },
      ),
      { seed: 11 },
    );
  });
});

describe("an axle line lost", () => {
  // Groups of a three-point layout: 3 lines behind on one oil, 3 before with an oil on either side.
  const layout = [
    [0, 0],
    [0, 0],
    [0, 0],
    [1, 2],
    [1, 2],
    [1, 2],
  ] as const;

  test("three lines become two: half as much again on each of those left in the group", () => {
    const worst = worstLineLost(layout, [20, 10, 10], [6, 3, 3]);
    expect(worst).toEqual({ lost: 0, line: 1, load: 60 });
  });

  test("left and right oil change apart", () => {
    const worst = worstLineLost(layout, [1, 10, 30], [6, 3, 3]);
    expect(worst).toEqual({ lost: 3, line: 4, load: 60 });
  });

  test("a group of one line is no group without it: that loss is not told here", () => {
    expect(worstLineLost([[0, 1]], [5, 5], [1, 1])).toBeNull();
    expect(
      worstLineLost(
        [
          [0, 1],
          [2, 2],
          [2, 2],
        ],
        [50, 50, 4],
        [1, 1, 4],
      ),
    ).toEqual({
      lost: 1,
      line: 0,
      load: 100,
    });
  });
});
