// Whether two convex areas in plan share ground.

import type { Area } from "../../mechanics/index.ts";

/** True where two convex areas overlap: no side of either has all of the other beyond it. */
export function meet(a: Area, b: Area): boolean {
  return !apart(a, b) && !apart(b, a);
}

function apart(a: Area, b: Area): boolean {
  return a.some((p, i) => {
    const q = a[(i + 1) % a.length];
    const [nx, ny] = [q[1] - p[1], p[0] - q[0]];
    // Corners run anticlockwise: outward lies to the right of every side.
    return b.every(([x, y]) => (x - p[0]) * nx + (y - p[1]) * ny >= -1e-9);
  });
}
