// A check of the data alone: how its measure is made with both its readers, and the finding that it gives.

import { finding } from "./finding.ts";
import type { Limit } from "./limitForm.ts";
import { type DataMeasure, marginOf, useOf as partOfLimit, type Reading } from "./measure.ts";
import { Recorder } from "./trace.ts";
import { recorded } from "./traced.ts";
import type { Finding } from "./types.ts";

/** What a measure of the data cannot do without; `set` is '' for the plan as a whole. */
type Part = Pick<DataMeasure, "check" | "set" | "subject" | "unit" | "factor" | "words" | "cure"> &
  Partial<Pick<DataMeasure, "level" | "sense" | "digits">>;

/**
 * A measure of the data with what most of them share. `of` reads it, writes its trace where it is handed a recorder, and
 * tells that which symbols are value and limit.
 */
export function dataMeasure(
  part: Part,
  of: (rec: Recorder | null) => Reading,
  { source, chosenBy }: Pick<Limit, "source" | "chosenBy"> = { source: "plan", chosenBy: "plan" },
): DataMeasure {
  return {
    ...{ level: "caution", sense: "greatest", digits: 1, source, chosenBy },
    read: () => of(null),
    trace: () => recorded(new Recorder({ set: part.set, step: "", progress: 0 }), of),
    ...part,
  };
}

/** One finding for every measure beyond its limit, and for every one that is told without a limit. */
export function dataFindings(measures: readonly DataMeasure[]): Finding[] {
  return measures.flatMap((m) => {
    const r = m.read();
    const bare = Number.isNaN(r.limit);
    if (Number.isNaN(r.value) || (!bare && marginOf(m, r) >= 0)) return [];
    const { level, check, set, subject, cure, unit, factor } = m;
    return [
      finding({
        ...{ level, check, set, subject, cure, unit },
        value: r.value * factor,
        limit: bare ? null : r.limit * factor,
        use: bare ? null : partOfLimit(m, r),
        source: r.source ?? m.source,
        chosenBy: r.chosenBy ?? m.chosenBy,
        words: m.words(r),
      }),
    ];
  });
}
