// The questions of the set-up: what each asks, its unit, where its answer stands, and what it says before anybody answered.
import type { Answers } from "../../checks/index.ts";
import { printFull, readTyped, type Shown, type System, type UnitName, unitFor } from "../../units/index.ts";

/** The number of answers: fields as typed, by the place of the answer. */
export type Typed = Readonly<Record<string, string>>;

/** A question with one number for an answer. */
export interface Question {
  at: string;
  label: string;
  keptIn: UnitName;
  /** How it is shown; null for a plain number without a unit. */
  shown: Shown | null;
  sign: string;
  says?: string;
}

const length = (at: string, label: string, says?: string): Question => ({
  at,
  label,
  keptIn: "m",
  shown: "length",
  sign: "",
  ...(says === undefined ? {} : { says }),
});
const small = (at: string, label: string): Question => ({
  at,
  label,
  keptIn: "mm",
  shown: "smallLength",
  sign: "",
});
const plain = (at: string, label: string, sign = "", says?: string): Question => ({
  at,
  label,
  keptIn: sign === "%" ? "%" : "1",
  shown: null,
  sign,
  ...(says === undefined ? {} : { says }),
});

const transporter = (kind: "rear" | "front"): Question[] => [
  plain(`transporters.${kind}.lines`, "Axle lines"),
  length(`transporters.${kind}.pitch_m`, "Pitch of lines"),
  length(`transporters.${kind}.gauge_m`, "Gauge"),
  {
    at: `transporters.${kind}.allowedLine_kN`,
    label: "Allowed load per line",
    keptIn: "kN",
    shown: "load",
    sign: "",
  },
];

const crane = (kind: "far" | "near"): Question[] => [
  length(`cranes.${kind}.chainage_m`, kind === "far" ? "Forward of the far face" : "Back from the near face"),
  length(`cranes.${kind}.y_m`, "To the left of the path", "Right is negative."),
  length(`cranes.${kind}.boom_m`, "Boom length"),
];

/** A part of the form. */
export interface Part {
  id: string;
  title: string;
  questions: Question[];
}

/** The parts in their order; a choice between two ways of answering picks some of them. */
export function partsOf(gap: "clear" | "chainages", steel: "mass" | "plates"): Part[] {
  return [
    {
      id: "gap",
      title: "Gap and path",
      questions: [
        ...(gap === "clear"
          ? [
              length("gap.clear_m", "Clear gap", "Between the abutment faces."),
              length("bearings.behind_m", "Bearing lines behind the faces"),
            ]
          : [
              length("gap.nearFace_m", "Chainage of the near face"),
              length("gap.farFace_m", "Chainage of the far face"),
              length("bearings.near_m", "Near bearing line"),
              length("bearings.far_m", "Far bearing line"),
            ]),
        length("elevation_m", "Elevation of the path at the near abutment"),
        plain("grade_pct", "Grade", "%", "Rising forward is positive."),
        plain("crossfall_pct", "Crossfall", "%", "Falling to the left is positive."),
      ],
    },
    {
      id: "sets",
      title: "Girder sets",
      questions: [
        plain("sets.count", "Number of sets", "", "Side by side across the bridge."),
        plain("sets.girders", "Girders in a set"),
        length("sets.spacing_m", "Spacing of girders"),
        length("sets.length_m", "Length of a set"),
        length("sets.depth_m", "Depth of a girder"),
        ...(steel === "mass"
          ? [
              {
                at: "sets.steel.mass_t_per_m",
                label: "Weight of one girder per length",
                keptIn: "t/m",
                shown: "lineMass",
                sign: "",
                says: "Plates are chosen to match it.",
              } as Question,
            ]
          : [
              small("sets.steel.topFlange_mm.0", "Top flange, width"),
              small("sets.steel.topFlange_mm.1", "Top flange, thickness"),
              small("sets.steel.web_mm", "Web, thickness"),
              small("sets.steel.bottomFlange_mm.0", "Bottom flange, width"),
              small("sets.steel.bottomFlange_mm.1", "Bottom flange, thickness"),
            ]),
      ],
    },
    { id: "rear", title: "Rear transporter", questions: transporter("rear") },
    { id: "front", title: "Front transporter", questions: transporter("front") },
    { id: "far", title: "Far crane", questions: crane("far") },
    { id: "near", title: "Near crane", questions: crane("near") },
  ];
}

