// A chosen support alone: its share of the set along the operation, with low and high over what is uncertain.
import type { Axis, SetResult, SpreadResult, WorstAt } from "../app/index.ts";
import { toX } from "../app/index.ts";

/** The share of one support at every stored pose, N; NaN where it is no part of the pose. */
export interface OwnLine {
  x: Float64Array;
  best: Float64Array;
  /** Over the corners; null until they are worked out. */
  low: Float64Array | null;
  high: Float64Array | null;
  /** Where low is lowest and high is highest. */
  lowest: WorstAt | null;
  highest: WorstAt | null;
  /** Limits of the scale, N: from no load, or the greatest pull, to the greatest load. */
  least: number;
  most: number;
}

/** The line of a band by its name; null for a name that is none. */
export function ownLineOf(
  set: SetResult,
  axis: Axis,
  spread: SpreadResult | null,
  name: string,
): OwnLine | null {
  const j = set.supports.findIndex((support) => support.band && support.name === name);
  if (j < 0) return null;
  const m = set.supports.length;
  const column = (of: Float64Array) => Float64Array.from({ length: set.count }, (_, i) => of[i * m + j]);
  const forces = column(set.forces);
  const best = column(set.shares).map((share, i) => (Number.isNaN(forces[i]) ? Number.NaN : share));
  const low = spread === null ? null : column(spread.low);
  const high = spread === null ? null : column(spread.high);
  const seen = [best, low ?? best, high ?? best].flatMap((line) => [...line].filter(Number.isFinite));
  return {
    x: Float64Array.from(set.progress, (progress, i) => toX(axis, { step: set.step[i], progress })),
    best,
    low,
    high,
    lowest: spread?.supports[j]?.low ?? null,
    highest: spread?.supports[j]?.high ?? null,
    least: Math.min(0, ...seen),
    most: Math.max(1, ...seen),
  };
}
