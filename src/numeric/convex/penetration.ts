// How deep two convex bodies lie in each other: the hull of their difference is grown from inside (expanding polytope),
// always where its face is nearest to the origin, until that face cannot be moved out any more. Rarely needed; allocates.

import { type Convex, furthest } from "./body.ts";
import type { Gap } from "./gap.ts";

type Vec = [number, number, number];

interface Corner {
  w: Vec;
  a: Vec;
  b: Vec;
}

interface Face {
  corners: [number, number, number];
  normal: Vec;
  /** Of its plane from the origin, > 0 with the origin inside, m. */
  offset: number;
}

const minus = (p: Vec, q: Vec): Vec => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Vec, q: Vec): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Vec, q: Vec): Vec => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];
const scaled = (p: Vec, f: number): Vec => [p[0] * f, p[1] * f, p[2] * f];
const size = (p: Vec): number => Math.hypot(p[0], p[1], p[2]);

/** Faces are moved out until nothing lies beyond them by more than this, m. */
const CLOSE = 1e-9;
/** Bodies flatter than this have no inside, m. */
const FLAT = 1e-9;
const ROUNDS = 300;

/** Writes the gap of two bodies whose cores overlap: how far apart they must be moved, below zero, and where. */
export function penetration(a: Convex, xyzA: Float64Array, b: Convex, xyzB: Float64Array, gap: Gap): void {
  const put = new Float64Array(6);
  const support = (d: Vec): Corner => {
    furthest(a, xyzA, d[0], d[1], d[2], put, 0);
    furthest(b, xyzB, -d[0], -d[1], -d[2], put, 3);
    const pa: Vec = [put[0], put[1], put[2]];
    const pb: Vec = [put[3], put[4], put[5]];
    return { a: pa, b: pb, w: minus(pa, pb) };
  };
  const grown = hullAt(support);
  const { normal, depth, at } = grown;
  // Along the normal the first body reaches furthest beyond the second: it must go back by the depth.
  gap.distance = -(depth + a.radius + b.radius);
  gap.exact = true;
  for (let k = 0; k < 3; k++) {
    gap.normal[k] = normal[k];
    gap.a[k] = at.a[k] + a.radius * normal[k];
    gap.b[k] = at.b[k] - b.radius * normal[k];
  }
}

interface Grown {
  normal: Vec;
  depth: number;
  at: { a: Vec; b: Vec };
}

function hullAt(support: (d: Vec) => Corner): Grown {
  const corners = firstFour(support);
  if (!Array.isArray(corners)) return corners;
  const middle = scaled(
    corners.reduce<Vec>((s, c) => [s[0] + c.w[0], s[1] + c.w[1], s[2] + c.w[2]], [0, 0, 0]),
    1 / 4,
  );
  const face = (i: number, j: number, k: number): Face => {
    const n = cross(minus(corners[j].w, corners[i].w), minus(corners[k].w, corners[i].w));
    const l = size(n);
    const normal = l > 0 ? scaled(n, 1 / l) : ([0, 0, 1] as Vec);
    return { corners: [i, j, k], normal, offset: dot(normal, corners[i].w) };
  };
  /** With its normal away from the middle. */
  const outward = (i: number, j: number, k: number): Face => {
    const f = face(i, j, k);
    return dot(f.normal, middle) > f.offset ? face(i, k, j) : f;
  };
  let faces = [outward(0, 1, 2), outward(0, 1, 3), outward(0, 2, 3), outward(1, 2, 3)];
  for (let round = 0; ; round++) {
    let nearest = faces[0];
    for (const f of faces) if (f.offset < nearest.offset) nearest = f;
    const next = support(nearest.normal);
    if (round === ROUNDS || dot(next.w, nearest.normal) - nearest.offset <= CLOSE)
      return { normal: nearest.normal, depth: Math.max(0, nearest.offset), at: pointOf(nearest, corners) };
    const seen = faces.filter((f) => dot(f.normal, next.w) > f.offset + 1e-12);
    if (seen.length === 0)
      return { normal: nearest.normal, depth: Math.max(0, nearest.offset), at: pointOf(nearest, corners) };
    corners.push(next);
    const edges = new Map<string, [number, number]>();
    for (const { corners: c } of seen)
      for (let i = 0; i < 3; i++) {
        const [p, q] = [c[i], c[(i + 1) % 3]];
        if (!edges.delete(`${q},${p}`)) edges.set(`${p},${q}`, [p, q]);
      }
    faces = faces.filter((f) => !seen.includes(f));
    for (const [p, q] of edges.values()) faces.push(face(p, q, corners.length - 1));
  }
}

/** Four points of the difference that span a body; or, where it is flat, the depth of nothing along its normal. */
function firstFour(support: (d: Vec) => Corner): Corner[] | Grown {
  const axes: Vec[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  let [p, q] = [support(axes[0]), support(scaled(axes[0], -1))];
  for (const axis of axes) {
    const [one, other] = [support(axis), support(scaled(axis, -1))];
    if (size(minus(one.w, other.w)) > size(minus(p.w, q.w))) [p, q] = [one, other];
  }
  const flat = (normal: Vec, at: Corner): Grown => ({ normal, depth: 0, at });
  const along = minus(q.w, p.w);
  if (size(along) < FLAT) return flat([0, 0, 1], p);
  const aside = axes
    .map((axis) => cross(along, axis))
    .reduce((most, one) => (size(one) > size(most) ? one : most));
  const away = (c: Corner) => size(cross(minus(c.w, p.w), along)) / size(along);
  const around = [aside, scaled(aside, -1), cross(aside, along), cross(along, aside)].map(support);
  const r = around.reduce((most, c) => (away(c) > away(most) ? c : most));
  if (away(r) < FLAT) return flat(scaled(aside, 1 / size(aside)), p);
  const n = cross(along, minus(r.w, p.w));
  const normal = scaled(n, 1 / size(n));
  const above = (c: Corner) => Math.abs(dot(normal, minus(c.w, p.w)));
  const [up, down] = [support(normal), support(scaled(normal, -1))];
  const s = above(up) > above(down) ? up : down;
  return above(s) < FLAT ? flat(normal, p) : [p, q, r, s];
}

/** Points of both bodies below the place of a face that is nearest to the origin. */
function pointOf({ corners: [i, j, k], normal, offset }: Face, all: readonly Corner[]): { a: Vec; b: Vec } {
  const foot = scaled(normal, offset);
  const [p, q, r] = [all[i], all[j], all[k]];
  const n = cross(minus(q.w, p.w), minus(r.w, p.w));
  const full = dot(n, n);
  const v = full > 0 ? dot(cross(minus(foot, p.w), minus(r.w, p.w)), n) / full : 0;
  const w = full > 0 ? dot(cross(minus(q.w, p.w), minus(foot, p.w)), n) / full : 0;
  const mix = (x: Vec, y: Vec, z: Vec): Vec =>
    [0, 1, 2].map((c) => (1 - v - w) * x[c] + v * y[c] + w * z[c]) as Vec;
  return { a: mix(p.a, q.a, r.a), b: mix(p.b, q.b, r.b) };
}
