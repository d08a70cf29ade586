// What the spread of a set is: bands, worst values with their corners, findings.

import type { Finding } from "../types.ts";
import type { Corner } from "./corner.ts";

/** The worst of one measure or support: its value, and the corner and stored pose that gave it. */
export interface WorstAt {
  value: number;
  /** Index into the corners; `bestRun` for the best run. */
  corner: number;
  /** Index of the stored pose. */
  pose: number;
}

export interface SpreadWorst extends WorstAt {
  check: string;
  subject: string;
  kind: string;
  /** Use of the limit, 1 at the limit; value and limit in `unit`. */
  use: number;
  limit: number;
  unit: string;
  where: string;
}

/** Highest and least use at every stored pose of a check that is drawn as a strip. */
export interface SpreadStrip {
  check: string;
  subject: string;
  low: Float64Array;
  high: Float64Array;
}

/** Low and high of one set over its corners. Rows of the arrays are the stored poses of the best run, one to one. */
export interface SpreadResult {
  setId: string;
  /** Those asked for, and behind them some with less wind, where all of it left no equilibrium. */
  corners: Corner[];
  /** How many of those asked for were run: all, unless it was broken off. */
  done: number;
  /** Quantities whose spread the plan leaves blank, so that a starter value stood in. */
  assumed: string[];
  /**
   * Stored pose x support, N: share of the set's weight for a band, force for all others; NaN where the support is not
   * part of the pose. And the corner that gave it: index into `corners`, `bestRun` where none goes beyond the best run.
   */
  low: Float64Array;
  high: Float64Array;
  lowCorner: Uint16Array;
  highCorner: Uint16Array;
  /** Per support: the least and the greatest over all poses; null for one that is never there. */
  supports: { name: string; low: WorstAt | null; high: WorstAt | null }[];
  /** Per check and subject: the worst. */
  worst: SpreadWorst[];
  strips: SpreadStrip[];
  /** Stops and cautions that the best run does not have. */
  findings: Finding[];
}
