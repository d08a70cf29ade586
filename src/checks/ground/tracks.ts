// A crane on its tracks: its weights and where they act, the footing, and what mats make of the pressure.

import {
  type Area,
  effectiveLength,
  type Footing,
  footingOf,
  type Pressing,
  pressing,
  pressUnder,
  rectangle,
} from "../../mechanics/index.ts";
import { type Crane, gravityOf, type Mat, type Plan } from "../../plan/index.ts";
import type { Pose } from "../../sequence/index.ts";
import { type Allowable, allowableAt } from "./allowable.ts";

/** What of a crane's ground is the same at all poses; SI, x along the tracks, y to their left. */
export interface Tracks {
  crane: Crane;
  /** Place of the crane in the plan, as `cranes[0]`. */
  path: string;
  areas: Area[];
  footing: Footing;
  /** Direction of the tracks in plan, rad. */
  facing: number;
  /** Weight of the whole crane, N, and of the boom alone (0: counted in the rest). */
  weight: number;
  boom: number;
  /** Moment of all but the boom about the centre of rotation, N m, forward positive. */
  moment: number;
  /** Weight of the block, N: what an idle hook carries. */
  block: number;
  mats: Mats | null;
  allowable: Allowable | null;
}

/** Mats in SI: those below one track, side by side along it. */
export interface Mats {
  mat: Mat;
  /** Length that can be used, across the track: no more than the gauge, where those of both tracks meet. */
  length: number;
  width: number;
  thickness: number;
  /** Width of the track, m. */
  track: number;
  /** Weight per area, Pa. */
  own: number;
  /** Allowable moment, N m, and shear, N, of one mat. */
  moment: number;
  shear: number;
}

/** Fields without which a crane's track pressure cannot be worked out. */
export function lackingOf(crane: Crane): ("trackWidth_m" | "facing_deg" | "cgBehind_m")[] {
  return (["trackWidth_m", "facing_deg", "cgBehind_m"] as const).filter((f) => crane[f] === undefined);
}

/** Fields without which mats do not count as spreading. */
export function matLacks(mat: Mat): ("thickness_m" | "bending_MPa" | "shear_MPa")[] {
  return (["thickness_m", "bending_MPa", "shear_MPa"] as const).filter((f) => mat[f] === undefined);
}

/**
 * Allowable moment (N m) and shear (N) of one mat: f_b Z and f_v A_s; a solid rectangle has Z = b d^2/6 and its greatest
 * shear stress is 1.5 of the mean, so that A_s = b d/1.5.
 */
export function matStrength(mat: Mat): { moment: number; shear: number } {
  const { width_m: b, thickness_m: d = 0, bending_MPa = 0, shear_MPa = 0, section } = mat;
  const Z = section ? section.modulus_cm3 * 1e-6 : (b * d * d) / 6;
  const A = section ? section.shearArea_cm2 * 1e-4 : (b * d) / 1.5;
  return { moment: bending_MPa * 1e6 * Z, shear: shear_MPa * 1e6 * A };
}

/** A crane on its tracks; null where the plan lacks what `lackingOf` names. */
export function tracksOf(plan: Plan, crane: Crane): Tracks | null {
  const { trackWidth_m: width, facing_deg, cgBehind_m, trackGauge_m: gauge, trackLength_m: length } = crane;
  if (width === undefined || facing_deg === undefined || cgBehind_m === undefined) return null;
  const g = gravityOf(plan);
  const areas = [rectangle(0, gauge / 2, length, width), rectangle(0, -gauge / 2, length, width)];
  const weight = crane.mass_t * 1000 * g;
  const boom = (crane.boomMass_t ?? 0) * 1000 * g;
  const ballast = crane.ballastBehind_m === undefined ? 0 : (crane.ballast_t ?? 0) * 1000 * g;
  const { mat } = crane;
  const path = `cranes[${plan.cranes.indexOf(crane)}]`;
  return {
    crane,
    path,
    areas,
    footing: footingOf(areas),
    facing: (facing_deg * Math.PI) / 180,
    weight,
    boom,
    moment: -(weight - boom - ballast) * cgBehind_m - ballast * (crane.ballastBehind_m ?? 0),
    block: crane.deductions.block_t * 1000 * g,
    mats: mat
      ? {
          mat,
          length: Math.min(mat.length_m, gauge),
          width: mat.width_m,
          thickness: mat.thickness_m ?? 0,
          track: width,
          own: (mat.mass_t * 1000 * g) / (mat.length_m * mat.width_m),
          ...matStrength(mat),
        }
      : null,
    allowable: allowableAt(path, crane),
  };
}

