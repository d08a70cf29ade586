// Two girders joined by cross-frames buckling sideways as one unit, close as the frames may be: AASHTO LRFD 6.10.3.4.2,
// after Yura, Helwig, Herman and Zhou, Global lateral buckling of I-shaped girder systems, ASCE J. Struct. Eng. 134(9),
// 2008. Formula from memory. It holds for a span that sags between supports near both ends, not for an overhang.

import { diagramsOf, greatestIn } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type GirderData, girdersOf, modulus, type PieceData, sectionAt } from "./data.ts";
import type { FlangeSection } from "./section.ts";
import { carryingOn } from "./supports.ts";

const SOURCE = "AASHTO LRFD 6.10.3.4.2 after Yura et al. 2008, written from memory";
/** An overhang up to this part of the span leaves the stage like a simple span. Common practice, no source. */
const OVERHANG = 0.25;
/** Supports nearer to one another than this are one, m. */
const ONE = 1;

/** Id of the check. */
export const TWO_GIRDERS = "two-girder set";

/** Factor for a simple span. */
export const C_BS = 1.1;

/**
 * Second moment about the web that acts when the pair buckles as one, m4: that of the flange in compression and of the
 * other one by their distances from the neutral axis.
 */
export function effectiveInertia(rec: Recorder | null, s: FlangeSection): number {
  const c = trace(
    rec,
    "c_f",
    (s.h_c + s.t_c) / 2,
    "(h_c + t_c)/2",
    "m",
    "centroid of the section to that of the flange in compression",
  );
  const t = trace(rec, "t_f", s.h_o - c, "h_o - c_f", "m", "the same to the flange in tension");
  const I_yt = trace(
    rec,
    "I_yt",
    (s.t_t * s.b_t ** 3) / 12,
    "t_t*b_t^3/12",
    "m4",
    "of the flange in tension about the web",
  );
  return trace(
    rec,
    "I_eff",
    s.I_yc + (t / c) * I_yt,
    "I_yc + t_f/c_f*I_yt",
    "m4",
    "effective second moment about the web",
    SOURCE,
    "6.10.3.4.2-2",
  );
}

/** Moment, sum of both girders, N m, at which the pair buckles as one over a span L with the girders w_g apart, m. */
export function pairMoment(rec: Recorder | null, E: number, w_g: number, L: number, root: number): number {
  constant(rec, "C_bs", C_BS, "1", "factor for a simple span", SOURCE);
  return trace(
    rec,
    "M_gs",
    ((C_BS * Math.PI ** 2 * w_g * E) / L ** 2) * root,
    "C_bs*pi^2*w_g*E/L^2*root_I",
    "N m",
    "sum of moments at which the pair buckles as one",
    SOURCE,
    "6.10.3.4.2-1",
  );
}

/** The stage of a set: its span, or why the formula does not apply. */
type Stage = { from: number; to: number; sag: number } | { why: string };

/** Buckling of a two-girder set as one unit; no measure for other sets. */
export function twoGirderSet(ctx: SetContext): Measure[] {
  const girders = girdersOf(ctx);
  const limit = limitOf(ctx.plan, TWO_GIRDERS);
  const load = limitOf(ctx.plan, "AASHTO load factor", true);
  if (girders.length !== 2 || !limit || !load) return [];
  const roots = new Map(
    girders.flatMap((g) => g.pieces.map((p): [PieceData, number] => [p, rootOf(null, p)])),
  );
  return [
    measure({
      check: TWO_GIRDERS,
      subject: "set",
      kind: "",
      unit: "kNm",
      factor: 1e-3,
      digits: 0,
      strip: true,
      watched: false,
      source: `${limit.source}; load factor ${load.value}: ${load.source} (${load.chosenBy})`,
      chosenBy: limit.chosenBy,
      cure: "lateral bracing near the ends of the span, supports nearer to one another, or an engineer's analysis of the set",
      ...traced(ctx, (pose, rec): Reading => {
        const stage = stageOf(ctx, girders, pose);
        if ("why" in stage) return { ...NOT_HERE, why: stage.why };
        const { from, to } = stage;
        const inside = girders.flatMap((g) => g.pieces.filter((p) => p.from < to && p.to > from));
        const weakest = inside.reduce((a, b) => ((roots.get(b) ?? 0) < (roots.get(a) ?? 0) ? b : a));
        const M = solved(
          rec,
          "M",
          stage.sag,
          "N m",
          `greatest sagging moments of both girders from ${from} to ${to} m, added`,
        );
        const L = solved(rec, "L", to - from, "m", "between the outermost supports that carry");
        const E = modulus(rec, ctx);
        const w_g = spacing(rec, girders);
        const root = rec === null ? (roots.get(weakest) ?? 0) : rootOf(rec, weakest);
        const M_gs = pairMoment(rec, E, w_g, L, root);
        constant(
          rec,
          "share",
          limit.value / 100,
          "1",
          "part of it that is allowed",
          `${limit.source} (${limit.chosenBy})`,
        );
        constant(rec, "gamma", load.value, "1", "load factor", `${load.source} (${load.chosenBy})`);
        const allowed = trace(
          rec,
          "M_a",
          ((limit.value / 100) * M_gs) / load.value,
          "share*M_gs/gamma",
          "N m",
          "allowed under the loads as they are",
          SOURCE,
        );
        rec?.ends("M", "M_a");
        return {
          value: M,
          limit: allowed,
          get where() {
            return `span ${from.toFixed(1)} to ${to.toFixed(1)} m`;
          },
        };
      }),
    }),
  ];
}

/** Root of the two second moments of a piece that act in it, m4; the least of all in the span is taken. */
function rootOf(rec: Recorder | null, p: PieceData): number {
  const s = sectionAt(rec, p, true);
  const I_eff = effectiveInertia(rec, s);
  return trace(
    rec,
    "root_I",
    Math.sqrt(I_eff * s.I_x),
    "sqrt(I_eff*I_x)",
    "m4",
    `of ${p.name}, the least of both girders in the span`,
  );
}

/** Distance of the two girders, m. */
function spacing(rec: Recorder | null, [a, b]: readonly GirderData[]): number {
  const y_1 = field(rec, "y_1", a.y, `${a.name} from the axis`, `${a.path}.y_m`, a.y, METRE);
  const y_2 = field(rec, "y_2", b.y, `${b.name} from the axis`, `${b.path}.y_m`, b.y, METRE);
  return trace(rec, "w_g", Math.abs(y_1 - y_2), "abs(y_1 - y_2)", "m", "distance of the girders");
}

/** The span between the outermost supports, with the sum of its sagging moments; or why the formula does not apply. */
export function stageOf(ctx: SetContext, girders: readonly GirderData[], pose: Pose): Stage {
  const d = diagramsOf(pose.solution);
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const g of girders)
    for (const { x } of carryingOn(d, pose, g.index)) {
      from = Math.min(from, x);
      to = Math.max(to, x);
    }
  if (!(to - from > ONE)) return { why: "does not apply: the set is carried at one place" };
  if (Math.max(from, ctx.length - to) > OVERHANG * (to - from))
    return { why: "does not apply: cantilever stage" };
  let sag = 0;
  let hog = 0;
  for (const g of girders) {
    const { most, least } = greatestIn(d, g.index, 0, g.length);
    sag += most.M;
    hog -= least.M;
  }
  return sag > hog
    ? { from, to, sag }
    : { why: "does not apply: cantilever stage, the set hogs more than it sags" };
}
