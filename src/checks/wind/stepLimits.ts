// Wind limits of steps as checks: a measure for every step that has one, and what every finding about a step says.

import type { PlanSet } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Found, finding } from "../finding.ts";
import type { Limit } from "../limitForm.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, type Recorder } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { SPEED } from "./air.ts";

/** A step that has a wind limit: its index in the set, from 0, and the limit, m/s at the site's instrument. */
export interface LimitedStep {
  index: number;
  V: number;
}

/** How the limit of one step is read at a pose of it, and where what it is compared with is from. */
export type LimitReader = Partial<Pick<Limit, "source" | "chosenBy">> & {
  read: (pose: Pose, rec: Recorder | null) => Reading;
};

/** Measures of the steps of a set that have a wind limit, m/s, for their traces. @param of null leaves a step out */
export function limitMeasures(
  ctx: SetContext,
  part: Pick<Measure, "check" | "cure">,
  of: (step: LimitedStep) => LimitReader | null,
): Measure[] {
  return ctx.set.steps.flatMap(({ id, windLimit_m_per_s: V }, index) => {
    const reader = V === undefined ? null : of({ index, V });
    if (reader === null) return [];
    const { read, source = "", chosenBy = "" } = reader;
    const own = traced(ctx, (pose, rec) => (pose.step === index ? read(pose, rec) : NOT_HERE));
    const speed = { subject: id, kind: "", unit: "m/s", factor: 1, watched: false };
    return measure({ ...part, ...speed, ...own }, { source, chosenBy });
  });
}

/** Writes the wind limit of a step down as V_step. */
export function recordLimit(rec: Recorder | null, { plan, set }: SetContext, step: LimitedStep): void {
  if (rec === null) return;
  const path = `sets[${plan.sets.findIndex((s) => s.id === set.id)}].steps[${step.index}].windLimit_m_per_s`;
  field(rec, "V_step", step.V, "wind limit of the step", path, step.V, SPEED);
}

/** A finding about the whole of a step, whose subject it is; its worst place is where it begins, unless stated. */
export function findingOfStep(
  set: PlanSet,
  step: number,
  part: Omit<Found, "set" | "subject"> & Partial<Finding>,
): Finding {
  const { id } = set.steps[step];
  const from = { step, progress: 0 };
  return finding({
    id: `${part.check}:${set.id}:${id}`,
    set: set.id,
    subject: id,
    from,
    to: { step, progress: 1 },
    worst: from,
    ...part,
  });
}
