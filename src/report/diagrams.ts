// Moment, shear and torsion of the girders for a picture, a table file and a terminal: of one pose, and over a run.

import type { Band, GirderEnvelope, Result, SetResult } from "../checks/index.ts";
import { diagramsOf, momentAt, pointForcesOn, shearAt, torsionAt } from "../mechanics/index.ts";
import type { Plan } from "../plan/index.ts";
import type { Pose } from "../sequence/index.ts";
import { fixed, harmless, row } from "./csvText.ts";
import { originOf } from "./origin.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** One section of a girder: N m, N, N m; two of one station stand for its two sides where a diagram jumps. */
export interface DiagramPoint {
  x: number;
  moment: number;
  shear: number;
  torsion: number;
}

export interface DiagramLine {
  girder: string;
  points: DiagramPoint[];
}

/** Parts of an element between two actions at which points stand: a parabola is drawn well by four. */
const PARTS = 4;

/**
 * Points of the diagrams of a pose: both sides of every node and of every action, and some between. Empty where the
 * pose has no numbers.
 */
export function diagramLines(pose: Pose): DiagramLine[] {
  if (pose.solution.status !== "solved") return [];
  const d = diagramsOf(pose.solution);
  return d.girders.map(({ name, elements, points: actions }, g) => {
    const last = elements[elements.length - 1];
    const cuts = new Set([...elements.map((e) => e.from), last.from + last.length]);
    for (const { x } of actions) cuts.add(x);
    const stations = [...cuts].sort((a, b) => a - b);
    const points: DiagramPoint[] = [];
    const at = (x: number, side: -1 | 1) => {
      points.push({
        x,
        moment: momentAt(d, g, x, side),
        shear: shearAt(d, g, x, side),
        torsion: torsionAt(d, g, x, side),
      });
    };
    stations.forEach((x, i) => {
      if (i > 0) {
        const before = stations[i - 1];
        for (let k = 1; k < PARTS; k++) at(before + ((x - before) * k) / PARTS, -1);
        at(x, -1);
      }
      if (i < stations.length - 1) at(x, 1);
    });
    return { girder: name, points };
  });
}

/** A support on a girder of a pose: station, m, force up, N, and the name of the force in the statics. */
export interface DiagramMark {
  girder: string;
  x: number;
  force: number;
  support: string;
}

/** What carries or hangs on every girder of a pose; empty where the pose has no numbers. */
export function diagramMarks(pose: Pose): DiagramMark[] {
  if (pose.solution.status !== "solved") return [];
  const d = diagramsOf(pose.solution);
  return d.girders.flatMap(({ name }, g) => pointForcesOn(d, g).map((force) => ({ girder: name, ...force })));
}

const originNames = ["plan", "revision", "plan hash", "rule set", "solver version", "caution"];
const originCells = (result: Result, plan: Plan): string[] => {
  const o = originOf(result, plan);
  return [
    harmless(o.title),
    harmless(o.revision),
    o.planHash,
    harmless(o.ruleSet),
    o.solverVersion,
    o.caution,
  ];
};

/** The diagrams of one pose as CSV: a row for every section, moment sagging positive. */
export function diagramCsv(result: Result, plan: Plan, setId: string, step: string, pose: Pose): string {
  const head = ["set", "step", "progress", "girder", "station_m", "moment_kNm", "shear_kN", "torsion_kNm"];
  const origin = originCells(result, plan);
  const parts = [row([...head, ...originNames])];
  for (const { girder, points } of diagramLines(pose))
    for (const { x, moment, shear, torsion } of points)
      parts.push(
        row([
          harmless(setId),
          harmless(step),
          String(pose.progress),
          harmless(girder),
          fixed(x, 4),
          fixed(moment / 1000, 3),
          fixed(shear / 1000, 3),
          fixed(torsion / 1000, 3),
          ...origin,
        ]),
      );
  return parts.join("");
}

const kinds = ["moment", "shear", "torsion"] as const;
const unitOf = { moment: "kNm", shear: "kN", torsion: "kNm" } as const;

/** The envelopes of a result as CSV: a row for every element, each value with the step and progress that gave it. */
export function envelopeCsv(result: Result, plan: Plan): string {
  const head = ["set", "girder", "from_m", "to_m"];
  for (const kind of kinds)
    for (const end of ["greatest", "least"])
      head.push(`${end}_${kind}_${unitOf[kind]}`, `${end}_${kind}_step`, `${end}_${kind}_progress`);
  const origin = originCells(result, plan);
  const parts = [row([...head, ...originNames])];
  for (const set of result.sets)
    for (const envelope of set.envelopes ?? [])
      for (let e = 0; e < envelope.x.length - 1; e++) {
        const cells = [
          harmless(set.setId),
          harmless(envelope.girder),
          fixed(envelope.x[e], 4),
          fixed(envelope.x[e + 1], 4),
        ];
        for (const kind of kinds) {
          const { most, least, mostPose, leastPose } = envelope[kind];
          cells.push(...valueCells(set, most[e], mostPose[e]), ...valueCells(set, least[e], leastPose[e]));
        }
        parts.push(row([...cells, ...origin]));
      }
  return parts.join("");
}

function valueCells(set: SetResult, value: number, pose: number): string[] {
  if (pose < 0) return ["", "", ""];
  return [fixed(value / 1000, 3), harmless(set.steps[set.step[pose]].step.id), String(set.progress[pose])];
}

/** Lines of the greatest actions of every girder over a run; none where they were not worked out. */
export function envelopeText(set: SetResult): string[] {
  if (set.envelopes === undefined) return [];
  const head = ["girder", "action", "greatest", "", "at m", "step", "progress"];
  const sides: Side[] = ["left", "left", "right", "left", "right", "left", "right"];
  const rows = set.envelopes.flatMap((envelope) =>
    [
      extreme(envelope, "moment", "most", "sagging moment"),
      extreme(envelope, "moment", "least", "hogging moment"),
      extreme(envelope, "shear", "size", "shear"),
      extreme(envelope, "torsion", "size", "torsion"),
    ].flatMap((found) => {
      if (found === null) return [];
      const { value, x, pose, kind, words } = found;
      return [
        [
          oneLine(envelope.girder),
          words,
          (value / 1000).toFixed(1),
          unitOf[kind],
          x.toFixed(1),
          `${set.step[pose] + 1} ${oneLine(set.steps[set.step[pose]].step.id)}`,
          Number(set.progress[pose].toFixed(4)).toString(),
        ],
      ];
    }),
  );
  return ["girders: greatest actions over all steps", ...tableLines(head, rows, sides)];
}

/** An extreme of one action over a girder, at the middle of its element. */
function extreme(
  envelope: GirderEnvelope,
  kind: (typeof kinds)[number],
  end: "most" | "least" | "size",
  words: string,
) {
  const band: Band = envelope[kind];
  let found: { value: number; x: number; pose: number; kind: typeof kind; words: string } | null = null;
  for (let e = 0; e < envelope.x.length - 1; e++)
    for (const side of ["most", "least"] as const) {
      if (end !== "size" && end !== side) continue;
      const value = band[side][e];
      const better =
        found === null ||
        (end === "most"
          ? value > found.value
          : end === "least"
            ? value < found.value
            : Math.abs(value) > Math.abs(found.value));
      const pose = side === "most" ? band.mostPose[e] : band.leastPose[e];
      if (pose >= 0 && better)
        found = { value, x: (envelope.x[e] + envelope.x[e + 1]) / 2, pose, kind, words };
    }
  return found;
}
