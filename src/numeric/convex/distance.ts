// The distance of two convex bodies with the points where they are nearest: the simplex method of Gilbert, Johnson and
// Keerthi (1988) on the difference of both, nothing allocated. Bodies that overlap are handed on to `penetration`.

import { type Convex, furthest } from "./body.ts";
import type { Gap } from "./gap.ts";
import { penetration } from "./penetration.ts";

/** Upper and lower bound of a distance come together to this, m. */
const CLOSE = 1e-9;
/** Cores nearer than this overlap, m. */
const TOUCH = 1e-9;
const ROUNDS = 200;

// The simplex: points of the difference, of both bodies, and their weights. Written anew in every call.
const W = new Float64Array(12);
const A = new Float64Array(12);
const B = new Float64Array(12);
const weight = new Float64Array(4);
// A part of the simplex that is nearest to the origin: its corners, their weights, its square of the distance.
const part = { count: 0, at: new Int32Array(3), w: new Float64Array(3), square: 0 };
const best = { count: 0, at: new Int32Array(3), w: new Float64Array(3), square: 0 };

/**
 * Distance (m) of two bodies; `cut` ends the search as soon as it is sure to be more than that. Throws a RangeError for
 * coordinates that are no numbers.
 */
export function convexDistance(
  a: Convex,
  xyzA: Float64Array,
  b: Convex,
  xyzB: Float64Array,
  gap: Gap,
  cut = Number.POSITIVE_INFINITY,
): number {
  const thick = a.radius + b.radius;
  let n = 0;
  let vx = xyzA[3 * a.first] - xyzB[3 * b.first];
  let vy = xyzA[3 * a.first + 1] - xyzB[3 * b.first + 1];
  let vz = xyzA[3 * a.first + 2] - xyzB[3 * b.first + 2];
  let square = Number.POSITIVE_INFINITY;
  if (vx === 0 && vy === 0 && vz === 0) vx = 1;
  for (let round = 0; round < ROUNDS; round++) {
    const at = 3 * n;
    furthest(a, xyzA, -vx, -vy, -vz, A, at);
    furthest(b, xyzB, vx, vy, vz, B, at);
    const wx = A[at] - B[at];
    const wy = A[at + 1] - B[at + 1];
    const wz = A[at + 2] - B[at + 2];
    W[at] = wx;
    W[at + 1] = wy;
    W[at + 2] = wz;
    const size = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const least = (vx * wx + vy * wy + vz * wz) / size;
    if (least - thick > cut) {
      gap.distance = least - thick;
      gap.exact = false;
      gap.normal[0] = -vx / size;
      gap.normal[1] = -vy / size;
      gap.normal[2] = -vz / size;
      return gap.distance;
    }
    if (n > 0 && (size - least <= CLOSE || known(n))) break;
    if (Number.isNaN(least))
      throw new RangeError("the distance of two bodies was asked for with coordinates that are no numbers");
    n = nearest(n + 1);
    if (n === 0) {
      penetration(a, xyzA, b, xyzB, gap);
      return gap.distance;
    }
    vx = 0;
    vy = 0;
    vz = 0;
    for (let i = 0; i < n; i++) {
      vx += weight[i] * W[3 * i];
      vy += weight[i] * W[3 * i + 1];
      vz += weight[i] * W[3 * i + 2];
    }
    const now = vx * vx + vy * vy + vz * vz;
    if (now <= TOUCH * TOUCH) {
      penetration(a, xyzA, b, xyzB, gap);
      return gap.distance;
    }
    // Rounding has the last word once nothing comes nearer.
    if (now >= square * (1 - 1e-14)) break;
    square = now;
  }
  write(n, a.radius, b.radius, gap);
  return gap.distance;
}

/** Whether the point just found stands in the simplex already: there is none nearer. */
function known(n: number): boolean {
  for (let i = 0; i < n; i++)
    if (W[3 * i] === W[3 * n] && W[3 * i + 1] === W[3 * n + 1] && W[3 * i + 2] === W[3 * n + 2]) return true;
  return false;
}

function write(n: number, radiusA: number, radiusB: number, gap: Gap): void {
  const { a, b, normal } = gap;
  a.fill(0);
  b.fill(0);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < 3; k++) {
      a[k] += weight[i] * A[3 * i + k];
      b[k] += weight[i] * B[3 * i + k];
    }
  const size = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 + (b[2] - a[2]) ** 2);
  for (let k = 0; k < 3; k++) {
    normal[k] = (b[k] - a[k]) / size;
    a[k] += radiusA * normal[k];
    b[k] -= radiusB * normal[k];
  }
  gap.distance = size - radiusA - radiusB;
  gap.exact = true;
}

/**
 * Cuts the simplex of n points down to the part that holds its point nearest to the origin, with weights; gives how many
 * points are left, 0 when the origin lies inside.
 */
