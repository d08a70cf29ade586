// Hand statics of the stances in which the set stands: the lever on two supports, springs in series, the lean on groups.

import type { Plan } from "../../../src/plan/index.ts";
import { craneOf, pickOf } from "./reach.ts";
import type { Span } from "./span.ts";
import { bending, type Weight } from "./weights.ts";

export type Train = "rear" | "front";

export const trainOf = (plan: Plan, id: Train) => {
  const found = plan.transporters.find((t) => t.id === id);
  if (!found) throw new Error(`no transporter ${id}`);
  return found;
};

/** Station of a train's bunks, which stand at the middle of its deck. */
export function bunkAt(plan: Plan, id: Train): number {
  const on = plan.sets[0].onTransporters.find((t) => t.transporter === id);
  if (!on) throw new Error(`${id} is not under the set`);
  return on.deckAt_m + trainOf(plan, id).bunks[0].at_m;
}

/** Height by which the left bunk of a train is packed above the right one, m. */
export function packed(plan: Plan, id: Train): number {
  const on = plan.sets[0].onTransporters.find((t) => t.transporter === id);
  return ((on?.packing_mm.L ?? 0) - (on?.packing_mm.R ?? 0)) / 1000;
}

/** Reaction of the support at `at`, the other one at `other`, under forces at stations (N, down). */
export function lever(at: number, other: number, loads: readonly (readonly [number, number])[]): number {
  return loads.reduce((sum, [x, F]) => sum + (F * (other - x)) / (other - at), 0);
}

/** A train below its bunks, N/m: all its cylinders, then its two bunks. */
export function trainStiffness(plan: Plan, id: Train): number {
  const t = trainOf(plan, id);
  return 1e6 / (1 / (2 * t.lines * t.cylinderStiffness_kN_per_mm) + 1 / (2 * t.bunkStiffness_kN_per_mm));
}

/** A hook's line: rope, boom, ground and slings in series, N/m. */
export function lineStiffness(plan: Plan, kind: "far" | "near"): number {
  const s = craneOf(plan, kind).stiffness;
  const rig = plan.rigging.find((r) => r.id === pickOf(plan, kind).rigging);
  if (!rig) throw new Error("no rigging");
  const parts = [
    s.rope_kN_per_mm.best,
    s.boom_kN_per_mm.best,
    s.ground_kN_per_mm.best,
    rig.slingStiffness_kN_per_mm,
  ];
  return 1e6 / parts.reduce((sum, k) => sum + 1 / k, 0);
}

/** A support for what follows: station (m) and stiffness (N/m). */
export interface Spring {
  x: number;
  k: number;
}

/**
 * Displacement at a station `p` for 1 N there, m/N, of a beam on two springs: the lever on both, and the beam itself by
 * its formulas for a load between or beyond its supports, at its strongest and weakest section all along.
 */
export function flexibility(plan: Plan, a: Spring, b: Spring, p: number): Span {
  const { least, most, shear } = bending(plan);
  const span = b.x - a.x;
  const [u, v] = [p - a.x, b.x - p];
  const rigid = (v / span) ** 2 / a.k + (u / span) ** 2 / b.k;
  const inside = u >= 0 && v >= 0;
  // Beyond a support by c: c^2 (L + c) / 3 E I and c (L + c) / L G A; between: u^2 v^2 / 3 E I L and u v / L G A.
  const c = Math.max(-u, -v);
  const bend = inside ? (u * v) ** 2 / (3 * span) : (c ** 2 * (span + c)) / 3;
  const slide = (inside ? u * v : c * (span + c)) / (span * shear);
  return { low: rigid + bend / most, high: rigid + bend / least + slide };
}

/** Stiffness of a train's left and right group against lean, N m/rad. */
export function leanStiffness(plan: Plan, id: Train): number {
  const t = trainOf(plan, id);
  const side = t.groups.find((g) => g.name === `${id} left`);
  if (!side) throw new Error(`no left group of ${id}`);
  return 2 * side.wheels.length * t.cylinderStiffness_kN_per_mm * 1e6 * (t.gauge_m / 2) ** 2;
}

/** Stiffness of a spreader as a pendulum, per N that hangs on it: pin above spreader, and picks above the CG, m. */
export function pendulumArm(plan: Plan, kind: "far" | "near", w: Weight): number {
  const pick = pickOf(plan, kind);
  const rig = plan.rigging.find((r) => r.id === pick.rigging);
  return (rig?.hookPinHeight_m ?? Number.NaN) + pick.height_m - w.z;
}

/** The path at a chainage: elevation (m), crossfall as a tangent, > 0 falls left. */
export function pathAt(plan: Plan, chainage: number): { elevation: number; crossfall: number } {
  const { points } = plan.site.path;
  const next = points.findIndex((p) => p.chainage_m >= chainage);
  const i = next < 0 ? points.length - 1 : Math.max(1, next);
  const [a, b] = [points[i - 1], points[i]];
  const t = (chainage - a.chainage_m) / (b.chainage_m - a.chainage_m);
  return {
    elevation: a.elevation_m + t * (b.elevation_m - a.elevation_m),
    crossfall: (a.crossfall_pct + t * (b.crossfall_pct - a.crossfall_pct)) / 100,
  };
}
