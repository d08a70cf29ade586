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

/**
 * The shims in whole steps (m) of the least sum, by branch and bound on `leastShims`; null when none were found in
 * 3000 tries: the steps are then too coarse for the tolerance.
 */
export function leastShimsInSteps(asked: ShimsAsked, step: number): number[] | null {
  const rows = rowsOf(asked);
  const costs = asked.meant.map(() => 1);
  const unit = costs.map((_, i) => costs.map((_, j) => (i === j ? 1 : 0)));
  let best: { sum: number; steps: number[] } | null = null;
  const open: AtMost[][] = [[]];
  for (let tries = 0; tries < MOST_TRIES && open.length > 0; tries++) {
    const bounds = open.pop() as AtMost[];
    const found = leastCost(costs, [...rows, ...bounds]);
    if (found === null) continue;
    const steps = found.map((mm) => mm / (step * MM));
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
    const low = Math.floor(steps[split]) * step * MM;
    open.push(
      [...bounds, { coefficients: unit[split].map((u) => -u), limit: -(low + step * MM) }],
      [...bounds, { coefficients: unit[split], limit: low }],
    );
  }
  return best === null ? null : best.steps.map((s) => s * step);
}