/** Total load on the tracks, N, and how far it lies from the centre of rotation toward the boom's tip, m. */
export interface CraneLoadOn {
  V: number;
  ahead: number;
}

/** Load on the tracks with a hook load (N) at a radius (m); the boom's own weight acts half-way from foot to tip. */
export function loadAt(t: Tracks, hook: number, radius: number, out: CraneLoadOn): CraneLoadOn {
  out.V = t.weight + hook;
  out.ahead =
    (t.moment + (t.boom * (t.crane.boomFootForward_m + radius)) / 2 + hook * radius) / (t.weight + hook);
  return out;
}

/** Length of a mat that spreads a pressure of the track (Pa) over the ground, m; the track's width without its stresses. */
export function spreadLength(m: Mats, pressure: number): number {
  return effectiveLength(pressure * m.track * m.width, m.length, m.track, m.thickness, m.moment, m.shear)
    .length;
}

/** Pressure on the ground below mats under a pressure of the track, Pa; the same without mats. */
export function belowMats(m: Mats | null, pressure: number): number {
  if (m === null || !Number.isFinite(pressure)) return pressure;
  return (pressure * m.track) / spreadLength(m, pressure) + m.own;
}

const scratch: Pressing = pressing();

/**
 * Greatest pressure on the ground (Pa, below mats) of a load V (N) at a distance ahead (m) of the centre in a direction
 * (cosine and sine against the tracks); Infinity where the crane would turn over.
 */
export function pressureToward(t: Tracks, V: number, ahead: number, cos: number, sin: number): number {
  const o = pressUnder(t.footing, V, ahead * cos, ahead * sin, scratch);
  return o.status === "solved" ? belowMats(t.mats, o.most) : Number.POSITIVE_INFINITY;
}

/** The direction (rad against the tracks, within the first quarter) that presses most, and that pressure, Pa. */
export function worstToward(t: Tracks, V: number, ahead: number): { pressure: number; angle: number } {
  // Two equal tracks are the same in all four quarters.
  const at = (angle: number) => pressureToward(t, V, ahead, Math.cos(angle), Math.sin(angle));
  const parts = 30;
  const step = Math.PI / 2 / parts;
  let angle = 0;
  let pressure = at(0);
  for (let i = 1; i <= parts; i++) {
    const p = at(i * step);
    if (p > pressure) {
      pressure = p;
      angle = i * step;
    }
  }
  if (!Number.isFinite(pressure)) return { pressure, angle };
  // Golden section beside the best of them, to 1e-4 rad: near a maximum that is 1e-8 of the pressure.
  let [low, high] = [Math.max(0, angle - step), Math.min(Math.PI / 2, angle + step)];
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = high - ratio * (high - low);
  let b = low + ratio * (high - low);
  let [pa, pb] = [at(a), at(b)];
  while (high - low > 1e-4) {
    if (pa > pb) {
      high = b;
      [b, pb] = [a, pa];
      a = high - ratio * (high - low);
      pa = at(a);
    } else {
      low = a;
      [a, pa] = [b, pb];
      b = low + ratio * (high - low);
      pb = at(b);
    }
  }
  const best = Math.max(pa, pb);
  return best > pressure ? { pressure: best, angle: pa > pb ? a : b } : { pressure, angle };
}

/** Where a crane's tracks stand at a pose, in plan: [centre chainage, centre y]. */
export function centreAt(t: Tracks, pose: Pose): [number, number] {
  const { position } = t.crane;
  for (const c of pose.situation.cranes)
    if (c.id === t.crane.id) return [position.chainage_m + c.moved[0], position.y_m + c.moved[1]];
  return [position.chainage_m, position.y_m];
}
