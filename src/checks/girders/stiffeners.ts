// A pair of full-depth stiffeners that takes a point load, with a strip of the web, as a column: ANSI/AISC 360-22 J10.8
// with E3 and J4.4, and AASHTO LRFD 6.10.11.2.4, both written from memory. Bearing of their ends is not judged.

import { diagramsOf } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, MM, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Steel } from "./aiscClass.ts";
import { type GirderData, girdersOf, sectionAt, steelAt } from "./data.ts";
import {
  atPlace,
  type PointSections,
  pieceUnder,
  pointLoadsOn,
  pointSections,
  type StiffenerData,
  stiffenerAt,
  stiffenersOn,
} from "./pointLoads.ts";
import { type GirderRules, girderRules, lowestAllowed } from "./rules.ts";
import { type Carrying, carryingOn } from "./supports.ts";

/** A pair of stiffeners on a web: sizes of one of them, web height and thickness, m. */
export interface Column {
  b_s: number;
  t_s: number;
  h: number;
  t_w: number;
}

/**
 * Nominal strength of the pair with its strip of web, N, `x_e` (m) from the end of the girder. The width that counts is
 * at most 0.48 t_s sqrt(E / F_y) (AASHTO 6.10.11.2.2; AISC table B4.1a allows 0.56), which is the safe side.
 */
export function stiffenerColumn(
  rec: Recorder | null,
  by: GirderRules["short"],
  { b_s, t_s, h, t_w }: Column,
  { E, F_y }: Steel,
  x_e: number,
): number {
  const aashto = by === "aashto";
  const source = aashto ? "AASHTO LRFD, written from memory" : "ANSI/AISC 360-22, written from memory";
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause: string) =>
    trace(rec, symbol, value, formula, unit, words, source, clause);
  const b = put(
    "b_e",
    Math.min(b_s, 0.48 * t_s * Math.sqrt(E / F_y)),
    "min(b_s, 0.48*t_s*sqrt(E/F_y))",
    "m",
    "width of a stiffener that counts",
    aashto ? "6.10.11.2.2" : "table B4.1a",
  );
  const [full, end] = aashto ? [18, 9] : [25, 12];
  const strip = put(
    "n_w",
    x_e >= (full / 2) * t_w ? full : end,
    aashto ? "x_e >= 9*t_w ? 18 : 9" : "x_e >= 12.5*t_w ? 25 : 12",
    "1",
    "strip of the web in its thicknesses",
    aashto ? "6.10.11.2.4b" : "J10.8",
  );
  const A = put("A_s", 2 * b * t_s + strip * t_w ** 2, "2*b_e*t_s + n_w*t_w^2", "m2", "area", "");
  const I = put(
    "I_s",
    (t_s * (2 * b + t_w) ** 3) / 12,
    "t_s*(2*b_e + t_w)^3/12",
    "m4",
    "second moment about the middle of the web, the strip left out",
    "",
  );
  const slender = put(
    "lambda_s",
    (0.75 * h) / Math.sqrt(I / A),
    "0.75*h/sqrt(I_s/A_s)",
    "1",
    "slenderness, effective length 0.75 h",
    aashto ? "6.10.11.2.4a" : "J10.8",
  );
  const F_e = put(
    "F_e",
    (Math.PI ** 2 * E) / slender ** 2,
    "pi^2*E/lambda_s^2",
    "Pa",
    "elastic buckling stress",
    "E3-4",
  );
  const squash = put("P_y", F_y * A, "F_y*A_s", "N", "squash load", aashto ? "6.9.4.1.1" : "J4-6");
  const curve = F_y / F_e <= 2.25 ? 0.658 ** (F_y / F_e) : (0.877 * F_e) / F_y;
  return put(
    "P_n",
    !aashto && slender <= 25 ? squash : squash * curve,
    aashto
      ? "P_y*(F_y/F_e <= 2.25 ? 0.658^(F_y/F_e) : 0.877*F_e/F_y)"
      : "lambda_s <= 25 ? P_y : P_y*(F_y/F_e <= 2.25 ? 0.658^(F_y/F_e) : 0.877*F_e/F_y)",
    "N",
    "the pair with its strip of web as a column",
    aashto ? "6.9.4.1.1-1, -2" : "J4-6, E3-1 to E3-3",
  );
}

