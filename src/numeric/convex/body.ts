// A convex body as the hull of some points, made thicker by a ball and by a level disc; its furthest point in a direction.

/**
 * The hull of `count` points (triples from place 3 * first of an array of coordinates, m), swept by a ball of `radius` and
 * by a horizontal disc of radius `disc`: a capsule is two points with a radius, a box eight points, an upright cylinder
 * two points above each other with a disc.
 */
export interface Convex {
  first: number;
  count: number;
  radius: number;
  disc: number;
}

/** Writes the point of a body's core (without its ball) that lies furthest in a direction to `out` at `at`. */
export function furthest(
  body: Convex,
  xyz: Float64Array,
  dx: number,
  dy: number,
  dz: number,
  out: Float64Array,
  at: number,
): void {
  let best = 3 * body.first;
  let most = dx * xyz[best] + dy * xyz[best + 1] + dz * xyz[best + 2];
  const end = best + 3 * body.count;
  for (let k = best + 3; k < end; k += 3) {
    const d = dx * xyz[k] + dy * xyz[k + 1] + dz * xyz[k + 2];
    if (d > most) {
      most = d;
      best = k;
    }
  }
  out[at] = xyz[best];
  out[at + 1] = xyz[best + 1];
  out[at + 2] = xyz[best + 2];
  if (body.disc > 0) {
    const level = Math.sqrt(dx * dx + dy * dy);
    if (level > 0) {
      out[at] += (body.disc * dx) / level;
      out[at + 1] += (body.disc * dy) / level;
    }
  }
}

/** How far a body reaches in a direction of length 1, ball and disc included, m from the origin. */
export function reach(body: Convex, xyz: Float64Array, dx: number, dy: number, dz: number): number {
  let k = 3 * body.first;
  const end = k + 3 * body.count;
  let most = Number.NEGATIVE_INFINITY;
  for (; k < end; k += 3) {
    const d = dx * xyz[k] + dy * xyz[k + 1] + dz * xyz[k + 2];
    if (d > most) most = d;
  }
  return most + body.radius + (body.disc > 0 ? body.disc * Math.sqrt(dx * dx + dy * dy) : 0);
}