/** The unit in which an answer is typed, as a sign behind the field. */
export const unitOf = (q: Question, system: System): UnitName =>
  q.shown === null ? q.keptIn : unitFor(q.shown, system);

/** The answer to a question, or why what was typed is none. An empty field is an open question. */
export function answerOf(
  q: Question,
  text: string,
  system: System,
): { ok: true; value: number } | { ok: false; problem: string } {
  if (text.trim() === "") return { ok: false, problem: "Not answered yet." };
  return readTyped(text, q.keptIn, unitOf(q, system));
}

/** Rows of a chart, one a line: radius, then rating, with blanks, a tab or a semicolon between. */
export function rowsOf(
  text: string,
  system: System,
): { ok: true; rows: { radius_m: number; rated_t: number }[] } | { ok: false; problem: string } {
  const rows: { radius_m: number; rated_t: number }[] = [];
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  if (lines.length === 0) return { ok: false, problem: "Not answered yet: at least one row." };
  for (const [i, line] of lines.entries()) {
    const parts = line.trim().split(/\s*[;\t]\s*|\s+/);
    const say = (problem: string) => ({ ok: false as const, problem: `Row ${i + 1}: ${problem}` });
    if (parts.length !== 2)
      return say(
        `found "${line.trim()}"; give a radius and a rating, such as ${system === "US" ? "40 200" : "12 90"}.`,
      );
    const radius = readTyped(parts[0], "m", unitFor("length", system));
    const rated = readTyped(parts[1], "t", unitFor("mass", system));
    if (!radius.ok) return say(radius.problem);
    if (!rated.ok) return say(rated.problem);
    rows.push({ radius_m: radius.value, rated_t: rated.value });
  }
  return { ok: true, rows };
}

/** Everything typed read into answers; open questions and slips by place. */
export function answersOf(
  typed: Typed,
  choices: { gap: "clear" | "chainages"; steel: "mass" | "plates" },
  system: System,
): { answers: Answers; problems: Record<string, string> } {
  const problems: Record<string, string> = {};
  const numbers: Record<string, number> = {};
  for (const q of partsOf(choices.gap, choices.steel).flatMap((part) => part.questions)) {
    const got = answerOf(q, typed[q.at] ?? "", system);
    if (got.ok) numbers[q.at] = got.value;
    else problems[q.at] = got.problem;
  }
  const n = (at: string) => numbers[at] ?? Number.NaN;
  const chart = (kind: "far" | "near") => {
    const got = rowsOf(typed[`cranes.${kind}.rows`] ?? "", system);
    if (!got.ok) problems[`cranes.${kind}.rows`] = got.problem;
    return got.ok ? got.rows : [];
  };
  const train = (kind: "rear" | "front") => ({
    lines: n(`transporters.${kind}.lines`),
    pitch_m: n(`transporters.${kind}.pitch_m`),
    gauge_m: n(`transporters.${kind}.gauge_m`),
    allowedLine_kN: n(`transporters.${kind}.allowedLine_kN`),
  });
  const crane = (kind: "far" | "near") => ({
    chainage_m: n(`cranes.${kind}.chainage_m`),
    y_m: n(`cranes.${kind}.y_m`),
    boom_m: n(`cranes.${kind}.boom_m`),
    rows: chart(kind),
  });
  const answers: Answers = {
    title: typed.title ?? "",
    gap:
      choices.gap === "clear"
        ? { kind: "clear", clear_m: n("gap.clear_m") }
        : { kind: "chainages", nearFace_m: n("gap.nearFace_m"), farFace_m: n("gap.farFace_m") },
    bearings:
      choices.gap === "clear"
        ? { kind: "behind", behind_m: n("bearings.behind_m") }
        : { kind: "chainages", near_m: n("bearings.near_m"), far_m: n("bearings.far_m") },
    elevation_m: n("elevation_m"),
    grade_pct: n("grade_pct"),
    crossfall_pct: n("crossfall_pct"),
    sets: {
      count: n("sets.count"),
      girders: n("sets.girders"),
      spacing_m: n("sets.spacing_m"),
      length_m: n("sets.length_m"),
      depth_m: n("sets.depth_m"),
      steel:
        choices.steel === "mass"
          ? { kind: "mass", mass_t_per_m: n("sets.steel.mass_t_per_m") }
          : {
              kind: "plates",
              topFlange_mm: [n("sets.steel.topFlange_mm.0"), n("sets.steel.topFlange_mm.1")],
              web_mm: n("sets.steel.web_mm"),
              bottomFlange_mm: [n("sets.steel.bottomFlange_mm.0"), n("sets.steel.bottomFlange_mm.1")],
            },
    },
    transporters: { rear: train("rear"), front: train("front") },
    cranes: { fromFaces: true, far: crane("far"), near: crane("near") },
  };
  return { answers, problems };
}

