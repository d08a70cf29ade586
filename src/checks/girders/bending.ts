// Bending of the girders over every unbraced length: yielding, local and lateral-torsional buckling, at stored poses.
//
// What does not depend on the pose is worked out once for a set; a pose costs its moments, shape factors and ratios.

import { type Diagrams, diagramsOf, greatestIn, momentAt } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type GirderData, girdersOf, stationOf } from "./data.ts";
import { aashtoShape, aiscShape, type NoHelp, noHelp, noHelpWords } from "./momentShape.ts";
import { girderRules, leastOf } from "./rules.ts";
import { carryingOn } from "./supports.ts";
import {
  type Judgement,
  judge,
  momentAllowed,
  reverseFactor,
  type Side,
  type Unbraced,
  unbracedLengths,
} from "./unbraced.ts";

/** Moments below this are taken as none, N m. */
const NONE = 1;
/** A moment of the other sign counts as reverse curvature above this part of the greatest. Common practice, no source. */
const REVERSED = 0.05;

/** Bending of every girder whose pieces all have a yield stress. */
export function girderBending(ctx: SetContext): Measure[] {
  const rules = girderRules(ctx.plan);
  return girdersOf(ctx)
    .filter((g) => g.unknown.length === 0)
    .map((g) => {
      const lengths = unbracedLengths(ctx, g, rules);
      return measure(
        {
          check: "girder bending",
          subject: g.name,
          kind: "",
          unit: "kNm",
          factor: 1e-3,
          digits: 0,
          strip: true,
          watched: false,
          cure: "cross-frames or lateral bracing nearer to one another, a shorter overhang, or supports elsewhere",
          ...traced(ctx, (pose, rec) => read(ctx, g, lengths, pose, rec)),
        },
        rules[0],
      );
    });
}

/** Where a girder stands when it is judged. */
interface Stage {
  d: Diagrams;
  index: number;
  /** Outermost stations at which something carries it. */
  first: number;
  last: number;
  /** Hooks alone carry it. */
  hung: boolean;
}

function stageOf(g: GirderData, pose: Pose): Stage {
  const d = diagramsOf(pose.solution);
  const carrying = carryingOn(d, pose, g.index);
  return {
    d,
    index: g.index,
    first: carrying.length > 0 ? carrying[0].x : Number.POSITIVE_INFINITY,
    last: carrying.length > 0 ? carrying[carrying.length - 1].x : Number.NEGATIVE_INFINITY,
    hung: carrying.length > 0 && carrying.every((c) => c.what === "hoist"),
  };
}

/** Why the moment shape may not help over an unbraced length at this stage. */
function noHelpOf({ from, to, pieces }: Unbraced, stage: Stage): NoHelp {
  if (!from.holds && !to.holds) return stage.hung && pieces.length === 1 ? "" : "lone";
  if (!from.holds || !to.holds) return "tip";
  if (to.x <= stage.first || from.x >= stage.last) return "overhang";
  return pieces.length > 1 ? "sections" : "";
}

/** The governing flange in compression over an unbraced length. */
interface Worst {
  length: Unbraced;
  side: Side;
  M: number;
  allowed: number;
  by: Judgement;
  C_b: number;
  why: NoHelp;
}

function read(
  ctx: SetContext,
  g: GirderData,
  lengths: readonly Unbraced[],
  pose: Pose,
  rec: Recorder | null,
): Reading {
  const stage = stageOf(g, pose);
  let worst: Worst | null = null;
  let use = 0;
  for (const length of lengths) {
    const { most, least } = greatestIn(stage.d, g.index, length.from.x, length.to.x);
    for (const side of length.sides) {
      const M = side.top ? most.M : -least.M;
      if (M < NONE || M <= use * side.least) continue;
      const found = governing(null, ctx, stage, length, side, most.M, least.M);
      if (M <= use * found.allowed) continue;
      use = M / found.allowed;
      worst = { length, side, M, ...found };
    }
  }
  if (worst === null) return NOT_HERE;
  const { length, side, M, by, why, C_b } = worst;
  if (rec !== null) record(rec, ctx, g, stage, worst);
  return {
    value: M,
    limit: worst.allowed,
    source: by.rules.source,
    chosenBy: by.rules.chosenBy,
    get where() {
      const flange = `${length.from.x} to ${length.to.x} m, ${side.top ? "top" : "bottom"} flange`;
      const shape = why === "" ? "" : `: ${noHelpWords[why].words}`;
      return `${flange}, C_b ${C_b.toFixed(2)}${shape}${stage.hung ? "; hung, loads taken at mid-height" : ""}`;
    },
  };
}

