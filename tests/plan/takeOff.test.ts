// The weight take-off against sums worked by hand, plate by plate, with 7850 kg/m3. Bound 0.1 %: rounding of the hand sums.
import { describe, expect, test } from "vitest";
import { type Girder, type PlanSet, pieceSection, type TakeOff, takeOff } from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

type Plates = Pick<Girder["pieces"][number], "topFlange_mm" | "web_mm" | "bottomFlange_mm">;

/** A bare set: only girders, nothing fixed to them. */
function setOf(girders: Girder[], more: Partial<PlanSet> = {}): PlanSet {
  const bare: PlanSet = {
    id: "S",
    name: "",
    start: { rearEnd_m: 0 },
    girders,
    splices: [],
    crossFrames: [],
    attachments: [],
    ledger: [],
    onTransporters: [],
    picks: [],
    steps: [],
  };
  return { ...bare, ...more };
}

function girder(line: string, y_m: number, pieces: [from: number, to: number, plates: Plates][]): Girder {
  return { line, y_m, camber_mm: [], pieces: pieces.map(([from_m, to_m, p]) => ({ from_m, to_m, ...p })) };
}

function near(value: number, byHand: number): void {
  expect(Math.abs(value - byHand)).toBeLessThanOrEqual(1e-3 * Math.abs(byHand));
}

function sums(result: TakeOff): void {
  const mass = result.lines.reduce((total, line) => total + line.mass, 0);
  expect(result.mass).toBe(mass);
}

const frame = { area_mm2: 3000, inPlaneInertia_m4: 1e-3, planInertia_m4: 1e-6, torsion_m4: 1e-7 };

describe("plates", () => {
  test("AASHTO LRFD 6.10.3.4.2 illustration: flanges 600x45, web 2310x16 give 714.0 kg/m a girder", () => {
    // 2 x 600 x 45 = 54 000; 2310 x 16 = 36 960; together 90 960 mm2 x 7850e-6 = 714.04 kg/m. Pinned to the last digit.
    const plates: Plates = { topFlange_mm: [600, 45], web_mm: [2310, 16], bottomFlange_mm: [600, 45] };
    const result = takeOff(setOf([girder("L", 2, [[0, 50, plates]]), girder("R", -2, [[0, 50, plates]])]));
    expect(result.pieces.map((piece) => piece.massPerMetre.toFixed(1))).toEqual(["714.0", "714.0"]);
    near(result.mass, 2 * 50 * 714.036);
    near(result.cg[2], 1.2);
    expect(pieceSection({ from_m: 0, to_m: 1, ...plates }).depth).toBeCloseTo(2.4, 12);
  });
});

