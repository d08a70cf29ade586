// The axis of the operation: widths that add up, places that go there and back. Common sense, no source.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axisOf, fromX, toX, travelOf, type Width } from "../../src/app/index.ts";
import { madeUpSet } from "./madeUp.ts";

const set = madeUpSet();
const widthsOf = (width: Width) => {
  const { edges } = axisOf(set, width);
  return [0, 1, 2].map((i) => edges[i + 1] - edges[i]);
};

describe("the axis", () => {
  test("equal steps are equal", () => {
    for (const part of widthsOf("steps")) expect(part).toBeCloseTo(1 / 3, 12);
  });

  test("by travel: steps that roll 20 m and 10 m stand as 2 to 1, the one at rest is narrow but there", () => {
    expect([0, 1, 2].map((i) => travelOf(set, i))).toEqual([20, 0, 10]);
    const [first, second, third] = widthsOf("travel");
    expect(first / third).toBeCloseTo(2, 12);
    expect(second).toBeCloseTo(0.2, 12);
  });

  test("by minutes: 10 to 30, and the step without minutes is named", () => {
    const axis = axisOf(set, "time");
    expect(axis.unknown).toEqual([1]);
    const [first, second, third] = widthsOf("time");
    expect(first).toBeGreaterThanOrEqual(second * 0.99);
    expect(third / first).toBeGreaterThan(2);
  });

  test("starts at 0, ends at 1 and never turns back, whatever the measure", () => {
    for (const width of ["steps", "travel", "time"] as const) {
      const { edges } = axisOf(set, width);
      expect(edges[0]).toBe(0);
      expect(edges[3]).toBe(1);
      for (let i = 0; i < 3; i++) expect(edges[i + 1]).toBeGreaterThan(edges[i]);
    }
  });

  test("a place goes there and back within 1e-9", () => {
    const axis = axisOf(set, "travel");
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (step, progress) => {
          const back = fromX(axis, toX(axis, { step, progress }));
          expect(back.step + back.progress).toBeCloseTo(step + progress, 9);
        },
      ),
      { seed: 7 },
    );
  });

  test("outside of it lies its nearest end", () => {
    const axis = axisOf(set, "steps");
    expect(fromX(axis, -1)).toEqual({ step: 0, progress: 0 });
    expect(fromX(axis, Number.NaN)).toEqual({ step: 0, progress: 0 });
    expect(fromX(axis, 2)).toEqual({ step: 2, progress: 1 });
  });
});
