// Use of the cranes in the cursor's step, before the last change and now: what a planner watches who moves one.
import type { Result, SetResult, UseStrip } from "../../../app/index.ts";

/** The limit of one crane that is used most in a step. Uses are parts of 1; null where it is not known. */
export interface CraneUse {
  subject: string;
  limitWords: string;
  before: number | null;
  now: number;
}

/** The greatest use of a strip at the stored poses of a step; null where it never applies. */
function mostIn({ use }: UseStrip, { steps }: SetResult, step: number): number | null {
  const { first, count } = steps[step];
  let most: number | null = null;
  for (let i = first; i < first + count; i++)
    if (!Number.isNaN(use[i]) && (most === null || use[i] > most)) most = use[i];
  return most;
}

/** The uses of every crane that has one in this step; the step before is found by the names of set and step. */
export function craneUses(
  result: Result,
  before: Result | null,
  at: { set: number; step: number },
): CraneUse[] {
  const set = result.sets[at.set];
  const step = set?.steps[at.step];
  if (set === undefined || step === undefined) return [];
  const old = before?.sets.find(({ setId }) => setId === set.setId);
  const oldStep = old?.steps.findIndex((one) => one.step.id === step.step.id) ?? -1;
  const most = new Map<string, CraneUse>();
  for (const strip of set.strips) {
    if (!strip.kind.endsWith("crane")) continue;
    const now = mostIn(strip, set, at.step);
    const { subject, limitWords } = strip;
    if (now === null || now <= (most.get(subject)?.now ?? Number.NEGATIVE_INFINITY)) continue;
    const same = old?.strips.find((one) => one.check === strip.check && one.subject === subject);
    const was = old === undefined || same === undefined || oldStep < 0 ? null : mostIn(same, old, oldStep);
    most.set(subject, { subject, limitWords, before: was, now });
  }
  return [...most.values()];
}
