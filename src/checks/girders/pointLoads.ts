// Where point loads reach a girder's web: bunks and bearings under the bottom flange, picks on the flange they hold; each
// with the length on which it bears, and the stiffener that takes it where one stands there.

import {
  bearingName,
  bearingsOf,
  blankBearingLength,
  blankWeldLeg,
  byId,
  type Stiffener,
} from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { constant, field, MM, type Recorder, trace } from "../trace.ts";
import { type GirderData, type PieceData, sectionAt, setPath } from "./data.ts";
import type { FlangeSection } from "./section.ts";
import type { Carrying } from "./supports.ts";

/** What brings a point load to a girder. */
export interface PointLoad {
  /** On the top flange; else on the bottom one. */
  top: boolean;
  /** Pulls at the flange instead of pressing on it. */
  pulls: boolean;
  /** Along the girder, mm; null where the plan has none. */
  length: number | null;
  path: string;
  words: string;
}

/** Everything that may bring a point load to one girder, by the name of its force; picks by the side of the centroid. */
export function pointLoadsOn(ctx: SetContext, g: GirderData): Map<string, PointLoad> {
  const { plan, set } = ctx;
  const out = new Map<string, PointLoad>();
  for (const on of set.onTransporters) {
    const t = byId(plan.transporters, on.transporter);
    const at = plan.transporters.indexOf(t);
    t.bunks.forEach((bunk, b) => {
      out.set(`bunk ${t.id} ${g.line} ${b + 1}`, {
        top: false,
        pulls: false,
        length: bunk.length_mm ?? null,
        path: `transporters[${at}].bunks[${b}].length_mm`,
        words: `bunk ${b + 1} of ${t.id}`,
      });
    });
  }
  set.picks.forEach((pick, i) => {
    const { depth, centroid } = heights(g, pick.at_m);
    const top = pick.height_m > centroid;
    out.set(`hoist ${pick.crane}`, {
      top,
      pulls: top,
      length: pick.length_mm ?? null,
      path: `${setPath(ctx)}.picks[${i}].length_mm`,
      words: `pick of ${pick.crane}${top ? "" : ` round the bottom flange, ${pick.height_m} of ${depth} m up`}`,
    });
  });
  for (const b of bearingsOf(plan, set))
    if (b.girder === g.line)
      out.set(`bearing ${bearingName(b)}`, {
        top: false,
        pulls: false,
        length: b.length_mm ?? null,
        path: `site.bearings[${plan.site.bearings.indexOf(b)}].length_mm`,
        words: `sole plate at bearing ${bearingName(b)}`,
      });
  return out;
}

/** Depth of a girder at a station and its centroid above the soffit, m. */
function heights(g: GirderData, x: number): { depth: number; centroid: number } {
  const s = sectionAt(null, pieceUnder(g, x), false);
  return { depth: s.d, centroid: s.h_c / 2 + s.t_c };
}

/** The piece at a station; where two meet, the one with the thinner web. */
export function pieceUnder(g: GirderData, x: number): PieceData {
  const at = g.pieces.filter((p) => x >= p.from - 1e-6 && x <= p.to + 1e-6);
  const list = at.length > 0 ? at : [g.pieces[g.pieces.length - 1]];
  return list.reduce((a, b) => (b.piece.web_mm[1] < a.piece.web_mm[1] ? b : a));
}

/** A stiffener of a girder with its place in the plan. */
export interface StiffenerData {
  stated: Stiffener;
  path: string;
}

/** Stiffeners of a girder, and how near a point load must be for one to take it, m. */
export function stiffenersOn(ctx: SetContext, g: GirderData): { list: StiffenerData[]; within: number } {
  const root = setPath(ctx);
  const list = (ctx.set.stiffeners ?? []).flatMap((stated, i) =>
    stated.girder === g.line ? [{ stated, path: `${root}.stiffeners[${i}]` }] : [],
  );
  return { list, within: (limitOf(ctx.plan, "stiffener distance")?.value ?? 0) / 1000 };
}

/** The stiffener that takes a point load at a station; undefined where none stands near enough. */
export function stiffenerAt(
  { list, within }: ReturnType<typeof stiffenersOn>,
  x: number,
): StiffenerData | undefined {
  return list.find((s) => Math.abs(s.stated.at_m - x) <= within + 1e-9);
}

/** The same answer for a support for as long as it stays where it is on the girder: few of them ever move along it. */
export function atPlace<T>(of: (at: Carrying) => T): (at: Carrying) => T {
  const known = new Map<string, { x: number; answer: T }>();
  return (at) => {
    const last = known.get(at.support);
    if (last !== undefined && last.x === at.x) return last.answer;
    const answer = of(at);
    known.set(at.support, { x: at.x, answer });
    return answer;
  };
}

/** Sections of every piece with the bottom and with the top flange next to the load. */
export type PointSections = Map<PieceData, { bottom: FlangeSection; top: FlangeSection }>;

export function pointSections(g: GirderData): PointSections {
  return new Map(
    g.pieces.map((p) => [p, { bottom: sectionAt(null, p, false), top: sectionAt(null, p, true) }]),
  );
}

/** Length of bearing, m: the plan's, or the safe end, which says that it stands in. */
export function bearingLength(rec: Recorder | null, load: PointLoad): number {
  const { length, path, words } = load;
  if (rec === null) return (length ?? blankBearingLength) / 1000;
  return length === null
    ? constant(
        rec,
        "l_b",
        blankBearingLength / 1000,
        "m",
        `bearing length of ${words}`,
        `${path} is blank: the safe end stands in`,
      )
    : field(rec, "l_b", length / 1000, `bearing length of ${words}`, path, length, MM);
}

/** From the face of the flange to the web's toe of the weld, m: flange and weld leg, no leg where the plan has none. */
export function flangeAndWeld(rec: Recorder | null, p: PieceData, t_c: number): number {
  const stated = p.piece.weldLeg_mm;
  const path = `${p.path}.weldLeg_mm`;
  const leg = (stated ?? blankWeldLeg) / 1000;
  if (rec !== null) {
    if (stated === undefined)
      constant(
        rec,
        "w_leg",
        leg,
        "m",
        `leg of the weld of web to flange of ${p.name}`,
        `${path} is blank: the safe end stands in`,
      );
    else field(rec, "w_leg", leg, `leg of the weld of web to flange of ${p.name}`, path, stated, MM);
  }
  return trace(rec, "k", t_c + leg, "t_c + w_leg", "m", "face of the flange to the web's toe of the weld");
}
