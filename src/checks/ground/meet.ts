// Convex areas in plan: whether two share ground, when they do while one moves, and whether some lie wholly on others.

import { type Area, rectangle } from "../../mechanics/index.ts";

/** What lies nearer than this touches and does not overlap, m. */
const TOUCH = 1e-9;
/** Half of a width that stands for right across, m. */
const ACROSS = 1e4;
/** Less ground than this is rounding, m2. */
const NOTHING = 1e-9;

/** What of a plan lies between two chainages, and between a right and a left edge where it does not reach right across. */
interface InPlan {
  from_m: number;
  to_m: number;
  fromY_m?: number;
  toY_m?: number;
}

/** Right and left edge, m. */
export const acrossOf = (one: InPlan): [number, number] => [one.fromY_m ?? -ACROSS, one.toY_m ?? ACROSS];

export function areaInPlan(one: InPlan): Area {
  const [y0, y1] = acrossOf(one);
  return rectangle((one.from_m + one.to_m) / 2, (y0 + y1) / 2, one.to_m - one.from_m, y1 - y0);
}

/** True where two convex areas overlap: no side of either has all of the other beyond it. */
export function meet(a: Area, b: Area): boolean {
  return !apart(a, b) && !apart(b, a);
}

/** How far a point lies outside the side of an area from corner i on, in m times the length of the side. */
function beyond(area: Area, i: number, [x, y]: Area[number]): number {
  const p = area[i];
  const q = area[(i + 1) % area.length];
  // Corners run anticlockwise: outward lies to the right of every side.
  return (x - p[0]) * (q[1] - p[1]) + (y - p[1]) * (p[0] - q[0]);
}

function apart(a: Area, b: Area): boolean {
  return a.some((_, i) => b.every((p) => beyond(a, i, p) >= -TOUCH));
}

/** A part of the way from one place to another, 0 to 1; null for none. */
export type Part = readonly [number, number] | null;

export const within = (a: Part, b: Part): Part =>
  a !== null && b !== null && Math.max(a[0], b[0]) < Math.min(a[1], b[1])
    ? [Math.max(a[0], b[0]), Math.min(a[1], b[1])]
    : null;

/** The part of a straight way from a to b within which it lies between two limits; null where it never does. */
export function during(a: number, b: number, [low, high]: readonly [number, number]): Part {
  if (a === b) return a > low && a < high ? [0, 1] : null;
  const [s, e] = [(low - a) / (b - a), (high - a) / (b - a)];
  return within([Math.min(s, e), Math.max(s, e)], [0, 1]);
}

/** The part of a straight way, dx and dy long, in which a convex area that takes it overlaps another: one stretch or none. */
export function meetDuring(moving: Area, [dx, dy]: readonly [number, number], still: Area): Part {
  let part: Part = [0, 1];
  for (const area of [moving, still])
    area.forEach((p, i) => {
      const q = area[(i + 1) % area.length];
      const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
      const [nx, ny] = [(q[1] - p[1]) / l, (p[0] - q[0]) / l];
      const [own, other] = [moving, still].map((a) => a.map(([x, y]) => x * nx + y * ny));
      const low = Math.min(...other) - Math.max(...own) + TOUCH;
      const high = Math.max(...other) - Math.min(...own) - TOUCH;
      part = within(part, during(0, dx * nx + dy * ny, [low, high]));
    });
  return part;
}

/** Whether areas lie on others all over. */
export function covered(areas: readonly Area[], by: readonly Area[]): boolean {
  let left = areas;
  for (const cover of by) left = left.flatMap((area) => outside(area, cover));
  return left.length === 0;
}

/** What of a convex area lies outside another, in convex parts. */
function outside(area: Area, cover: Area): Area[] {
  if (!meet(area, cover)) return [area];
  const parts: Area[] = [];
  let rest = area;
  for (let i = 0; i < cover.length; i++) {
    const out = cut(rest, (p) => beyond(cover, i, p));
    if (sizeOf(out) > NOTHING) parts.push(out);
    rest = cut(rest, (p) => -beyond(cover, i, p));
  }
  return parts;
}

/** What of a convex area lies where a linear function is above 0. */
function cut(area: Area, f: (p: Area[number]) => number): Area {
  return area.flatMap((p, i) => {
    const q = area[(i + 1) % area.length];
    const [a, b] = [f(p), f(q)];
    const own = a >= 0 ? [p] : [];
    if (a >= 0 === b >= 0) return own;
    const t = a / (a - b);
    return [...own, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])] as const];
  });
}

function sizeOf(area: Area): number {
  return area.reduce((sum, [x, y], i) => {
    const [u, v] = area[(i + 1) % area.length];
    return sum + (x * v - u * y) / 2;
  }, 0);
}
