// Symmetric banded matrices: LDL^T that holds given rows, and finds by itself the rows that nothing stiffens.

/** A symmetric matrix of half-bandwidth `band`: row i holds columns i-band..i at a[i*(band+1) + (j-i+band)]. */
export interface Banded {
  n: number;
  band: number;
  a: Float64Array;
}

export interface BandedFactor extends Banded {
  /** 1 where the unknown is held at zero: as asked, or because its pivot vanished. */
  held: Uint8Array;
  /** Unknowns whose pivot vanished, ascending: each is one motion without stiffness. */
  singular: number[];
}

export function banded(n: number, band: number): Banded {
  return { n, band, a: new Float64Array(n * (band + 1)) };
}

/** Adds `value` at (i, j) and (j, i), once. */
export function bandedAdd(m: Banded, i: number, j: number, value: number): void {
  const r = Math.max(i, j);
  const c = Math.min(i, j);
  m.a[r * (m.band + 1) + c - r + m.band] += value;
}

/**
 * Factorises a positive semidefinite banded matrix with the unknowns `hold` held at zero.
 * A pivot below `tolerance` times its own diagonal is a motion without stiffness: it is held too and reported.
 */
export function bandedFactor(m: Banded, hold: Iterable<number>, tolerance = 1e-11): BandedFactor {
  const { n, band } = m;
  const w = band + 1;
  const a = m.a.slice();
  const held = new Uint8Array(n);
  for (const i of hold) held[i] = 1;
  const singular: number[] = [];
  for (let i = 0; i < n; i++) {
    const rowI = i * w + band - i;
    const first = Math.max(0, i - band);
    const diagonal = a[rowI + i];
    for (let j = first; j < i; j++) {
      const rowJ = j * w + band - j;
      if (held[j] || held[i]) {
        a[rowI + j] = 0;
        continue;
      }
      let s = a[rowI + j];
      for (let k = Math.max(first, j - band); k < j; k++) s -= a[rowI + k] * a[rowJ + k];
      a[rowI + j] = s; // L_ij D_j until the row is done, against L_jk of the finished rows above
    }
    let d = diagonal;
    for (let j = first; j < i; j++) {
      const u = a[rowI + j];
      if (u === 0) continue;
      const l = u / a[j * w + band];
      d -= u * l;
      a[rowI + j] = l;
    }
    if (!held[i] && d <= tolerance * diagonal) {
      held[i] = 1;
      singular.push(i);
    }
    if (held[i]) {
      for (let j = first; j < i; j++) a[rowI + j] = 0;
      d = 1;
    }
    a[rowI + i] = d;
  }
  return { n, band, a, held, singular };
}

/** Solves in place; entries of held unknowns are ignored on entry and zero on return. */
export function bandedSolve(f: BandedFactor, x: Float64Array): void {
  const { n, band, a, held } = f;
  const w = band + 1;
  for (let i = 0; i < n; i++) {
    if (held[i]) {
      x[i] = 0;
      continue;
    }
    const row = i * w + band - i;
    let s = x[i];
    for (let j = Math.max(0, i - band); j < i; j++) s -= a[row + j] * x[j];
    x[i] = s;
  }
  for (let i = 0; i < n; i++) x[i] /= a[i * w + band];
  for (let i = n - 1; i >= 0; i--) {
    const xi = x[i];
    if (xi === 0) continue;
    const row = i * w + band - i;
    for (let j = Math.max(0, i - band); j < i; j++) x[j] -= a[row + j] * xi;
  }
}

/** y = A x for the unfactored matrix. */
export function bandedMultiply(m: Banded, x: Float64Array): Float64Array {
  const { n, band, a } = m;
  const w = band + 1;
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const row = i * w + band - i;
    for (let j = Math.max(0, i - band); j < i; j++) {
      y[i] += a[row + j] * x[j];
      y[j] += a[row + j] * x[i];
    }
    y[i] += a[row + i] * x[i];
  }
  return y;
}
