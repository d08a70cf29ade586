// A finding with what most of them leave blank.

import type { Finding } from "./types.ts";

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
