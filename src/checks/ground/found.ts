// Findings of the ground at a place of a run.

import type { SetContext, SetRun } from "../../sequence/index.ts";
import { type Found, finding } from "../finding.ts";
import type { Finding, When } from "../types.ts";

/** A finding at one place of the operation, with the use of its limit. */
export function foundThere(ctx: SetContext, at: When, said: Omit<Found, "set"> & Partial<Finding>): Finding {
  const { value = null, limit = null } = said;
  const use = value !== null && limit !== null && limit > 0 ? value / limit : null;
  return finding({ set: ctx.set.id, from: at, to: at, worst: at, use, chosenBy: "plan", ...said });
}

/** The place of a stored pose. */
export const whenAt = (run: SetRun, i: number): When => ({ step: run.step[i], progress: run.progress[i] });

/** A finding at one stored pose, with the use of its limit. */
export const foundAt = (
  ctx: SetContext,
  run: SetRun,
  i: number,
  said: Omit<Found, "set"> & Partial<Finding>,
): Finding => foundThere(ctx, whenAt(run, i), said);

/** A place of the operation in words: its step and how far it is. */
export const placeWords = (run: SetRun, { step, progress }: When): string =>
  `${run.steps[step].step.do} (step ${step + 1}) at ${progress.toFixed(3)}`;

/** A stored pose in words. */
export const poseWords = (run: SetRun, i: number): string => placeWords(run, whenAt(run, i));
