// The trace of a check, on demand: the same code that read it writes down how. At a pose of a solved plan that pose is
// solved again from the start and ends of its step; what the data alone give needs none.

import type { Plan } from "../plan/index.ts";
import { poseAt, prepareContext, type SetContext, type SetRun } from "../sequence/index.ts";
import { checkList } from "./list.ts";
import type { DataMeasure, Measure, Quantity, Reading, TracedReading } from "./measure.ts";
import { inSpread } from "./spread/findings.ts";
import { atFinding } from "./spread/traced.ts";
import type { Trace } from "./trace.ts";
import { traceOfUse } from "./traced.ts";
import type { Finding, Result } from "./types.ts";

/** Which number of the data alone is asked for: a check of a subject of a set; '' for the plan as a whole. */
export interface AskedData {
  check: string;
  subject: string;
  set: string;
  step?: undefined;
  progress?: undefined;
}

/** Which number is asked for: a check of a subject at a pose; step counts from 0. */
export interface Asked {
  check: string;
  subject: string;
  set: string;
  step: number;
  progress: number;
}

/** A trace with its check; or why there is none. */
export type Traced =
  | {
      found: true;
      asked: Asked | AskedData;
      measure: Quantity;
      reading: Reading;
      /** Its root is the use of the limit, worked out of value and limit; the value where there is no limit. */
      trace: Trace;
      value: Trace;
      limit: Trace | null;
      /** The corner of the spread at which it was read; left out for the best run. */
      corner?: string;
    }
  | { found: false; asked: Asked | AskedData; why: string };

/** What a finding is about: at its worst pose, or of the data alone where it has none. */
export function askedOf({ check, subject, set, worst }: Finding): Asked | AskedData {
  const asked = { check, subject, set };
  return worst === null ? asked : { ...asked, step: worst.step, progress: worst.progress };
}

/** The measures of the data of a plan, and of a set where its context is handed in. */
export function dataMeasuresOf(plan: Plan, ctx: SetContext | null): DataMeasure[] {
  return [
    ...checkList.onPlan.flatMap((make) => make(plan)),
    ...(ctx === null ? [] : checkList.onSet.flatMap((make) => make(ctx))),
  ];
}

/**
 * The trace of a finding, of any check at any pose, or of any check of the data alone. `from` is the solved plan or the
 * run of the set; a prepared context may be handed in. Throws an Error when the plan has no such set.
 */
export function traceOf(
  plan: Plan,
  from: Pick<Result, "sets"> | SetRun,
  what: Finding | Asked | AskedData,
  ctx?: SetContext,
): Traced {
  const asked = "worst" in what ? askedOf(what) : what;
  const stated = "worst" in what ? (what.value ?? Number.NaN) : Number.NaN;
  const { check, subject, set } = asked;
  const none = (why: string): Traced => ({ found: false, asked, why });
  const told = (measure: Quantity, traced: TracedReading): Traced & { found: true } => {
    const { reading, value, limit } = traced;
    return { found: true, asked, measure, reading, trace: traceOfUse(measure, traced), value, limit };
  };
  if (check.startsWith(inSpread)) {
    const solved = "sets" in from ? from.sets.find((s) => s.setId === set) : undefined;
    const there =
      solved === undefined || !("worst" in what)
        ? null
        : atFinding(ctx ?? prepareContext(plan, set), solved, what);
    const traced = there?.measure.trace?.(there.pose) ?? null;
    if (there === null || traced === null)
      return none(
        `what only a corner of the spread has is traced by its finding, where a check of a pose gave it; '${check.slice(inSpread.length)}' is traced of the best run`,
      );
    return { ...told(there.measure, traced), corner: there.corner };
  }
  if (asked.step === undefined) {
    const all = dataMeasuresOf(plan, set === "" ? null : (ctx ?? prepareContext(plan, set)));
    const own = all.find((m) => m.check === check && m.subject === subject && m.set === set);
    if (own === undefined) return none(unknown(asked, all));
    const traced = own.trace();
    return traced === null ? none(own.read().why ?? "the check does not apply") : told(own, traced);
  }
  const run = "sets" in from ? from.sets.find((s) => s.setId === asked.set) : from;
  const step = run?.steps[asked.step];
  if (run === undefined || run.setId !== asked.set) return none(`set ${asked.set} is not solved`);
  if (step === undefined || (!step.solved && step.count === 0)) return none("this step is not solved");
  const own = ctx ?? prepareContext(plan, asked.set);
  const measures = [
    ...[...checkList.makers, ...checkList.onDemand].flatMap((make) => make(own)),
    ...checkList.onRun.flatMap((make) => make(own, run)),
  ];
  const ofIt = measures.filter((m) => m.check === check && m.subject === subject);
  if (ofIt.length === 0) {
    const data = dataMeasuresOf(plan, own).filter((m) => m.set === "" || m.set === set);
    const same = data.find((m) => m.check === check && m.subject === subject);
    if (same === undefined) return none(unknown(asked, [...measures, ...data]));
    return traceOf(plan, from, { check, subject, set: same.set }, own);
  }
  const pose = poseAt(own, step, asked.progress);
  if (pose.solution.status !== "solved") return none("this pose has no equilibrium");
  // A check of a range has a measure for either end of it, and a motion may meet one thing twice: the one that applies
  // here is taken, of several the one whose number is the finding's.
  const apply = ofIt.filter((m) => !Number.isNaN(m.read(pose).value));
  const off = (m: Measure) => Math.abs(m.read(pose).value * m.factor - stated);
  const measure = apply.reduce((a, b) => (off(b) < off(a) ? b : a), apply[0] ?? ofIt[0]);
  if (measure.trace === undefined) return none(`'${check}' writes no trace yet`);
  const traced = measure.trace(pose);
  if (traced === null) return none(measure.read(pose).why ?? "the check does not apply at this pose");
  return told(measure, traced);
}

/** No measure has this check and subject: which there are. */
function unknown({ check, subject }: Asked | AskedData, measures: readonly Quantity[]): string {
  const subjects = measures.filter((m) => m.check === check).map((m) => m.subject);
  const known =
    subjects.length > 0
      ? `'${check}' is made for ${[...new Set(subjects)].join(", ")}`
      : `known are ${[...new Set(measures.map((m) => m.check))].join(", ")}`;
  return `no check '${check}' of '${subject}': ${known}`;
}
