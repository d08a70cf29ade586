// The condensed equilibrium problem of one pose: which contacts press.
//
// Newton on the active set with an exact line search on the convex piecewise quadratic energy, so that it cannot
// cycle. The solver does not know which device is a bunk, a bearing or a crane.

import { vector } from "../numeric/index.ts";
import {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  GROUND,
  refine,
  solveActive,
  spread,
} from "./activeSet.ts";

export {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  contactWorkspace,
  solveAgain,
  spareVector,
} from "./activeSet.ts";

/** Iterations beyond one for every contact: stiff contacts may change one at a time. */
const LIMIT = 80;
/** A stiffness that any real support exceeds, N/m: a pose whose motions are all softer hangs on nothing. */
const FIRM = 1e4;
/** Contacts that just touch would open and close by rounding alone: gap, m, and force as a share of the loads. */
const TOUCH = 1e-12;
const FAINT = 1e-12;

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
 * `into` takes the result when given: an earlier one of a problem of this size that is needed no more.
 */
export function solveContact(
  p: Condensed,
  ws: ContactWorkspace,
  start: Uint8Array | null,
  into: ContactResult | null = null,
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
      settled = !ws.loose;
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
  else if (start !== null) return solveContact(p, ws, null, into);
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
