// Numbers printed in full and typed back: over every unit of every kind, and every shown quantity in every system.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  printFull,
  readTyped,
  type Shown,
  type System,
  systems,
  type UnitName,
  unitFor,
  units,
  unitsOf,
} from "../../src/units/index.ts";

const names = Object.keys(units) as UnitName[];
const pairs = names.flatMap((a) => unitsOf(units[a].kind).map((b) => [a, b] as const));
const number = fc.oneof(
  fc.double({ min: -1e9, max: 1e9, noNaN: true }),
  fc.double({ min: -1, max: 1, noNaN: true }),
  fc.integer({ min: -100_000, max: 100_000 }).map((n) => n / 1000),
);

test("printed in full and read back is the same number within two units of the 15th digit", () => {
  fc.assert(
    fc.property(fc.constantFrom(...pairs), number, ([keptIn, shownIn], value) => {
      const back = readTyped(printFull(value, keptIn, shownIn), keptIn, shownIn);
      expect(back.ok).toBe(true);
      // Each of the two roundings to 15 digits is at most half of 1e-14 of the number, which is worst for a leading 1.
      if (back.ok) expect(Math.abs(back.value - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value) + 1e-300);
    }),
    { numRuns: 3000 },
  );
});

test("a number typed in the unit in which it is kept comes back exactly as typed", () => {
  fc.assert(
    fc.property(fc.constantFrom(...names), fc.integer({ min: -1e7, max: 1e7 }), (unit, n) => {
      const value = n / 1000;
      expect(readTyped(String(value), unit, unit)).toEqual({
        ok: true,
        value: value === 0 ? 0 : value,
        unit,
      });
    }),
    { numRuns: 2000 },
  );
});

describe("every shown quantity", () => {
  // One unit of each kind in which a plan keeps it.
  const keptFor: Record<Shown, UnitName> = {
    load: "kN",
    mass: "t",
    length: "m",
    smallLength: "mm",
    area: "m2",
    groundPressure: "kPa",
    oilPressure: "bar",
    stress: "MPa",
    moment: "kN m",
    lineLoad: "kN/m",
    lineMass: "kg/m",
    stiffness: "kN/mm",
    windSpeed: "m/s",
    travelSpeed: "m/min",
    angle: "deg",
    duration: "min",
    instant: "s",
    days: "d",
    smallArea: "mm2",
    modulus: "cm3",
    inertia: "m4",
    elasticity: "GPa",
    density: "kg/m3",
    flexibility: "mm/kN",
    turning: "deg/min",
    sinking: "mm/h",
    acceleration: "m/s2",
    temperature: "C",
    voltage: "kV",
    percent: "%",
  };
  const all = (Object.keys(keptFor) as Shown[]).flatMap((shown) =>
    (Object.keys(systems) as System[]).map((system) => [shown, system] as const),
  );
  test.each(all)("%s in %s", (shown, system) => {
    const keptIn = keptFor[shown];
    for (const value of [0, 1, 12.345, 780, -0.25]) {
      const text = printFull(value, keptIn, unitFor(shown, system));
      const back = readTyped(text, keptIn, unitFor(shown, system));
      if (!back.ok) throw new Error(back.problem);
      expect(Math.abs(back.value - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value));
    }
  });
});

describe("what is typed with a unit", () => {
  // By definition: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg (NIST SP 811 B.8).
  test.each<[string, UnitName, number]>([
    ["12 ft 6 in", "m", 3.81],
    ["1000 lb", "t", 0.45359237],
    ["1.2 t", "kN", 11.76798],
    ["2 m", "mm", 2000],
    ["15 °C", "C", 15],
    ["1 in4", "mm4", 416231.4256],
    ["42 days", "d", 42],
    ["132 kV", "kV", 132],
    ["1 lb/ft3", "kg/m3", 16.018463373960138],
  ])("%s kept in %s", (text, keptIn, value) => {
    const got = readTyped(text, keptIn, keptIn);
    expect(got.ok ? got.value : got.problem).toBeCloseTo(value, 9);
  });

  test("degrees Fahrenheit, commas and units of another kind are refused with a sentence", () => {
    expect(readTyped("60 F", "C", "C")).toMatchObject({
      ok: false,
      problem: expect.stringMatching(/Celsius/),
    });
    expect(readTyped("1,5", "m", "m")).toMatchObject({ ok: false, problem: expect.stringMatching(/comma/) });
    expect(readTyped("5 kN", "m", "m")).toMatchObject({
      ok: false,
      problem: expect.stringMatching(/a force/),
    });
    expect(() => printFull(1, "m", "kN")).toThrow(/'m' measures length and 'kN' measures force/);
  });
});
