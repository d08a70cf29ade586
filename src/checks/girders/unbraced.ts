// The unbraced lengths of a girder: between cross-frames, ends of lateral bracing and girder ends; and what the rule sets
// make of them once and for all, with either flange in compression.
//
// Where the section changes inside, the least strength within the length meets the greatest moment within it, with
// C_b = 1 (AASHTO LRFD 6.10.8.2.3, from memory; taken for all rule sets).

import type { SetContext } from "../../sequence/index.ts";
import { constant, type Recorder, trace } from "../trace.ts";
import { type Brace, bracesOf, type GirderData, type PieceData, sectionAt, steelAt } from "./data.ts";
import { allowed, type GirderRules } from "./rules.ts";
import { nominalMoment, type Strength } from "./strength.ts";

/** What one rule set makes of one piece in one unbraced length, with one flange in compression. */
export interface Judgement {
  rules: GirderRules;
  piece: PieceData;
  /** Symbol of what it allows, as 'M_asd', or 'M_asd_2' where there are several pieces. */
  symbol: string;
  strength: Strength;
  /** Factor for reverse curvature; 1 for equal flanges and where the shape may not help. */
  R_m: number;
}

/** One flange in compression over one unbraced length. */
export interface Side {
  top: boolean;
  judgements: Judgement[];
  /** What is allowed at the least factor that a moment shape may have, N m: at no pose is it less. */
  least: number;
}

/** One unbraced length of a girder; stations in m. */
export interface Unbraced {
  from: Brace;
  to: Brace;
  pieces: PieceData[];
  sides: [Side, Side];
}

/** The unbraced lengths of a girder, each piece of which has a yield stress. */
export function unbracedLengths(
  ctx: SetContext,
  girder: GirderData,
  rules: readonly GirderRules[],
): Unbraced[] {
  const braces = bracesOf(ctx, girder);
  return braces.slice(1).map((to, i) => {
    const from = braces[i];
    const pieces = girder.pieces.filter((p) => p.from < to.x - 1e-6 && p.to > from.x + 1e-6);
    const side = (top: boolean): Side => {
      const judgements = rules.flatMap((one) =>
        pieces.map((piece, k): Judgement => {
          const symbol = pieces.length > 1 ? `M_${one.short}_${k + 1}` : `M_${one.short}`;
          return { rules: one, piece, symbol, ...judge(null, ctx, one, piece, top, to.x - from.x) };
        }),
      );
      const least = Math.min(...judgements.map((j) => momentAllowed(null, j, Math.min(1, j.R_m))));
      return { top, judgements, least };
    };
    return { from, to, pieces, sides: [side(true), side(false)] };
  });
}

/** Strength of a piece over an unbraced length L_b, which the recorder knows, and its factor for reverse curvature. */
export function judge(
  rec: Recorder | null,
  ctx: SetContext,
  rules: GirderRules,
  piece: PieceData,
  top: boolean,
  L_b: number,
): { strength: Strength; R_m: number } {
  const section = sectionAt(rec, piece, top);
  const strength = rules.strength(rec, section, steelAt(rec, ctx, piece), L_b);
  if (section.b_c === section.b_t && section.t_c === section.t_t) return { strength, R_m: 1 };
  const { I_y, I_yc, b_t, t_t } = section;
  const share = top ? I_yc / I_y : (t_t * b_t ** 3) / 12 / I_y;
  const R_m = trace(
    rec,
    "R_rev",
    Math.min(1, 0.5 + 2 * share ** 2),
    top ? "min(1, 0.5 + 2*(I_yc/I_y)^2)" : "min(1, 0.5 + 2*(t_t*b_t^3/12/I_y)^2)",
    "1",
    "factor for reverse curvature with unequal flanges, by the top flange",
    "ANSI/AISC 360-22, commentary to F1, written from memory; here not above 1",
    "C-F1-2",
  );
  return { strength, R_m };
}

/** The factor for reverse curvature that acts: that of the section, or 1 with equal flanges or in single curvature. */
export function reverseFactor(rec: Recorder | null, j: Judgement, reversed: boolean): number {
  if (reversed && j.R_m !== 1)
    return trace(rec, "R_m", j.R_m, "R_rev", "1", "the moment changes its sign within the length");
  return constant(
    rec,
    "R_m",
    1,
    "1",
    "equal flanges, or single curvature: no moment of the other sign above 5 % of the greatest",
    "ANSI/AISC 360-22, commentary to F1, from memory",
  );
}

/** The moment that a judgement allows under the loads as they are, N m. */
export function momentAllowed(rec: Recorder | null, j: Judgement, C_b: number): number {
  return allowed(rec, j.rules, "bending", nominalMoment(rec, j.strength, C_b), "M_n", j.symbol);
}
