// The bands: drawn from the shares as they are. A force that is missing shows as a hole below the weight line.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Support } from "../../src/app/index.ts";
import { bandPaths, bandsOf, type Frame, holePath, labelPlace, stackOf } from "../../src/share/index.ts";
import { madeUpSet, supports, weight } from "../app/madeUp.ts";

/** 1 px for 1 N, three steps of 100 px each; the weight line stands at y = 0, no load at y = 1000. */
const frame: Frame = { left: 0, width: 300, y: (load) => 1000 - load };
const xOf = (step: number, progress: number) => (step + progress) / 3;

/** Area inside a path of straight lines (px2), by the shoelace rule; pieces are added. */
function areaOf(path: string): number {
  let area = 0;
  for (const piece of path.split("M").slice(1)) {
    const points = piece
      .replace("Z", "")
      .split("L")
      .map((point) => point.split(" ").map(Number));
    let twice = 0;
    points.forEach(([x, y], i) => {
      const [x2, y2] = points[(i + 1) % points.length];
      twice += x * y2 - x2 * y;
    });
    area += Math.abs(twice) / 2;
  }
  return area;
}

describe("order and patterns", () => {
  const named = (name: string, kind: Support["kind"]): Support => ({ ...supports[0], name, kind });

  test("who takes over stands beside whom it takes over from; left and right differ by their hatch", () => {
    const bands = bandsOf([
      named("far crane", "far crane"),
      named("near crane", "near crane"),
      named("rear aft", "rear train"),
      named("rear left", "rear train"),
      named("rear right", "rear train"),
      named("front left", "front train"),
      named("near L", "near bearings"),
      named("near R", "near bearings"),
      named("far L", "far bearings"),
    ]);
    expect(bands.map(({ name }) => name)).toEqual([
      "rear aft",
      "rear left",
      "rear right",
      "near crane",
      "near L",
      "near R",
      "far L",
      "far crane",
      "front left",
    ]);
    const pattern = Object.fromEntries(bands.map((band) => [band.name, band.pattern]));
    expect(pattern).toMatchObject({ "rear aft": "plain", "rear left": "left", "rear right": "right" });
    expect(pattern).toMatchObject({ "near L": "left", "near R": "right", "far crane": "plain" });
  });

  test("a support that is no band is not stacked", () => {
    expect(bandsOf(supports).map(({ name }) => name)).toEqual(["rear left", "rear right", "far crane"]);
  });
});

describe("paths", () => {
  test("the outline of a band is the load itself: corners at the stored poses", () => {
    const [rearLeft] = bandPaths(stackOf(madeUpSet(), xOf), frame);
    expect(rearLeft).toBe(
      "M0 400L25 350L100 400L100 400L150 520L200 820L200 820L300 820" +
        "L300 1000L200 1000L200 1000L150 1000L100 1000L100 1000L25 1000L0 1000Z",
    );
  });

  test("areas of all bands together are the weight times the width (1e-9 of it), and there is no hole", () => {
    const stack = stackOf(madeUpSet(), xOf);
    const sum = bandPaths(stack, frame).reduce((all, path) => all + areaOf(path), 0);
    expect(sum / (weight * frame.width)).toBeCloseTo(1, 9);
    expect(holePath(stack, frame)).toBe("");
  });

  test("a band is not drawn where it carries nothing", () => {
    const paths = bandPaths(stackOf(madeUpSet(), xOf), frame);
    expect(paths[2].startsWith("M100 0L150 0L200 0")).toBe(true);
  });

  test.each([0, Number.NaN])("a force taken out (%s) leaves a hole of its own size", (nothing) => {
    const set = madeUpSet();
    // The crane's share in the last step: 700 N over 100 px.
    for (const i of [6, 7]) set.shares[i * supports.length] = nothing;
    const stack = stackOf(set, xOf);
    const hole = holePath(stack, frame);
    expect(hole).toBe("M200 0L200 0L300 0L300 700L200 700L200 0Z");
    expect(areaOf(hole)).toBeCloseTo(700 * 100, 6);
    const sum = bandPaths(stack, frame).reduce((all, path) => all + areaOf(path), 0);
    expect(sum).toBeCloseTo(weight * frame.width - 700 * 100, 6);
  });

  test("one force taken out anywhere is always seen (seed 3)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 }), fc.constantFrom(0, 1, 3), (pose, column) => {
        const set = madeUpSet();
        const share = set.shares[pose * supports.length + column];
        fc.pre(share > 0);
        set.shares[pose * supports.length + column] = 0;
        expect(holePath(stackOf(set, xOf), frame)).not.toBe("");
      }),
      { seed: 3 },
    );
  });

  test("a pull stands below the line of no load, and what others carry more stands above the weight", () => {
    const set = madeUpSet();
    set.shares[0 * supports.length + 1] = 1100;
    set.shares[0 * supports.length + 3] = -100;
    const stack = stackOf(set, xOf);
    expect(stack.most).toBe(1100);
    expect(stack.least).toBe(-100);
    expect(stack.sum[0]).toBeCloseTo(1000, 9);
    expect(holePath(stack, frame)).toBe("");
  });

  test("a step that was not solved breaks the bands", () => {
    const set = madeUpSet();
    const steps = set.steps.map((step) => (step.index === 1 ? { ...step, solved: false, count: 0 } : step));
    const stack = stackOf({ ...set, steps }, xOf);
    expect(stack.stretches).toEqual([
      [0, 3],
      [6, 8],
    ]);
    expect(bandPaths(stack, frame)[0].match(/M/g)).toHaveLength(2);
  });
});

describe("labels", () => {
  test("stand wholly inside their band", () => {
    const stack = stackOf(madeUpSet(), xOf);
    const size = { width: 60, height: 17 };
    stack.bands.forEach((_, b) => {
      const place = labelPlace(stack, b, frame, size);
      expect(place).not.toBeNull();
      if (place === null) return;
      for (let i = 0; i < stack.x.length; i++) {
        const x = stack.x[i] * frame.width;
        if (x < place.x - size.width / 2 || x > place.x + size.width / 2) continue;
        expect(frame.y(stack.upper[b][i])).toBeLessThanOrEqual(place.y - size.height / 2 + 1e-9);
        expect(frame.y(stack.lower[b][i])).toBeGreaterThanOrEqual(place.y + size.height / 2 - 1e-9);
      }
    });
  });

  test("are left out where the band is too thin", () => {
    const thin: Frame = { ...frame, y: (load) => 10 - load / 100 };
    expect(labelPlace(stackOf(madeUpSet(), xOf), 1, thin, { width: 60, height: 17 })).toBeNull();
  });
});
