// The horizontal problem of the rigid set: along, across and yaw, held by bunks, brakes, bearings and leaning lines.
//
// Contacts hold elastically up to their limit and then keep that limit (slip). Lines are pendulums of stiffness
// tension over rope length. A motion that nothing holds is reported free when no force acts on it; with a force
// on it the set moves, and there is no equilibrium.

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
  const slip = holds.map(() => false);
  const fixed = new Float64Array(2 * holds.length);
  const lengthScale = 10;
  let motion: [number, number, number] = [0, 0, 0];
  let free: string[] = [];
  let moving: string[] = [];
  for (let round = 0; round <= holds.length + 1; round++) {
    const K = new Float64Array(9);
    const r = [fx, fy, mz / lengthScale];
    const spring = (x: number, y: number, kx: number, ky: number) => {
      const ax = x - originX;
      // ux - yaw y, uy + yaw (x - originX); yaw scaled by the length.
      const bx = -y / lengthScale;
      const by = ax / lengthScale;
      K[0] += kx;
      K[2] += kx * bx;
      K[4] += ky;
      K[5] += ky * by;
      K[8] += kx * bx * bx + ky * by * by;
    };
    const push = (x: number, y: number, px: number, py: number) => {
      r[0] += px;
      r[1] += py;
      r[2] += (py * (x - originX) - px * y) / lengthScale;
    };
    holds.forEach((h, i) => {
      if (slip[i]) push(h.x, h.y, fixed[2 * i], fixed[2 * i + 1]);
      else spring(h.x, h.y, h.kx, h.ky);
    });
    for (const p of pendulums) {
      spring(p.x, p.y, p.stiffness, p.stiffness);
      push(p.x, p.y, p.stiffness * p.offsetX, p.stiffness * p.offsetY);
    }
    K[6] = K[2];
    K[7] = K[5];
    const solved = solve3(K, r, scale);
    motion = [solved.x[0], solved.x[1], solved.x[2] / lengthScale];
    free = solved.free.map((i) => NAMES[i]);
    moving = solved.moving.map((i) => NAMES[i]);
    // The contact furthest beyond its limit slips, one at a time, so that the order cannot cycle.
    let worst = -1;
    let excess = 1 + 1e-12;
    const along = brakeLimits.map(() => 0);
    const force = (i: number): [number, number] => {
      const h = holds[i];
      if (slip[i]) return [fixed[2 * i], fixed[2 * i + 1]];
      return [-h.kx * (motion[0] - motion[2] * h.y), -h.ky * (motion[1] + motion[2] * (h.x - originX))];
    };
    holds.forEach((h, i) => {
      const [x, y] = force(i);
      if (h.train >= 0) along[h.train] += x;
      const size = Math.hypot(x, y);
      if (!slip[i] && size > 0 && size / h.limit > excess) {
        excess = size / h.limit;
        worst = i;
      }
    });
    if (worst >= 0) {
      const [x, y] = force(worst);
      const size = Math.hypot(x, y);
      slip[worst] = true;
      fixed[2 * worst] = (x * holds[worst].limit) / size;
      fixed[2 * worst + 1] = (y * holds[worst].limit) / size;
      continue;
    }
    const train = along.findIndex((f, t) => Math.abs(f) > brakeLimits[t] * (1 + 1e-12));
    const rolling =
      train < 0 ? [] : holds.map((_, i) => i).filter((i) => holds[i].train === train && !slip[i]);
    if (rolling.length === 0) break;
    for (const i of rolling) {
      const [x, y] = force(i);
      slip[i] = true;
      fixed[2 * i] = (x * brakeLimits[train]) / Math.abs(along[train]);
      fixed[2 * i + 1] = y;
    }
  }
  const out = new Float64Array(2 * holds.length);
  holds.forEach((h, i) => {
    out[2 * i] = slip[i] ? fixed[2 * i] : 0 - h.kx * (motion[0] - motion[2] * h.y);
    out[2 * i + 1] = slip[i] ? fixed[2 * i + 1] : 0 - h.ky * (motion[1] + motion[2] * (h.x - originX));
  });
  const lines = new Float64Array(2 * pendulums.length);
  pendulums.forEach((p, i) => {
    lines[2 * i] = p.stiffness * (p.offsetX - (motion[0] - motion[2] * p.y));
    lines[2 * i + 1] = p.stiffness * (p.offsetY - (motion[1] + motion[2] * (p.x - originX)));
  });
  return { motion, holds: out, lines, slipping: slip, free, moving };
}

/** Symmetric 3 x 3 by full pivoting; a vanished pivot is a free motion, left at zero. */
function solve3(K: Float64Array, r: number[], scale: number) {
  const a = Array.from(K);
  for (let i = 0; i < 3; i++) for (let j = 0; j < i; j++) a[i * 3 + j] = a[j * 3 + i];
  const b = [...r];
  const left = [0, 1, 2];
  const done: number[] = [];
  const top = Math.max(a[0], a[4], a[8]);
  const free: number[] = [];
  const moving: number[] = [];
  while (left.length > 0) {
    left.sort((i, j) => a[j * 3 + j] - a[i * 3 + i]);
    const p = left[0];
    if (!(a[p * 3 + p] > 1e-12 * top)) {
      for (const i of left) (Math.abs(b[i]) > 1e-9 * scale ? moving : free).push(i);
      break;
    }
    left.shift();
    done.push(p);
    for (const i of left) {
      const f = a[i * 3 + p] / a[p * 3 + p];
      for (const j of left) a[i * 3 + j] -= f * a[p * 3 + j];
      b[i] -= f * b[p];
    }
  }
  const x = [0, 0, 0];
  for (let i = done.length - 1; i >= 0; i--) {
    const p = done[i];
    let s = b[p];
    for (const q of done.slice(i + 1)) s -= a[p * 3 + q] * x[q];
    x[p] = s / a[p * 3 + p];
  }
  return { x, free: free.sort(), moving: moving.sort() };
}
