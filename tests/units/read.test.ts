// What planners type, and what must be refused rather than guessed. Accepted forms: common practice, no source.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  digitsFor,
  fromSI,
  type Kind,
  printed,
  type Reading,
  read,
  type Shown,
  type System,
  type UnitName,
  unitFor,
  units,
} from "../../src/units/index.ts";

/** The value read, or a failure of the test that shows the sentence. */
function value(reading: Reading): number {
  if (!reading.ok) throw new Error(`refused: ${reading.problem}`);
  return reading.value;
}

/** The sentence of a refusal, or a failure of the test. */
function problem(reading: Reading): string {
  if (reading.ok) throw new Error(`read as ${reading.value}`);
  return reading.problem;
}

describe("accepted", () => {
  test.each<[string, Kind, number]>([
    ["12 ft 6 in", "length", 3.81],
    ["12ft 6in", "length", 3.81],
    [`12' 6"`, "length", 3.81],
    [`12'-6"`, "length", 3.81],
    ["12 ft 6 1/2 in", "length", 3.8227],
    ["-1 ft 6 in", "length", -0.4572],
    ["6 1/2 in", "length", 0.1651],
    ["3/8 in", "length", 0.009525],
    ["12.5 ft", "length", 3.81],
    ["3.81 m", "length", 3.81],
    ["120mm", "length", 0.12],
    [" 1 250 mm ", "length", 1.25],
    ["−5 mm", "length", -0.005],
    ["+5 mm", "length", 0.005],
    ["85 kip", "force", 378_098.8372971425],
    ["1.2 t", "force", 11_767.98],
    ["1.2 t", "mass", 1200],
    ["120 kN", "force", 120_000],
    ["26 900 lb", "mass", 12_201.634753],
    ["20 short ton", "mass", 18_143.6948],
    ["9.80665 kN", "mass", 1000],
    ["150 kPa", "pressure", 150_000],
    ["23 kip/in", "stiffness", 4027917.210669],
    ["1.5e6 N/m", "lineLoad", 1.5e6],
    ["2.5°", "angle", 0.0436332313],
    ["85 %", "ratio", 0.85],
    ["0.85", "ratio", 0.85],
    [".5 m", "length", 0.5],
  ])("%s as %s", (text, kind, expected) => {
    expect(value(read(text, kind)) / expected).toBeCloseTo(1, 8);
  });

  test("a bare number takes the unit shown beside the field", () => {
    expect(value(read("14.37", "force", "kN"))).toBe(14_370);
    expect(value(read("0", "length", "mm"))).toBe(0);
    expect(Object.is(value(read("-0", "length", "mm")), 0)).toBe(true);
  });
});

describe("refused with a sentence", () => {
  test("a comma, with both readings named", () => {
    expect(problem(read("14,37 m", "length"))).toMatch(/14\.37 m if the comma is a decimal sign.*1437 m/);
    expect(problem(read("1,437 kg", "mass"))).toMatch(/1\.437 kg.*1437 kg/);
    expect(problem(read("1,437,000 N", "force"))).toMatch(/Type 1437000 N if it parts thousands/);
  });

  test.each<[string, Kind, RegExp]>([
    ["", "length", /Nothing was typed/],
    ["long", "length", /"long" is not a number with a unit/],
    ["12", "length", /"12" has no unit.*m, mm, cm, ft, in/],
    ["12 kN", "length", /"kN" measures a force, but a length is asked for/],
    ["12 ft 6 in", "force", /is a length, but a force is asked for/],
    ["12 ft 14 in", "length", /14 inches.*fewer than 12/],
    ["12.5 ft 6 in", "length", /part of a foot and inches too/],
    ["6 1/3 in", "length", /halves to 64ths/],
    ["6 9/8 in", "length", /halves to 64ths/],
    ["5 ton", "mass", /"ton" can mean more than one unit.*t \(1000 kg\) or short ton/],
    ["5 k", "force", /kip or kN/],
    ["5 KN", "force", /"KN" is no unit known here/],
    ["5 toString", "force", /no unit known/],
    ["1.2.3 m", "length", /no unit known|not a number/],
    ["12 ft 6", "length", /no unit known/],
    ["--5 mm", "length", /not a number/],
    ["1e999 m", "length", /too large/],
    ["NaN m", "length", /not a number/],
    ["1 25 mm", "length", /no unit known/],
  ])("%s as %s", (text, kind, words) => {
    expect(problem(read(text, kind))).toMatch(words);
  });
});

describe("what is printed can be typed back", () => {
  const shownAs: readonly [Shown, Kind][] = [
    ["load", "force"],
    ["mass", "mass"],
    ["length", "length"],
    ["smallLength", "length"],
    ["groundPressure", "pressure"],
    ["stiffness", "stiffness"],
    ["windSpeed", "speed"],
    ["angle", "angle"],
    ["percent", "ratio"],
  ];
  const systems: readonly System[] = ["SI", "SI_t", "US"];

  test("to half a unit of the last printed digit, seed 14", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownAs),
        fc.constantFrom(...systems),
        fc.double({ min: -1e7, max: 1e7, noNaN: true }),
        ([shown, kind], system, x) => {
          const unit: UnitName = unitFor(shown, system);
          const back = value(read(printed(x, shown, system).number, kind, unit));
          const halfDigit = 0.5 * 10 ** -digitsFor(shown, system) * (1 + 1e-6);
          expect(Math.abs(fromSI(back - x, unit))).toBeLessThanOrEqual(halfDigit + 1e-8);
        },
      ),
      { seed: 14, numRuns: 2000 },
    );
  });

  test("every unit's own name is read", () => {
    for (const name of Object.keys(units) as UnitName[]) {
      const kind = units[name].kind;
      expect(value(read(`2 ${name}`, kind)) / (2 * units[name].inSI)).toBeCloseTo(1, 12);
    }
  });
});
