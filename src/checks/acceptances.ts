// What a plan accepts by name: who takes it upon himself, for which check, subject, set and step, and why.

import type { Acceptance, Plan } from "../plan/index.ts";

/** The first acceptance that covers a subject of a check at a step; a subject `set` or blank covers every subject. */
export function acceptanceOf(
  plan: Plan,
  check: string,
  subject: string,
  set: string,
  step: string,
): Acceptance | null {
  const covers = (a: Acceptance) =>
    a.check === check &&
    (a.subject === subject || a.subject === "set" || a.subject === "") &&
    (a.set === undefined || a.set === set) &&
    (a.step === undefined || a.step === step) &&
    a.by.trim() !== "" &&
    a.reason.trim() !== "";
  return plan.accept.find(covers) ?? null;
}
