// What the corners bring, gathered pose by pose: low and high of every support, worst use of every measure.

import type { Pose, SetContext, Support } from "../../sequence/index.ts";
import { type Measure, marginOf, useOf as partOfLimit, type Reading } from "../measure.ts";

/** Index that stands for the best run, where no corner goes beyond it. */
export const bestRun = 0xffff;

/** Low and high of what every support carries, over all corners and the best run: rows are poses, columns supports. */
export interface SupportBand {
  /** N: the share of the set's weight for a band, the force for all others; NaN where it is not part of the pose. */
  low: Float64Array;
  high: Float64Array;
  /** Corner that gave it: index into the corners, `bestRun` for the best run. */
  lowCorner: Uint16Array;
  highCorner: Uint16Array;
}

/** One measure over all corners. */
export interface MeasureBand {
  measure: Measure;
  /** Least and highest use at every stored pose; NaN where it does not apply. */
  low: Float64Array;
  high: Float64Array;
  /** What was read at the highest use, its corner, and whether it was beyond its limit. */
  readings: (Reading | null)[];
  corner: Uint16Array;
  /** Beyond the limit in the best run. */
  bestBeyond: Uint8Array;
}

/** What a support carries in a pose, N: its share for a band, else its force; NaN where it is not part of it. */
export function carried(support: Support, pose: Pose, j: number): number {
  return support.band && !Number.isNaN(pose.forces[j]) ? pose.shares[j] : pose.forces[j];
}

export interface Gathering {
  supports: SupportBand;
  measures: Map<string, MeasureBand>;
  /** Begins a corner (or the best run) with its measures. */
  begin: (measures: Measure[]) => void;
  /** Takes in a pose by its index, put down to a corner. */
  take: (index: number, pose: Pose, corner: number) => void;
}

/** Gathers over `count` stored poses. */
export function gathering(ctx: SetContext, count: number): Gathering {
  const m = ctx.supports.length;
  const blank = () => new Float64Array(count * m).fill(Number.NaN);
  const whose = () => new Uint16Array(count * m).fill(bestRun);
  const supports: SupportBand = {
    low: blank(),
    high: blank(),
    lowCorner: whose(),
    highCorner: whose(),
  };
  const measures = new Map<string, MeasureBand>();
  let now: [Measure, MeasureBand][] = [];
  return {
    supports,
    measures,
    begin: (list) => {
      now = list.map((measure) => {
        const key = `${measure.check}\n${measure.subject}`;
        let band = measures.get(key);
        if (!band) {
          band = emptyBand(measure, count);
          measures.set(key, band);
        }
        return [measure, band];
      });
    },
    take: (index, pose, corner) => {
      for (let j = 0; j < m; j++) {
        const value = carried(ctx.supports[j], pose, j);
        if (Number.isNaN(value)) continue;
        const at = index * m + j;
        if (!(value >= supports.low[at])) {
          supports.low[at] = value;
          supports.lowCorner[at] = corner;
        }
        if (!(value <= supports.high[at])) {
          supports.high[at] = value;
          supports.highCorner[at] = corner;
        }
      }
      for (const [measure, band] of now) readInto(measure, band, index, pose, corner);
    },
  };
}

function emptyBand(measure: Measure, count: number): MeasureBand {
  return {
    measure,
    low: new Float64Array(count).fill(Number.NaN),
    high: new Float64Array(count).fill(Number.NaN),
    readings: new Array(count).fill(null),
    corner: new Uint16Array(count).fill(bestRun),
    bestBeyond: new Uint8Array(count),
  };
}

function readInto(m: Measure, band: MeasureBand, index: number, pose: Pose, corner: number): void {
  const r = m.read(pose);
  const use = partOfLimit(m, r);
  if (Number.isNaN(use)) return;
  if (corner === bestRun && marginOf(m, r) < 0) band.bestBeyond[index] = 1;
  if (!(use >= band.low[index])) band.low[index] = use;
  if (use <= band.high[index]) return;
  band.high[index] = use;
  band.readings[index] = r;
  band.corner[index] = corner;
}
