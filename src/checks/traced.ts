// The two readers of a check that writes its trace, the trace of its use, and that of a force against a rated load.

import type { Pose, SetContext } from "../sequence/index.ts";
import {
  type Measure,
  useOf as partOfLimit,
  type Quantity,
  type Reading,
  type TracedReading,
} from "./measure.ts";
import { field, KN, Recorder, solved, type Trace, trace } from "./trace.ts";

/**
 * Both readers of a check from one function, which writes its trace where it is handed a recorder and tells it which
 * symbols are value and limit. The trace is asked for a pose of the set's own steps.
 */
export function traced(
  ctx: SetContext,
  of: (pose: Pose, rec: Recorder | null) => Reading,
): Required<Pick<Measure, "read" | "trace">> {
  return {
    read: (pose) => of(pose, null),
    trace: (pose) => {
      const { step, progress } = pose;
      const rec = new Recorder({ set: ctx.set.id, step: ctx.set.steps[step]?.id ?? "", progress });
      return recorded(rec, (own) => of(pose, own));
    },
  };
}

/** What a check reads while it writes into a recorder; null where it does not apply. */
export function recorded(rec: Recorder, of: (rec: Recorder) => Reading): TracedReading | null {
  const reading = of(rec);
  const ends = rec.reading();
  return ends === null || Number.isNaN(reading.value) ? null : { reading, ...ends };
}

/** The use of a limit as the root of a trace: the same number as `useOf`; the value itself where there is no limit. */
export function traceOfUse(m: Quantity, { reading, value, limit }: TracedReading): Trace {
  if (limit === null) return value;
  const [v, l] = [value.symbol, limit.symbol];
  const formula =
    m.sense === "greatest"
      ? `${l} > 0 ? ${v} / ${l} : (${v} > ${l} ? 2 : 0)`
      : `${v} > 0 ? ${l} / ${v} : 1 / 0`;
  const rec = new Recorder({ set: "", step: "", progress: 0 });
  rec.put(value);
  rec.put(limit);
  trace(rec, "use", partOfLimit(m, reading), formula, "1", `${m.check} of ${m.subject}: use of its limit`);
  return rec.of("use");
}

/** A solved force against a rated load of the plan (kN). */
export function recordRated(
  rec: Recorder | null,
  force: number,
  what: string,
  path: string,
  rated_kN: number,
  words: string,
): void {
  if (rec === null) return;
  solved(rec, "F", force, "N", what);
  field(rec, "F_a", rated_kN * 1000, words, path, rated_kN, KN);
  rec.ends("F", "F_a");
}
