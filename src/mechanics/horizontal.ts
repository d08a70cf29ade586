// The horizontal problem of the rigid set: along, across and yaw, held by bunks, brakes, bearings and leaning lines.
//
// Contacts hold elastically up to their limit and then keep that limit (slip). Lines are pendulums of stiffness
// tension over rope length. A motion that nothing holds is reported free when no force acts on it; with a force
// on it the set moves, and there is no equilibrium.

import { eliminate, vector } from "../numeric/index.ts";

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
  /** The unknowns at which the search came to rest: the motion, its yaw scaled, and the share of every brake. */
  rest: Float64Array;
  /** Forces on the set, x then y per hold. */
  holds: Float64Array;
  /** Forces on the set from the lean of each line, x then y. */
  lines: Float64Array;
  slipping: boolean[];
  /** Whether the slipping contacts stand at their limits, within a billionth of the load. */
  settled: boolean;
  /** Unheld motions without a force. */
  free: string[];
  /** Unheld motions with a force on them. */
  moving: string[];
}

/** Rounds of the search for slip, and the force beyond the limits, as a share of the load, that ends it. */
const MOST_ROUNDS = 240;
const AGREED = 1e-14;
const AGREED_AT_LAST = 1e-9;
/** Rounds of plain steps before Newton steps are tried: most poses need no more. */
const PLAIN = 3;
const MOST_JUMPS = 20;
const AHEAD = 12;
/** A set that moved this far, m, in search of what holds it is held by nothing. */
const OFF = 1e3;
/** Length by which the yaw is scaled, m. */
const LENGTH = 10;

const NAMES = ["along the path", "across the path", "turning in plan (yaw)"];
const NONE: string[] = [];

/**
 * Contacts beyond their limit act with a secant stiffness: all of their stiffness, or what the limit allows at the
 * displacement there is; the brakes of a train likewise. The forces at which this rests are those of least energy and
 * so do not hang on which contact was let slip first. Plain steps towards it (solve, take new secants) are helped by
 * Newton steps on the displacement and the brakes, with differences for derivatives.
 * @param fx,fy,mz resultant of gravity, wind and vertical lines about the point (originX, 0), N and N m
 * @param scale force that counts as nothing when a billion times smaller, N
 * @param brakeLimits greatest longitudinal force per train, N (Infinity: none given)
 * @param near where the search begins: the answer to a problem of the same trains that differs little, null for none
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
  near: HorizontalResult | null = null,
): HorizontalResult {
  const left = vector(holds.length);
  const along = vector(brakeLimits.length);
  const size = 3 + brakeLimits.length;
  let end = { free: NONE, moving: NONE };
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
  const brakeOf = (i: number, v: ArrayLike<number>) => (holds[i].train >= 0 ? v[3 + holds[i].train] : 1);
  /** Force that a contact would take at its full stiffness, along and across, at motion v. */
  const fullX = (i: number, v: ArrayLike<number>) =>
    0 - holds[i].kx * brakeOf(i, v) * (v[0] - (v[2] / LENGTH) * holds[i].y);
  const fullY = (i: number, v: ArrayLike<number>) =>
    0 - holds[i].ky * (v[1] + (v[2] / LENGTH) * (holds[i].x - originX));
  /** Shares of stiffness that the limits allow at v: of every contact into `left`, of the brakes into next[3...]. */
  const secants = (v: ArrayLike<number>, next: Float64Array) => {
    for (let t = 3; t < size; t++) next[t] = 0;
    for (let i = 0; i < holds.length; i++) {
      const x = fullX(i, v);
      const { limit, train } = holds[i];
      const force = limit === Number.POSITIVE_INFINITY ? 0 : resultant(x, fullY(i, v));
      left[i] = force > limit ? limit / force : 1;
      if (train >= 0 && v[3 + train] > 0) next[3 + train] += (left[i] * x) / v[3 + train];
    }
    for (let t = 3; t < size; t++) {
      const force = Math.abs(next[t]);
      next[t] = force > brakeLimits[t - 3] ? brakeLimits[t - 3] / force : 1;
    }
  };
  /** One plain step: the secants at v, then the motion that they hold, into next. */
  const step = (v: ArrayLike<number>, next: Float64Array) => {
    secants(v, next);
    K.fill(0);
    r[0] = fx;
    r[1] = fy;
    r[2] = mz / LENGTH;
    for (let i = 0; i < holds.length; i++) {
      const h = holds[i];
      spring(h.x, h.y, left[i] * h.kx * brakeOf(i, next), left[i] * h.ky);
    }
    for (const p of pendulums) {
      spring(p.x, p.y, p.stiffness, p.stiffness);
      push(p.x, p.y, p.stiffness * p.offsetX, p.stiffness * p.offsetY);
    }
    K[6] = K[2];
    K[7] = K[5];
    end = solve3(next, scale);
  };
  /** Force beyond the limits when the secants made at v act at the motion next. */
  const excess = (next: Float64Array) => {
    let most = 0;
    along.fill(0);
    for (let i = 0; i < holds.length; i++) {
      const x = fullX(i, next);
      const { limit, train } = holds[i];
      if (train >= 0) along[train] += left[i] * x;
      if (limit === Number.POSITIVE_INFINITY) continue;
      const force = resultant(x, fullY(i, next));
      most = Math.max(most, Math.abs(left[i] * force - Math.min(force, limit)));
    }
    for (let t = 0; t < along.length; t++)
      if (brakeLimits[t] !== Number.POSITIVE_INFINITY) {
        const full = Math.abs(along[t]) / next[3 + t];
        most = Math.max(most, Math.abs(Math.abs(along[t]) - Math.min(full, brakeLimits[t])));
      }
    return most;
  };

  const begin = near?.settled && near.moving.length === 0 ? near.rest : null;
  let at = begin?.slice() ?? new Float64Array(size).fill(0, 0, 3).fill(1, 3);
  const plain = begin === null ? PLAIN : 1;
  let next = new Float64Array(size);
  step(at, next);
  let beyond = excess(next);
  let jumps = 0;
  for (let round = 1; round < MOST_ROUNDS && beyond > AGREED * scale && end.moving.length === 0; round++) {
    if (slidesOff(next, pendulums)) break;
    if (round >= plain && jumps < MOST_JUMPS) {
      const jumped = newton(at, next, step);
      const after = new Float64Array(size);
      if (jumped !== null) {
        step(jumped, after);
        const then = excess(after);
        if (then < 0.5 * beyond && end.moving.length === 0) {
          at = jumped;
          next = after;
          beyond = then;
          jumps++;
          continue;
        }
      }
    }
    const from = at;
    at = next;
    next = from;
    // What creeps on without end is sent ahead; what has an end comes back from there.
    if (round % AHEAD === 0) for (let i = 0; i < 3; i++) at[i] *= 10;
    step(at, next);
    beyond = excess(next);
  }
  // The secants and the motion that they hold belong together: these forces balance whether or not the search is done.
  const moving = end.moving.length > 0 || !slidesOff(next, pendulums) ? end.moving : farthest(next);
  const motion: [number, number, number] = [next[0], next[1], next[2] / LENGTH];
  const out = vector(2 * holds.length);
  const slipping: boolean[] = [];
  for (let i = 0; i < holds.length; i++) {
    out[2 * i] = left[i] * fullX(i, next);
    out[2 * i + 1] = left[i] * fullY(i, next);
    slipping.push(left[i] < 1 - 1e-12 || (brakeOf(i, next) < 1 - 1e-12 && holds[i].kx > 0));
  }
  const lines = vector(2 * pendulums.length);
  for (let i = 0; i < pendulums.length; i++) {
    const p = pendulums[i];
    lines[2 * i] = p.stiffness * (p.offsetX - (motion[0] - motion[2] * p.y));
    lines[2 * i + 1] = p.stiffness * (p.offsetY - (motion[1] + motion[2] * (p.x - originX)));
  }
  const settled = beyond <= AGREED_AT_LAST * scale;
  return { motion, rest: next, holds: out, lines, slipping, settled, free: end.free, moving };
}

