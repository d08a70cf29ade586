// The set as a whole: tipping, lean and level, uplift, bearings and lashings, the residual of the statics.

import { leanOf, levelOf, tippingOf } from "../mechanics/index.ts";
import { bearingName, bearingsOf, type Plan } from "../plan/index.ts";
import type { Pose, SetContext } from "../sequence/index.ts";
import { type Limit, limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import { constant, type Recorder, solved, trace } from "./trace.ts";
import { recordRated, traced } from "./traced.ts";

export function tipping(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "tipping ratio", true);
  if (!limit) return [];
  return [
    measure(
      {
        check: "tipping",
        subject: "set",
        kind: "",
        sense: "least",
        unit: "moment ratio",
        factor: 1,
        digits: 2,
        strip: true,
        cure: "a shorter overhang, supports further apart, or a crane that takes part of the load",
        ...traced(ctx, (pose, rec): Reading => {
          const t = tippingOf(pose.solution);
          if (!t || t.momentRatio === null) return NOT_HERE;
          const { axis, cgDistance } = t;
          if (rec !== null) {
            solved(rec, "ratio", t.momentRatio, "1", `stabilising over overturning moment about ${axis}`);
            constant(rec, "least", limit.value, "1", "least ratio", `${limit.source} (${limit.chosenBy})`);
            rec.ends("ratio", "least");
          }
          return {
            value: t.momentRatio,
            limit: limit.value,
            get where() {
              return `about ${axis}, CG ${cgDistance.toFixed(2)} m inside`;
            },
          };
        }),
      },
      limit,
    ),
  ];
}

/** Lean and level of the set against true level, in percent. */
export function outOfLevel(ctx: SetContext): Measure[] {
  const lean = limitOf(ctx.plan, "set lean");
  const level = limitOf(ctx.plan, "set level");
  const out: Measure[] = [];
  const common = { subject: "set", kind: "", level: "caution" as const, unit: "%", factor: 100, digits: 2 };
  if (lean)
    out.push(
      measure(
        {
          ...common,
          check: "set lean",
          cure: "level the groups, pack one bunk, or lengthen one sling",
          ...traced(ctx, (pose, rec) =>
            awry(rec, leanOf(pose.solution), pose.situation.plane.crossfall, lean, "lean", "crossfall"),
          ),
        },
        lean,
      ),
    );
  if (level)
    out.push(
      measure(
        {
          ...common,
          check: "set level",
          cure: "hoist the lower end, or jack its groups",
          ...traced(ctx, (pose, rec) =>
            awry(rec, levelOf(pose.solution), pose.situation.plane.grade, level, "level", "grade"),
          ),
        },
        level,
      ),
    );
  return out;
}

/** How far the set leans or slopes from true: its turn against its datum plane, less the slope of that plane. */
function awry(
  rec: Recorder | null,
  turn: number,
  plane: number,
  limit: Limit,
  what: string,
  slope: string,
): Reading {
  solved(rec, "turn", turn, "1", `${what} of the set against its datum plane`);
  solved(rec, "slope", plane, "1", `${slope} of the datum plane`);
  const value = trace(rec, "out", Math.abs(turn - plane), "abs(turn - slope)", "1", `${what} against true`);
  constant(rec, "p", limit.value, "%", `greatest ${what}`, `${limit.source} (${limit.chosenBy})`);
  const most = trace(rec, "out_a", limit.value / 100, "p/100", "1", `greatest ${what}`);
  rec?.ends("out", "out_a");
  return { value, limit: most };
}

/** One side or row of bunks free while the rest of the transporter carries; a bearing free while no hook carries. */
export function uplift(ctx: SetContext): Measure[] {
  const ids = ctx.set.onTransporters.map((on) => on.transporter);
  const kindOf = (id: string) => ctx.supports.find((s) => s.of === id)?.kind ?? "";
  const bunks = ids.map((id) =>
    measure({
      check: "uplift",
      subject: id,
      kind: kindOf(id),
      level: "caution",
      unit: "bunks free",
      factor: 1,
      digits: 0,
      source: "a bunk can only push: one free while its neighbours carry means the load has gone to one side",
      chosenBy: "default",
      cure: "pack the free bunk, or take the load off both sides together",
      ...traced(ctx, (pose, rec) => freeOf(ctx, pose, rec, (s) => s.what === "bunk" && s.of === id)),
    }),
  );
  const bearings = measure({
    check: "uplift",
    subject: "bearings",
    kind: "",
    unit: "bearings free",
    factor: 1,
    digits: 0,
    source: "a bearing can only push: with no hook on, every bearing is meant to carry",
    chosenBy: "default",
    cure: "shim the free bearing before the hooks are let go",
    ...traced(ctx, (pose, rec) => {
      const hooked = pose.situation.cranes.some((c) => c.hooked);
      if (hooked || !pose.situation.overSeats) return NOT_HERE;
      return freeOf(ctx, pose, rec, (s) => s.what === "bearing");
    }),
  });
  return [...bunks, bearings];
}

