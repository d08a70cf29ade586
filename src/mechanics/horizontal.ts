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
  const size = 3 + brakeLimits.length;
  if (holds.length > left.length) left = new Float64Array(2 * holds.length);
  if (size > along.length) makeRoom(2 * size);
  const p: Problem = { holds, pendulums, fx, fy, mz, originX, scale, brakeLimits, size, end: NO_END };

  const begin = near?.settled && near.moving.length === 0 ? near.rest : null;
  for (let i = 0; i < size; i++) at[i] = begin === null ? (i < 3 ? 0 : 1) : begin[i];
  const plain = begin === null ? PLAIN : 1;
  step(p, at, next);
  let beyond = excess(p, next);
  let jumps = 0;
  for (let round = 1; round < MOST_ROUNDS && beyond > AGREED * scale && p.end.moving.length === 0; round++) {
    if (slidesOff(next, pendulums)) break;
    if (round >= plain && jumps < MOST_JUMPS && newton(p, at, next, jumped)) {
      step(p, jumped, after);
      const then = excess(p, after);
      if (then < 0.5 * beyond && p.end.moving.length === 0) {
        [at, jumped] = [jumped, at];
        [next, after] = [after, next];
        beyond = then;
        jumps++;
        continue;
      }
    }
    [at, next] = [next, at];
    // What creeps on without end is sent ahead; what has an end comes back from there.
    if (round % AHEAD === 0) for (let i = 0; i < 3; i++) at[i] *= 10;
    step(p, at, next);
    beyond = excess(p, next);
  }
  // The secants and the motion that they hold belong together: these forces balance whether or not the search is done.
  const { free } = p.end;
  const moving = p.end.moving.length > 0 || !slidesOff(next, pendulums) ? p.end.moving : farthest(next);
  const motion: [number, number, number] = [next[0], next[1], next[2] / LENGTH];
  const rest = vector(size);
  for (let i = 0; i < size; i++) rest[i] = next[i];
  const out = vector(2 * holds.length);
  const slipping: boolean[] = [];
  for (let i = 0; i < holds.length; i++) {
    out[2 * i] = left[i] * fullX(p, i, next);
    out[2 * i + 1] = left[i] * fullY(p, i, next);
    slipping.push(left[i] < 1 - 1e-12 || (brakeOf(p, i, next) < 1 - 1e-12 && holds[i].kx > 0));
  }
  const lines = vector(2 * pendulums.length);
  for (let i = 0; i < pendulums.length; i++) {
    const line = pendulums[i];
    lines[2 * i] = line.stiffness * (line.offsetX - (motion[0] - motion[2] * line.y));
    lines[2 * i + 1] = line.stiffness * (line.offsetY - (motion[1] + motion[2] * (line.x - originX)));
  }
  const settled = beyond <= AGREED_AT_LAST * scale;
  return { motion, rest, holds: out, lines, slipping, settled, free, moving };
}

/** A horizontal problem, and the motions that its last step found unheld. */
interface Problem {
  holds: Hold[];
  pendulums: Pendulum[];
  fx: number;
  fy: number;
  mz: number;
  originX: number;
  scale: number;
  brakeLimits: number[];
  /** Number of unknowns: the motion, its yaw scaled, and the share of every brake. */
  size: number;
  end: End;
}

interface End {
  free: string[];
  moving: string[];
}
const NO_END: End = { free: NONE, moving: NONE };

/** Room for the search, one at a time: shares of stiffness that the limits leave to every contact, forces on brakes... */
let left = new Float64Array(32);
let along = new Float64Array(0);
/** ... the unknowns, the step from them, a jump and the step from there, and what Newton's differences need. */
let at = along;
let next = along;
let jumped = along;
let after = along;
let beside = along;
let moved = along;
let matrix: number[] = [];
let right: number[] = [];
makeRoom(8);

function makeRoom(size: number): void {
  along = new Float64Array(size);
  at = new Float64Array(size);
  next = new Float64Array(size);
  jumped = new Float64Array(size);
  after = new Float64Array(size);
  beside = new Float64Array(size);
  moved = new Float64Array(size);
  matrix = new Array(size * size).fill(0);
  right = new Array(size).fill(0);
}

function brakeOf({ holds }: Problem, i: number, v: Float64Array): number {
  const { train } = holds[i];
  return train >= 0 ? v[3 + train] : 1;
}

/** Force that a contact would take at its full stiffness, along, at motion v. */
function fullX(p: Problem, i: number, v: Float64Array): number {
  const { kx, y } = p.holds[i];
  return 0 - kx * brakeOf(p, i, v) * (v[0] - (v[2] / LENGTH) * y);
}

/** The same across. */
function fullY(p: Problem, i: number, v: Float64Array): number {
  const { ky, x } = p.holds[i];
  return 0 - ky * (v[1] + (v[2] / LENGTH) * (x - p.originX));
}