function nearest(n: number): number {
  if (n === 1) {
    weight[0] = 1;
    return 1;
  }
  best.square = Number.POSITIVE_INFINITY;
  if (n === 2) edge(0, 1);
  else if (n === 3) triangle(0, 1, 2);
  else if (inside()) return 0;
  // The rows of the best part, moved to the front: its places ascend, so that none is written over before it is read.
  const { count, at, w } = best;
  for (let i = 0; i < count; i++) {
    const from = 3 * at[i];
    for (let k = 0; k < 3; k++) {
      W[3 * i + k] = W[from + k];
      A[3 * i + k] = A[from + k];
      B[3 * i + k] = B[from + k];
    }
    weight[i] = w[i];
  }
  return count;
}

/** Keeps a part when it is nearer than the best so far. */
function offer(): void {
  let square = 0;
  for (let k = 0; k < 3; k++) {
    let c = 0;
    for (let i = 0; i < part.count; i++) c += part.w[i] * W[3 * part.at[i] + k];
    square += c * c;
  }
  if (!(square < best.square)) return;
  best.square = square;
  best.count = part.count;
  best.at.set(part.at);
  best.w.set(part.w);
}

function corner(i: number): void {
  part.count = 1;
  part.at[0] = i;
  part.w[0] = 1;
  offer();
}

function edge(i: number, j: number): void {
  let along = 0;
  let full = 0;
  for (let k = 0; k < 3; k++) {
    const e = W[3 * j + k] - W[3 * i + k];
    along -= W[3 * i + k] * e;
    full += e * e;
  }
  const t = along / full;
  if (!(t > 0)) {
    corner(i);
    return;
  }
  if (t >= 1) {
    corner(j);
    return;
  }
  part.count = 2;
  part.at[0] = i;
  part.at[1] = j;
  part.w[0] = 1 - t;
  part.w[1] = t;
  offer();
}

/** The triangle's inside where the origin is above it, else its edges. i < j < k. */
function triangle(i: number, j: number, k: number): void {
  const p = 3 * i;
  const q = 3 * j;
  const r = 3 * k;
  const ax = W[q] - W[p];
  const ay = W[q + 1] - W[p + 1];
  const az = W[q + 2] - W[p + 2];
  const bx = W[r] - W[p];
  const by = W[r + 1] - W[p + 1];
  const bz = W[r + 2] - W[p + 2];
  const nx = ay * bz - az * by;
  const ny = az * bx - ax * bz;
  const nz = ax * by - ay * bx;
  const full = nx * nx + ny * ny + nz * nz;
  if (full > 0) {
    // Areas of the parts opposite to j and to k, seen along the normal, over the whole.
    const ox = -W[p];
    const oy = -W[p + 1];
    const oz = -W[p + 2];
    const v = ((oy * bz - oz * by) * nx + (oz * bx - ox * bz) * ny + (ox * by - oy * bx) * nz) / full;
    const w = ((ay * oz - az * oy) * nx + (az * ox - ax * oz) * ny + (ax * oy - ay * ox) * nz) / full;
    if (v > 0 && w > 0 && v + w < 1) {
      part.count = 3;
      part.at[0] = i;
      part.at[1] = j;
      part.at[2] = k;
      part.w[0] = 1 - v - w;
      part.w[1] = v;
      part.w[2] = w;
      offer();
      return;
    }
  }
  edge(i, j);
  edge(i, k);
  edge(j, k);
}

/** Faces of the simplex of four by their corners, and the corner opposite to each. */
const FACES = [
  [0, 1, 2, 3],
  [0, 1, 3, 2],
  [0, 2, 3, 1],
  [1, 2, 3, 0],
] as const;

/** Whether the origin lies in the simplex of four; else its best face, edge or corner is found. */
function inside(): boolean {
  let within = true;
  for (let f = 0; f < 4; f++) {
    const face = FACES[f];
    const p = 3 * face[0];
    const q = 3 * face[1];
    const r = 3 * face[2];
    const s = 3 * face[3];
    const ax = W[q] - W[p];
    const ay = W[q + 1] - W[p + 1];
    const az = W[q + 2] - W[p + 2];
    const bx = W[r] - W[p];
    const by = W[r + 1] - W[p + 1];
    const bz = W[r + 2] - W[p + 2];
    const nx = ay * bz - az * by;
    const ny = az * bx - ax * bz;
    const nz = ax * by - ay * bx;
    const origin = -(nx * W[p] + ny * W[p + 1] + nz * W[p + 2]);
    const other = nx * (W[s] - W[p]) + ny * (W[s + 1] - W[p + 1]) + nz * (W[s + 2] - W[p + 2]);
    // A flat simplex has no inside: each of its faces is looked at.
    if (origin * other > 0) continue;
    within = false;
    triangle(face[0], face[1], face[2]);
  }
  return within;
}
