// Small dense symmetric matrices in flat row-major arrays: LDL^T without pivoting, and Jacobi eigenvalues.

/**
 * Factorises the symmetric n x n matrix `a` (row-major, lower triangle used) in place into L D L^T.
 * No pivoting: meant for quasi-definite matrices (positive block first, negative block last), for which
 * such a factorisation always exists. On return the strict lower triangle holds L and the diagonal holds D.
 * @param from rows before it hold the factor already: those of a matrix that agrees with this one in them
 * @returns false when a pivot is zero or not a number; the factor is then unusable.
 */
export function ldlFactor(a: Float64Array, n: number, from = 0): boolean {
  for (let i = from; i < n; i++) {
    const rowI = i * n;
    // Row i first becomes L_ij D_j: both factors of the inner products then lie in rows.
    for (let j = 0; j < i; j++) {
      const rowJ = j * n;
      let s = a[rowI + j];
      for (let k = 0; k < j; k++) s -= a[rowI + k] * a[rowJ + k];
      a[rowI + j] = s;
    }
    let d = a[rowI + i];
    for (let j = 0; j < i; j++) {
      const u = a[rowI + j];
      const l = u / a[j * n + j];
      d -= u * l;
      a[rowI + j] = l;
    }
    if (!(Math.abs(d) > 0) || !Number.isFinite(d)) return false;
    a[rowI + i] = d;
  }
  return true;
}

/**
 * Solves L D L^T x = b in place in `x`, with the factor of {@link ldlFactor}. With `from`, the entries of b before it
 * are taken as zero and those of x before it are neither read nor written.
 */
export function ldlSolve(a: Float64Array, n: number, x: Float64Array, from = 0): void {
  for (let i = from + 1; i < n; i++) {
    let s = x[i];
    const row = i * n;
    for (let k = from; k < i; k++) s -= a[row + k] * x[k];
    x[i] = s;
  }
  for (let i = from; i < n; i++) x[i] /= a[i * n + i];
  for (let i = n - 1; i > from; i--) {
    const xi = x[i];
    const row = i * n;
    for (let k = from; k < i; k++) x[k] -= a[row + k] * xi;
  }
}

/** Eigenvalues (ascending) and eigenvectors (rows of `vectors`) of a symmetric n x n matrix. */
export interface Eigen {
  values: Float64Array;
  vectors: Float64Array;
}

/** Cyclic Jacobi rotations (Golub and Van Loan, Matrix Computations, section 8.5); for n up to about 30. */
export function symmetricEigen(matrix: Float64Array, n: number): Eigen {
  const a = matrix.slice(0, n * n);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let all = 0;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const x = a[i * n + j] * a[i * n + j];
        all += x;
        if (i !== j) off += x;
      }
    if (off <= 1e-30 * all) break;
    for (let p = 0; p < n - 1; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = a[p * n + q];
        if (apq === 0) continue;
        const theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
        const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const kp = a[k * n + p];
          const kq = a[k * n + q];
          a[k * n + p] = c * kp - s * kq;
          a[k * n + q] = s * kp + c * kq;
        }
        for (let k = 0; k < n; k++) {
          const pk = a[p * n + k];
          const qk = a[q * n + k];
          a[p * n + k] = c * pk - s * qk;
          a[q * n + k] = s * pk + c * qk;
        }
        for (let k = 0; k < n; k++) {
          const pk = v[p * n + k];
          const qk = v[q * n + k];
          v[p * n + k] = c * pk - s * qk;
          v[q * n + k] = s * pk + c * qk;
        }
      }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => a[i * n + i] - a[j * n + j]);
  const values = new Float64Array(n);
  const vectors = new Float64Array(n * n);
  order.forEach((from, to) => {
    values[to] = a[from * n + from];
    vectors.set(v.subarray(from * n, from * n + n), to * n);
  });
  return { values, vectors };
}
