// Value and limit of a finding in the chosen units, and sentences that say that their numbers are in the plan's.
import { describe, expect, test } from "vitest";
import { findingNumbers, inPlanUnits } from "../../src/app/index.ts";
import { madeUpFinding } from "./madeUp.ts";

const numbers = (value: number, limit: number | null, unit: string, use: number | null = null) =>
  madeUpFinding({ id: "n", value, limit, unit, use });

describe("numbers of a finding", () => {
  test("follow the units: 1 kip is 4.4482216 kN, 1 ft 0.3048 m, 1 lb 0.45359237 kg (NIST SP 811, B.8)", () => {
    const load = numbers(444.82216, 222.41108, "kN", 2);
    expect(findingNumbers(load, "SI")).toEqual({ value: "444.8 kN", limit: "222.4 kN", use: "200 %" });
    expect(findingNumbers(load, "US")).toEqual({ value: "100.0 kip", limit: "50.0 kip", use: "200 %" });
    // 1 t of load is 9.80665 kN.
    expect(findingNumbers(numbers(98.0665, 196.133, "kN"), "SI_t")).toMatchObject({
      value: "10.0 t",
      limit: "20.0 t",
    });
    expect(findingNumbers(numbers(3.048, 6.096, "m"), "US")).toMatchObject({
      value: "10.00 ft",
      limit: "20.00 ft",
    });
    expect(findingNumbers(numbers(25.4, null, "mm"), "US")).toMatchObject({ value: "1.00 in", limit: "" });
    expect(findingNumbers(numbers(4.5359237, null, "t"), "US")?.value).toBe("10000 lb");
  });

  test("keep a unit that no system changes, with four digits", () => {
    expect(findingNumbers(numbers(25.400556, 25, "%"), "US")).toMatchObject({
      value: "25.4 %",
      limit: "25 %",
    });
    expect(findingNumbers(numbers(1.7549, 1.5, "moment ratio"), "US")).toMatchObject({
      value: "1.755 moment ratio",
      limit: "1.5 moment ratio",
    });
    expect(findingNumbers(numbers(1.7549, null, "moment ratio"), "US")?.value).toBe("1.755 moment ratio");
    expect(findingNumbers(numbers(2, null, ""), "US")?.value).toBe("2");
  });

  test("stand with their unit each, also where that is words; a ratio has none", () => {
    expect(findingNumbers(numbers(12, 5, "% out of level"), "SI")).toMatchObject({
      value: "12 % out of level",
      limit: "5 % out of level",
    });
    expect(findingNumbers(numbers(3, 8, "bolts"), "SI")).toMatchObject({
      value: "3 bolts",
      limit: "8 bolts",
    });
    expect(findingNumbers(numbers(0.25, 0.5, "1"), "SI")).toMatchObject({ value: "0.25", limit: "0.5" });
  });

  test("are none where there is no value: a blank is not a zero", () => {
    expect(findingNumbers(madeUpFinding({ id: "n", value: null, limit: 3 }), "SI")).toBeNull();
    expect(findingNumbers(numbers(Number.NaN, 3, "kN"), "SI")).toBeNull();
    expect(findingNumbers(numbers(1, 3, "kN", Number.POSITIVE_INFINITY), "SI")?.use).toBe("");
  });

  test("a sentence with numbers in other units than the chosen ones is marked", () => {
    const load = "group load of rear left: 226.4 is above 186.0 kN";
    const fall = "the set falls 212 mm there before it is caught";
    expect([load, fall].map((words) => inPlanUnits(words, "SI"))).toEqual([false, false]);
    expect([load, fall].map((words) => inPlanUnits(words, "SI_t"))).toEqual([true, false]);
    expect([load, fall].map((words) => inPlanUnits(words, "US"))).toEqual([true, true]);
    expect(inPlanUnits("step 4: 2 bunks free at 12 %", "US")).toBe(false);
  });
});
