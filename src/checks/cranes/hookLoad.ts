// Cranes: what hangs on the hook against the chart, with the tandem rules; chart left; line out of plumb.

import {
  byId,
  type Chart,
  type Crane,
  gravityOf,
  hookName,
  type Pick,
  type Plan,
  type PlanSet,
  pickOf,
  type Rigging,
} from "../../plan/index.ts";
import { boomOf, hookAbovePicks, type Pose, type SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { traced } from "../traced.ts";
import { type HookLoad, recordHookLoad } from "./hookTrace.ts";

export type { HookLoad };

/** A crane with its rigging, and what of its hook load does not change from pose to pose. */
interface Hook {
  crane: Crane;
  rig: Rigging;
  /** Place of its force among the supports. */
  column: number;
  /** N. */
  fixed: Omit<HookLoad, "net" | "rope" | "gross">;
  /** Weight of one metre of rope below the boom tip, N/m, and the length that slings and spreader take the place of, m. */
  ropePerMetre: number;
  slings: number;
}

function hookOf(plan: Plan, crane: Crane, pick: Pick, column: number): Hook {
  const rig = byId(plan.rigging, pick.rigging);
  const g = gravityOf(plan);
  return {
    crane,
    rig,
    column,
    fixed: {
      rigging: rig.mass_t * 1000 * g,
      block: crane.deductions.block_t * 1000 * g,
      auxiliary: (crane.deductions.auxiliary_t ?? 0) * 1000 * g,
    },
    ropePerMetre: crane.deductions.rope_kg_per_m * crane.partsOfLine * g,
    slings: hookAbovePicks(rig),
  };
}

/** What hangs on a hook with a net load; null when it is not on. */
function loadOn({ crane, fixed, ropePerMetre, slings }: Hook, pose: Pose, net: number): HookLoad | null {
  for (const hoist of pose.state.hoists ?? []) {
    if (hoist.name !== crane.id) continue;
    const { rigging, block, auxiliary } = fixed;
    const rope = ropePerMetre * Math.max(0, (hoist.ropeLength ?? 0) - slings);
    return { net, rigging, block, rope, auxiliary, gross: net + rigging + block + rope + auxiliary };
  }
  return null;
}

/** Radius of a hooked crane under its hook load, m; NaN when it is not hooked. */
function radiusUnder({ crane }: Hook, pose: Pose, load: HookLoad | null): number {
  for (const c of pose.situation.cranes) {
    if (c.id !== crane.id) continue;
    if (!c.hooked) break;
    const growth = load ? (crane.radiusGrowth_mm_per_kN.best / 1000) * (load.gross / 1000) : 0;
    return boomOf(crane, c.tip, c.moved).radius + growth;
  }
  return Number.NaN;
}

/** What hangs on a crane's hook with a given net load: rigging, block, rope below the tip, auxiliary block; null when not on. */
export function hookLoadWith(
  plan: Plan,
  set: PlanSet,
  pose: Pose,
  crane: Crane,
  net: number,
): HookLoad | null {
  const pick = pickOf(set, crane.id);
  return pick && loadOn(hookOf(plan, crane, pick, -1), pose, net);
}

/** The load on a crane's hook at a pose, with the net load that was solved for it. */
export function hookLoadOf(ctx: SetContext, pose: Pose, crane: Crane): HookLoad | null {
  const net = pose.forces[ctx.supportIndex.get(`hoist ${crane.id}`) ?? -1];
  return hookLoadWith(ctx.plan, ctx.set, pose, crane, net);
}

/** Radius of a hooked crane at a pose, m: centre of rotation to boom tip, with its growth under the hook load. */
export function radiusOf(ctx: SetContext, pose: Pose, crane: Crane): number {
  const pick = pickOf(ctx.set, crane.id);
  if (!pick) return Number.NaN;
  return radiusUnder(hookOf(ctx.plan, crane, pick, -1), pose, hookLoadOf(ctx, pose, crane));
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

function hooksOf(ctx: SetContext): Hook[] {
  return ctx.set.picks.map((pick) =>
    hookOf(
      ctx.plan,
      byId(ctx.plan.cranes, pick.crane),
      pick,
      ctx.supportIndex.get(`hoist ${pick.crane}`) ?? -1,
    ),
  );
}

/** How many hooks carry part of the set. */
function carrying(hooks: readonly Hook[], pose: Pose): number {
  let n = 0;
  for (const { column } of hooks) if (pose.forces[column] > 0) n++;
  return n;
}

export function hookLoads(ctx: SetContext): Measure[] {
  const chart = limitOf(ctx.plan, "chart use");
  const tandem = limitOf(ctx.plan, "tandem use");
  const above = limitOf(ctx.plan, "capacity above share");
  const hooks = hooksOf(ctx);
  return hooks.map((hook) => {
    const { crane } = hook;
    const beside = rowsBeside(crane.chart, crane.boomLength_m);
    const interpolated = isInterpolated(crane.chart);
    const chartSource = `${crane.chart.page ?? "load chart"}${crane.chart.invented ? " (invented)" : ""} of ${crane.id}`;
    const bothSources = `${chart?.source ?? "maker's load chart"}; ${chartSource}`;
    return measure({
      check: "hook load",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      strip: true,
      source: chartSource,
      chosenBy: "plan",
      cure: "a smaller radius, a bigger crane, a pick further from the CG, or less load handed to this hook",
      ...traced(ctx, (pose, rec): Reading => {
        const load = loadOn(hook, pose, pose.forces[hook.column]);
        if (!load || !(load.gross >= 0)) return NOT_HERE;
        const radius = radiusUnder(hook, pose, load);
        const rated = beside && ratedIn(beside, interpolated, radius, ctx.gravity);
        if (rated === null) return NOT_HERE;
        // The lowest of all rules in force governs, and is named.
        let limit = (rated * (chart?.value ?? 100)) / 100;
        let source = bothSources;
        let chosenBy = chart?.chosenBy ?? "plan";
        const both = carrying(hooks, pose) > 1;
        if (both) {
          if (tandem && (rated * tandem.value) / 100 < limit) {
            limit = (rated * tandem.value) / 100;
            source = tandem.source;
            chosenBy = tandem.chosenBy;
          }
          if (above && rated / (1 + above.value / 100) < limit) {
            limit = rated / (1 + above.value / 100);
            source = above.source;
            chosenBy = above.chosenBy;
          }
        }
        if (rec !== null)
          recordHookLoad(
            rec,
            ctx,
            crane,
            pose,
            load,
            { radius, rated, limit },
            {
              chart,
              tandem: both ? tandem : null,
              above: both ? above : null,
            },
          );
        return {
          value: load.gross,
          limit,
          source,
          chosenBy,
          get where() {
            return `radius ${radius.toFixed(1)} m, rated ${(rated / 1000).toFixed(0)} kN`;
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

/** Greatest (or, when too near, least) listed radius against the radius there is. */
export function chartLeft(ctx: SetContext): Measure[] {
  return hooksOf(ctx).map((hook) => {
    const { crane } = hook;
    const rated = ratedRadii(crane.chart, crane.boomLength_m);
    return measure({
      check: "chart left",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      unit: "m",
      factor: 1,
      digits: 2,
      source: `${crane.chart.page ?? "load chart"}${crane.chart.invented ? " (invented)" : ""} of ${crane.id}: nothing is rated beyond its rows`,
      chosenBy: "plan",
      cure: "stand the crane nearer, or choose a configuration whose chart reaches there",
      read: (pose) => {
        const radius = radiusUnder(hook, pose, loadOn(hook, pose, pose.forces[hook.column]));
        if (Number.isNaN(radius)) return NOT_HERE;
        if (rated === null)
          return { value: radius, limit: 0, where: `no row for a boom of ${crane.boomLength_m} m` };
        const { least, greatest } = rated;
        // Both ends as one ratio: nearer than the first row counts by how far it is inside.
        if (radius < least - 1e-9)
          return {
            value: greatest + (least - radius),
            limit: greatest,
            where: `radius ${radius.toFixed(2)} m, first row ${least} m`,
          };
        return {
          value: radius,
          limit: greatest,
          get where() {
            return `radius ${radius.toFixed(2)} m`;
          },
        };
      },
    });
  });
}

export function lineLean(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "line lean");
  if (!limit) return [];
  return hooksOf(ctx).map(({ crane }) =>
    measure(
      {
        check: "line lean",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        level: "caution",
        unit: "% out of plumb",
        factor: 100,
        digits: 1,
        cure: "shorter bites, or the boom brought in sooner",
        read: (pose) => {
          const { layout, horizontal, hoistForce } = pose.solution;
          const i = layout.hoists.findIndex((h) => h.name === crane.id);
          if (i < 0 || !horizontal || !(hoistForce[i] > 0)) return NOT_HERE;
          const H = Math.hypot(horizontal.lines[2 * i], horizontal.lines[2 * i + 1]);
          return { value: H / hoistForce[i], limit: limit.value / 100 };
        },
      },
      limit,
    ),
  );
}
