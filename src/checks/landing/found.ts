// A finding of landing and fit, with what most of them share.

import type { Limit } from "../limitForm.ts";
import type { Finding, When } from "../types.ts";

type Part = Pick<Finding, "level" | "check" | "subject" | "words" | "cure"> & Partial<Finding>;

/** A finding of a set ('' for the plan), at a place or at none, against a limit or the plan's own words. */
export function found(set: string, at: When | null, part: Part, limit: Limit | null = null): Finding {
  return {
    id: `${part.check}:${set}:${part.subject}${at === null ? "" : `:${at.step}:${at.progress}`}`,
    set,
    from: at,
    to: at,
    worst: at,
    value: null,
    limit: limit === null ? null : limit.value,
    unit: "",
    use: null,
    source: limit?.source ?? "plan",
    chosenBy: limit?.chosenBy ?? "plan",
    ...part,
  };
}

/** A datum that a check needs and the plan does not have. */
export function missing(set: string, path: string, words: string): Finding {
  return found(set, null, {
    level: "note",
    check: "missing data",
    subject: path,
    chosenBy: "",
    words: `${path}: ${words}`,
    cure: "give the value with its source",
  });
}

/** A limit that nobody set. */
export function notSet(set: string, subject: string, words: string, cure: string): Finding {
  return found(set, null, { level: "note", check: "limit not set", subject, chosenBy: "", words, cure });
}
