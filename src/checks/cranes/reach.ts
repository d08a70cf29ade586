// How far a crane reaches at a pose: radius with growth under load, from level error and from a leaning line; boom angle.

import type { Crane } from "../../plan/index.ts";
import { boomOf, type Pose, type SetContext } from "../../sequence/index.ts";
import { constant, type FieldUnit, field, type Recorder, solved, trace } from "../trace.ts";

/** Reach of a hooked crane, m. */
export interface Reach {
  /** What the chart is read with: the sum of the four below. */
  radius: number;
  /** Centre of rotation to boom tip. */
  tip: number;
  /** Growth under the hook load. */
  growth: number;
  /** The crane leaning toward its load by its level error: error times height of the tip above the tracks. */
  level: number;
  /** The load further out than the tip, by a line that leans outward; one that leans inward is not counted. */
  lean: number;
  /** Boom above the horizontal, rad, without growth and lean. */
  angle: number;
  /** Height of the tip above the tracks. */
  height: number;
}

/** Line of a hook out of plumb, as tangents: what it pulls over what it lifts. */
export interface Plumb {
  /** Along the boom: positive where the load hangs further out than the tip. */
  radial: number;
  /** Across the boom, either way. */
  side: number;
  total: number;
}

/** How far the line of a hook is out of plumb against its boom; null while it carries nothing. */
export function plumbAt(crane: Crane, pose: Pose): Plumb | null {
  const { layout, horizontal, hoistForce } = pose.solution;
  if (!horizontal) return null;
  let i = layout.hoists.length - 1;
  while (i >= 0 && layout.hoists[i].name !== crane.id) i--;
  if (i < 0 || !(hoistForce[i] > 0)) return null;
  for (const c of pose.situation.cranes) {
    if (c.id !== crane.id) continue;
    const dx = c.tip[0] - crane.position.chainage_m - c.moved[0];
    const dy = c.tip[1] - crane.position.y_m - c.moved[1];
    const r = Math.hypot(dx, dy);
    // The pull on the set points from the picks toward the tip.
    const px = horizontal.lines[2 * i] / hoistForce[i];
    const py = horizontal.lines[2 * i + 1] / hoistForce[i];
    const total = Math.hypot(px, py);
    if (!(r > 0)) return { radial: total, side: 0, total };
    return { radial: -(px * dx + py * dy) / r, side: Math.abs(px * dy - py * dx) / r, total };
  }
  return null;
}

/** Level error of a crane in a step of its set, in percent; while it walks the worse of its own and the way's. */
export function levelErrorIn(ctx: SetContext, crane: Crane, step: number): number | undefined {
  const own = crane.outOfLevel_pct;
  const doing = ctx.set.steps[step];
  if (doing?.do !== "walk" || doing.crane !== crane.id || doing.outOfLevel_pct === undefined) return own;
  return Math.max(own ?? 0, doing.outOfLevel_pct);
}

/** What a level error adds to the radius, m: the crane leans toward its load by all of it. */
export const levelGrowth = (error_pct: number | undefined, height: number): number =>
  ((error_pct ?? 0) / 100) * height;

/** Reach of a crane under a gross hook load (N); null when it is not hooked. */
export function reachAt(ctx: SetContext, crane: Crane, pose: Pose, gross: number): Reach | null {
  for (const c of pose.situation.cranes) {
    if (c.id !== crane.id) continue;
    if (!c.hooked) return null;
    const boom = boomOf(crane, c.tip, c.moved);
    const height = boom.tip[2] - boom.centre[2];
    const growth = (crane.radiusGrowth_mm_per_kN.best / 1000) * (gross / 1000);
    const level = levelGrowth(levelErrorIn(ctx, crane, pose.step), height);
    const plumb = plumbAt(crane, pose);
    const lean = plumb !== null && plumb.radial > 0 ? plumb.radial * lineLength(pose, crane) : 0;
    const radius = boom.radius + growth + level + lean;
    return { radius, tip: boom.radius, growth, level, lean, angle: boom.angle, height };
  }
  return null;
}

/** From boom tip to picks, m; 0 without a line. */
function lineLength(pose: Pose, crane: Crane): number {
  for (const hoist of pose.state.hoists ?? []) if (hoist.name === crane.id) return hoist.ropeLength ?? 0;
  return 0;
}

const PER_KN: FieldUnit = { unit: "mm/kN", si: "mm/kN", change: "" };
export const PERCENT: FieldUnit = { unit: "pct", si: "1", change: "/100" };

/** Place of a crane in its plan. */
export const craneField = (ctx: SetContext, crane: Crane): string =>
  `cranes[${ctx.plan.cranes.indexOf(crane)}]`;

/** Writes down the level error that stands in a step, as the symbol `e_level`. */
export function recordLevelError(rec: Recorder, ctx: SetContext, crane: Crane, step: number): void {
  const error = levelErrorIn(ctx, crane, step);
  if (error === undefined) {
    constant(rec, "e_level", 0, "1", "level error", "the plan states none: nothing is counted");
    return;
  }
  const set = ctx.plan.sets.findIndex((one) => one.id === ctx.set.id);
  const path =
    error === crane.outOfLevel_pct
      ? `${craneField(ctx, crane)}.outOfLevel_pct`
      : `sets[${set}].steps[${step}].outOfLevel_pct`;
  field(rec, "e_level", error / 100, "level error", path, error, PERCENT);
}

/** Writes down a radius as the symbol `R`; the gross hook load must stand there as `F`. */
export function recordReach(rec: Recorder, ctx: SetContext, crane: Crane, pose: Pose, reach: Reach): void {
  const growth = crane.radiusGrowth_mm_per_kN.best;
  solved(rec, "r_tip", reach.tip, "m", "centre of rotation to boom tip");
  field(
    rec,
    "k_r",
    growth,
    "growth of radius under load",
    `${craneField(ctx, crane)}.radiusGrowth_mm_per_kN.best`,
    growth,
    PER_KN,
  );
  trace(rec, "r_F", reach.growth, "k_r/1000*(F/1000)", "m", "growth under the hook load");
  recordLevelError(rec, ctx, crane, pose.step);
  solved(rec, "h_tip", reach.height, "m", "boom tip above the tracks");
  trace(rec, "r_level", reach.level, "e_level*h_tip", "m", "leaning toward the load by the level error");
  solved(rec, "l_radial", plumbAt(crane, pose)?.radial ?? 0, "1", "line out of plumb, outward");
  solved(rec, "l_rope", lineLength(pose, crane), "m", "boom tip to picks");
  trace(rec, "r_lean", reach.lean, "max(0, l_radial)*l_rope", "m", "load further out than the tip");
  trace(rec, "R", reach.radius, "r_tip + r_F + r_level + r_lean", "m", "radius");
}
