// The linear system of one active set: devices over an elastic set and its stiffness-free motions, made and solved.
//
//   v = u + C F + G a,   F_j = k_j (d_j - v_j) where active,   G^T F = -load

import { ldlFactor, ldlSolve } from "../numeric/index.ts";

/** One pose, condensed. Arrays may be longer than used; m devices, N motions. */
export interface Condensed {
  m: number;
  N: number;
  /** Tells this filling of the arrays from every other, so that parts of its matrix may be kept; none: nothing is. */
  stamp?: number;
  /** Displacements along the devices per unit of load on other rows, kept by whoever writes `u`. */
  reach?: Map<object, Float64Array>;
  /** Flexibility between device rows, m x m row-major, without the devices' own compliance. */
  C: Float64Array;
  /** Device rows in the motions, m x N row-major. */
  G: Float64Array;
  /** Displacement of the rows of the held set under its loads. */
  u: Float64Array;
  /** Datums, m. */
  d: Float64Array;
  /** Stiffnesses, N/m; negative only for a geometric (two-sided) stiffness. */
  k: Float64Array;
  /** 1 where the device pushes only, 0 where it acts both ways, 2 where it is left out of this pose. */
  oneSided: Uint8Array;
  /** Resultant of the loads in each motion. */
  load: Float64Array;
}

export interface ContactResult {
  /** Device forces, N; exactly 0 where open. */
  F: Float64Array;
  /** Amplitudes of the motions. */
  a: Float64Array;
  /** Displacements along the devices. */
  v: Float64Array;
  active: Uint8Array;
  /** Size of the last matrix. */
  n: number;
  iterations: number;
  /** False when no factorisation was possible or no active set was found. */
  settled: boolean;
  /** Least pivot of the motions over the greatest; small means a motion that hardly anything holds. */
  pivotRatio: number;
  /** False when the energy has no minimum: a geometric stiffness is more negative than the supports can hold. */
  stable: boolean;
}

export interface ContactWorkspace {
  capacity: number;
  matrix: Float64Array;
  /** The matrix that `matrix` is the factor of, before grounding; `next` is filled for comparison. */
  exact: Float64Array;
  next: Float64Array;
  lastSize: number;
  /** Whether that factor has a loose motion and is grounded. */
  loose: boolean;
  /** Stamp of the filling that `exact` was made from, up to its stiffnesses. */
  stamp: number;
  /** The last problem that was condensed for this workspace; the next of its size takes its arrays. */
  problem: Condensed | null;
  rhs: Float64Array;
  x: Float64Array;
  r: Float64Array;
  index: Int32Array;
  F: Float64Array;
  v: Float64Array;
  a: Float64Array;
  Fp: Float64Array;
  vp: Float64Array;
  ap: Float64Array;
  active: Uint8Array;
  /** Vectors of this capacity for whoever works on the last solve. */
  spare: Float64Array[];
  factorisations: number;
  reused: number;
}

export function contactWorkspace(capacity = 48): ContactWorkspace {
  const f = () => new Float64Array(capacity);
  const f2 = () => new Float64Array(capacity * capacity);
  return {
    capacity,
    matrix: f2(),
    exact: f2(),
    next: f2(),
    lastSize: 0,
    loose: false,
    stamp: Number.NaN,
    problem: null,
    rhs: f(),
    x: f(),
    r: f(),
    index: new Int32Array(capacity),
    F: f(),
    v: f(),
    a: f(),
    Fp: f(),
    vp: f(),
    ap: f(),
    active: new Uint8Array(capacity),
    spare: [],
    factorisations: 0,
    reused: 0,
  };
}

/** Grounding of a pose with a loose motion, N/m; taken out again by the refinement that follows. */
export const GROUND = 0.01;

/** A motion stiffened by less than this, N/m, may be a passing mechanism. */
const LOOSE = 1e3 * GROUND;

/** Least pivot of the motions in the last factor: the stiffness of the softest, as far as it was not yet used up. */
function leastPivot(ws: ContactWorkspace, n: number, N: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let q = n - N; q < n; q++) least = Math.min(least, -ws.matrix[q * n + q]);
  return least;
}

/**
 * Factorises and solves for the current active set, into ws.x only; returns the matrix size, or -1 when singular. A
 * matrix that is bit for bit the last one keeps its factor.
 */
export function solveActive(p: Condensed, ws: ContactWorkspace): number {
  const { m, N, u, d, load } = p;
  const { index, rhs, x } = ws;
  let s = 0;
  let moved = p.stamp === undefined || ws.stamp !== p.stamp;
  for (let j = 0; j < m; j++)
    if (ws.active[j] !== 0) {
      if (index[s] !== j) moved = true;
      index[s++] = j;
    }
  const n = s + N;
  const changed = moved || ws.lastSize !== n ? assemble(p, ws, s) : restiffen(p, ws, s);
  if (changed < n) {
    ws.factorisations++;
    if (!factorise(ws, n, s, changed)) return -1;
  } else ws.reused++;
  for (let i = 0; i < s; i++) rhs[i] = d[index[i]] - u[index[i]];
  for (let q = 0; q < N; q++) rhs[s + q] = -load[q];
  for (let i = 0; i < n; i++) x[i] = rhs[i];
  ldlSolve(ws.matrix, n, x);
  return n;
}

