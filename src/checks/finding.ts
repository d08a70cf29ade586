// A finding with what most of them leave blank: of no place, of one place of the operation, of what is missing.

import type { Limit } from "./limitForm.ts";
import type { Finding, When } from "./types.ts";

/** What a finding cannot do without. */
export type Found = Pick<Finding, "level" | "check" | "set" | "subject" | "words" | "cure">;

/** A finding about no pose and with no number, from the plan's own words, but for what is stated. */
export function finding(part: Found & Partial<Finding>): Finding {
  return {
    id: `${part.check}:${part.set}:${part.subject}`,
    from: null,
    to: null,
    worst: null,
    value: null,
    limit: null,
    unit: "",
    use: null,
    source: "plan",
    chosenBy: "",
    ...part,
  };
}

/** A finding of a set at one place of the operation, against a limit or the plan's own words. */
export function findingAt(
  set: string,
  at: When,
  part: Omit<Found, "set"> & Partial<Finding>,
  limit: Limit | null = null,
): Finding {
  return finding({
    id: `${part.check}:${set}:${part.subject}:${at.step}:${at.progress}`,
    set,
    from: at,
    to: at,
    worst: at,
    limit: limit === null ? null : limit.value,
    source: limit?.source ?? "plan",
    chosenBy: limit?.chosenBy ?? "plan",
    ...part,
  });
}

/** A datum that a check needs and the plan does not have. @param set set id; '' for the plan as a whole */
export function missing(set: string, path: string, words: string): Finding {
  const cure = "give the value with its source";
  return finding({
    level: "note",
    check: "missing data",
    set,
    subject: path,
    words: `${path}: ${words}`,
    cure,
  });
}

/** A limit that nobody set. @param set set id; '' for the plan as a whole */
export function notSet(set: string, subject: string, words: string, cure: string): Finding {
  return finding({ level: "note", check: "limit not set", set, subject, words, cure });
}
