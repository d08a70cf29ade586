// The least positive factor at which a stiffness and a load-dependent stiffness cancel: K x = -factor G x.

import { ldlFactor, ldlSolve, symmetricEigen } from "./dense.ts";

/** The least positive factor of a pair of matrices, its vector, and how sure it is. */
export interface LeastFactor {
  /** Infinity when no positive factor exists. */
  factor: number;
  /** Largest entry 1 in size; null when there is none. */
  vector: Float64Array | null;
  /** |K x + factor G x| over |K x| + |factor G x|. */
  residual: number;
  /** Negative pivots of K + at G: as many factors lie between `shift` and `at`. */
  below: number;
  /** The factor about which the search was made, at which K + shift G is positive definite. */
  shift: number;
}

const MOST_STEPS = 80;
const CONVERGED = 1e-9;

/**
 * Least positive factor with K x = -factor G x, by Lanczos steps with all vectors kept orthogonal, on
 * (K + s G)^-1 (-G) in its own energy (Parlett, The Symmetric Eigenvalue Problem, chapters 13 and 15, from memory).
 * K may be singular where G stiffens: s is then the greatest of 1, 0.1, ... at which K + s G is positive definite.
 * @param k symmetric n x n, row-major, whole
 * @param g the same; of any sign
 * @param at factor below which factors are counted by the signs of the pivots (Sylvester's law of inertia)
 * @returns null when K + s G is not positive definite for any s tried: it has no stiffness to begin with
 */
export function leastFactor(k: Float64Array, g: Float64Array, n: number, at = 1): LeastFactor | null {
  const count = sum(k, g, at, n);
  const counted = ldlFactor(count, n);
  const below = counted ? negatives(count, n) : Number.NaN;
  for (const shift of below === 0 ? [0, at] : [0, 0.1 * at, 0.01 * at, 0.001 * at]) {
    const s = sum(k, g, shift, n);
    const pivots = s.slice();
    if (!ldlFactor(pivots, n) || !wellPosed(pivots, s, n)) continue;
    return { ...lanczos(pivots, k, g, n, shift), below, shift };
  }
  return null;
}

function sum(k: Float64Array, g: Float64Array, shift: number, n: number): Float64Array {
  const s = new Float64Array(n * n);
  for (let i = 0; i < n * n; i++) s[i] = k[i] + shift * g[i];
  return s;
}

function negatives(pivots: Float64Array, n: number): number {
  let count = 0;
  for (let i = 0; i < n; i++) if (pivots[i * n + i] < 0) count++;
  return count;
}

/** Every pivot positive and not lost in the rounding of its diagonal. */
function wellPosed(pivots: Float64Array, matrix: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) if (!(pivots[i * n + i] > 1e-13 * matrix[i * n + i])) return false;
  return true;
}

function multiply(a: Float64Array, x: Float64Array, n: number, y: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let s = 0;
    const row = i * n;
    for (let j = 0; j < n; j++) s += a[row + j] * x[j];
    y[i] = s;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let s = 0;
  for (let i = 0; i < a.length; i++) s += a[i] * b[i];
  return s;
}

/**
 * Steps q_(j+1) = S^-1 (-G) q_j made orthogonal in S. With z_j = S q_j kept beside q_j, products in S cost a dot.
 */
function lanczos(
  pivots: Float64Array,
  k: Float64Array,
  g: Float64Array,
  n: number,
  shift: number,
): Pick<LeastFactor, "factor" | "vector" | "residual"> {
  const q: Float64Array[] = [];
  const z: Float64Array[] = [];
  const alpha: number[] = [];
  const beta: number[] = [];
  // A start without pattern, the same every time.
  let seed = 12345;
  const start = Float64Array.from({ length: n }, () => {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    return seed / 0x40000000 - 1;
  });
  let right = start.slice();
  let left = start;
  ldlSolve(pivots, n, left);
  let size = Math.sqrt(dot(left, right));
  const steps = Math.min(MOST_STEPS, n);
  let greatest: { value: number; weights: Float64Array } = { value: 0, weights: new Float64Array(0) };
  for (let j = 0; j < steps; j++) {
    for (let i = 0; i < n; i++) {
      left[i] /= size;
      right[i] /= size;
    }
    q.push(left);
    z.push(right);
    const gq = new Float64Array(n);
    multiply(g, left, n, gq);
    for (let i = 0; i < n; i++) gq[i] = -gq[i];
    right = gq;
    left = gq.slice();
    ldlSolve(pivots, n, left);
    alpha.push(dot(left, z[j]));
    for (let pass = 0; pass < 2; pass++)
      for (let m = 0; m <= j; m++) {
        const part = dot(left, z[m]);
        for (let i = 0; i < n; i++) {
          left[i] -= part * q[m][i];
          right[i] -= part * z[m][i];
        }
      }
    size = Math.sqrt(Math.max(0, dot(left, right)));
    beta.push(size);
    const last = j === steps - 1 || !(size > 1e-14 * Math.abs(alpha[0] || 1));
    if (!last && (j < 9 || j % 5 !== 4)) continue;
    const t = new Float64Array((j + 1) * (j + 1));
    for (let i = 0; i <= j; i++) {
      t[i * (j + 1) + i] = alpha[i];
      if (i < j) {
        t[i * (j + 1) + i + 1] = beta[i];
        t[(i + 1) * (j + 1) + i] = beta[i];
      }
    }
    const eigen = symmetricEigen(t, j + 1);
    const weights = eigen.vectors.subarray(j * (j + 1), (j + 1) * (j + 1));
    greatest = { value: eigen.values[j], weights };
    if (last || size * Math.abs(weights[j]) < CONVERGED * Math.abs(greatest.value)) break;
  }
  if (!(greatest.value > 0)) return { factor: Number.POSITIVE_INFINITY, vector: null, residual: 0 };
  const factor = shift + 1 / greatest.value;
  const vector = new Float64Array(n);
  greatest.weights.forEach((w, m) => {
    for (let i = 0; i < n; i++) vector[i] += w * q[m][i];
  });
  const kx = new Float64Array(n);
  const gx = new Float64Array(n);
  multiply(k, vector, n, kx);
  multiply(g, vector, n, gx);
  let left2 = 0;
  let size2 = 0;
  let most = 0;
  for (let i = 0; i < n; i++) {
    left2 += (kx[i] + factor * gx[i]) ** 2;
    size2 += (Math.abs(kx[i]) + Math.abs(factor * gx[i])) ** 2;
    if (Math.abs(vector[i]) > Math.abs(most)) most = vector[i];
  }
  for (let i = 0; i < n; i++) vector[i] /= most;
  return { factor, vector, residual: Math.sqrt(left2 / size2) };
}
