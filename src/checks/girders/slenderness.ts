// Slenderness of the girders in plan: unsupported length over flange width, stage by stage, and of each field piece alone.
//
// A girder joined to others counts from brace to brace; an overhang counts from its last support to its tip, joined or
// not, since the girders can go sideways together. A girder alone counts from support to support, and over its whole
// length while only hooks carry it. The width is that of the narrowest flange in the length.

import { diagramsOf } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type DataMeasure, type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type Brace, bracesOf, type GirderData, girdersOf, type PieceData, stationOf } from "./data.ts";
import { type Carrying, carryingOn } from "./supports.ts";

/** A length of a girder with what holds it; stations in m. */
interface Length {
  from: number;
  to: number;
  words: string;
  /** Both ends are stations of the plan; else the statics of the pose say where it lies. */
  braces: [Brace, Brace] | null;
}

/** A flange of a piece, its width in mm. */
interface Flange {
  piece: PieceData;
  of: "topFlange_mm" | "bottomFlange_mm";
  width: number;
}

/** The narrowest flange between two stations. */
function narrowest({ pieces }: GirderData, from: number, to: number): Flange {
  let best: PieceData | null = null;
  for (const p of pieces)
    if (p.from < to - 1e-6 && p.to > from + 1e-6 && (best === null || narrowerOf(p) < narrowerOf(best)))
      best = p;
  const piece = best ?? pieces.reduce((a, b) => (narrowerOf(b) < narrowerOf(a) ? b : a));
  const { topFlange_mm, bottomFlange_mm } = piece.piece;
  const of = bottomFlange_mm[0] < topFlange_mm[0] ? "bottomFlange_mm" : "topFlange_mm";
  return { piece, of, width: narrowerOf(piece) };
}

const narrowerOf = ({ piece }: PieceData): number =>
  Math.min(piece.topFlange_mm[0], piece.bottomFlange_mm[0]);

const slendernessOf = (g: GirderData, { from, to }: Length): number =>
  (to - from) / (narrowest(g, from, to).width / 1000);

/** The most slender length of a list; null of none. */
function mostSlender(g: GirderData, lengths: readonly Length[]): Length | null {
  let most: Length | null = null;
  let value = 0;
  for (const one of lengths) {
    const ratio = slendernessOf(g, one);
    if (ratio <= value) continue;
    value = ratio;
    most = one;
  }
  return most;
}

/** The most slender length between braces of a girder that is joined to others; null for one that is not. */
function bracedLength(ctx: SetContext, g: GirderData): Length | null {
  const braces = bracesOf(ctx, g);
  if (!braces.some((b) => b.holds)) return null;
  const lengths = braces.slice(1).map((to, i): Length => {
    const from = braces[i];
    return { from: from.x, to: to.x, words: `${from.words} to ${to.words}`, braces: [from, to] };
  });
  return mostSlender(g, lengths);
}

/** The lengths that count at a pose. */
function lengthsAt(g: GirderData, braced: Length | null, carrying: readonly Carrying[]): Length[] {
  if (carrying.length === 0) return [];
  if (braced === null && carrying.every((c) => c.what === "hoist"))
    return [{ from: 0, to: g.length, words: "whole girder, hung", braces: null }];
  const last = carrying[carrying.length - 1].x;
  const out: Length[] = [
    { from: 0, to: carrying[0].x, words: "overhang at the rear", braces: null },
    { from: last, to: g.length, words: "overhang at the front", braces: null },
  ];
  if (braced !== null) out.push(braced);
  else
    carrying.slice(1).forEach(({ x }, i) => {
      out.push({ from: carrying[i].x, to: x, words: "between supports", braces: null });
    });
  return out;
}

/** Slenderness of every girder at every stored pose: a caution above the lower limit, a stop above the higher one. */
export function girderSlenderness(ctx: SetContext): Measure[] {
  const levels = [
    { check: "girder slenderness", level: "caution", limit: limitOf(ctx.plan, "girder slenderness") },
    { check: "girder too slender", level: "stop", limit: limitOf(ctx.plan, "girder slenderness stop") },
  ] as const;
  return girdersOf(ctx).flatMap((g) => {
    const worstOf = worstLength(g, bracedLength(ctx, g));
    return levels.flatMap(({ check, level, limit }) =>
      limit === null
        ? []
        : [
            measure(
              {
                check,
                level,
                subject: g.name,
                kind: "",
                unit: "L/b",
                factor: 1,
                digits: 1,
                watched: false,
                cure: "a support or a brace nearer to the tip, lateral bracing, or a stiffening truss on the flange",
                ...traced(ctx, (pose, rec) => read(g, worstOf, limit, pose, rec)),
              },
              limit,
            ),
          ],
    );
  });
}

