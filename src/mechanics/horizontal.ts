// The horizontal problem of the rigid set: along, across and yaw, held by bunks, brakes, bearings and leaning lines.
//
// Contacts hold elastically up to their limit and then keep that limit (slip). Lines are pendulums of stiffness
// tension over rope length. A motion that nothing holds is reported free when no force acts on it; with a force
// on it the set moves, and there is no equilibrium.

import { vector } from "../numeric/index.ts";

/** A contact that may hold sideways: a bunk or a bearing. */
export interface Hold {
  x: number;
  y: number;
  kx: number;
  ky: number;
  /** Greatest resultant, N; Infinity when no limit was given. */
  limit: number;
  /** Train whose brake limit also governs the part along; -1 for none. */
  train: number;
}

/** A hanging line with its pull. */
export interface Pendulum {
  x: number;
  y: number;
  /** Tension over rope length, N/m; 0 for a line kept vertical. */
  stiffness: number;
  /** Boom tip from the plumb above the picks, m. */
  offsetX: number;
  offsetY: number;
}

export interface HorizontalResult {
  /** Displacement of the set: x, y, yaw about the origin (0, 0) of the set. */
  motion: [number, number, number];
  /** Forces on the set, x then y per hold. */
  holds: Float64Array;
  /** Forces on the set from the lean of each line, x then y. */
  lines: Float64Array;
  slipping: boolean[];
  /** Unheld motions without a force. */
  free: string[];
  /** Unheld motions with a force on them. */
  moving: string[];
}

/** Rounds in which contacts beyond their limit find their secant stiffness, and the change, as a share of W, that ends them. */
const MOST_ROUNDS = 400;
const AGREED = 1e-14;
/** A set that moved this far, m, in search of what holds it is held by nothing. */
const OFF = 1e3;

const NAMES = ["along the path", "across the path", "turning in plan (yaw)"];

/**
 * @param fx,fy,mz resultant of gravity, wind and vertical lines about the point (originX, 0), N and N m
 * @param scale force that counts as nothing when a billion times smaller, N
 * @param brakeLimits greatest longitudinal force per train, N (Infinity: none given)
 */
export function solveHorizontal(
  holds: Hold[],
  pendulums: Pendulum[],
  fx: number,
  fy: number,
  mz: number,
  originX: number,
  scale: number,
  brakeLimits: number[],
): HorizontalResult {
  // How much of its stiffness a contact, and a train's brakes, have left: all of it, or what its limit allows at the
  // displacement there is (secant). The forces that this converges to are those of least energy and so are unique and
  // steady: they do not hang on which contact was let slip first.
  const left = new Float64Array(holds.length).fill(1);
  const braking = new Float64Array(brakeLimits.length).fill(1);
  const motion: [number, number, number] = [0, 0, 0];
  const along = new Float64Array(brakeLimits.length);
  let end = { free: NONE, moving: NONE };
  // Stiffness and load in x, y and yaw; yaw scaled by a length.
  const spring = (x: number, y: number, kx: number, ky: number) => {
    const bx = -y / LENGTH;
    const by = (x - originX) / LENGTH;
    K[0] += kx;
    K[2] += kx * bx;
    K[4] += ky;
    K[5] += ky * by;
    K[8] += kx * bx * bx + ky * by * by;
  };
  const push = (x: number, y: number, px: number, py: number) => {
    r[0] += px;
    r[1] += py;
    r[2] += (py * (x - originX) - px * y) / LENGTH;
  };
  const kxOf = (i: number) => holds[i].kx * (holds[i].train >= 0 ? braking[holds[i].train] : 1);
  const forceX = (i: number) => 0 - left[i] * kxOf(i) * (motion[0] - motion[2] * holds[i].y);
  const forceY = (i: number) => 0 - left[i] * holds[i].ky * (motion[1] + motion[2] * (holds[i].x - originX));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    K.fill(0);
    r[0] = fx;
    r[1] = fy;
    r[2] = mz / LENGTH;
    for (let i = 0; i < holds.length; i++)
      spring(holds[i].x, holds[i].y, left[i] * kxOf(i), left[i] * holds[i].ky);
    for (const p of pendulums) {
      spring(p.x, p.y, p.stiffness, p.stiffness);
      push(p.x, p.y, p.stiffness * p.offsetX, p.stiffness * p.offsetY);
    }
    K[6] = K[2];
    K[7] = K[5];
    end = solve3(motion, scale);
    motion[2] /= LENGTH;
    if (end.moving.length > 0) break;
    const loose = slidesOff(motion, pendulums);
    if (loose.length > 0) {
      end = { free: end.free, moving: loose };
      break;
    }
    let change = 0;
    along.fill(0);
    for (let i = 0; i < holds.length; i++) {
      const h = holds[i];
      const x = forceX(i);
      const y = forceY(i);
      if (h.train >= 0) along[h.train] += x / braking[h.train];
      if (h.limit === Number.POSITIVE_INFINITY) continue;
      const full = Math.hypot(x, y) / left[i];
      const next = full > h.limit ? h.limit / full : 1;
      change = Math.max(change, Math.abs(next - left[i]) * full);
      left[i] = next;
    }
    for (let t = 0; t < brakeLimits.length; t++) {
      const full = Math.abs(along[t]);
      const next = full > brakeLimits[t] ? brakeLimits[t] / full : 1;
      change = Math.max(change, Math.abs(next - braking[t]) * full);
      braking[t] = next;
    }
    if (change <= AGREED * scale) break;
  }
  const slip = Array.from(
    holds,
    (h, i) => left[i] < 1 - 1e-12 || (h.train >= 0 && braking[h.train] < 1 - 1e-12 && h.kx > 0),
  );
  const out = vector(2 * holds.length);
  for (let i = 0; i < holds.length; i++) {
    out[2 * i] = forceX(i);
    out[2 * i + 1] = forceY(i);
  }
  const lines = vector(2 * pendulums.length);
  for (let i = 0; i < pendulums.length; i++) {
    const p = pendulums[i];
    lines[2 * i] = p.stiffness * (p.offsetX - (motion[0] - motion[2] * p.y));
    lines[2 * i + 1] = p.stiffness * (p.offsetY - (motion[1] + motion[2] * (p.x - originX)));
  }
  return { motion, holds: out, lines, slipping: slip, ...end };
}

