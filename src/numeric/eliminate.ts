// Small systems without symmetry.

/** Gauss elimination with the greatest pivot of each column; a and b are overwritten, the solution stands in b. */
export function eliminate(a: number[], b: number[], n: number): boolean {
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r * n + c]) > Math.abs(a[p * n + c])) p = r;
    const pivot = a[p * n + c];
    if (!(Math.abs(pivot) > 1e-12) || !Number.isFinite(pivot)) return false;
    if (p !== c) {
      for (let q = c; q < n; q++) [a[c * n + q], a[p * n + q]] = [a[p * n + q], a[c * n + q]];
      [b[c], b[p]] = [b[p], b[c]];
    }
    for (let r = c + 1; r < n; r++) {
      const f = a[r * n + c] / pivot;
      for (let q = c; q < n; q++) a[r * n + q] -= f * a[c * n + q];
      b[r] -= f * b[c];
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    for (let q = r + 1; q < n; q++) b[r] -= a[r * n + q] * b[q];
    b[r] /= a[r * n + r];
  }
  return true;
}
