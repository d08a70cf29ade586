// What the guided set-up asks: few enough answers for one short form, enough for a whole first plan; and what is wrong with them.

/** Steel of a girder: its plates, or a weight per metre that plates are chosen to match. */
export type SteelAnswer =
  | { kind: "plates"; topFlange_mm: [number, number]; web_mm: number; bottomFlange_mm: [number, number] }
  | { kind: "mass"; mass_t_per_m: number };

/** One transporter. */
export interface TransporterAnswer {
  lines: number;
  pitch_m: number;
  gauge_m: number;
  allowedLine_kN: number;
}

/** One crane: where it stands, its boom, and at least one row of its maker's chart for that boom. */
export interface CraneAnswer {
  chainage_m: number;
  y_m: number;
  boom_m: number;
  rows: { radius_m: number; rated_t: number }[];
}

/**
 * Answers of the set-up. Lengths and chainages m, y to the left, grade > 0 rises forward, crossfall > 0 falls to the left.
 * Chainages of cranes count as those of the gap do; `fromFaces` has them from the nearer abutment face instead: the near
 * crane's back from the near face, the far crane's forward of the far face.
 */
export interface Answers {
  title: string;
  /** Clear distance between the abutment faces alone, or the chainages of both. */
  gap: { kind: "clear"; clear_m: number } | { kind: "chainages"; nearFace_m: number; farFace_m: number };
  /** Bearing lines: how far behind each face, or their chainages. */
  bearings: { kind: "behind"; behind_m: number } | { kind: "chainages"; near_m: number; far_m: number };
  /** Of the path where it ends at the near abutment. */
  elevation_m: number;
  grade_pct: number;
  crossfall_pct: number;
  sets: {
    count: number;
    girders: number;
    spacing_m: number;
    length_m: number;
    depth_m: number;
    steel: SteelAnswer;
  };
  transporters: { rear: TransporterAnswer; front: TransporterAnswer };
  cranes: { fromFaces: boolean; far: CraneAnswer; near: CraneAnswer };
}

/** One thing that is wrong with an answer: its place in the answers, and a sentence that says how to mend it. */
export interface AnswerError {
  at: string;
  words: string;
}

/** Chainage of the near face where only the clear gap is told. */
export const datumChainage = 100;

/** Chainages of faces and bearing lines that follow from the answers. */
export function linesOf(answers: Answers): {
  nearFace: number;
  farFace: number;
  nearBearing: number;
  farBearing: number;
} {
  const { gap, bearings } = answers;
  const nearFace = gap.kind === "clear" ? datumChainage : gap.nearFace_m;
  const farFace = gap.kind === "clear" ? datumChainage + gap.clear_m : gap.farFace_m;
  const behind = bearings.kind === "behind" ? bearings.behind_m : 0;
  return {
    nearFace,
    farFace: round(farFace),
    nearBearing: bearings.kind === "chainages" ? bearings.near_m : round(nearFace - behind),
    farBearing: bearings.kind === "chainages" ? bearings.far_m : round(farFace + behind),
  };
}

/** To a millimetre: sums of answers keep no digits that nobody typed. */
export const round = (value: number, digits = 3): number => Number(value.toFixed(digits));

/** Ranges in which an answer makes sense; wider than anything usual, so that only slips are caught. */
const RANGES: [string, (a: Answers) => number | null, number, number, string][] = [
  ["gap.clear_m", (a) => (a.gap.kind === "clear" ? a.gap.clear_m : null), 1, 200, "m between the faces"],
  ["elevation_m", (a) => a.elevation_m, -400, 8900, "m"],
  ["grade_pct", (a) => a.grade_pct, -6, 6, "%: transporters are not taken up steeper ways"],
  ["crossfall_pct", (a) => a.crossfall_pct, -4, 4, "%: transporters do not stand on steeper ground"],
  ["sets.count", (a) => a.sets.count, 1, 12, "sets"],
  ["sets.girders", (a) => a.sets.girders, 1, 6, "girders in a set"],
  ["sets.spacing_m", (a) => a.sets.spacing_m, 0.5, 10, "m between girders"],
  ["sets.length_m", (a) => a.sets.length_m, 5, 200, "m long"],
  ["sets.depth_m", (a) => a.sets.depth_m, 0.3, 6, "m deep"],
  ...(["rear", "front"] as const).flatMap((k): (typeof RANGES)[number][] => [
    [`transporters.${k}.lines`, (a) => a.transporters[k].lines, 2, 60, "axle lines"],
    [`transporters.${k}.pitch_m`, (a) => a.transporters[k].pitch_m, 0.8, 3, "m between axle lines"],
    [`transporters.${k}.gauge_m`, (a) => a.transporters[k].gauge_m, 0.8, 6, "m between wheel rows"],
    [`transporters.${k}.allowedLine_kN`, (a) => a.transporters[k].allowedLine_kN, 10, 1000, "kN per line"],
  ]),
  ...(["far", "near"] as const).map((k): (typeof RANGES)[number] => [
    `cranes.${k}.boom_m`,
    (a) => a.cranes[k].boom_m,
    8,
    200,
    "m of boom",
  ]),
];

