// A check of a pose read in a wind from either side: the worse of both, and its trace.

import type { Pose } from "../../sequence/index.ts";
import { type Measure, useOf as partOfLimit, type Reading } from "../measure.ts";
import type { Recorder, Trace } from "../trace.ts";
import { type Toward, WAYS, wayWords } from "./air.ts";
import type { Blower } from "./blow.ts";

/** A check at a pose in the wind. */
export interface InWind {
  gust: Pose;
  reading: Reading;
  toward: Toward;
}

/** The worse of both ways at a pose; null where the set does not stand in either, or the check does not apply. @param pressure Pa */
export function worseOf(blower: Blower, m: Measure, pose: Pose, pressure: number): InWind | null {
  let worse: InWind | null = null;
  for (const toward of WAYS) {
    const gust = blower.at(pose, pressure, toward);
    if (gust.solution.status !== "solved") continue;
    const reading = m.read(gust);
    if (Number.isNaN(reading.value)) continue;
    if (worse === null || partOfLimit(m, reading) > partOfLimit(m, worse.reading))
      worse = { gust, reading, toward };
  }
  return worse;
}

/** Writes down what the check wrote of the pose in the wind; nothing where it writes no trace. @param wind what blows, in words */
export function recordInWind(rec: Recorder, m: Measure, { gust, toward }: InWind, wind: string): void {
  const own = m.trace?.(gust) ?? null;
  if (own === null) return;
  const say = (t: Trace): Trace => {
    if (t.leaf !== undefined && "solved" in t.leaf) {
      const words = `${t.words}, in ${wind} blowing ${wayWords(toward)}`;
      return { ...t, words, leaf: { solved: words, at: t.leaf.at } };
    }
    return t.from.length === 0 ? t : { ...t, from: t.from.map(say) };
  };
  rec.put(say(own.value));
  if (own.limit !== null) rec.put(say(own.limit));
  rec.ends(own.value.symbol, own.limit?.symbol ?? null);
}
