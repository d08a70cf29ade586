// Drawn girders and weights: plates to scale, marks along a girder, sums that add up, lines of the ledger judged as the check does.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { elevationOf, platesOf } from "../../../src/places/plan/data/drawn/steel.ts";
import { ledgerRows, ledgerSum, sumsOf, weighed } from "../../../src/places/plan/data/drawn/weights.ts";
import { type Plan, type PlanSet, pieceSection, readPlan, takeOff } from "../../../src/plan/index.ts";

function demo(): Plan {
  const read = readPlan(readFileSync("scenarios/demo.json", "utf8"));
  if (!read.ok) throw new Error("the demonstration is no plan");
  return read.plan;
}
const [set] = demo().sets;

describe("a section", () => {
  test("drawn rectangles have the area and the centroid of the section's properties", () => {
    for (const girder of set.girders) {
      for (const piece of girder.pieces) {
        const boxes = platesOf(piece);
        const area = boxes.reduce((sum, b) => sum + b.width * b.height, 0);
        const height = boxes.reduce((sum, b) => sum + b.width * b.height * (b.z + b.height / 2), 0) / area;
        const section = pieceSection(piece);
        expect(area / 1e6).toBeCloseTo(section.area, 12);
        expect(height / 1000).toBeCloseTo(section.centroid, 12);
        expect(boxes[2].z + boxes[2].height).toBeCloseTo(section.depth * 1000, 9);
      }
    }
  });
});

describe("an elevation", () => {
  test("has the pieces, and the marks of its own girder alone", () => {
    const it = elevationOf(set, set.girders[0]);
    expect(it.pieces.map(({ mark, from, to }) => [mark, from, to])).toEqual([
      ["L1", 0, 19],
      ["L2", 19, 42],
      ["L3", 42, 60],
    ]);
    expect(it.splices.map(({ at }) => at)).toEqual([19, 42]);
    expect(it.frames).toHaveLength(set.crossFrames.length);
    expect(it.stiffeners).toHaveLength((set.stiffeners ?? []).filter(({ girder }) => girder === "L").length);
    expect(it.mostCamber).toBe(113);
  });

  test("camber runs from end to end, level where it is not stated", () => {
    const bare = { ...set.girders[0], camber_mm: [] };
    expect(elevationOf(set, bare).camber).toEqual([
      { at: 0, rise: 0 },
      { at: 60, rise: 0 },
    ]);
    expect(elevationOf(set, bare).mostCamber).toBe(0);
  });
});

describe("weights", () => {
  test("sums by what they count add up to the whole; the factor of fabrication is in the ratio stated", () => {
    const it = takeOff(set);
    const sums = sumsOf(it);
    expect(sums.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(it.mass, 6);
    const of = (word: string) => sums.find(({ counted }) => counted === word)?.mass ?? Number.NaN;
    expect(of("stiffeners and welds") / of("plates")).toBeCloseTo((set.fabricationFactor_pct ?? 0) / 100, 12);
    expect(of("splices")).toBeCloseTo(1000 * set.splices.reduce((sum, { mass_t }) => sum + mass_t, 0), 6);
  });

  const withLedger = (...ledger: PlanSet["ledger"]) => ({ ...set, ledger });
  const line = (
    covers: "girders" | "splices" | "whole set" | undefined,
    low: number,
    best: number,
    high: number,
  ) => ({
    item: "a line",
    ...(covers === undefined ? {} : { covers }),
    mass_t: { low, best, high },
    source: "test",
  });

  test("a line is inside from low to high, both counted, as the check of weights has it", () => {
    const mass = takeOff(set).mass / 1000;
    const judged = (low: number, high: number) => {
      const own = withLedger(line("whole set", low, (low + high) / 2, high));
      return ledgerRows(own, takeOff(own))[0].is;
    };
    expect(judged(mass, mass + 1)).toBe("inside");
    expect(judged(mass - 1, mass)).toBe("inside");
    expect(judged(mass + 0.001, mass + 1)).toBe("below");
    expect(judged(mass - 1, mass - 0.001)).toBe("above");
    const silent = withLedger(line(undefined, 1, 2, 3));
    expect(ledgerRows(silent, takeOff(silent))[0]).toMatchObject({ is: "not compared", apart: null });
  });

  test("the ledger's sum names the parts that no line covers, and never counts them as nothing", () => {
    const parts = withLedger(line("girders", 90, 98, 102), line("splices", 5, 6, 7));
    expect(ledgerSum(parts, takeOff(parts))).toEqual({ missing: ["cross-frames", "attachments"] });
    const whole = withLedger(line("girders", 90, 98, 102), line("whole set", 110, 119, 125));
    expect(ledgerSum(whole, takeOff(whole))).toEqual({
      low: 110_000,
      best: 119_000,
      high: 125_000,
      by: "whole",
    });
  });

  test("a draft that cannot be weighed says so", () => {
    const broken = { ...set, splices: [{ ...set.splices[0], girder: "no such" }] };
    expect(weighed(broken).ok).toBe(false);
    expect(weighed(set).ok).toBe(true);
  });
});