/** Writes the matrix of the active set anew; the first row that changed, or its size when all are as they were. */
function assemble({ C, G, k, m, N, stamp }: Condensed, ws: ContactWorkspace, s: number): number {
  const { index, next } = ws;
  const n = s + N;
  for (let i = 0; i < s; i++) {
    const di = index[i];
    const row = i * n;
    const from = di * m;
    for (let j = 0; j < i; j++) next[row + j] = C[from + index[j]];
    next[row + i] = C[from + di] + 1 / k[di];
  }
  for (let q = 0; q < N; q++) {
    const row = (s + q) * n;
    for (let j = 0; j < s; j++) next[row + j] = G[index[j] * N + q];
    for (let j = 0; j <= q; j++) next[row + s + j] = 0;
  }
  ws.stamp = stamp ?? Number.NaN;
  const changed = ws.lastSize === n ? firstChange(ws.exact, next, n) : 0;
  ws.next = ws.exact;
  ws.exact = next;
  return changed;
}

/** The same for other stiffnesses alone: only the diagonal may have changed. */
function restiffen({ C, k, m, N }: Condensed, ws: ContactWorkspace, s: number): number {
  const { index, exact } = ws;
  const n = s + N;
  let changed = n;
  for (let i = s - 1; i >= 0; i--) {
    const di = index[i];
    const value = C[di * m + di] + 1 / k[di];
    if (exact[i * n + i] === value) continue;
    exact[i * n + i] = value;
    changed = i;
  }
  return changed;
}

/** Factorises ws.exact; with the motions grounded only where one of them is loose. False when a pivot vanishes. */
function factorise(ws: ContactWorkspace, n: number, s: number, changed: number): boolean {
  const { matrix, exact } = ws;
  ws.lastSize = 0;
  // Rows before the first that changed keep their factor; those of the motions do not, which may have been grounded.
  const from = Math.min(changed, s);
  for (let i = from; i < n; i++) for (let at = i * n; at <= i * n + i; at++) matrix[at] = exact[at];
  ws.loose = !ldlFactor(matrix, n, from) || leastPivot(ws, n, n - s) < LOOSE;
  if (ws.loose) {
    for (let i = 0; i < n; i++) for (let at = i * n; at <= i * n + i; at++) matrix[at] = exact[at];
    for (let q = s; q < n; q++) matrix[q * n + q] -= GROUND;
    if (!ldlFactor(matrix, n)) return false;
  }
  ws.lastSize = n;
  return true;
}

/** First row in which the lower triangles of two n x n matrices differ; n when they are the same. */
function firstChange(a: Float64Array, b: Float64Array, n: number): number {
  for (let i = 0; i < n; i++) for (let at = i * n; at <= i * n + i; at++) if (a[at] !== b[at]) return i;
  return n;
}

/**
 * Change of the solution of the last solve (its factor and active set) under a change of the right side, in place:
 * displacements d - u of the active devices in their order in ws.index, then minus the loads of the motions. With
 * `from`, entries before it must be zero and are not solved for.
 */
export function solveAgain(ws: ContactWorkspace, change: Float64Array, from = 0): void {
  ldlSolve(ws.matrix, ws.lastSize, change, from);
}

/** A vector of the workspace to work in, by number; whoever asks for the same number gets the same one. */
export function spareVector(ws: ContactWorkspace, which: number): Float64Array {
  ws.spare[which] ??= new Float64Array(ws.capacity);
  return ws.spare[which];
}

/** A change of the forces by less than this leaves nothing for a second round of refinement. */
const REFINED = 1e-8;

/** Takes the grounding out of the last solution, where there was one, by solving for what it leaves. */
export function refine(p: Condensed, ws: ContactWorkspace, n: number): void {
  if (!ws.loose) return;
  const { x, r, rhs, exact } = ws;
  const s = n - p.N;
  for (let round = 0; round < 2; round++) {
    for (let i = 0; i < n; i++) r[i] = rhs[i];
    for (let i = 0; i < n; i++) {
      const row = i * n;
      const xi = x[i];
      let sum = exact[row + i] * xi;
      for (let j = 0; j < i; j++) {
        const value = exact[row + j];
        sum += value * x[j];
        r[j] -= value * xi;
      }
      r[i] -= sum;
    }
    ldlSolve(ws.matrix, n, r);
    let change = 0;
    let most = 0;
    for (let i = 0; i < n; i++) {
      x[i] += r[i];
      if (i >= s) continue;
      change = Math.max(change, Math.abs(r[i]));
      most = Math.max(most, Math.abs(x[i]));
    }
    if (change <= REFINED * most) break;
  }
}

/** Forces, motions and displacements along all devices from the solution vector. */
export function spread(p: Condensed, ws: ContactWorkspace, n: number): void {
  const { m, N, C, G, u, d, k } = p;
  const { x, index, active, Fp, vp, ap } = ws;
  const s = n - N;
  for (let q = 0; q < N; q++) ap[q] = x[s + q];
  let i = 0;
  for (let j = 0; j < m; j++) {
    if (active[j] !== 0) {
      Fp[j] = x[i++];
      vp[j] = d[j] - Fp[j] / k[j];
      continue;
    }
    let sum = u[j];
    for (let a = 0; a < s; a++) sum += C[j * m + index[a]] * x[a];
    for (let q = 0; q < N; q++) sum += G[j * N + q] * x[s + q];
    Fp[j] = 0;
    vp[j] = sum;
  }
}
