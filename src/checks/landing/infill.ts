// Members that join a set to one that stands: how far their ends are off the fit for which they were made.

import { camberAt as camberOf, droopAt } from "../../mechanics/index.ts";
import { bearingName, byId, camberAt, type Plan, type PlanSet } from "../../plan/index.ts";
import { planeLevel, prepareContext, type SetContext } from "../../sequence/index.ts";
import { dataFindings, dataMeasure } from "../dataMeasure.ts";
import { missing, notSet } from "../finding.ts";
import { type DataMeasure, NOT_HERE, type Reading } from "../measure.ts";
import { field, MM, type Recorder, solved, trace } from "../trace.ts";
import type { Finding } from "../types.ts";
import { type Landed, landedAsDesigned, landedOn, topsOf } from "./landed.ts";

type Infill = NonNullable<PlanSet["infill"]>[number];

/** Contexts of sets that stand, by plan. */
const contexts = new WeakMap<Plan, Map<string, SetContext>>();

function contextOf(plan: Plan, id: string): SetContext {
  let known = contexts.get(plan);
  if (known === undefined) {
    known = new Map();
    contexts.set(plan, known);
  }
  let ctx = known.get(id);
  if (ctx === undefined) {
    ctx = prepareContext(plan, id);
    known.set(id, ctx);
  }
  return ctx;
}

/** Elevation of a girder's soffit at a chainage, m, in a landed set; NaN beyond its ends. */
function soffitAt(ctx: SetContext, at: Landed, girder: string, chainage: number): number {
  const i = ctx.model.girders.findIndex((g) => g.name === girder);
  const s = chainage - at.situation.rearEnd;
  const g = ctx.model.girders[i];
  if (g === undefined || s < g.from - 1e-9 || s > g.to + 1e-9) return Number.NaN;
  const level = droopAt(at.solution, i, s) + camberOf(at.solution.model, i, s);
  return planeLevel(at.situation, s, g.y) + level;
}

/** The same without any load: the cambered shape over the line between its designed bearings. */
function unloadedAt(ctx: SetContext, girder: string, chainage: number): number {
  const { plan, set } = ctx;
  const soles = set.soleStations_m;
  const at = landedAsDesigned(ctx);
  const g = set.girders.find((x) => x.line === girder);
  if (soles === undefined || at === null || g === undefined) return Number.NaN;
  const tops = topsOf(ctx, "designed");
  const top = (line: string) => tops[at.bearings.findIndex((b) => bearingName(b) === `${line} ${girder}`)];
  const s = chainage - (plan.site.nearBearing_m - soles.near);
  const t = (s - soles.near) / (soles.far - soles.near);
  const camber = (x: number) => camberAt(g, x) / 1000;
  const over = camber(s) - (1 - t) * camber(soles.near) - t * camber(soles.far);
  return top("near") * (1 - t) + top("far") * t + over;
}

/** How far this set's end of a member is above where it fits, m: drop as the sets stand less drop of the fit. */
export interface Misfit {
  /** How much lower the other girder stands, and how much lower it is made to be, m. */
  drop: number;
  made: number;
  off: number;
}

/** Null where the plan does not say enough, or a set does not come to rest on its bearings. */
export function misfitOf(rec: Recorder | null, ctx: SetContext, one: Infill): Misfit | null {
  const { plan, set } = ctx;
  const other = contextOf(plan, one.to);
  const [mine, its] = [landedOn(ctx, topsOf(ctx, "it stands")), landedOn(other, topsOf(other, "it stands"))];
  if (mine === null || its === null) return null;
  const chainage = mine.situation.rearEnd + one.at_m;
  const z_1 = soffitAt(ctx, mine, one.girder, chainage);
  const z_0 = soffitAt(other, its, one.toGirder, chainage);
  const made = madeDrop(rec, ctx, other, one, chainage);
  if (made === null || Number.isNaN(z_1 - z_0)) return null;
  solved(
    rec,
    "z_1",
    z_1,
    "m",
    `soffit of ${one.girder} of ${set.id} at the member, landed on its bearings as they stand`,
  );
  solved(
    rec,
    "z_0",
    z_0,
    "m",
    `soffit of ${one.toGirder} of ${one.to} there, landed on its bearings as they stand`,
  );
  const off = trace(
    rec,
    "u",
    z_1 - z_0 - made,
    "z_1 - z_0 - d",
    "m",
    "end of the member above where it fits",
  );
  return { drop: z_1 - z_0, made, off };
}

