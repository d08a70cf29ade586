// The two readers of a check that writes its trace, and the trace of its use.

import type { Pose, SetContext } from "../sequence/index.ts";
import { type Measure, useOf as partOfLimit, type Reading, type TracedReading } from "./measure.ts";
import { Recorder, type Trace, trace } from "./trace.ts";

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
      const reading = of(pose, rec);
      const ends = rec.reading();
      return ends === null ? null : { reading, ...ends };
    },
  };
}

/** The use of a limit as the root of a trace: the same number as `useOf`. */
export function traceOfUse(m: Measure, { reading, value, limit }: TracedReading): Trace {
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
