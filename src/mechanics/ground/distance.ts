// Distances in plan between what stands on the ground and an edge.

import type { Area } from "./noTension.ts";

type Point = readonly [number, number];

function toSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square : 0;
  const s = Math.min(1, Math.max(0, t));
  return Math.hypot(p[0] - a[0] - s * dx, p[1] - a[1] - s * dy);
}

const side = (p: Point, a: Point, b: Point) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  return side(a, c, d) * side(b, c, d) < 0 && side(c, a, b) * side(d, a, b) < 0;
}

/** Least distance (m) between a convex area and a straight edge from a to b; 0 where they meet. */
export function areaToEdge(area: Area, a: Point, b: Point): number {
  let least = Number.POSITIVE_INFINITY;
  let inside = true;
  for (let i = 0; i < area.length; i++) {
    const p = area[i];
    const q = area[(i + 1) % area.length];
    if (cross(p, q, a, b)) return 0;
    if (side(a, p, q) < 0) inside = false;
    least = Math.min(least, toSegment(p, a, b), toSegment(a, p, q), toSegment(b, p, q));
  }
  return inside ? 0 : least;
}

/** Corners of an area turned by an angle (rad, anticlockwise) and then moved by (x, y) m. */
export function placed(area: Area, angle: number, x: number, y: number): Area {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return area.map(([u, v]) => [x + c * u - s * v, y + s * u + c * v] as const);
}