/** Shares of stiffness that the limits allow at v: of every contact into `left`, of the brakes into to[3...]. */
function secants(p: Problem, v: Float64Array, to: Float64Array): void {
  const { holds, size, brakeLimits } = p;
  for (let t = 3; t < size; t++) to[t] = 0;
  for (let i = 0; i < holds.length; i++) {
    const x = fullX(p, i, v);
    const { limit, train } = holds[i];
    const force = limit === Number.POSITIVE_INFINITY ? 0 : resultant(x, fullY(p, i, v));
    left[i] = force > limit ? limit / force : 1;
    if (train >= 0 && v[3 + train] > 0) to[3 + train] += (left[i] * x) / v[3 + train];
  }
  for (let t = 3; t < size; t++) {
    const force = Math.abs(to[t]);
    to[t] = force > brakeLimits[t - 3] ? brakeLimits[t - 3] / force : 1;
  }
}

/** One plain step: the secants at v, then the motion that they hold, into `to`. */
function step(p: Problem, v: Float64Array, to: Float64Array): void {
  const { holds, pendulums, originX } = p;
  secants(p, v, to);
  K.fill(0);
  r[0] = p.fx;
  r[1] = p.fy;
  r[2] = p.mz / LENGTH;
  for (let i = 0; i < holds.length; i++) {
    const h = holds[i];
    spring(h.x - originX, h.y, left[i] * h.kx * brakeOf(p, i, to), left[i] * h.ky);
  }
  for (let i = 0; i < pendulums.length; i++) {
    const { x, y, stiffness, offsetX, offsetY } = pendulums[i];
    spring(x - originX, y, stiffness, stiffness);
    r[0] += stiffness * offsetX;
    r[1] += stiffness * offsetY;
    r[2] += (stiffness * offsetY * (x - originX) - stiffness * offsetX * y) / LENGTH;
  }
  K[6] = K[2];
  K[7] = K[5];
  p.end = solve3(to, p.scale);
}

/** A spring at (x, y) from the origin into K. */
function spring(x: number, y: number, kx: number, ky: number): void {
  const bx = -y / LENGTH;
  const by = x / LENGTH;
  K[0] += kx;
  K[2] += kx * bx;
  K[4] += ky;
  K[5] += ky * by;
  K[8] += kx * bx * bx + ky * by * by;
}

/** Force beyond the limits when the secants in `left` act at the motion v. */
function excess(p: Problem, v: Float64Array): number {
  const { holds, brakeLimits } = p;
  let most = 0;
  along.fill(0);
  for (let i = 0; i < holds.length; i++) {
    const x = fullX(p, i, v);
    const { limit, train } = holds[i];
    if (train >= 0) along[train] += left[i] * x;
    if (limit === Number.POSITIVE_INFINITY) continue;
    const force = resultant(x, fullY(p, i, v));
    most = Math.max(most, Math.abs(left[i] * force - Math.min(force, limit)));
  }
  for (let t = 0; t < brakeLimits.length; t++)
    if (brakeLimits[t] !== Number.POSITIVE_INFINITY) {
      const full = Math.abs(along[t]) / v[3 + t];
      most = Math.max(most, Math.abs(Math.abs(along[t]) - Math.min(full, brakeLimits[t])));
    }
  return most;
}

/** The point at which a step leads to itself, by a Newton step from v, whose own step led to `led`; false when it fails. */
function newton(p: Problem, v: Float64Array, led: Float64Array, into: Float64Array): boolean {
  const n = p.size;
  for (let c = 0; c < n; c++) {
    const h = 1e-7 * Math.max(Math.abs(v[c]), 1e-6);
    for (let i = 0; i < n; i++) beside[i] = v[i];
    beside[c] += h;
    step(p, beside, moved);
    for (let i = 0; i < n; i++) matrix[i * n + c] = (i === c ? 1 : 0) - (moved[i] - led[i]) / h;
    right[c] = led[c] - v[c];
  }
  if (!eliminate(matrix, right, n)) return false;
  for (let i = 0; i < n; i++) {
    const to = v[i] + right[i];
    if (!Number.isFinite(to)) return false;
    into[i] = i < 3 ? to : Math.min(1, Math.max(1e-6, to));
  }
  return true;
}

/** Stiffness of the motions and load on them, filled for every solve. */
const K = new Float64Array(9);
const r = new Float64Array(3);
const done = new Uint8Array(3);
const order = new Uint8Array(3);

/** Of forces that are nowhere near the range in which a square root of squares would fail. */
function resultant(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

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
function solve3(x: Float64Array, scale: number): End {
  const top = Math.max(K[0], K[4], K[8]);
  done.fill(0);
  let count = 0;
  let free = NONE;
  let moving = NONE;
  for (; count < 3; count++) {
    let p = -1;
    for (let i = 0; i < 3; i++) if (!done[i] && (p < 0 || K[4 * i] > K[4 * p])) p = i;
    if (!(K[4 * p] > 1e-12 * top)) {
      const loose = [0, 1, 2].filter((i) => !done[i]);
      moving = loose.filter((i) => Math.abs(r[i]) > 1e-9 * scale).map((i) => NAMES[i]);
      free = loose.filter((i) => !(Math.abs(r[i]) > 1e-9 * scale)).map((i) => NAMES[i]);
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
  return free === NONE && moving === NONE ? NO_END : { free, moving };
}