/** The most slender length by what carries the girder; the last answer stands while the supports stay the same. */
function worstLength(g: GirderData, braced: Length | null): (carrying: readonly Carrying[]) => Length | null {
  let known: readonly Carrying[] | null = null;
  let worst: Length | null = null;
  return (carrying) => {
    const same =
      known !== null &&
      known.length === carrying.length &&
      known.every((c, i) => c.x === carrying[i].x && c.what === carrying[i].what);
    if (!same) worst = mostSlender(g, lengthsAt(g, braced, carrying));
    known = carrying;
    return worst;
  };
}

function read(
  g: GirderData,
  worstOf: (carrying: readonly Carrying[]) => Length | null,
  limit: Limit,
  pose: Pose,
  rec: Recorder | null,
): Reading {
  const worst = worstOf(carryingOn(diagramsOf(pose.solution), pose, g.index));
  if (worst === null) return NOT_HERE;
  const { from, to, words, braces } = worst;
  const value = slendernessOf(g, worst);
  if (rec !== null) {
    if (braces === null) solved(rec, "L", to - from, "m", words);
    else {
      stationOf(rec, "x_1", braces[0]);
      stationOf(rec, "x_2", braces[1]);
      trace(rec, "L", to - from, "x_2 - x_1", "m", words);
    }
    const { width, piece, of } = narrowest(g, from, to);
    field(rec, "b", width / 1000, `narrowest flange, of ${piece.name}`, `${piece.path}.${of}[0]`, width, MM);
    trace(rec, "slender", value, "L/b", "1", "unsupported length over flange width");
    constant(rec, "allowed", limit.value, "1", "L/b that is allowed", `${limit.source} (${limit.chosenBy})`);
    rec.ends("slender", "allowed");
  }
  return {
    value,
    limit: limit.value,
    get where() {
      return `${words}, ${(to - from).toFixed(1)} m; narrowest flange ${narrowest(g, from, to).width} mm`;
    },
  };
}

/** An end of a field piece with its place in the plan; '' at the rear end. */
interface Cut {
  at: number;
  path: string;
}

/** Field pieces, from splice to splice, that are long for their flanges; judged alone, as they are handled. */
export function fieldPieces(ctx: SetContext): DataMeasure[] {
  const limit = limitOf(ctx.plan, "field piece slenderness");
  if (limit === null) return [];
  const own = `sets[${ctx.plan.sets.indexOf(ctx.set)}]`;
  return girdersOf(ctx).flatMap((g) => {
    const splices = ctx.set.splices.flatMap((s, i): Cut[] =>
      s.girder === g.line ? [{ at: s.at_m, path: `${own}.splices[${i}].at_m` }] : [],
    );
    const last = g.pieces[g.pieces.length - 1];
    const ends: Cut[] = [
      { at: 0, path: "" },
      ...splices.sort((a, b) => a.at - b.at),
      { at: g.length, path: `${last.path}.to_m` },
    ];
    return ends.slice(1).map((to, i) => fieldPiece(ctx, g, [ends[i], to], limit));
  });
}

function fieldPiece(ctx: SetContext, g: GirderData, [from, to]: [Cut, Cut], limit: Limit): DataMeasure {
  const { width, piece, of } = narrowest(g, from.at, to.at);
  return dataMeasure(
    {
      check: "field piece slenderness",
      set: ctx.set.id,
      subject: `${g.name} from ${from.at} to ${to.at} m`,
      unit: "L/b",
      factor: 1,
      words: ({ value }) =>
        `${g.name}: the field piece from ${from.at} to ${to.at} m is ${value.toFixed(1)} times as long as its narrowest flange is wide (${width} mm, ${piece.name}); ${limit.value} is usual`,
      cure: "wider flanges, a shorter piece, or a stiffening truss while it is handled alone",
    },
    (rec) => {
      field(rec, "x_2", to.at, "front end of the piece", to.path, to.at, METRE);
      if (from.path === "") constant(rec, "x_1", 0, "m", "rear end of the piece", "rear end of the girder");
      else field(rec, "x_1", from.at, "rear end of the piece", from.path, from.at, METRE);
      trace(rec, "L", to.at - from.at, "x_2 - x_1", "m", "length of the piece");
      field(
        rec,
        "b",
        width / 1000,
        `narrowest flange, of ${piece.name}`,
        `${piece.path}.${of}[0]`,
        width,
        MM,
      );
      const words = "length over flange width";
      const value = trace(rec, "slender", (to.at - from.at) / (width / 1000), "L/b", "1", words);
      constant(rec, "allowed", limit.value, "1", "L/b that is usual", `${limit.source} (${limit.chosenBy})`);
      rec?.ends("slender", "allowed");
      return { value, limit: limit.value };
    },
    limit,
  );
}
