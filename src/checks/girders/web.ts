// A web without a stiffener under a point load: local yielding and crippling, by ANSI/AISC 360-22 J10.2 and J10.3; the
// equations of AASHTO LRFD D6.5.2 and D6.5.3 are the same (from memory).

import { diagramsOf } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, type Reading } from "../measure.ts";
import { type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Steel } from "./aiscClass.ts";
import { type GirderData, girdersOf, sectionAt, steelAt } from "./data.ts";
import {
  atPlace,
  bearingLength,
  flangeAndWeld,
  type PointLoad,
  type PointSections,
  pieceUnder,
  pointLoadsOn,
  pointSections,
  stiffenerAt,
  stiffenersOn,
} from "./pointLoads.ts";
import { type GirderRules, girderRules, lowestAllowed } from "./rules.ts";
import type { FlangeSection } from "./section.ts";
import { type Carrying, carryingOn } from "./supports.ts";

const AISC = "ANSI/AISC 360-22";

/** What the web's strength at a point load depends on: the flange next to the load, m and Pa. */
export type WebAt = Pick<FlangeSection, "d" | "t_c" | "t_w"> & Steel;

/**
 * Nominal strength against yielding of the web at a point load, N. `k` from the face of the flange to the toe of the
 * weld, `l_b` the length of bearing, `x_e` the distance from the end of the girder, all in m.
 */
export function webYielding(rec: Recorder | null, w: WebAt, k: number, l_b: number, x_e: number): number {
  return trace(
    rec,
    "R_n",
    w.F_y * w.t_w * ((x_e > w.d ? 5 : 2.5) * k + l_b),
    "F_y*t_w*((x_e > d ? 5 : 2.5)*k + l_b)",
    "N",
    "local yielding of the web",
    AISC,
    "J10-2, J10-3",
  );
}

/** Nominal strength against crippling of the web at a point load that presses, N; arguments as of `webYielding`. */
export function webCrippling(rec: Recorder | null, w: WebAt, l_b: number, x_e: number): number {
  const root = trace(
    rec,
    "root_c",
    Math.sqrt((w.E * w.F_y * w.t_c) / w.t_w),
    "sqrt(E*F_y*t_c/t_w)",
    "Pa",
    "stress of crippling",
    AISC,
    "J10-4",
  );
  const s = trace(rec, "s_c", (w.t_w / w.t_c) ** 1.5, "(t_w/t_c)^1.5", "1", "web over flange", AISC, "J10-4");
  const a = l_b / w.d;
  return trace(
    rec,
    "R_n",
    w.t_w ** 2 *
      root *
      (x_e >= w.d / 2
        ? 0.8 * (1 + 3 * a * s)
        : a <= 0.2
          ? 0.4 * (1 + 3 * a * s)
          : 0.4 * (1 + (4 * a - 0.2) * s)),
    "t_w^2*root_c*(x_e >= d/2 ? 0.8*(1 + 3*l_b/d*s_c) : (l_b/d <= 0.2 ? 0.4*(1 + 3*l_b/d*s_c) : 0.4*(1 + (4*l_b/d - 0.2)*s_c)))",
    "N",
    "crippling of the web",
    AISC,
    "J10-4, J10-5a, J10-5b",
  );
}

type Kind = "yielding" | "crippling";

interface Prepared {
  ctx: SetContext;
  g: GirderData;
  kind: Kind;
  rules: GirderRules[];
  loads: Map<string, PointLoad>;
  stiffeners: ReturnType<typeof stiffenersOn>;
  sections: PointSections;
}

