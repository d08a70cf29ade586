// Hand reach of the cranes: boom radius in plan, row of the chart, everything that hangs below the boom tip.

import type { Plan } from "../../../src/plan/index.ts";
import type { Span } from "./span.ts";

type Crane = Plan["cranes"][number];

const G = 9.80665;
/** Radius by hand may be off by this, m: the set's slope moves a pick by its height times the slope, 2.5 m x 1 %. */
const RADIUS = 0.04;

export const craneOf = (plan: Plan, kind: "far" | "near"): Crane => {
  const found = plan.cranes.find((c) => c.kind === kind);
  if (!found) throw new Error(`no ${kind} crane`);
  return found;
};

export function pickOf(plan: Plan, kind: "far" | "near") {
  const id = craneOf(plan, kind).id;
  const found = plan.sets[0].picks.find((p) => p.crane === id);
  if (!found) throw new Error(`no pick of ${id}`);
  return found;
}

/** Weight of rigging, block and rope below the tip, N, with the picks at an elevation. */
export function hangs(
  plan: Plan,
  kind: "far" | "near",
  tip: readonly [number, number],
  picks: number,
): number {
  const crane = craneOf(plan, kind);
  const rig = plan.rigging.find((r) => r.id === pickOf(plan, kind).rigging);
  if (!rig) throw new Error("no rigging");
  const flat = Math.hypot(tip[0] - crane.position.chainage_m, tip[1] - crane.position.y_m);
  const height = Math.sqrt(Math.max(0, crane.boomLength_m ** 2 - (flat - crane.boomFootForward_m) ** 2));
  const top = crane.position.elevation_m + crane.boomFootHeight_m + height;
  const rope = Math.max(0, top - picks - rig.slingLength_m - rig.hookPinHeight_m);
  const kg =
    rig.mass_t * 1000 +
    crane.deductions.block_t * 1000 +
    (crane.deductions.auxiliary_t ?? 0) * 1000 +
    crane.deductions.rope_kg_per_m * rope * crane.partsOfLine;
  return kg * G;
}

/** Radius with its growth under a gross load (N), and with the crane leaning toward it by all of its level error, m. */
export function radius(plan: Plan, kind: "far" | "near", tip: readonly [number, number], gross: Span): Span {
  const crane = craneOf(plan, kind);
  const flat = Math.hypot(tip[0] - crane.position.chainage_m, tip[1] - crane.position.y_m);
  const growth = (N: number) => (crane.radiusGrowth_mm_per_kN.best * N) / 1e6;
  const rise = Math.sqrt(Math.max(0, crane.boomLength_m ** 2 - (flat - crane.boomFootForward_m) ** 2));
  const leant = flat + ((crane.outOfLevel_pct ?? 0) / 100) * (crane.boomFootHeight_m + rise);
  return { low: leant + growth(gross.low) - RADIUS, high: leant + growth(gross.high) + RADIUS };
}

/** Rated load (N) by the next larger listed radius, as a span for a radius that lies in one; null where it may be off the chart. */
export function rated(plan: Plan, kind: "far" | "near", r: Span): Span | null {
  const rows = [...craneOf(plan, kind).chart.rows].sort((a, b) => a.radius_m - b.radius_m);
  const row = (at: number) => (at < rows[0].radius_m ? undefined : rows.find((x) => x.radius_m >= at));
  const [short, long] = [row(r.low), row(r.high)];
  if (!short || !long) return null;
  return { low: long.rated_t * 1000 * G, high: short.rated_t * 1000 * G };
}

/** Greatest listed radius, m. */
export const chartEnd = (plan: Plan, kind: "far" | "near"): number =>
  Math.max(...craneOf(plan, kind).chart.rows.map((r) => r.radius_m));
