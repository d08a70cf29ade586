// The steel of a set from the answers: plates as given, or chosen to match a weight per metre; frames of rolled angles between.

import { type CrossFrame, type Girder, type PlanSet, steelDensity } from "../../plan/index.ts";
import { type Answers, linesOf, round } from "./answers.ts";

/** Stiffeners and welds as a part of the plates, pct: common practice, no source. */
export const FABRICATION = 10;
/** Web depth over thickness of chosen plates: common practice, no source. */
const WEB_SLENDERNESS = 140;
/** Girder depth over flange width of chosen plates: common practice, no source. */
const FLANGE_WIDTH = 5;
/** Length over flange width of a girder that is lifted alone: below the 80 to 90 of NCHRP Synthesis 345, chapter 7. */
const LONE_SLENDERNESS = 75;
/** Cross-frames stand at most this far apart, m: common practice, no source. */
export const FRAMES_APART = 7;

/** An equal angle of 100 x 10 mm by EN 10056-1, from memory: area m2, second moment m4, kg/m; torsion as of thin plates. */
const ANGLE = { area: 1915e-6, inertia: 1.77e-6, mass: 15, torsion: (2 * 0.095 * 0.01 ** 3) / 3 };

interface Plates {
  topFlange_mm: [number, number];
  web_mm: [number, number];
  bottomFlange_mm: [number, number];
}

/**
 * Plates of one girder. By weight: the web is as thick as its depth over 140 (8 mm at least), both flanges are alike and take
 * the rest, in whole millimetres of thickness; their width closes what rounding left, so that the weight is met to 0.5 %.
 */
export function platesOf(sets: Answers["sets"]): Plates | null {
  const { steel } = sets;
  const depth = sets.depth_m * 1000;
  if (steel.kind === "plates") {
    const height = round(depth - steel.topFlange_mm[1] - steel.bottomFlange_mm[1]);
    return {
      topFlange_mm: steel.topFlange_mm,
      web_mm: [height, steel.web_mm],
      bottomFlange_mm: steel.bottomFlange_mm,
    };
  }
  const area = (steel.mass_t_per_m * 1000 * 1e6) / steelDensity;
  const lone = sets.girders === 1 ? (1000 * sets.length_m) / LONE_SLENDERNESS : 0;
  const wish = Math.ceil(Math.max(250, depth / FLANGE_WIDTH, lone) / 50) * 50;
  for (let web = Math.max(8, Math.round(depth / WEB_SLENDERNESS)); web >= 6; web--) {
    const flange = (area - web * depth) / 2;
    const thickness = Math.max(10, Math.floor(flange / wish));
    const height = depth - 2 * thickness;
    const width = round((area - web * height) / 2 / thickness, 0);
    if (width < 150 || width > 3000 || thickness > 250 || height < 100) continue;
    return { topFlange_mm: [width, thickness], web_mm: [height, web], bottomFlange_mm: [width, thickness] };
  }
  return null;
}

/** Girders of a set about its own axis, named from the left: G1, G2 and so on. */
export function girdersOf(answers: Answers, plates: Plates): Girder[] {
  const { girders, spacing_m, length_m } = answers.sets;
  return Array.from({ length: girders }, (_, i) => ({
    line: `G${i + 1}`,
    y_m: round(((girders - 1) / 2 - i) * spacing_m),
    camber_mm: [],
    pieces: [{ from_m: 0, to_m: length_m, ...plates }],
  }));
}

/** Frames over both bearing lines and evenly between; each two chords and two diagonals of one angle. */
export function framesOf(answers: Answers): CrossFrame[] {
  const { girders, spacing_m, length_m, depth_m } = answers.sets;
  if (girders < 2) return [];
  const { nearBearing, farBearing } = linesOf(answers);
  const span = farBearing - nearBearing;
  const sole = (length_m - span) / 2;
  const bays = Math.max(1, Math.ceil(span / FRAMES_APART));
  const height = 0.75 * depth_m;
  const steel = 2 * spacing_m + 2 * Math.hypot(spacing_m, height);
  return Array.from({ length: bays + 1 }, (_, i) => ({
    at_m: round(sole + (i * span) / bays),
    mass_t: round(((girders - 1) * steel * ANGLE.mass) / 1000),
    area_mm2: round(2 * ANGLE.area * 1e6, 0),
    // Two chords as flanges, halved for the give of the diagonals.
    inPlaneInertia_m4: Number((ANGLE.area * (height / 2) ** 2).toPrecision(3)),
    planInertia_m4: 2 * ANGLE.inertia,
    torsion_m4: Number((2 * ANGLE.torsion).toPrecision(3)),
    height_m: round(depth_m / 2),
  }));
}

/** The first set, its axis `aside` m to the left of the path's, with nothing yet of where it stands, is picked, or moves. */
export function firstSet(answers: Answers, plates: Plates, aside: number): PlanSet {
  const { length_m, steel } = answers.sets;
  const { nearBearing, farBearing } = linesOf(answers);
  const sole = round((length_m - (farBearing - nearBearing)) / 2);
  return {
    id: "set-1",
    name: "Set 1",
    length_m,
    steelDensity_kg_per_m3: steelDensity,
    fabricationFactor_pct: steel.kind === "plates" ? FABRICATION : 0,
    start: { rearEnd_m: round(nearBearing - length_m), ...(aside === 0 ? {} : { y_m: aside }) },
    soleStations_m: { near: sole, far: round(length_m - sole) },
    girders: girdersOf(answers, plates),
    splices: [],
    crossFrames: framesOf(answers),
    attachments: [],
    ledger: [],
    onTransporters: [],
    picks: [],
    steps: [],
  };
}
