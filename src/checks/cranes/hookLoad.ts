// Cranes: what hangs on the hook against the chart, under every rule in force; chart left.

import { byId, type Chart, type Crane, hookName } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, METRE, type Recorder, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type HookLoad, recordGross, recordRatedLoad, recordRules } from "./hookTrace.ts";
import { type Hook, hookLoadWith, hookOf, loadOn } from "./onHook.ts";
import { craneField, type Reach, reachAt, recordReach } from "./reach.ts";
import { hookRules } from "./rules.ts";

export type { HookLoad };

/** The load on a crane's hook at a pose, with the net load that was solved for it. */
export function hookLoadOf(ctx: SetContext, pose: Pose, crane: Crane): HookLoad | null {
  const net = pose.forces[ctx.supportIndex.get(`hoist ${crane.id}`) ?? -1];
  return hookLoadWith(ctx.plan, ctx.set, pose, crane, net);
}

/** Radius of a hooked crane at a pose, m, with all that makes it grow: what its chart is read with; NaN when not hooked. */
export function radiusOf(ctx: SetContext, pose: Pose, crane: Crane): number {
  return reachAt(ctx, crane, pose, hookLoadOf(ctx, pose, crane)?.gross ?? 0)?.radius ?? Number.NaN;
}

/** Rows of both boom lengths beside the one there is, by radius; null where it lies beyond them. */
function rowsBeside(chart: Chart, boom: number): Chart["rows"][] | null {
  const lengths = [...new Set(chart.rows.map((r) => r.boom_m))].sort((a, b) => a - b);
  const shorter = lengths.filter((l) => l <= boom + 1e-9).pop();
  const longer = lengths.find((l) => l >= boom - 1e-9);
  if (shorter === undefined || longer === undefined) return null;
  return [...new Set([shorter, longer])].map((length) =>
    chart.rows.filter((r) => r.boom_m === length).sort((a, b) => a.radius_m - b.radius_m),
  );
}

/** Rated load (N) of the worse of some boom lengths at a radius; null beyond the rows. */
function ratedIn(lengths: Chart["rows"][], interpolated: boolean, radius: number, gravity: number) {
  let worst = Number.POSITIVE_INFINITY;
  for (const rows of lengths) {
    const i = rows.findIndex((r) => r.radius_m >= radius - 1e-9);
    if (i < 0 || radius < rows[0].radius_m - 1e-9) return null;
    let rated = rows[i].rated_t;
    if (interpolated && i > 0) {
      const t = (radius - rows[i - 1].radius_m) / (rows[i].radius_m - rows[i - 1].radius_m);
      rated = rows[i - 1].rated_t + t * (rows[i].rated_t - rows[i - 1].rated_t);
    }
    worst = Math.min(worst, rated);
  }
  return worst * 1000 * gravity;
}

/** Whether a chart may be interpolated: only where the plan quotes the page that allows it. */
const isInterpolated = (chart: Chart) => chart.interpolation && chart.page !== undefined && chart.page !== "";

/**
 * Rated load (N) at a radius and boom length: the next larger listed radius and the worse neighbouring boom length;
 * interpolated along the radius only where the plan quotes the page that allows it. Null beyond the rows.
 */
export function ratedLoad(chart: Chart, radius: number, boom: number, gravity: number): number | null {
  const lengths = rowsBeside(chart, boom);
  return lengths === null ? null : ratedIn(lengths, isInterpolated(chart), radius, gravity);
}

/** A hook with its load and reach at the last pose that was asked for: several checks read the same one. */
interface SeenHook extends Hook {
  ctx: SetContext;
  pose: Pose | null;
  load: HookLoad | null;
  reach: Reach | null;
}

const made = new WeakMap<SetContext, SeenHook[]>();