/** Length by which the yaw is scaled, m. */
const LENGTH = 10;
const NONE: string[] = [];

/** Stiffness of the motions and load on them, filled for every solve. */
const K = new Float64Array(9);
const r = new Float64Array(3);
const done = new Uint8Array(3);
const order = new Uint8Array(3);

/** Solves K x = r, symmetric 3 x 3, by full pivoting, both overwritten; a vanished pivot is a free motion, left at zero. */
/** Motions that ran away because all contacts are at their limit and the lines do not hold them. */
function slidesOff(motion: readonly number[], pendulums: Pendulum[]): string[] {
  const sizes = [Math.abs(motion[0]), Math.abs(motion[1]), Math.abs(motion[2]) * LENGTH];
  const most = Math.max(...sizes);
  if (!(most > OFF + pendulums.reduce((sum, p) => sum + Math.hypot(p.offsetX, p.offsetY), 0))) return [];
  return NAMES.filter((_, i) => sizes[i] > 0.3 * most);
}

function solve3(x: [number, number, number], scale: number): { free: string[]; moving: string[] } {
  const top = Math.max(K[0], K[4], K[8]);
  done.fill(0);
  let count = 0;
  let free = NONE;
  let moving = NONE;
  for (; count < 3; count++) {
    let p = -1;
    for (let i = 0; i < 3; i++) if (!done[i] && (p < 0 || K[4 * i] > K[4 * p])) p = i;
    if (!(K[4 * p] > 1e-12 * top)) {
      const left = [0, 1, 2].filter((i) => !done[i]);
      moving = left.filter((i) => Math.abs(r[i]) > 1e-9 * scale).map((i) => NAMES[i]);
      free = left.filter((i) => !(Math.abs(r[i]) > 1e-9 * scale)).map((i) => NAMES[i]);
      break;
    }
    done[p] = 1;
    order[count] = p;
    for (let i = 0; i < 3; i++) {
      if (done[i]) continue;
      const f = K[3 * i + p] / K[4 * p];
      for (let j = 0; j < 3; j++) if (!done[j]) K[3 * i + j] -= f * K[3 * p + j];
      r[i] -= f * r[p];
    }
  }
  x[0] = 0;
  x[1] = 0;
  x[2] = 0;
  for (let c = count - 1; c >= 0; c--) {
    const p = order[c];
    let s = r[p];
    for (let b = c + 1; b < count; b++) s -= K[3 * p + order[b]] * x[order[b]];
    x[p] = s / K[4 * p];
  }
  return { free, moving };
}