interface Prepared {
  ctx: SetContext;
  g: GirderData;
  rules: GirderRules[];
  loads: ReturnType<typeof pointLoadsOn>;
  stiffeners: ReturnType<typeof stiffenersOn>;
  sections: PointSections;
}

/** Stiffeners with sizes, of every girder whose pieces all have a yield stress. */
export function stiffenerLoads(ctx: SetContext): Measure[] {
  const rules = girderRules(ctx.plan);
  return girdersOf(ctx)
    .filter((g) => g.unknown.length === 0)
    .map((g) => {
      const p: Prepared = {
        ctx,
        g,
        rules,
        loads: pointLoadsOn(ctx, g),
        stiffeners: stiffenersOn(ctx, g),
        sections: pointSections(g),
      };
      const judge = atPlace((at) => judged(p, at));
      return measure(
        {
          check: "stiffener load",
          subject: g.name,
          kind: "",
          digits: 0,
          strip: true,
          watched: false,
          cure: "stronger stiffeners, or less load at this place",
          ...traced(ctx, (pose, rec) => read(p, judge, pose, rec)),
        },
        rules[0],
      );
    });
}

/** The stiffener that takes a load that presses, with its strength; null where there is none of known size. */
interface Judged {
  stiffener: StiffenerData;
  limit: number;
  by: GirderRules;
}

function judged(p: Prepared, at: Carrying): Judged | null {
  const load = p.loads.get(at.support);
  if (load === undefined || load.pulls) return null;
  const stiffener = stiffenerAt(p.stiffeners, at.x);
  if (stiffener?.stated.width_mm === undefined || stiffener.stated.thickness_mm === undefined) return null;
  return { stiffener, ...strengthOf(null, p, at, stiffener) };
}

function read(
  p: Prepared,
  judge: (at: Carrying) => Judged | null,
  pose: Pose,
  rec: Recorder | null,
): Reading {
  let worst: (Judged & { at: Carrying }) | null = null;
  let use = 0;
  for (const at of carryingOn(diagramsOf(pose.solution), pose, p.g.index)) {
    const found = judge(at);
    if (found === null || at.force <= use * found.limit) continue;
    use = at.force / found.limit;
    worst = { at, ...found };
  }
  if (worst === null) return NOT_HERE;
  const { at, stiffener, limit, by } = worst;
  if (rec !== null) {
    solved(rec, "P", at.force, "N", `${at.support} on ${p.g.name} at ${at.x} m`);
    strengthOf(rec, p, at, stiffener);
    rec.ends("P", "P_a");
  }
  return {
    value: at.force,
    limit,
    source: by.source,
    chosenBy: by.chosenBy,
    get where() {
      return `${at.support}, stiffener at ${stiffener.stated.at_m} m`;
    },
  };
}

/** The lowest strength of all rule sets of a stiffener, N; its steel is taken as that of the piece. */
function strengthOf(
  rec: Recorder | null,
  { ctx, g, rules, sections }: Prepared,
  at: Carrying,
  { stated, path }: StiffenerData,
): { limit: number; by: GirderRules } {
  const piece = pieceUnder(g, at.x);
  const { h, t_w } = (rec === null && sections.get(piece)?.bottom) || sectionAt(rec, piece, false);
  const steel = steelAt(rec, ctx, piece);
  const { width_mm = 0, thickness_mm = 0 } = stated;
  const b_s = field(rec, "b_s", width_mm / 1000, "width of a stiffener", `${path}.width_mm`, width_mm, MM);
  const t_s = field(
    rec,
    "t_s",
    thickness_mm / 1000,
    "thickness of a stiffener",
    `${path}.thickness_mm`,
    thickness_mm,
    MM,
  );
  const x_e = solved(
    rec,
    "x_e",
    Math.min(at.x, g.length - at.x),
    "m",
    "load to the nearer end of the girder",
  );
  return lowestAllowed(rec, rules, "column", "P", (own, by) =>
    stiffenerColumn(own, by, { b_s, t_s, h, t_w }, steel, x_e),
  );
}
