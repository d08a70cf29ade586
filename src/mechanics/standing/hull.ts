// The convex hull of a few points in plan, counter-clockwise.

/** A point in plan, m: x forward, y left. */
export interface PlanPoint {
  x: number;
  y: number;
}

/**
 * Corner points of the convex hull, counter-clockwise, the points themselves handed back (Andrew's monotone chain).
 * Points on an edge are left out; two points or points on one line give two corners, one point gives one or none.
 */
export function hullOf<P extends PlanPoint>(points: readonly P[]): P[] {
  const p = sorted(points);
  const turn = (o: P, a: P, b: P) => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  const half = (list: P[]) => {
    const out: P[] = [];
    for (const q of list) {
      while (out.length >= 2 && turn(out[out.length - 2], out[out.length - 1], q) <= 1e-12) out.pop();
      out.push(q);
    }
    out.pop();
    return out;
  };
  return [...half(p), ...half(p.reverse())];
}

/** By x, then by y: a dozen points that mostly come in order, so that each is put in its place. */
function sorted<P extends PlanPoint>(points: readonly P[]): P[] {
  const list: P[] = [];
  for (const q of points) {
    let i = list.length;
    while (i > 0 && (list[i - 1].x > q.x || (list[i - 1].x === q.x && list[i - 1].y > q.y))) i--;
    list.splice(i, 0, q);
  }
  return list;
}
