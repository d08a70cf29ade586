// Small vectors and right-angled frames in the world: chainage, y to the left, elevation, m.
import type { Vec3 } from "../sequence/index.ts";

export type { Vec3 };

/** A place with three axes of unit length; local [x, y, z] is o + x ex + y ey + z ez. */
export interface Frame {
  o: Vec3;
  ex: Vec3;
  ey: Vec3;
  ez: Vec3;
}

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vec3, f: number): Vec3 => [a[0] * f, a[1] * f, a[2] * f];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The same direction with length 1; [1, 0, 0] for a vector without length. */
export function unit(a: Vec3): Vec3 {
  const l = length(a);
  return l > 0 ? times(a, 1 / l) : [1, 0, 0];
}

/** The point a part `t` of the way from a to b. */
export function between(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

/** Mean of some points; throws on none. */
export function mean(points: readonly Vec3[]): Vec3 {
  if (points.length === 0) throw new Error("mean: found no points; at least one is needed.");
  const sum = points.reduce<Vec3>((s, p) => add(s, p), [0, 0, 0]);
  return times(sum, 1 / points.length);
}

/** The frame of the world, at a place. */
export function level(o: Vec3): Frame {
  return { o, ex: [1, 0, 0], ey: [0, 1, 0], ez: [0, 0, 1] };
}

/** A frame whose x axis runs along a horizontal direction [dx, dy], z up. */
export function heading(o: Vec3, dx: number, dy: number): Frame {
  const ex = unit([dx, dy, 0]);
  return { o, ex, ey: [-ex[1], ex[0], 0], ez: [0, 0, 1] };
}

/** A frame with x along `along` and z as near to `up` as a right angle allows. */
export function aligned(o: Vec3, along: Vec3, up: Vec3): Frame {
  const ex = unit(along);
  let ey = cross(up, ex);
  if (length(ey) < 1e-9) ey = Math.abs(ex[0]) < 0.9 ? cross([1, 0, 0], ex) : cross([0, 1, 0], ex);
  ey = unit(ey);
  return { o, ex, ey, ez: cross(ex, ey) };
}

/** Local coordinates of a frame to the world. */
export function inWorld(f: Frame, x: number, y: number, z: number): Vec3 {
  return [
    f.o[0] + x * f.ex[0] + y * f.ey[0] + z * f.ez[0],
    f.o[1] + x * f.ex[1] + y * f.ey[1] + z * f.ez[1],
    f.o[2] + x * f.ex[2] + y * f.ey[2] + z * f.ez[2],
  ];
}
