// The least shims with which bearings share as they were meant to.

import { type AtMost, leastCost } from "../../numeric/index.ts";

/** What is asked: arrays by bearing. */
export interface ShimsAsked {
  /** Change of forces by seat levels, N/m, of `seatStiffness`. */
  stiffness: Float64Array;
  /** Forces meant, N, each > 0. */
  meant: readonly number[];
  /** How much higher every seat is than where it gives the forces meant, m. */
  off: readonly number[];
  /** Part of its own force by which a bearing may be off. */
  tolerance: number;
}

/** Subproblems looked at for whole steps. */
const MOST_TRIES = 3000;
const MM = 1000;

/** Rows of the programme on shims in mm: every bearing within its tolerance, from above and from below. */
function rowsOf({ stiffness, meant, off, tolerance }: ShimsAsked): AtMost[] {
  const n = meant.length;
  return meant.flatMap((force, i) => {
    const part = Array.from({ length: n }, (_, j) => stiffness[i * n + j] / force);
    const now = part.reduce((sum, k, j) => sum + k * off[j], 0);
    const coefficients = part.map((k) => k / MM);
    return [
      { coefficients, limit: tolerance - now },
      { coefficients: coefficients.map((k) => -k), limit: tolerance + now },
    ];
  });
}

/** The shims (m, each >= 0) of the least sum; null when none of them are enough. */
export function leastShims(asked: ShimsAsked): number[] | null {
  const found = leastCost(
    asked.meant.map(() => 1),
    rowsOf(asked),
  );
  return found === null ? null : found.map((mm) => mm / MM);
}

/** Least and most steps of every shim in a part of the search. */
interface Box {
  least: number[];
  most: number[];
}

/** Shims may be this many steps higher than the highest of any thickness. */
const ABOVE = 4;

/**
 * The shims in whole steps (m) of the least sum, none of them over 4 steps above the highest that `leastShims` gives, by
 * branch and bound; null when none were found in 3000 tries: the steps are then too coarse for the tolerance.
 */
export function leastShimsInSteps(asked: ShimsAsked, step: number): number[] | null {
  const n = asked.meant.length;
  const perStep = rowsOf(asked).map(({ coefficients, limit }) => ({
    coefficients: coefficients.map((k) => k * step * MM),
    limit,
  }));
  const first = within(perStep, {
    least: new Array(n).fill(0),
    most: new Array(n).fill(Number.POSITIVE_INFINITY),
  });
  if (first === null) return null;
  const top = Math.ceil(Math.max(...first)) + ABOVE;
  let best: { sum: number; steps: number[] } | null = null;
  const open: Box[] = [{ least: new Array(n).fill(0), most: new Array(n).fill(top) }];
  for (let tries = 0; tries < MOST_TRIES && open.length > 0; tries++) {
    const box = open.pop() as Box;
    const steps = within(perStep, box);
    if (steps === null) continue;
    const sum = steps.reduce((a, b) => a + b, 0);
    // A whole number of steps that is no better than the best needs no look.
    if (best !== null && Math.ceil(sum - 1e-6) >= best.sum) continue;
    let split = -1;
    let most = 1e-6;
    steps.forEach((s, i) => {
      const part = Math.abs(s - Math.round(s));
      if (part > most) [split, most] = [i, part];
    });
    if (split < 0) {
      best = { sum: Math.round(sum), steps: steps.map(Math.round) };
      continue;
    }
    const low = Math.floor(steps[split]);
    const below = { least: box.least, most: box.most.with(split, low) };
    const above = { least: box.least.with(split, low + 1), most: box.most };
    // The nearer one is looked at first.
    open.push(...(steps[split] - low > 0.5 ? [below, above] : [above, below]));
  }
  return best === null ? null : best.steps.map((s) => s * step);
}

/** The least sum in a box, in steps that need not be whole. */
function within(rows: readonly AtMost[], { least, most }: Box): number[] | null {
  const limits = rows.map(({ coefficients, limit }) => ({
    coefficients,
    limit: limit - coefficients.reduce((sum, k, j) => sum + k * least[j], 0),
  }));
  const caps = most.flatMap((m, i) =>
    Number.isFinite(m) ? [{ coefficients: most.map((_, j) => (i === j ? 1 : 0)), limit: m - least[i] }] : [],
  );
  const found = leastCost(
    most.map(() => 1),
    [...limits, ...caps],
  );
  return found === null ? null : found.map((x, i) => x + least[i]);
}
