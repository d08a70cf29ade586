// Conversion factors against NIST Special Publication 811 (2008 edition), Appendix B.8 and B.9.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  convert,
  fromSI,
  isUnit,
  massOf,
  standardGravity,
  toSI,
  type UnitName,
  units,
  unitsOf,
  weightOf,
} from "../../src/units/index.ts";

describe("exact definitions (NIST SP 811 B.8, factors in bold)", () => {
  test.each<[UnitName, number]>([
    ["ft", 0.3048],
    ["in", 0.0254],
    ["lb", 0.45359237],
    ["t", 1000],
    ["tf", 9806.65],
    ["bar", 1e5],
    ["mm", 0.001],
    ["min", 60],
    ["h", 3600],
    ["d", 86_400],
    ["cm2", 1e-4],
    ["cm3", 1e-6],
    ["cm4", 1e-8],
    ["mm4", 1e-12],
    ["ft/s2", 0.3048],
    ["mm/kN", 1e-6],
    ["kV", 1000],
    ["C", 1],
  ])("one %s is exactly %d in SI", (unit, inSI) => {
    expect(toSI(1, unit)).toBe(inSI);
  });

  test("standard gravity", () => {
    expect(standardGravity).toBe(9.80665);
    expect(weightOf(1)).toBe(9.80665);
    expect(massOf(weightOf(123.4))).toBeCloseTo(123.4, 12);
  });
});

describe("derived factors, printed to seven figures in NIST SP 811 B.8", () => {
  // Bound: half a unit of the seventh figure, as the table is rounded there.
  test.each<[UnitName, number]>([
    ["lbf", 4.448222],
    ["kip", 4.448222e3],
    ["psi", 6.894757e3],
    ["ksi", 6.894757e6],
    ["psf", 4.788026e1],
    ["ft2", 9.290304e-2],
    ["in2", 6.4516e-4],
    ["lb/ft", 1.488164],
    ["lbf/ft", 1.45939e1],
    ["mph", 4.4704e-1],
    ["ft/s", 3.048e-1],
    ["ft/min", 5.08e-3],
    ["km/h", 2.777778e-1],
    ["deg", 1.745329e-2],
    ["short ton", 9.071847e2],
    ["in3", 1.638706e-5],
    ["in4", 4.162314e-7],
    ["lb/ft3", 1.601846e1],
  ])("one %s is %d in SI", (unit, printed) => {
    expect(Math.abs(toSI(1, unit) / printed - 1)).toBeLessThan(5e-7);
  });
});

describe("factors made of others", () => {
  // Pound-force foot 1.355818 N m and pound-force per inch 175.1268 N/m: NIST SP 811 B.8.
  test("kip ft, kip/in, kip/ft, ksf", () => {
    expect(toSI(1, "kip ft") / 1.355818e3).toBeCloseTo(1, 6);
    expect(toSI(1, "kip/in") / 1.751268e5).toBeCloseTo(1, 6);
    expect(toSI(1, "kip/ft")).toBeCloseTo(toSI(1, "kip/in") / 12, 8);
    expect(toSI(1, "ksf")).toBeCloseTo(1000 * toSI(1, "psf"), 8);
  });
});

describe("movement per force, turning and sinking, from the factors above", () => {
  test("in/kip is the inverse of kip/in; deg/min and in/h by their parts", () => {
    expect(toSI(1, "in/kip") * toSI(1, "kip/in")).toBeCloseTo(1, 12);
    expect(toSI(60, "deg/min")).toBeCloseTo(toSI(1, "deg"), 12);
    expect(toSI(3600, "in/h")).toBeCloseTo(toSI(1, "in"), 12);
    expect(toSI(3600, "mm/h")).toBeCloseTo(toSI(1, "mm"), 12);
  });
});

describe("converting", () => {
  const names = Object.keys(units) as UnitName[];

  test("there and back within 4 units of the last bit, seed 811", () => {
    const pairs = names.flatMap((a) => unitsOf(units[a].kind).map((b) => [a, b] as const));
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.double({ min: 1e-6, max: 1e9, noNaN: true }), ([a, b], x) => {
        expect(Math.abs(convert(convert(x, a, b), b, a) / x - 1)).toBeLessThan(4 * Number.EPSILON);
        expect(Math.abs(fromSI(toSI(x, a), a) / x - 1)).toBeLessThan(4 * Number.EPSILON);
      }),
      { seed: 811, numRuns: 2000 },
    );
  });

  test("units of different kinds are refused by name", () => {
    expect(() => convert(1, "t", "kN")).toThrow(RangeError);
    expect(() => convert(1, "t", "kN")).toThrow(/'t' measures mass and 'kN' measures force/);
  });

  test("a unit is known exactly as written", () => {
    expect(isUnit("kN")).toBe(true);
    expect(isUnit("KN")).toBe(false);
    expect(isUnit("toString")).toBe(false);
  });
});
