// A set's girders as the strength checks need them: pieces with their plates and steel, and where each number stands in
// the plan.

import { type Piece, type PlanSet, printPath, steelE, steelOf, yieldOf } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { constant, field, GPA, METRE, MM, MPA, type Recorder } from "../trace.ts";
import type { Steel } from "./aiscClass.ts";
import { type FlangePlates, type FlangeSection, flangeSection } from "./section.ts";

/** One piece of a girder; stations in m. */
export interface PieceData {
  piece: Piece;
  name: string;
  from: number;
  to: number;
  /** Where the piece and its yield stress stand in the plan. */
  path: string;
  yieldPath: string;
  /** MPa as stated; null where the plan has none. */
  yieldStress: number | null;
}

/** One girder of a set. */
export interface GirderData {
  line: string;
  /** As the subject of a check. */
  name: string;
  /** Index among the girders of the statics. */
  index: number;
  path: string;
  y: number;
  length: number;
  pieces: PieceData[];
  /** Pieces without a yield stress, by name. */
  unknown: string[];
}

/** Where a set stands in its plan, as `sets[0]`. */
export function setPath(ctx: SetContext): string {
  return printPath(["sets", ctx.plan.sets.findIndex((set) => set.id === ctx.set.id)]);
}

/** The girders of a set. */
export function girdersOf(ctx: SetContext): GirderData[] {
  const root = setPath(ctx);
  return ctx.set.girders.map((girder, i) => {
    const path = `${root}.girders[${i}]`;
    const pieces = girder.pieces.map((piece, k): PieceData => {
      return {
        piece,
        name: piece.mark ?? `piece ${k + 1}`,
        from: piece.from_m,
        to: piece.to_m,
        path: `${path}.pieces[${k}]`,
        yieldPath: piece.yield_MPa === undefined ? `${root}.yield_MPa` : `${path}.pieces[${k}].yield_MPa`,
        yieldStress: yieldOf(ctx.set, piece),
      };
    });
    return {
      line: girder.line,
      name: `girder ${girder.line}`,
      index: ctx.model.girders.findIndex((g) => g.name === girder.line),
      path,
      y: girder.y_m,
      length: pieces[pieces.length - 1].to,
      pieces,
      unknown: pieces.filter((p) => p.yieldStress === null).map((p) => p.name),
    };
  });
}

/** The piece of a girder at a station, the one behind where two meet. */
export function pieceAt(girder: GirderData, x: number): PieceData {
  return girder.pieces.find((p) => x <= p.to) ?? girder.pieces[girder.pieces.length - 1];
}

/** Modulus and yield stress of a piece, Pa. Throws RangeError for a piece without a yield stress. */
export function steelAt(rec: Recorder | null, ctx: SetContext, p: PieceData): Steel {
  const stated = p.yieldStress;
  if (stated === null) throw new RangeError(`${p.path}: no yield stress; give yield_MPa before it is judged`);
  const F_y = field(rec, "F_y", stated * 1e6, `yield stress of ${p.name}`, p.yieldPath, stated, MPA);
  return { E: modulus(rec, ctx), F_y };
}

/** Modulus of a set's steel, Pa. */
export function modulus(rec: Recorder | null, ctx: SetContext): number {
  const { E } = steelOf(ctx.set);
  const stated: PlanSet["E_GPa"] = ctx.set.E_GPa;
  return stated === undefined
    ? constant(
        rec,
        "E",
        E,
        "Pa",
        "modulus of steel",
        `EN 1993-1-1 3.2.6: ${steelE / 1e9} GPa stands where the plan has none`,
      )
    : field(rec, "E", E, "modulus of steel", `${setPath(ctx)}.E_GPa`, stated, GPA);
}

const sections = new WeakMap<PieceData, { top: FlangeSection | null; bottom: FlangeSection | null }>();

/** Section of a piece with its top or bottom flange in compression; without a recorder it is worked out once. */
export function sectionAt(rec: Recorder | null, p: PieceData, top: boolean): FlangeSection {
  if (rec !== null) return sectionOfPiece(rec, p, top);
  let known = sections.get(p);
  if (known === undefined) {
    known = { top: null, bottom: null };
    sections.set(p, known);
  }
  const side = top ? "top" : "bottom";
  known[side] ??= sectionOfPiece(null, p, top);
  return known[side];
}

function sectionOfPiece(rec: Recorder | null, p: PieceData, top: boolean): FlangeSection {
  const near = top ? "topFlange_mm" : "bottomFlange_mm";
  const far = top ? "bottomFlange_mm" : "topFlange_mm";
  const words = { [near]: "flange in compression", [far]: "flange in tension", web_mm: "web" };
  const plate = (symbol: string, of: "topFlange_mm" | "bottomFlange_mm" | "web_mm", k: 0 | 1) => {
    const stated = p.piece[of][k];
    if (rec === null) return stated / 1000;
    const size = k === 1 ? "thickness" : of === "web_mm" ? "height" : "width";
    return field(
      rec,
      symbol,
      stated / 1000,
      `${size} of the ${words[of]} of ${p.name}`,
      `${p.path}.${of}[${k}]`,
      stated,
      MM,
    );
  };
  const plates: FlangePlates = {
    b_c: plate("b_c", near, 0),
    t_c: plate("t_c", near, 1),
    h: plate("h", "web_mm", 0),
    t_w: plate("t_w", "web_mm", 1),
    b_t: plate("b_t", far, 0),
    t_t: plate("t_t", far, 1),
  };
  return flangeSection(rec, plates);
}

/** A station of the plan that ends an unbraced length. */
export interface Brace {
  x: number;
  words: string;
  /** '' for the rear end, which is station 0 by definition. */
  path: string;
  /** Something holds the flanges there; false for a free end. */
  holds: boolean;
}

/** A station with its place in the plan. */
export function stationOf(rec: Recorder | null, symbol: string, b: Brace): number {
  return b.path === ""
    ? constant(rec, symbol, b.x, "m", b.words, "stations run from the rear end of the set")
    : field(rec, symbol, b.x, b.words, b.path, b.x, METRE);
}

/** Stations of a girder that end its unbraced lengths, in order: its ends, cross-frames, ends of lateral bracing. */
export function bracesOf(ctx: SetContext, girder: GirderData): Brace[] {
  const root = setPath(ctx);
  const { set } = ctx;
  const all: Brace[] = [];
  if (set.girders.length > 1) {
    set.crossFrames.forEach((frame, i) => {
      all.push({ x: frame.at_m, words: "cross-frame", path: `${root}.crossFrames[${i}].at_m`, holds: true });
    });
    (set.lateralBracing ?? []).forEach((run, i) => {
      const path = `${root}.lateralBracing[${i}]`;
      all.push({ x: run.from_m, words: "lateral bracing", path: `${path}.from_m`, holds: true });
      all.push({ x: run.to_m, words: "lateral bracing", path: `${path}.to_m`, holds: true });
    });
  }
  all.push({ x: 0, words: "rear end", path: "", holds: false });
  const last = girder.pieces.length - 1;
  all.push({
    x: girder.length,
    words: "front end",
    path: `${girder.path}.pieces[${last}].to_m`,
    holds: false,
  });
  all.sort((a, b) => a.x - b.x || Number(b.holds) - Number(a.holds));
  return all.filter((b, i) => i === 0 || b.x - all[i - 1].x > 1e-6);
}
