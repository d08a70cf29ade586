// Findings of the ground at a stored pose of a run.

import type { SetContext, SetRun } from "../../sequence/index.ts";
import { type Found, finding } from "../finding.ts";
import type { Finding, When } from "../types.ts";

/** A finding at one stored pose, with the use of its limit. */
export function foundAt(
  ctx: SetContext,
  run: SetRun,
  i: number,
  said: Omit<Found, "set"> & Partial<Finding>,
): Finding {
  const at: When = { step: run.step[i], progress: run.progress[i] };
  const { value = null, limit = null } = said;
  const use = value !== null && limit !== null && limit > 0 ? value / limit : null;
  return finding({ set: ctx.set.id, from: at, to: at, worst: at, use, chosenBy: "plan", ...said });
}

/** A stored pose in words: its step and how far it is. */
export function poseWords(run: SetRun, i: number): string {
  const step = run.steps[run.step[i]];
  return `${step.step.do} (step ${run.step[i] + 1}) at ${run.progress[i].toFixed(3)}`;
}