/** The point at which step(v) = v by a Newton step from v, where step(v) is `next`; null when its matrix fails. */
function newton(
  v: Float64Array,
  next: Float64Array,
  step: (v: ArrayLike<number>, next: Float64Array) => void,
): Float64Array<ArrayBuffer> | null {
  const n = v.length;
  const a: number[] = new Array(n * n).fill(0);
  const b = Array.from(next, (x, i) => x - v[i]);
  const moved = new Float64Array(n);
  for (let c = 0; c < n; c++) {
    const h = 1e-7 * Math.max(Math.abs(v[c]), 1e-6);
    const beside = v.slice();
    beside[c] += h;
    step(beside, moved);
    for (let i = 0; i < n; i++) a[i * n + c] = (i === c ? 1 : 0) - (moved[i] - next[i]) / h;
  }
  if (!eliminate(a, b, n)) return null;
  const found = v.map((x, i) => x + b[i]);
  for (let t = 3; t < n; t++) found[t] = Math.min(1, Math.max(1e-6, found[t]));
  return found.every(Number.isFinite) ? found : null;
}

/** Of forces that are nowhere near the range in which a square root of squares would fail. */
function resultant(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

/** Stiffness of the motions and load on them, filled for every solve. */
const K = new Float64Array(9);
const r = new Float64Array(3);
const done = new Uint8Array(3);
const order = new Uint8Array(3);

/** Whether the motion ran away because all contacts are at their limit and the lines do not hold it. */
function slidesOff(v: Float64Array, pendulums: Pendulum[]): boolean {
  let reach = OFF;
  for (const p of pendulums) reach += Math.hypot(p.offsetX, p.offsetY);
  return Math.max(Math.abs(v[0]), Math.abs(v[1]), Math.abs(v[2])) > reach;
}

/** The motions that dominate one that ran away. */
function farthest(v: Float64Array): string[] {
  const most = Math.max(Math.abs(v[0]), Math.abs(v[1]), Math.abs(v[2]));
  return NAMES.filter((_, i) => Math.abs(v[i]) > 0.3 * most);
}

/** Solves K x = r, symmetric 3 x 3, by full pivoting, both overwritten; a vanished pivot is a free motion, left at zero. */
function solve3(x: Float64Array, scale: number): { free: string[]; moving: string[] } {
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