/** Yielding and crippling of the web of every girder whose pieces all have a yield stress. */
export function webAtPointLoads(ctx: SetContext): Measure[] {
  const rules = girderRules(ctx.plan);
  return girdersOf(ctx)
    .filter((g) => g.unknown.length === 0)
    .flatMap((g) => {
      const common = {
        ctx,
        g,
        rules,
        loads: pointLoadsOn(ctx, g),
        stiffeners: stiffenersOn(ctx, g),
        sections: pointSections(g),
      };
      return (["yielding", "crippling"] as const).map((kind) => {
        const p: Prepared = { ...common, kind };
        const judge = atPlace((at) => judged(p, at));
        return measure(
          {
            check: `web ${kind}`,
            subject: g.name,
            kind: "",
            digits: 0,
            strip: true,
            watched: false,
            cure: "a full-depth stiffener at the load, a longer bearing, or the support at a stiffener",
            ...traced(ctx, (pose, rec) => read(p, judge, pose, rec)),
          },
          rules[0],
        );
      });
    });
}

/** A point load with the strength of the web below it; null where a stiffener takes it or the check has no word on it. */
interface Judged {
  load: PointLoad | undefined;
  stiffened: boolean;
  strength: { limit: number; by: GirderRules } | null;
}

function judged(p: Prepared, at: Carrying): Judged {
  const load = p.loads.get(at.support);
  // A pull does not cripple a web.
  if (load === undefined || (p.kind === "crippling" && load.pulls))
    return { load, stiffened: false, strength: null };
  const stiffened = stiffenerAt(p.stiffeners, at.x) !== undefined;
  return { load, stiffened, strength: stiffened ? null : strengthAt(null, p, at, load) };
}

function read(p: Prepared, judge: (at: Carrying) => Judged, pose: Pose, rec: Recorder | null): Reading {
  const { g, stiffeners } = p;
  const carrying = carryingOn(diagramsOf(pose.solution), pose, g.index);
  let worst: { at: Carrying; load: PointLoad; limit: number; by: GirderRules } | null = null;
  let use = 0;
  for (const at of carrying) {
    const { load, strength } = judge(at);
    if (load === undefined || strength === null) continue;
    const { limit, by } = strength;
    if (at.force <= use * limit) continue;
    use = at.force / limit;
    worst = { at, load, limit, by };
  }
  if (worst === null)
    return {
      value: Number.NaN,
      limit: Number.NaN,
      get why() {
        const words = carrying
          .filter((at) => judge(at).stiffened)
          .map((at) => `${at.support} at ${at.x.toFixed(2)} m`);
        return words.length > 0
          ? `a stiffener takes the load: ${words.join(", ")}`
          : "nothing presses on the web here";
      },
    };
  const { at, load, limit, by } = worst;
  if (rec !== null) {
    solved(
      rec,
      "R",
      at.force,
      "N",
      `${at.support} on ${g.name} at ${at.x} m, no stiffener within ${stiffeners.within} m`,
    );
    strengthAt(rec, p, at, load);
    rec.ends("R", "R_a");
  }
  return {
    value: at.force,
    limit,
    source: by.source,
    chosenBy: by.chosenBy,
    get where() {
      const length = load.length === null ? "no stated length" : `${load.length} mm`;
      return `${at.support} at ${at.x.toFixed(2)} m, bearing on ${length}`;
    },
  };
}

/** The lowest strength of all rule sets at a point load, N. */
function strengthAt(
  rec: Recorder | null,
  { ctx, g, kind, rules, sections }: Prepared,
  at: Carrying,
  load: PointLoad,
): { limit: number; by: GirderRules } {
  const piece = pieceUnder(g, at.x);
  const known = sections.get(piece);
  const section =
    rec === null && known !== undefined
      ? known[load.top ? "top" : "bottom"]
      : sectionAt(rec, piece, load.top);
  const w: WebAt = { d: section.d, t_c: section.t_c, t_w: section.t_w, ...steelAt(rec, ctx, piece) };
  const k = flangeAndWeld(rec, piece, w.t_c);
  const l_b = bearingLength(rec, load);
  const x_e = solved(
    rec,
    "x_e",
    Math.min(at.x, g.length - at.x),
    "m",
    "load to the nearer end of the girder",
  );
  const R_n = kind === "yielding" ? webYielding(rec, w, k, l_b, x_e) : webCrippling(rec, w, l_b, x_e);
  return lowestAllowed(rec, rules, kind, "R", () => R_n);
}