/** What is allowed over an unbraced length, by the lowest of all rule sets and pieces. */
function governing(
  rec: Recorder | null,
  ctx: SetContext,
  stage: Stage,
  length: Unbraced,
  side: Side,
  most: number,
  least: number,
): Pick<Worst, "allowed" | "by" | "C_b" | "why"> {
  const why = noHelpOf(length, stage);
  const shape = why === "" ? shapeOf(rec, stage, length, side, most, least) : null;
  const found = { allowed: Number.POSITIVE_INFINITY, by: side.judgements[0], C_b: 1, why };
  for (const known of side.judgements) {
    const { rules, piece, symbol } = known;
    const part = rec === null ? null : rec.part();
    // With a recorder the same functions run again, for one length only.
    const j =
      part === null
        ? known
        : { ...known, ...judge(part, ctx, rules, piece, side.top, length.to.x - length.from.x) };
    let C_b = 1;
    if (shape === null) C_b = noHelp(part, why as Exclude<NoHelp, "">);
    else if (rules.short === "aashto") C_b = aashtoShape(part, shape.M_2, shape.M_mid, shape.M_0);
    else {
      const R_m = reverseFactor(part, j, shape.reversed);
      C_b = aiscShape(part, shape.M_max, shape.M_A, shape.M_B, shape.M_C, R_m);
    }
    const M = momentAllowed(part, j, C_b);
    if (rec !== null && part !== null) rec.take(part, symbol);
    if (M < found.allowed) Object.assign(found, { allowed: M, by: known, C_b });
  }
  return found;
}

/** Moments that tell the shape over an unbraced length, N m: for AISC without signs, for AASHTO > 0 pressing the flange. */
interface Shape {
  M_max: number;
  M_A: number;
  M_B: number;
  M_C: number;
  reversed: boolean;
  M_2: number;
  M_mid: number;
  M_0: number;
}

function shapeOf(
  rec: Recorder | null,
  { d, index }: Stage,
  { from, to }: Unbraced,
  side: Side,
  most: number,
  least: number,
): Shape {
  const at = (part: number) => momentAt(d, index, from.x + part * (to.x - from.x));
  const sign = side.top ? 1 : -1;
  const [A, B, C] = [at(0.25), at(0.5), at(0.75)];
  const ends = [sign * momentAt(d, index, from.x, 1), sign * momentAt(d, index, to.x)];
  const N = "N m";
  const flange = side.top ? "sagging" : "hogging";
  return {
    M_max: solved(rec, "M_max", Math.max(most, -least), N, "greatest moment within the length, without sign"),
    M_A: solved(rec, "M_A", Math.abs(A), N, "moment at the first quarter point, without sign"),
    M_B: solved(rec, "M_B", Math.abs(B), N, "moment in the middle, without sign"),
    M_C: solved(rec, "M_C", Math.abs(C), N, "moment at the third quarter point, without sign"),
    reversed: Math.min(most, -least) > REVERSED * Math.max(most, -least),
    M_2: solved(rec, "M_2", Math.max(ends[0], ends[1]), N, `greater ${flange} moment of both ends`),
    M_mid: solved(rec, "M_mid", sign * B, N, `${flange} moment in the middle`),
    M_0: solved(rec, "M_0", Math.min(ends[0], ends[1]), N, `lesser ${flange} moment of both ends`),
  };
}

/** Writes down what governs: the moment, the length, and what every rule set allows of every piece in it. */
function record(rec: Recorder, ctx: SetContext, g: GirderData, stage: Stage, worst: Worst): void {
  const { length, side, M } = worst;
  const { from, to } = length;
  const kind = side.top ? "sagging" : "hogging";
  solved(rec, "M", M, "N m", `greatest ${kind} moment of ${g.name} from ${from.x} to ${to.x} m`);
  const [x_1, x_2] = [stationOf(rec, "x_1", from), stationOf(rec, "x_2", to)];
  trace(rec, "L_b", x_2 - x_1, "x_2 - x_1", "m", `unbraced length, ${from.words} to ${to.words}`);
  const { most, least } = greatestIn(stage.d, g.index, from.x, to.x);
  const { allowed } = governing(rec, ctx, stage, length, side, most.M, least.M);
  const formula = leastOf(side.judgements.map((j) => j.symbol));
  trace(rec, "M_a", allowed, formula, "N m", "lowest of what is allowed under the loads as they are");
  rec.ends("M", "M_a");
}
