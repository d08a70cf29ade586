// Distance and depth of convex bodies by looking at everything that can be nearest, without any search: every point against
// every triangle, every edge against every edge, every normal that a face of the difference can have. Shares no code with
// what it tests. C. Ericson's closed forms for two segments (Real-Time Collision Detection, 5.1.9), from memory.

export type Vec = readonly [number, number, number];

const minus = (p: Vec, q: Vec): Vec => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Vec, q: Vec): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Vec, q: Vec): Vec => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];
const plus = (p: Vec, q: Vec, f: number): Vec => [p[0] + f * q[0], p[1] + f * q[1], p[2] + f * q[2]];
const size = (p: Vec): number => Math.sqrt(dot(p, p));
const clamp = (x: number): number => Math.min(1, Math.max(0, x));

export function pointSegment(p: Vec, a: Vec, b: Vec): number {
  const d = minus(b, a);
  const full = dot(d, d);
  return size(minus(p, plus(a, d, full > 0 ? clamp(dot(minus(p, a), d) / full) : 0)));
}

export function segmentSegment(p: Vec, q: Vec, r: Vec, s: Vec): number {
  const ends = [pointSegment(p, r, s), pointSegment(q, r, s), pointSegment(r, p, q), pointSegment(s, p, q)];
  const [u, v, w] = [minus(q, p), minus(s, r), minus(p, r)];
  const [a, b, c, d, e] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const full = a * c - b * b;
  if (full > 1e-12 * a * c) {
    const [t, x] = [(b * e - c * d) / full, (a * e - b * d) / full];
    if (t >= 0 && t <= 1 && x >= 0 && x <= 1) ends.push(size(minus(plus(p, u, t), plus(r, v, x))));
  }
  return Math.min(...ends);
}

function pointTriangle(p: Vec, a: Vec, b: Vec, c: Vec): number {
  const n = cross(minus(b, a), minus(c, a));
  const l = size(n);
  const edges = Math.min(pointSegment(p, a, b), pointSegment(p, b, c), pointSegment(p, c, a));
  if (l < 1e-12) return edges;
  const inside = [
    [a, b],
    [b, c],
    [c, a],
  ].every(([x, y]) => dot(cross(minus(y, x), minus(p, x)), n) >= 0);
  return inside ? Math.abs(dot(minus(p, a), n)) / l : edges;
}

const pairs = (list: readonly Vec[]): [Vec, Vec][] =>
  list.flatMap((a, i) => list.slice(i + 1).map((b): [Vec, Vec] => [a, b]));
const triples = (list: readonly Vec[]): [Vec, Vec, Vec][] =>
  list.flatMap((a, i) => pairs(list.slice(i + 1)).map(([b, c]): [Vec, Vec, Vec] => [a, b, c]));

/** Distance of the hulls of two lists of points that lie apart. */
export function apart(a: readonly Vec[], b: readonly Vec[]): number {
  let least = Number.POSITIVE_INFINITY;
  const take = (d: number) => {
    least = Math.min(least, d);
  };
  for (const p of a) for (const q of b) take(size(minus(p, q)));
  for (const [p, q] of pairs(a)) for (const [r, s] of pairs(b)) take(segmentSegment(p, q, r, s));
  for (const p of a) for (const [r, s] of pairs(b)) take(pointSegment(p, r, s));
  for (const p of b) for (const [r, s] of pairs(a)) take(pointSegment(p, r, s));
  for (const p of a) for (const [r, s, t] of triples(b)) take(pointTriangle(p, r, s, t));
  for (const p of b) for (const [r, s, t] of triples(a)) take(pointTriangle(p, r, s, t));
  return least;
}

/** How far two hulls must be moved apart; below zero where some plane lies between them. */
export function depth(a: readonly Vec[], b: readonly Vec[]): number {
  const normals: Vec[] = [
    ...[...triples(a), ...triples(b)].map(([p, q, r]) => cross(minus(q, p), minus(r, p))),
    ...pairs(a).flatMap(([p, q]) => pairs(b).map(([r, s]) => cross(minus(q, p), minus(s, r)))),
  ];
  let least = Number.POSITIVE_INFINITY;
  for (const n of normals) {
    const l = size(n);
    if (l < 1e-9) continue;
    for (const way of [1, -1]) {
      const over =
        Math.max(...a.map((p) => (way * dot(p, n)) / l)) - Math.min(...b.map((p) => (way * dot(p, n)) / l));
      least = Math.min(least, over);
    }
  }
  return least;
}