function freeOf(
  ctx: SetContext,
  pose: Pose,
  rec: Recorder | null,
  of: (s: SetContext["supports"][number]) => boolean,
): Reading {
  let free = 0;
  let carrying = 0;
  let where = "";
  ctx.supports.forEach((s, i) => {
    if (!of(s) || Number.isNaN(pose.forces[i])) return;
    if (pose.forces[i] > 0) carrying++;
    else {
      free++;
      where += `${where ? ", " : ""}${s.name}`;
    }
  });
  if (carrying === 0) return NOT_HERE;
  solved(rec, "n_free", free, "1", `contacts that carry nothing${where ? `: ${where}` : ""}`);
  constant(rec, "n_a", 0, "1", "none", "a contact can only push");
  rec?.ends("n_free", "n_a");
  return { value: free, limit: 0, where };
}

export function bearingLoads(ctx: SetContext): Measure[] {
  return bearingsOf(ctx.plan, ctx.set).map((b) => {
    const i = ctx.supportIndex.get(`bearing ${bearingName(b)}`) ?? -1;
    const what = `force of bearing ${bearingName(b)}`;
    const path = `site.bearings[${ctx.plan.site.bearings.indexOf(b)}].ratedLoad_kN`;
    return measure({
      check: "bearing load",
      subject: bearingName(b),
      kind: `${b.line} bearings`,
      strip: true,
      source: "rated load of the bearing in the plan",
      chosenBy: "plan",
      cure: "shims that share the load, or hooks kept on until all bearings carry",
      ...traced(ctx, (pose, rec) => {
        recordRated(rec, pose.forces[i], what, path, b.ratedLoad_kN, "rated load of the bearing");
        return { value: pose.forces[i], limit: b.ratedLoad_kN * 1000 };
      }),
    });
  });
}

export function lashingLoads(ctx: SetContext): Measure[] {
  const rated = (plan: Plan) => plan.lashings.filter((l) => l.ratedLoad_kN !== undefined);
  return rated(ctx.plan)
    .filter((l) => ctx.supportIndex.has(`lashing ${l.id}`))
    .map((l) => {
      const i = ctx.supportIndex.get(`lashing ${l.id}`) ?? -1;
      const what = `force of lashing ${l.id}`;
      const path = `lashings[${ctx.plan.lashings.indexOf(l)}].ratedLoad_kN`;
      return measure({
        check: "lashing load",
        subject: `lashing ${l.id}`,
        kind: "lashing",
        source: "rated load of the lashing in the plan",
        chosenBy: "plan",
        cure: "slacken or take off the lashing before this step, or more lashings",
        ...traced(ctx, (pose, rec) => {
          recordRated(rec, pose.forces[i], what, path, l.ratedLoad_kN ?? 0, "rated load of the lashing");
          return { value: pose.forces[i], limit: (l.ratedLoad_kN ?? 0) * 1000 };
        }),
      });
    });
}

export function residuals(ctx: SetContext): Measure[] {
  return [
    measure({
      check: "residual",
      subject: "statics",
      kind: "",
      unit: "of W or W L",
      factor: 1,
      digits: 12,
      source: "equilibrium summed from coordinates, bound 1e-9 of W and of W L",
      chosenBy: "default",
      cure: "do not use these numbers; report the plan file to whoever keeps this program",
      ...traced(ctx, ({ solution: { status, residual } }, rec) => {
        if (status !== "solved") return NOT_HERE;
        const { force, moment } = residual;
        solved(rec, "r_F", force, "1", "forces out of balance, over the weight");
        solved(rec, "r_M", moment, "1", "moments out of balance, over weight times length");
        const value = trace(rec, "r", Math.max(force, moment), "max(r_F, r_M)", "1", "the greater of both");
        constant(rec, "r_a", 1e-9, "1", "greatest residual", "chosen for this program");
        rec?.ends("r", "r_a");
        return { value, limit: 1e-9 };
      }),
    }),
  ];
}
