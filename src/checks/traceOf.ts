// The trace of a check at any pose of a solved plan, on demand: the pose is solved again from the start and ends of its
// step, and the same code that read the check writes down how.

import type { Plan } from "../plan/index.ts";
import { poseAt, prepareContext, type SetContext, type SetRun } from "../sequence/index.ts";
import { checkList } from "./list.ts";
import type { Measure, Reading } from "./measure.ts";
import type { Trace } from "./trace.ts";
import { traceOfUse } from "./traced.ts";
import type { Finding, Result } from "./types.ts";

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
      asked: Asked;
      measure: Measure;
      reading: Reading;
      /** Its root is the use of the limit, worked out of value and limit. */
      trace: Trace;
      value: Trace;
      limit: Trace;
    }
  | { found: false; asked: Asked | null; why: string };

/** What a finding is about, at its worst pose; null for a finding without one. */
export function askedOf(finding: Finding): Asked | null {
  const { check, subject, set, worst } = finding;
  return worst === null ? null : { check, subject, set, step: worst.step, progress: worst.progress };
}

/**
 * The trace of a finding or of any check at any pose. `from` is the solved plan or the run of the set; a prepared
 * context may be handed in. Throws an Error when the plan has no such set.
 */
export function traceOf(
  plan: Plan,
  from: Pick<Result, "sets"> | SetRun,
  what: Finding | Asked,
  ctx?: SetContext,
): Traced {
  const asked = "worst" in what ? askedOf(what) : what;
  const none = (why: string): Traced => ({ found: false, asked, why });
  if (asked === null) return none("this finding has no pose");
  const run = "sets" in from ? from.sets.find((s) => s.setId === asked.set) : from;
  const step = run?.steps[asked.step];
  if (run === undefined || run.setId !== asked.set) return none(`set ${asked.set} is not solved`);
  if (step === undefined || (!step.solved && step.count === 0)) return none("this step is not solved");
  const own = ctx ?? prepareContext(plan, asked.set);
  const measures = [
    ...[...checkList.makers, ...checkList.onDemand].flatMap((make) => make(own)),
    ...checkList.onRun.flatMap((make) => make(own, run)),
  ];
  const ofIt = measures.filter((m) => m.check === asked.check && m.subject === asked.subject);
  if (ofIt.length === 0) {
    const subjects = measures.filter((m) => m.check === asked.check).map((m) => m.subject);
    const known =
      subjects.length > 0
        ? `'${asked.check}' is made for ${subjects.join(", ")}`
        : `known are ${[...new Set(measures.map((m) => m.check))].join(", ")}`;
    return none(`no check '${asked.check}' of '${asked.subject}': ${known}`);
  }
  const pose = poseAt(own, step, asked.progress);
  if (pose.solution.status !== "solved") return none("this pose has no equilibrium");
  // A check of a range has a measure for either end of it: the one that applies here is taken.
  const measure = ofIt.find((m) => !Number.isNaN(m.read(pose).value)) ?? ofIt[0];
  if (measure.trace === undefined) return none(`'${asked.check}' writes no trace yet`);
  const traced = measure.trace(pose);
  if (traced === null) return none(measure.read(pose).why ?? "the check does not apply at this pose");
  const { reading, value, limit } = traced;
  return { found: true, asked, measure, reading, trace: traceOfUse(measure, traced), value, limit };
}
