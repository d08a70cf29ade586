// The condensed equilibrium problem: devices over an elastic set and its stiffness-free motions.
//
//   v = u + C F + G a,   F_j = k_j (d_j - v_j) where active,   G^T F = -load
//
// Newton on the active set with an exact line search on the convex piecewise quadratic energy, so that it cannot
// cycle. The solver does not know which device is a bunk, a bearing or a crane.

import { ldlFactor, ldlSolve, vector } from "../numeric/index.ts";

/** One pose, condensed. Arrays may be longer than used; m devices, N motions. */
export interface Condensed {
  m: number;
  N: number;
  /** Tells this filling of the arrays from every other, so that parts of its matrix may be kept; none: nothing is. */
  stamp?: number;
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
const GROUND = 0.01;
/** Iterations beyond one for every contact: stiff contacts may change one at a time. */
const LIMIT = 80;
/** A stiffness that any real support exceeds, N/m: a pose whose motions are all softer hangs on nothing. */
const FIRM = 1e4;
/** Contacts that just touch would open and close by rounding alone: gap, m, and force as a share of the loads. */
const TOUCH = 1e-12;
const FAINT = 1e-12;

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
function solveActive(p: Condensed, ws: ContactWorkspace): number {
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

/** Improves the last solution against the matrix without the grounding. */
function refine(p: Condensed, ws: ContactWorkspace, n: number): void {
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
function spread(p: Condensed, ws: ContactWorkspace, n: number): void {
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

/**
 * Slope of the energy along the segment from the current point (F, a, v) to the trial point, at fraction t:
 * F(t) . dv - (load + G^T F(t)) . da + ground a(t) . da - sum of k_j max(0, d_j - v_j(t)) dv_j.
 * The second term is the work of the loads on motions that the forces do not (yet) balance.
 */
function slopeAt(p: Condensed, ws: ContactWorkspace, t: number): number {
  const { m, N, k, d, G, oneSided, load } = p;
  let slope = 0;
  for (let q = 0; q < N; q++) {
    const da = ws.ap[q] - ws.a[q];
    slope += (GROUND * (ws.a[q] + t * da) - load[q]) * da;
  }
  for (let j = 0; j < m; j++) {
    const dv = ws.vp[j] - ws.v[j];
    const F = ws.F[j] + t * (ws.Fp[j] - ws.F[j]);
    let rigid = 0;
    for (let q = 0; q < N; q++) rigid += G[j * N + q] * (ws.ap[q] - ws.a[q]);
    slope += F * (dv - rigid);
    const stretch = d[j] - (ws.v[j] + t * dv);
    if (oneSided[j] === 0 || (oneSided[j] === 1 && stretch > 0)) slope -= k[j] * stretch * dv;
  }
  return slope;
}

/** Whether a contact presses at displacement v; one that is closed stays so down to a pull of `faint`. */
function presses(p: Condensed, j: number, v: number, closed: boolean, faint: number): boolean {
  return closed ? (p.d[j] - v) * p.k[j] >= -faint : p.d[j] - v > TOUCH;
}

/** Whether exactly the active contacts press in the trial point. */
function agrees(p: Condensed, ws: ContactWorkspace, faint: number): boolean {
  for (let j = 0; j < p.m; j++) {
    const closed = ws.active[j] === 1;
    if (p.oneSided[j] === 1 && presses(p, j, ws.vp[j], closed, faint) !== closed) return false;
  }
  return true;
}

/**
 * Contacts of a settled pose that touch without force are opened where that changes nothing, so that the set does not
 * hang on which way it was come by. Returns the matrix size, or 0 when one of them is needed: it then steadies a motion
 * on which nothing acts, and which one does may hang on the start.
 */
function openIdle(p: Condensed, ws: ContactWorkspace, size: number, faint: number): number {
  const idle: number[] = [];
  for (let j = 0; j < p.m; j++)
    if (p.oneSided[j] === 1 && ws.active[j] === 1 && ws.Fp[j] <= faint) idle.push(j);
  if (idle.length === 0) return size;
  for (const j of idle) ws.active[j] = 0;
  const n = solveActive(p, ws);
  if (n > 0) {
    refine(p, ws, n);
    spread(p, ws, n);
    if (agrees(p, ws, faint)) return n;
  }
  for (const j of idle) ws.active[j] = 1;
  solveActive(p, ws);
  refine(p, ws, size);
  spread(p, ws, size);
  for (const j of idle) ws.Fp[j] = Math.max(0, ws.Fp[j]);
  return 0;
}

/**
 * Solves a condensed pose. `start` (length m, 1 = active) is the neighbour's active set when there is one; it
 * changes how fast the answer is found, never the answer, since the last solve is built from the final set alone.
 * `into` takes the result when given: an earlier one of a problem of this size that is needed no more. A rough result
 * is one that only a further solve is built on: it stays unrefined.
 */
export function solveContact(
  p: Condensed,
  ws: ContactWorkspace,
  start: Uint8Array | null,
  into: ContactResult | null = null,
  rough = false,
): ContactResult {
  const { m, N } = p;
  // With a negative stiffness the energy need not be convex, and where a search ends may hang on where it began.
  for (let j = 0; j < m; j++) if (p.k[j] < 0) start = null;
  for (let j = 0; j < m; j++)
    ws.active[j] = p.oneSided[j] === 1 ? (start ? start[j] : 1) : p.oneSided[j] === 0 ? 1 : 0;
  let faint = 0;
  for (let q = 0; q < N; q++) faint = Math.max(faint, FAINT * Math.abs(p.load[q]));
  let settled = false;
  let n = 0;
  let iterations = 0;
  for (; iterations < LIMIT + 2 * m; iterations++) {
    n = solveActive(p, ws);
    if (n < 0) break;
    spread(p, ws, n);
    if (agrees(p, ws, faint)) {
      settled = rough && !ws.loose;
      if (settled) break;
      // What the grounding leaves (ground times motion over stiffness) could tip a contact that just touches: the
      // refined solution judges.
      refine(p, ws, n);
      spread(p, ws, n);
      settled = agrees(p, ws, faint);
      if (settled) break;
    }
    // The first trial is the first point; later ones are approached only as far as the energy falls.
    let t = 1;
    if (iterations > 0 && slopeAt(p, ws, 1) > 0) {
      let low = 0;
      let high = 1;
      for (let i = 0; i < 60; i++) {
        t = (low + high) / 2;
        if (slopeAt(p, ws, t) > 0) high = t;
        else low = t;
      }
    }
    if (iterations === 0) {
      ws.F.set(ws.Fp);
      ws.v.set(ws.vp);
      ws.a.set(ws.ap);
    } else {
      for (let j = 0; j < m; j++) {
        ws.F[j] += t * (ws.Fp[j] - ws.F[j]);
        ws.v[j] += t * (ws.vp[j] - ws.v[j]);
      }
      for (let q = 0; q < N; q++) ws.a[q] += t * (ws.ap[q] - ws.a[q]);
    }
    for (let j = 0; j < m; j++)
      if (p.oneSided[j] === 1) ws.active[j] = presses(p, j, ws.v[j], ws.active[j] === 1, faint) ? 1 : 0;
  }
  const opened = settled ? openIdle(p, ws, n, faint) : 0;
  if (opened > 0) n = opened;
  else if (start !== null) return solveContact(p, ws, null, into, rough);
  let pivotRatio = 0;
  let stable = false;
  if (n > 0) {
    // Inertia (Sylvester, Haynsworth): set and springs are positive definite exactly when the mixed matrix has as many
    // positive pivots as there are active devices with a positive stiffness.
    let surplus = 0;
    for (let i = 0; i < n; i++) if (ws.matrix[i * n + i] > 0) surplus++;
    for (let i = 0; i < n - N; i++) if (p.k[ws.index[i]] > 0) surplus--;
    stable = surplus === 0;
    let least = Number.POSITIVE_INFINITY;
    let greatest = 0;
    for (let q = n - N; q < n; q++) {
      const pivot = -ws.matrix[q * n + q];
      if (pivot < least) least = pivot;
      if (pivot > greatest) greatest = pivot;
    }
    pivotRatio = N === 0 ? 1 : least / Math.max(greatest, FIRM);
  }
  const result = into ?? blankResult(m, N);
  for (let j = 0; j < m; j++) {
    result.F[j] = ws.Fp[j];
    result.v[j] = ws.vp[j];
    result.active[j] = ws.active[j];
  }
  for (let q = 0; q < N; q++) result.a[q] = ws.ap[q];
  result.n = n;
  result.iterations = iterations + 1;
  result.settled = settled;
  result.pivotRatio = pivotRatio;
  result.stable = stable;
  return result;
}

function blankResult(m: number, N: number): ContactResult {
  return {
    F: vector(m),
    a: vector(N),
    v: vector(m),
    active: new Uint8Array(m),
    n: 0,
    iterations: 0,
    settled: false,
    pivotRatio: 0,
    stable: false,
  };
}