/** Everything that is wrong with the answers; empty when a plan can be made of them. */
export function answerErrors(answers: Answers): AnswerError[] {
  const out: AnswerError[] = [];
  const say = (at: string, words: string) => out.push({ at, words });
  for (const [at, of, low, high, what] of RANGES) {
    const value = of(answers);
    if (value === null) continue;
    if (Number.isNaN(value)) say(at, "Give a number.");
    else if (value < low || value > high) say(at, `Found ${value}; give ${low} to ${high} ${what}.`);
  }
  for (const at of ["sets.count", "sets.girders", "transporters.rear.lines", "transporters.front.lines"]) {
    const value = RANGES.find((r) => r[0] === at)?.[1](answers) ?? 0;
    if (!Number.isNaN(value) && !Number.isInteger(value)) say(at, `Found ${value}; give a whole number.`);
  }
  const { nearFace, farFace, nearBearing, farBearing } = linesOf(answers);
  if (answers.gap.kind === "chainages" && !(farFace > nearFace))
    say(
      "gap.farFace_m",
      "The far face lies beyond the near face: chainage runs from the near side to the far side.",
    );
  if (!(nearBearing <= nearFace && farBearing >= farFace))
    say(
      answers.bearings.kind === "behind" ? "bearings.behind_m" : "bearings.near_m",
      "Bearing lines lie behind the abutment faces: give a distance of 0 or more, or chainages outside the gap.",
    );
  const span = farBearing - nearBearing;
  if (!(answers.sets.length_m >= span))
    say(
      "sets.length_m",
      `The bearing lines are ${round(span)} m apart: a set of ${answers.sets.length_m} m does not reach both. Give more.`,
    );
  out.push(...steelErrors(answers), ...chartErrors(answers));
  return out;
}

function steelErrors({ sets }: Answers): AnswerError[] {
  const { steel, depth_m } = sets;
  if (steel.kind === "mass") {
    const fits = steel.mass_t_per_m >= 0.05 && steel.mass_t_per_m <= 5;
    return fits
      ? []
      : [{ at: "sets.steel.mass_t_per_m", words: "Give 0.05 to 5 t per metre of one girder." }];
  }
  const out: AnswerError[] = [];
  const plate = (at: string, value: number, low: number, high: number) => {
    if (!(value >= low && value <= high))
      out.push({ at: `sets.steel.${at}`, words: `Give ${low} to ${high} mm.` });
  };
  plate("topFlange_mm.0", steel.topFlange_mm[0], 50, 3000);
  plate("topFlange_mm.1", steel.topFlange_mm[1], 3, 250);
  plate("bottomFlange_mm.0", steel.bottomFlange_mm[0], 50, 3000);
  plate("bottomFlange_mm.1", steel.bottomFlange_mm[1], 3, 250);
  plate("web_mm", steel.web_mm, 3, 250);
  const web = depth_m * 1000 - steel.topFlange_mm[1] - steel.bottomFlange_mm[1];
  if (out.length === 0 && !(web >= 100))
    out.push({
      at: "sets.depth_m",
      words: `The flanges leave ${round(web, 0)} mm of web: give at least 100.`,
    });
  return out;
}

function chartErrors({ cranes }: Answers): AnswerError[] {
  return (["far", "near"] as const).flatMap((kind): AnswerError[] => {
    const at = `cranes.${kind}.rows`;
    const { rows, chainage_m, y_m } = cranes[kind];
    if (Number.isNaN(chainage_m) || Number.isNaN(y_m))
      return [{ at: `cranes.${kind}.chainage_m`, words: "Give the place of the crane." }];
    if (rows.length === 0)
      return [{ at, words: "Give at least one row of the maker's chart: a radius and what is rated there." }];
    if (rows.some((r) => !(r.radius_m >= 0.5 && r.radius_m <= 300 && r.rated_t > 0 && r.rated_t <= 10000)))
      return [{ at, words: "A row is a radius of 0.5 to 300 m and a rating above 0 t." }];
    if (new Set(rows.map((r) => r.radius_m)).size < rows.length)
      return [{ at, words: "Two rows have the same radius: take one out." }];
    return [];
  });
}
