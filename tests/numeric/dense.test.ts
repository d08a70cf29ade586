// Small dense matrices against an independent library (ml-matrix) and against their own definition; common practice.

import { EigenvalueDecomposition, Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { ldlFactor, ldlSolve, symmetricEigen } from "../../src/numeric/index.ts";

/** Numbers from -1 to 1, the same on every run (a linear congruential generator). */
function random(seed: number): () => number {
  let x = seed;
  return () => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return x / 2 ** 31 - 1;
  };
}

/** [[A, B], [B^T, -D]] with A and D positive definite: what a condensed pose leads to. */
function quasiDefinite(s: number, n: number, seed: number): Float64Array {
  const next = random(seed);
  const m = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const value = i === j ? 0 : next() * (i < s === j < s ? 0.3 : 1);
      m[i * n + j] = value;
      m[j * n + i] = value;
    }
  for (let i = 0; i < n; i++) m[i * n + i] = (i < s ? 1 : -1) * (n + Math.abs(next()));
  return m;
}

describe("LDL^T of quasi-definite matrices", () => {
  test("solves like an independent library, within 1e-12", () => {
    for (let n = 1; n <= 30; n++) {
      const a = quasiDefinite(Math.ceil(n / 2), n, n);
      const next = random(100 + n);
      const b = Float64Array.from({ length: n }, next);
      const rows = Array.from({ length: n }, (_, i) => [...a.subarray(i * n, i * n + n)]);
      const expected = solve(new Matrix(rows), Matrix.columnVector(b)).to1DArray();
      const x = b.slice();
      const factor = a.slice();
      expect(ldlFactor(factor, n)).toBe(true);
      ldlSolve(factor, n, x);
      for (let i = 0; i < n; i++) expect(Math.abs(x[i] - expected[i])).toBeLessThan(1e-12);
    }
  });
  test("says so when a pivot vanishes or is no number", () => {
    expect(ldlFactor(Float64Array.of(0), 1)).toBe(false);
    expect(ldlFactor(Float64Array.of(1, 1, 1, 1), 2)).toBe(false);
    expect(ldlFactor(Float64Array.of(Number.NaN), 1)).toBe(false);
    expect(ldlFactor(Float64Array.of(1, 0, Number.POSITIVE_INFINITY, 1), 2)).toBe(false);
  });
});

describe("eigenvalues of symmetric matrices", () => {
  test("values like an independent library's, vectors by their definition, within 1e-12 of the greatest", () => {
    for (let n = 1; n <= 20; n++) {
      const a = quasiDefinite(n, n, 7 * n);
      const rows = Array.from({ length: n }, (_, i) => [...a.subarray(i * n, i * n + n)]);
      const expected = new EigenvalueDecomposition(new Matrix(rows), {
        assumeSymmetric: true,
      }).realEigenvalues.sort((p, q) => p - q);
      const { values, vectors } = symmetricEigen(a, n);
      const top = Math.max(...values.map(Math.abs));
      for (let k = 0; k < n; k++) {
        expect(Math.abs(values[k] - expected[k])).toBeLessThan(1e-12 * top);
        const v = vectors.subarray(k * n, k * n + n);
        for (let i = 0; i < n; i++) {
          let sum = 0;
          for (let j = 0; j < n; j++) sum += a[i * n + j] * v[j];
          expect(Math.abs(sum - values[k] * v[i])).toBeLessThan(1e-12 * top);
        }
        expect(Math.abs(Math.hypot(...v) - 1)).toBeLessThan(1e-12);
      }
    }
  });
  test("finds the zero of a singular matrix and leaves its argument as it was", () => {
    const a = Float64Array.of(1, -1, 0, -1, 2, -1, 0, -1, 1);
    const before = a.slice();
    const { values } = symmetricEigen(a, 3);
    expect(Math.abs(values[0])).toBeLessThan(1e-15);
    expect(values[1]).toBeCloseTo(1, 14);
    expect(values[2]).toBeCloseTo(3, 14);
    expect(a).toEqual(before);
  });
});