describe("drawn sets", () => {
  test("one size of plates, stiffeners 5 %, three frames", () => {
    // Flanges 400x25 = 10 000, 450x30 = 13 500, web 1600x14 = 22 400: 45 900 mm2 x 7850e-6 = 360.315 kg/m.
    // Girders 2 x 24 m x 360.315 = 17 295.1; 5 % of it 864.8; frames 3 x 350 = 1050. Sum 19 209.9 kg.
    // Heights: bottom flange 15, web 30 + 800 = 830, top flange 1630 + 12.5 = 1642.5 mm.
    // (13 500 x 15 + 22 400 x 830 + 10 000 x 1642.5) / 45 900 = (202 500 + 18 592 000 + 16 425 000) / 45 900 = 767.31 mm.
    // With frames at 800 mm: (18 159.9 x 767.31 + 1050 x 800) / 19 209.9 = 769.10 mm.
    // Along: frames at 1, 12, 20 m mean 11 m: (18 159.9 x 12 + 1050 x 11) / 19 209.9 = 11.945 m. Across: 0 by symmetry.
    const plates: Plates = { topFlange_mm: [400, 25], web_mm: [1600, 14], bottomFlange_mm: [450, 30] };
    const frames = [1, 12, 20].map((at_m) => ({ at_m, mass_t: 0.35, height_m: 0.8, ...frame }));
    const result = takeOff(
      setOf([girder("L", 1.5, [[0, 24, plates]]), girder("R", -1.5, [[0, 24, plates]])], {
        fabricationFactor_pct: 5,
        crossFrames: frames,
      }),
    );
    near(result.mass, 19209.9);
    near(result.cg[0], 11.945);
    expect(result.cg[1]).toBeCloseTo(0, 12);
    near(result.cg[2], 0.7691);
    near(result.pieces[0].massPerMetre, 378.331);
    near(result.meanMassPerMetre, 19209.9 / 24);
    sums(result);
  });

  test("heavier plates over the pier end, splices, a walkway on one side", () => {
    // End piece 0-10 m: 500x40 = 20 000, web 1800x16 = 28 800, 600x50 = 30 000: 78 800 mm2, 618.58 kg/m, 6185.8 kg.
    // Field piece 10-30 m: 400x25 = 10 000, web 1800x14 = 25 200, 400x30 = 12 000: 47 200 mm2, 370.52 kg/m, 7410.4 kg.
    // A girder 13 596.2, two 27 192.4 kg. Splices 2 x 500 = 1000 at 10 m. Walkway 800 kg at 20 m, on L (y = 1.2), 0.9 out.
    // Sum 28 992.4 kg. Along: 2 x (6185.8 x 5 + 7410.4 x 20) = 358 274; + 1000 x 10 + 800 x 20 = 384 274; / 28 992.4 = 13.2543 m.
    // Across: 800 x 2.1 / 28 992.4 = 0.057946 m.
    const end: Plates = { topFlange_mm: [500, 40], web_mm: [1800, 16], bottomFlange_mm: [600, 50] };
    const field: Plates = { topFlange_mm: [400, 25], web_mm: [1800, 14], bottomFlange_mm: [400, 30] };
    const pieces: [number, number, Plates][] = [
      [0, 10, end],
      [10, 30, field],
    ];
    const result = takeOff(
      setOf([girder("L", 1.2, pieces), girder("R", -1.2, pieces)], {
        splices: ["L", "R"].map((of) => ({ girder: of, at_m: 10, mass_t: 0.5 })),
        attachments: [{ name: "walkway", girder: "L", at_m: 20, mass_t: 0.8, height_m: 1.9, y_m: 0.9 }],
        ledger: [
          { item: "girders", covers: "girders", mass_t: { low: 26, best: 27, high: 28 }, source: "shop" },
          { item: "all", covers: "whole set", mass_t: { low: 28, best: 29, high: 30 }, source: "weighed" },
          { item: "paint", mass_t: { low: 0, best: 0.1, high: 0.2 }, source: "guess" },
        ],
      }),
    );
    near(result.mass, 28992.4);
    near(result.cg[0], 13.2543);
    near(result.cg[1], 0.057946);
    sums(result);
    near(result.ledger[0].takeOff ?? 0, 27192.4);
    expect(result.ledger[1].takeOff).toBe(result.mass);
    expect(result.ledger[2]).toEqual({
      item: "paint",
      source: "guess",
      low: 0,
      best: 100,
      high: 200,
      takeOff: null,
    });
  });

  test("three girders in another steel, frames in two bays", () => {
    // Flanges 300x20 twice = 12 000, web 1000x10 = 10 000: 22 000 mm2 x 8000e-6 = 176 kg/m; 3 x 16 m = 8448 kg.
    // Frames 2 x 240 = 480 kg, half in each bay: bays centred at y = 1 (3 and -1) and y = -2.5 (-1 and -4).
    // Sum 8928 kg. Across: 2816 x (3 - 1 - 4) + 240 x 1 + 240 x (-2.5) = -5632 - 360 = -5992; / 8928 = -0.67115 m.
    // Along: 8448 x 8 + 240 x 4 + 240 x 14 = 71 904; / 8928 = 8.05376 m. Height of plates 520 mm: all parts at 0.52 m.
    const plates: Plates = { topFlange_mm: [300, 20], web_mm: [1000, 10], bottomFlange_mm: [300, 20] };
    const frames = [4, 14].map((at_m) => ({ at_m, mass_t: 0.24, height_m: 0.52, ...frame }));
    const result = takeOff(
      setOf(
        [3, -1, -4].map((y, i) => girder(`G${i + 1}`, y, [[0, 16, plates]])),
        { steelDensity_kg_per_m3: 8000, crossFrames: frames },
      ),
    );
    near(result.mass, 8928);
    near(result.cg[0], 8.05376);
    near(result.cg[1], -0.67115);
    near(result.cg[2], 0.52);
    expect(result.lines.filter((line) => line.kind === "cross-frames").map((line) => line.item)).toEqual([
      "frame G1-G2 at 4 m",
      "frame G2-G3 at 4 m",
      "frame G1-G2 at 14 m",
      "frame G2-G3 at 14 m",
    ]);
    sums(result);
  });

  test("every line of the sample says what it is, and they sum exactly", () => {
    const result = takeOff(samplePlan().sets[0]);
    sums(result);
    expect(result.lines.slice(0, 2).map((line) => line.item)).toEqual([
      "L L1: plates",
      "L L1: stiffeners and welds",
    ]);
    expect(result.lines[1].mass / result.lines[0].mass).toBeCloseTo(0.04, 12);
  });
});