/** How much lower the other girder is in the condition for which the member was made, m. */
function madeDrop(
  rec: Recorder | null,
  ctx: SetContext,
  other: SetContext,
  one: Infill,
  chainage: number,
): number | null {
  const { plan, set } = ctx;
  if (one.drop_mm !== undefined) {
    const path = `sets[${plan.sets.indexOf(set)}].infill[${set.infill?.indexOf(one)}].drop_mm`;
    return field(rec, "d", one.drop_mm / 1000, "drop for which it was made", path, one.drop_mm, MM);
  }
  if (one.fit === "total dead load") return null;
  const level = (c: SetContext, girder: string): number => {
    if (one.fit === "no load") return unloadedAt(c, girder, chainage);
    const at = landedAsDesigned(c);
    return at === null ? Number.NaN : soffitAt(c, at, girder, chainage);
  };
  const d = level(ctx, one.girder) - level(other, one.toGirder);
  return Number.isNaN(d)
    ? null
    : solved(rec, "d", d, "m", `drop between the two on their designed bearings, ${one.fit}`);
}

/** How far an end stands off its fit, in words. */
const offWords = (plan: Plan, one: Infill, off: number): string =>
  `${one.name}: ${one.girder} stands ${Math.abs(1000 * off).toFixed(1)} mm too ${off > 0 ? "high" : "low"} beside ` +
  `${one.toGirder} of ${byId(plan.sets, one.to).id} for a member made to fit under ${one.fit}`;

/** Members whose ends are off their fit by more than what is allowed, or of which too little is known. */
export function infillFindings(ctx: SetContext): Finding[] {
  return [...infillOpen(ctx), ...dataFindings(infillMeasures(ctx))];
}

function infillOpen(ctx: SetContext): Finding[] {
  const { plan, set } = ctx;
  return (set.infill ?? []).flatMap((one, i) => {
    const path = `sets[${plan.sets.indexOf(set)}].infill[${i}]`;
    const misfit = misfitOf(null, ctx, one);
    if (misfit === null) {
      const why =
        one.fit === "total dead load" && one.drop_mm === undefined
          ? "made to fit under total dead load, which the plan does not hold: state drop_mm"
          : "levels of both girders at it are not known: sole stations, bearings, or its place along both sets are missing";
      return [missing(set.id, path, `${one.name}: ${why}`)];
    }
    if (one.allowed_mm !== undefined) return [];
    const words = `${offWords(plan, one, misfit.off)}; what may be pulled together is not stated`;
    return [notSet(set.id, `infill fit: ${one.name}`, words, "state allowed_mm")];
  });
}

/** Ends of members against what may be pulled together. */
export function infillMeasures(ctx: SetContext): DataMeasure[] {
  const { plan, set } = ctx;
  return (set.infill ?? []).flatMap((one, i) => {
    const { allowed_mm } = one;
    if (allowed_mm === undefined) return [];
    const of = (rec: Recorder | null): Reading => {
      const misfit = misfitOf(rec, ctx, one);
      if (misfit === null) return { ...NOT_HERE, why: "levels are not known" };
      const value = trace(rec, "off", Math.abs(misfit.off), "abs(u)", "m", "off its fit");
      const path = `sets[${plan.sets.indexOf(set)}].infill[${i}].allowed_mm`;
      field(rec, "allowed", allowed_mm / 1000, "allowed", path, allowed_mm, MM);
      rec?.ends("off", "allowed");
      return { value, limit: allowed_mm / 1000 };
    };
    return [
      dataMeasure(
        {
          check: "infill fit",
          set: set.id,
          subject: one.name,
          unit: "mm",
          factor: 1000,
          words: () => offWords(plan, one, misfitOf(null, ctx, one)?.off ?? Number.NaN),
          cure: "shims, a hook or jack that brings the girders level while it is connected, or a member made anew",
        },
        of,
        { source: "allowed_mm of this member in the plan", chosenBy: "plan" },
      ),
    ];
  });
}