/** What was typed in one system of units, printed in another, so that a change of units changes no answer. */
export function retyped(typed: Typed, from: System, to: System): Typed {
  const all = [...partsOf("clear", "mass"), ...partsOf("chainages", "plates")].flatMap(
    (part) => part.questions,
  );
  const next: Record<string, string> = { ...typed };
  for (const q of all) {
    const got = answerOf(q, typed[q.at] ?? "", from);
    if (got.ok) next[q.at] = printFull(Number(got.value.toPrecision(6)), q.keptIn, unitOf(q, to));
  }
  for (const at of ["cranes.far.rows", "cranes.near.rows"]) {
    const got = rowsOf(typed[at] ?? "", from);
    if (got.ok)
      next[at] = got.rows
        .map(
          (r) =>
            `${printFull(r.radius_m, "m", unitFor("length", to))} ${printFull(r.rated_t, "t", unitFor("mass", to))}`,
        )
        .join("\n");
  }
  return next;
}

/** Numbers of an invented bridge, to look at what the form does. Each has to be replaced by the job's own. */
export const example: Typed = {
  title: "Example of the set-up (invented)",
  "gap.clear_m": "56.8",
  "bearings.behind_m": "1",
  elevation_m: "31",
  grade_pct: "0.5",
  crossfall_pct: "0.5",
  "sets.count": "1",
  "sets.girders": "2",
  "sets.spacing_m": "3.2",
  "sets.length_m": "60",
  "sets.depth_m": "2.5",
  "sets.steel.mass_t_per_m": "950",
  "transporters.rear.lines": "6",
  "transporters.rear.pitch_m": "1.4",
  "transporters.rear.gauge_m": "2.1",
  "transporters.rear.allowedLine_kN": "205",
  "transporters.front.lines": "8",
  "transporters.front.pitch_m": "1.4",
  "transporters.front.gauge_m": "2.1",
  "transporters.front.allowedLine_kN": "205",
  "cranes.far.chainage_m": "7",
  "cranes.far.y_m": "12.5",
  "cranes.far.boom_m": "78",
  "cranes.far.rows": "12 366\n20 239\n30 166\n40 127\n50 103\n60 87\n70 75",
  "cranes.near.chainage_m": "15",
  "cranes.near.y_m": "15",
  "cranes.near.boom_m": "42",
  "cranes.near.rows": "8 290\n12 213\n16 168\n20 139\n26 110\n32 91\n40 74",
};
