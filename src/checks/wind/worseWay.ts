// A check of a pose read in a wind from either side: the worse of both, as a check of its own, and its trace.

import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, type MeasureMaker, NOT_HERE, useOf as partOfLimit, type Reading } from "../measure.ts";
import type { Recorder, Trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type Toward, WAYS, wayWords } from "./air.ts";
import type { Blower } from "./blow.ts";

/** A check at a pose in the wind. */
export interface InWind {
  gust: Pose;
  reading: Reading;
  toward: Toward;
}

/** A wind in which the checks of a pose are read anew. */
export interface Wind {
  /** The wind in words, for traces. */
  words: string;
  /** What a check is there: its name and its cure. */
  form: (m: Measure) => Pick<Measure, "check" | "cure">;
  /** Pressure at the set at a pose, Pa; null where it does not blow. */
  pressure: (pose: Pose) => number | null;
  /** Solves the pose of one reading. */
  blower: () => Blower;
  /** What a reading says beside itself. */
  say: (worse: InWind, m: Measure, pose: Pose) => Reading;
}

/** A check as it is named and mended in a wind: read where somebody asks, and drawn nowhere. */
export const windy = (m: Measure, { form }: Pick<Wind, "form">): Measure => ({
  ...m,
  ...form(m),
  strip: false,
  watched: false,
});

/** The checks of a pose read in a wind, the worse of both ways, with their traces. */
export function measuresIn(ctx: SetContext, makers: readonly MeasureMaker[], wind: Wind): Measure[] {
  return makers
    .flatMap((make) => make(ctx))
    .map((m) => ({
      ...windy(m, wind),
      ...traced(ctx, (pose, rec): Reading => {
        const pressure = wind.pressure(pose);
        const worse = pressure === null ? null : worseOf(wind.blower(), m, pose, pressure);
        if (worse === null) return NOT_HERE;
        if (rec !== null) recordInWind(rec, m, worse, wind.words);
        return wind.say(worse, m, pose);
      }),
    }));
}

/** The worse of both ways at a pose; null where the set does not stand in either, or the check does not apply. @param pressure Pa */
function worseOf(blower: Blower, m: Measure, pose: Pose, pressure: number): InWind | null {
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
function recordInWind(rec: Recorder, m: Measure, { gust, toward }: InWind, wind: string): void {
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
