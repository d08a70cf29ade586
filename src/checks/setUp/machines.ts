// Machines from the answers: what was not asked follows from a transporter's allowed line load and a crane's ratings.

import type { Crane, Rigging, Transporter } from "../../plan/index.ts";
import { type Answers, type CraneAnswer, linesOf, round, type TransporterAnswer } from "./answers.ts";

/** What the source of a machine's data says. */
export const STARTER = "starter value of the set-up, not confirmed";

const g = 9.80665;

/** Own weight of a line as a part of what it may carry; give of its cylinders under that load, mm. Common practice, no source. */
const OWN_LINE = 0.2;
const LINE_GIVES = 50;

/** A transporter in three groups: its rear half as one, its front half left and right. */
export function transporterOf(kind: "rear" | "front", a: TransporterAnswer): Transporter {
  const aft = Math.ceil(a.lines / 2);
  const lines = Array.from({ length: a.lines }, (_, i) => i + 1);
  const fore = lines.slice(aft);
  return {
    id: kind,
    name: `${kind} transporter`,
    kind,
    lines: a.lines,
    pitch_m: a.pitch_m,
    gauge_m: a.gauge_m,
    mass_t: round((a.lines * OWN_LINE * a.allowedLine_kN) / g, 1),
    cgHeight_m: 0.9,
    bunkHeight_m: 1.6,
    allowedLine_kN: a.allowedLine_kN,
    strokeUp_mm: 300,
    strokeDown_mm: 300,
    cylinderStiffness_kN_per_mm: round(a.allowedLine_kN / LINE_GIVES, 2),
    allowedGrade_pct: 6,
    allowedCrossfall_pct: 4,
    groups: [
      { name: `${kind} aft`, wheels: lines.slice(0, aft).flatMap((i) => [`${i}L`, `${i}R`]) },
      { name: `${kind} left`, wheels: fore.map((i) => `${i}L`) },
      { name: `${kind} right`, wheels: fore.map((i) => `${i}R`) },
    ],
    bunks: [{ at_m: 0, kind: "rocking" }],
    bunkStiffness_kN_per_mm: round(9 * a.allowedLine_kN, 0),
    bunkSideStiffness_kN_per_mm: round(0.2 * a.allowedLine_kN, 1),
    wheelDiameter_m: 0.8,
    deckLength_m: round(a.lines * a.pitch_m + 0.2),
    deckWidth_m: round(a.gauge_m + 0.9),
    source: `lines, pitch, gauge and allowed load as typed; all else: ${STARTER}`,
  };
}

/** Mass of a crane over its greatest load moment, t per t m: it balances that moment at a lever of some 5 m. */
const MASS_OF_MOMENT = 0.2;
/** The boom's tip gives by this part of the boom under the greatest rating; the radius grows by this part of that. */
const TIP_GIVES = 1 / 60;
const GROWS = 0.7;
/** A wire rope of 35 mm: kg/m and EA in kN, of 0.0037 d2 and 100 GPa on 0.455 d2. Common practice, no source. */
const ROPE = { kg_per_m: 4.5, EA: 100 * 0.455 * 35 ** 2 };
/** What one part of that rope may carry, t. */
const PART_OF_LINE = 35;

const band = (best: number) => ({
  low: Number((0.8 * best).toPrecision(3)),
  best: Number(best.toPrecision(3)),
  high: Number((1.2 * best).toPrecision(3)),
});

/** A crawler crane; sizes of its body grow with the cube root of its mass, as bodies of one shape do. */
export function craneOf(kind: "far" | "near", answers: Answers): Crane {
  const a: CraneAnswer = answers.cranes[kind];
  const most = Math.max(...a.rows.map((r) => r.rated_t));
  const moment = Math.max(...a.rows.map((r) => r.rated_t * r.radius_m));
  const mass = Math.max(10, round(MASS_OF_MOMENT * moment, 0));
  const size = Math.cbrt(mass);
  const parts = Math.max(2, Math.ceil(most / PART_OF_LINE));
  const boom = (most * g) / (TIP_GIVES * a.boom_m * 1000);
  const { nearFace, farFace } = linesOf(answers);
  const along = kind === "near" ? nearFace - a.chainage_m : farFace + a.chainage_m;
  return {
    id: `${kind}-crane`,
    name: `${kind} crane`,
    kind,
    position: {
      chainage_m: answers.cranes.fromFaces ? round(along) : a.chainage_m,
      y_m: a.y_m,
      elevation_m: answers.elevation_m,
    },
    boomFootForward_m: round(0.18 * size, 1),
    boomFootHeight_m: round(0.28 * size, 1),
    boomLength_m: a.boom_m,
    tailRadius_m: round(0.82 * size, 1),
    trackGauge_m: round(0.79 * size, 1),
    trackLength_m: round(1.12 * size, 1),
    trackWidth_m: round(0.16 * size, 1),
    mass_t: mass,
    chart: {
      invented: false,
      interpolation: false,
      rows: a.rows.map((row) => ({ radius_m: row.radius_m, boom_m: a.boom_m, rated_t: row.rated_t })),
    },
    deductions: { block_t: round(Math.max(0.2, 0.0085 * most), 1), rope_kg_per_m: ROPE.kg_per_m },
    partsOfLine: parts,
    stiffness: {
      rope_kN_per_mm: band((parts * ROPE.EA) / (a.boom_m * 1000)),
      boom_kN_per_mm: band(boom),
      ground_kN_per_mm: band((mass * g) / 450),
    },
    radiusGrowth_mm_per_kN: band(GROWS / boom),
    indicator: { counts: ["set", "rigging", "block", "rope"], accuracy_pct: 5 },
    hoistSpeed_m_per_min: 2,
    travelWithLoad: false,
    source: `place, boom and chart as typed; all else: ${STARTER}`,
  };
}

/** Rigging of one hook for a set of `mass` t: a beam over two girders or more, slings to one point for a lone girder. */
export function riggingOf(kind: "far" | "near", answers: Answers, mass: number): Rigging {
  const { girders, spacing_m } = answers.sets;
  const width = (girders - 1) * spacing_m;
  return {
    id: `${kind} rigging`,
    kind: girders > 1 ? "spreader" : "point",
    mass_t: round(Math.max(0.2, 0.024 * mass), 1),
    hookPinHeight_m: girders > 1 ? round(Math.max(0.8, 0.35 * width), 1) : 2.4,
    slingLength_m: girders > 1 ? 5 : 0.6,
    slingStiffness_kN_per_mm: round(Math.max(10, 0.6 * mass), 0),
    ratedLoad_kN: Math.ceil((mass * g) / 10) * 10,
    softeners: true,
  };
}