function hooksOf(ctx: SetContext): SeenHook[] {
  let hooks = made.get(ctx);
  if (hooks === undefined) {
    hooks = ctx.set.picks.map((pick) => ({
      ...hookOf(
        ctx.plan,
        byId(ctx.plan.cranes, pick.crane),
        pick,
        ctx.supportIndex.get(`hoist ${pick.crane}`) ?? -1,
      ),
      ctx,
      pose: null,
      load: null,
      reach: null,
    }));
    made.set(ctx, hooks);
  }
  return hooks;
}

/** Works load and reach of a hook out at a pose, unless that was done just before. */
function look(hook: SeenHook, pose: Pose): SeenHook {
  if (hook.pose === pose) return hook;
  hook.pose = pose;
  hook.load = loadOn(hook, pose, pose.forces[hook.column]);
  const gross = hook.load === null || Number.isNaN(hook.load.gross) ? 0 : hook.load.gross;
  hook.reach = reachAt(hook.ctx, hook.crane, pose, gross);
  return hook;
}

/** What hangs on the hook of a crane at a pose and how far it reaches; null where it is not on. */
export interface HookedAt {
  load: HookLoad;
  reach: Reach;
}

/** A reader of the hook of a crane, for the checks of cranes. */
export function hookReader(ctx: SetContext, crane: Crane): (pose: Pose) => HookedAt | null {
  const hook = hooksOf(ctx).find((one) => one.crane === crane);
  return (pose) => {
    if (hook === undefined) return null;
    const { load, reach } = look(hook, pose);
    return load !== null && reach !== null && load.gross >= 0 ? { load, reach } : null;
  };
}

/** Cranes that have a pick on the set. */
export const cranesOf = (ctx: SetContext): Crane[] => hooksOf(ctx).map((hook) => hook.crane);

/** How many hooks carry part of the set. */
export function hooksCarrying(ctx: SetContext): (pose: Pose) => number {
  const columns = hooksOf(ctx).map((hook) => hook.column);
  return (pose) => {
    let n = 0;
    for (const column of columns) if (pose.forces[column] > 0) n++;
    return n;
  };
}

/** A chart as it is read for one boom length: rated load (N) at a radius, null beyond its rows; and its ends. */
interface ReadChart {
  chart: Chart;
  /** Place in the plan. */
  path: string;
  words: string;
  ratedAt: (radius: number) => number | null;
  radii: { least: number; greatest: number } | null;
}

/** The chart in force in a step: while a crane walks with load the one for travel, where its maker gives one. */
export function chartsOf(ctx: SetContext, crane: Crane): (step: number) => ReadChart {
  const reading = (chart: Chart, name: "chart" | "travelChart"): ReadChart => {
    const beside = rowsBeside(chart, crane.boomLength_m);
    const interpolated = isInterpolated(chart);
    const title = name === "chart" ? "load chart" : "chart for travel with load";
    return {
      chart,
      path: `${craneField(ctx, crane)}.${name}`,
      words: `${chart.page ?? title}${chart.invented ? " (invented)" : ""} of ${crane.id}`,
      ratedAt: (radius) => beside && ratedIn(beside, interpolated, radius, ctx.gravity),
      radii: ratedRadii(chart, crane.boomLength_m),
    };
  };
  const own = reading(crane.chart, "chart");
  const travel = crane.travelChart === undefined ? own : reading(crane.travelChart, "travelChart");
  const walks = ctx.set.steps.map((step) => step.do === "walk" && step.crane === crane.id);
  return (step) => (walks[step] ? travel : own);
}

