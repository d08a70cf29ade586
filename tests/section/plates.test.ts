// Section properties from three plates: limits in which the answer is plain (common practice); tables stand in
// tests/reference.

import { expect, test } from "vitest";
import { type Plates, sectionOf } from "../../src/section/index.ts";

const nothing = [0, 0] as const;

test("a lone web is a rectangle: b h^3 / 12, centroid at half its height, no warping", () => {
  const s = sectionOf({ topFlange: nothing, web: [2, 0.03], bottomFlange: nothing });
  expect(s.depth).toBe(2);
  expect(s.area).toBeCloseTo(0.06, 15);
  expect(s.centroid).toBe(1);
  expect(s.strongInertia).toBeCloseTo((0.03 * 8) / 12, 15);
  expect(s.weakInertia).toBeCloseTo((2 * 0.03 ** 3) / 12, 15);
  expect(s.torsion).toBeCloseTo((2 * 0.03 ** 3) / 3, 15);
  expect(s.warping).toBe(0);
  expect(s.webArea).toBeCloseTo(0.06, 15);
});

test("turned upside down: the centroid is mirrored, every second moment stays", () => {
  const plates: Plates = { topFlange: [0.4, 0.02], web: [1.5, 0.014], bottomFlange: [0.6, 0.04] };
  const a = sectionOf(plates);
  const b = sectionOf({ ...plates, topFlange: plates.bottomFlange, bottomFlange: plates.topFlange });
  expect(a.centroid + b.centroid).toBeCloseTo(a.depth, 14);
  expect(a.centroid).toBeLessThan(a.depth / 2);
  for (const key of ["area", "strongInertia", "weakInertia", "torsion", "warping"] as const)
    expect(Math.abs(a[key] - b[key])).toBeLessThan(1e-14 * a[key]);
});

test("twice the size: areas by 4, second moments by 16, warping by 64", () => {
  const plates: Plates = { topFlange: [0.4, 0.02], web: [1.5, 0.014], bottomFlange: [0.6, 0.04] };
  const double = (p: readonly [number, number]) => [2 * p[0], 2 * p[1]] as const;
  const a = sectionOf(plates);
  const b = sectionOf({
    topFlange: double(plates.topFlange),
    web: double(plates.web),
    bottomFlange: double(plates.bottomFlange),
  });
  expect(b.area / a.area).toBeCloseTo(4, 12);
  expect(b.strongInertia / a.strongInertia).toBeCloseTo(16, 12);
  expect(b.torsion / a.torsion).toBeCloseTo(16, 12);
  expect(b.warping / a.warping).toBeCloseTo(64, 12);
});

test("sizes that are negative or no numbers, and plates without area, are refused in words", () => {
  const web = [1, 0.01] as const;
  for (const size of [-0.1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => sectionOf({ topFlange: [size, 0.02], web, bottomFlange: nothing })).toThrow(
      /a length of 0 m or more is allowed/,
    );
  expect(() => sectionOf({ topFlange: nothing, web: nothing, bottomFlange: nothing })).toThrow(
    /give at least one plate a size/,
  );
});
