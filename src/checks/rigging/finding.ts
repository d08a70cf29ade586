// A finding about the data of rigging or of what is lifted: no pose, a number where there is one.

import type { Limit } from "../limits.ts";
import type { Finding, Level } from "../types.ts";

/** What a finding about data says. */
export interface Told {
  level: Level;
  check: string;
  /** Set id; '' for the plan. */
  set?: string;
  subject: string;
  words: string;
  cure: string;
  source: string;
  chosenBy?: string;
  value?: number;
  limit?: number;
  unit?: string;
  use?: number;
}

/** The finding. */
export function told(t: Told): Finding {
  return {
    id: `${t.check}:${t.set ?? ""}:${t.subject}`,
    level: t.level,
    check: t.check,
    set: t.set ?? "",
    subject: t.subject,
    from: null,
    to: null,
    worst: null,
    value: t.value ?? null,
    limit: t.limit ?? null,
    unit: t.unit ?? "",
    use: t.use ?? null,
    source: t.source,
    chosenBy: t.chosenBy ?? "plan",
    words: t.words,
    cure: t.cure,
  };
}

/** Source and chooser of a limit. */
export const by = ({ source, chosenBy }: Limit): Pick<Told, "source"> & { chosenBy: string } => ({
  source,
  chosenBy,
});