export function hookLoads(ctx: SetContext): Measure[] {
  const rules = hookRules(ctx.plan);
  const carrying = hooksCarrying(ctx);
  return hooksOf(ctx).map((hook) => {
    const { crane } = hook;
    const charts = chartsOf(ctx, crane);
    return measure({
      check: "hook load",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      strip: true,
      source: charts(-1).words,
      chosenBy: "plan",
      cure: "a smaller radius, a bigger crane, a pick further from the CG, or less load handed to this hook",
      ...traced(ctx, (pose, rec): Reading => {
        const { load, reach } = look(hook, pose);
        if (!load || !reach || !(load.gross >= 0)) return NOT_HERE;
        const chart = charts(pose.step);
        const rated = chart.ratedAt(reach.radius);
        if (rated === null) return NOT_HERE;
        const governing = rules(carrying(pose));
        const limit = rated * governing.part;
        if (rec !== null) {
          recordGross(rec, ctx, crane, pose, load);
          recordReach(rec, ctx, crane, pose, reach);
          recordRatedLoad(rec, rated, `${chart.path}, boom ${crane.boomLength_m} m`, reach.radius);
          recordRules(rec, limit, governing);
          rec.ends("F", "F_a");
        }
        const { source, chosenBy, means } = governing.limit;
        return {
          value: load.gross,
          limit,
          get source() {
            return `${source}; ${chart.words}`;
          },
          chosenBy,
          get where() {
            const rule = means === undefined ? "" : `; above it: ${means}`;
            return `radius ${reach.radius.toFixed(1)} m, rated ${(rated / 1000).toFixed(0)} kN${rule}`;
          },
        };
      }),
    });
  });
}

/** Radii between which a chart rates a boom length (the rows of both neighbouring lengths, m); null where it has none. */
function ratedRadii(chart: Chart, boom: number): { least: number; greatest: number } | null {
  const lengths = [...new Set(chart.rows.map((r) => r.boom_m))];
  const beside = [
    Math.max(...lengths.filter((l) => l <= boom + 1e-9)),
    Math.min(...lengths.filter((l) => l >= boom - 1e-9)),
  ];
  if (!beside.every(Number.isFinite)) return null;
  const radii = beside.map((l) => chart.rows.filter((r) => r.boom_m === l).map((r) => r.radius_m));
  return {
    least: Math.max(...radii.map((list) => Math.min(...list))),
    greatest: Math.min(...radii.map((list) => Math.max(...list))),
  };
}

/** Writes a listed radius of a chart down by its row. */
function recordRow(rec: Recorder, symbol: string, radius: number, { chart, path }: ReadChart): void {
  const i = chart.rows.findIndex((row) => row.radius_m === radius);
  field(rec, symbol, radius, "listed radius", `${path}.rows[${i}].radius_m`, radius, METRE);
}

/** Greatest (or, when too near, least) listed radius against the radius there is. */
export function chartLeft(ctx: SetContext): Measure[] {
  return hooksOf(ctx).map((hook) => {
    const { crane } = hook;
    const charts = chartsOf(ctx, crane);
    return measure({
      check: "chart left",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      unit: "m",
      factor: 1,
      digits: 2,
      source: `${charts(-1).words}: nothing is rated beyond its rows`,
      chosenBy: "plan",
      cure: "stand the crane nearer, or choose a configuration whose chart reaches there",
      ...traced(ctx, (pose, rec): Reading => {
        const { load, reach } = look(hook, pose);
        if (reach === null) return NOT_HERE;
        const chart = charts(pose.step);
        const { radius } = reach;
        if (chart.radii === null)
          return { value: radius, limit: 0, where: `no row for a boom of ${crane.boomLength_m} m` };
        const { least, greatest } = chart.radii;
        if (rec !== null && load !== null) {
          recordGross(rec, ctx, crane, pose, load);
          recordReach(rec, ctx, crane, pose, reach);
          recordRow(rec, "R_max", greatest, chart);
          recordRow(rec, "R_min", least, chart);
        }
        // Both ends as one ratio: nearer than the first row counts by how far it is inside.
        const near = radius < least - 1e-9;
        const value = near ? greatest + (least - radius) : radius;
        if (near) trace(rec, "R_in", value, "R_max + (R_min - R)", "m", "radius mirrored at the first row");
        rec?.ends(near ? "R_in" : "R", "R_max");
        return {
          value,
          limit: greatest,
          get where() {
            return `radius ${radius.toFixed(2)} m${near ? `, first row ${least} m` : ""}`;
          },
        };
      }),
    });
  });
}
