// A small linear programme with costs of no less than zero: the dual simplex method on a dense tableau.

/** Entries this far below zero count as zero: the rows are scaled by who asks so that their numbers are about 1. */
const ROUND = 1e-9;
const MOST_PIVOTS = 2000;

/** One inequality: sum of coefficients times unknowns <= limit. */
export interface AtMost {
  coefficients: readonly number[];
  limit: number;
}

/**
 * Unknowns >= 0 of the least cost (each >= 0) that meet all inequalities; null when none do. The slack variables are a
 * start that no cost can better, so that the dual simplex method needs no first phase (Lemke 1954); ties go to the
 * lower index (Bland 1977), so that it ends.
 */
export function leastCost(costs: readonly number[], rows: readonly AtMost[]): number[] | null {
  const n = costs.length;
  const width = n + 1;
  const m = rows.length;
  const table = new Float64Array((m + 1) * width);
  rows.forEach((row, i) => {
    for (let j = 0; j < n; j++) table[i * width + j] = row.coefficients[j];
    table[i * width + n] = row.limit;
  });
  for (let j = 0; j < n; j++) table[m * width + j] = costs[j];
  // What stands in every row and column: unknowns 0..n-1, slacks behind them.
  const inRow = Array.from({ length: m }, (_, i) => n + i);
  const inColumn = Array.from({ length: n }, (_, j) => j);
  for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
    let r = -1;
    for (let i = 0; i < m; i++) if (table[i * width + n] < -ROUND && (r < 0 || inRow[i] < inRow[r])) r = i;
    if (r < 0) {
      const x = new Array<number>(n).fill(0);
      for (let i = 0; i < m; i++) if (inRow[i] < n) x[inRow[i]] = Math.max(0, table[i * width + n]);
      return x;
    }
    let c = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let j = 0; j < n; j++) {
      const a = table[r * width + j];
      if (!(a < -ROUND)) continue;
      const ratio = table[m * width + j] / -a;
      if (ratio < least - ROUND || (ratio <= least + ROUND && inColumn[j] < inColumn[c])) {
        least = Math.min(ratio, least);
        c = j;
      }
    }
    if (c < 0) return null;
    exchange(table, m, width, r, c);
    [inRow[r], inColumn[c]] = [inColumn[c], inRow[r]];
  }
  return null;
}

/** Exchanges the variable of a row with that of a column. */
function exchange(table: Float64Array, m: number, width: number, r: number, c: number): void {
  const pivot = table[r * width + c];
  for (let i = 0; i <= m; i++) {
    if (i === r) continue;
    const f = table[i * width + c] / pivot;
    for (let j = 0; j < width; j++) if (j !== c) table[i * width + j] -= f * table[r * width + j];
    table[i * width + c] = -f;
  }
  for (let j = 0; j < width; j++) if (j !== c) table[r * width + j] /= pivot;
  table[r * width + c] = 1 / pivot;
}
