// How numbers are shown: loads to 0.1 kN or 0.1 t, percentages whole, no zero in the place of what is not known.
import { describe, expect, test } from "vitest";
import { missing, print, printed, type Shown, type System, signOf } from "../../src/units/index.ts";

describe("printing", () => {
  test.each<[number, Shown, System, string]>([
    [123_440, "load", "SI", "123.4 kN"],
    [123_440, "load", "SI_t", "12.6 t"],
    [123_440, "load", "US", "27.8 kip"],
    [12_201.6, "mass", "SI", "12.2 t"],
    [12_201.6, "mass", "US", "26900 lb"],
    [24.0049, "length", "SI", "24.00 m"],
    [3.81, "length", "US", "12.50 ft"],
    [0.0204, "smallLength", "SI", "20 mm"],
    [0.0204, "smallLength", "US", "0.80 in"],
    [0.754, "percent", "SI", "75 %"],
    [150_000, "groundPressure", "SI", "150 kPa"],
    [150_000, "groundPressure", "US", "3.13 ksf"],
    [3.55e8, "stress", "SI", "355 MPa"],
    [2.2e7, "oilPressure", "SI", "220 bar"],
    [9, "windSpeed", "SI", "9.0 m/s"],
    [9, "windSpeed", "US", "20 mph"],
    [0.0436332, "angle", "SI", "2.5°"],
    [5400, "duration", "SI", "90 min"],
  ])("%d as %s in %s is %s", (value, shown, system, text) => {
    expect(print(value, shown, system)).toBe(text);
  });

  test("no negative zero, but a small negative number keeps its sign when it has a digit", () => {
    expect(print(-10, "load", "SI")).toBe("0.0 kN");
    expect(print(-60, "load", "SI")).toBe("-0.1 kN");
  });

  test("what is not known is shown as missing, never as zero", () => {
    for (const value of [undefined, null, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(printed(value, "load", "SI")).toEqual({ number: missing, unit: "kN" });
    }
  });

  test("a table's head can name the unit alone", () => {
    expect(signOf("load", "SI_t")).toBe("t");
    expect(signOf("load", "SI")).toBe("kN");
    expect(signOf("area", "SI")).toBe("m²");
  });
});
