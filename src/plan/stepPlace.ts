// A place in the steps of a set, written as STEP:PROGRESS, such as roll:0.5 or 3:1.

import type { PlanSet } from "./schema.ts";

/** A place: index of the step from 0, progress 0 to 1. */
export interface StepPlace {
  step: number;
  progress: number;
}

/**
 * Reads STEP:PROGRESS, STEP being a step's id or its number from 1. A string is the error: what was found, what is
 * allowed and how to mend it.
 */
export function readStepPlace(text: string, { steps }: Pick<PlanSet, "steps">): StepPlace | string {
  const colon = text.lastIndexOf(":");
  const name = text.slice(0, Math.max(0, colon));
  const progressText = text.slice(colon + 1).trim();
  const progress = Number(progressText);
  if (colon < 0 || progressText === "" || !(progress >= 0 && progress <= 1))
    return `found '${text}'; allowed: STEP:PROGRESS with a progress from 0 to 1, such as 3:0.5. Correct it.`;
  const byName = steps.findIndex((step) => step.id === name);
  const byNumber = /^[1-9]\d*$/.test(name) && Number(name) <= steps.length ? Number(name) - 1 : -1;
  const step = byName >= 0 ? byName : byNumber;
  if (step < 0) {
    const known = steps.map((one) => one.id).join(", ");
    return `found step '${name}'; allowed: a number from 1 to ${steps.length}, or one of ${known}. Choose one.`;
  }
  return { step, progress };
}
