// What a plan must say of its cranes before anything is solved: who plans and directs a shared lift (29 CFR 1926.1432), and
// the data without which a check of cranes is left out.

import { byId, type Plan } from "../../plan/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";

const SHARED =
  "29 CFR 1926.1432: a lift by several cranes is planned by a qualified person, directed by a lift director, and the plan reviewed in a meeting with all who work by it";

/** Marks of a lift by several cranes that the plan lacks: such a lift is not ready. */
export function notReady(plan: Plan): Finding[] {
  if (!plan.sets.some((set) => new Set(set.picks.map((pick) => pick.crane)).size > 1)) return [];
  const say = (subject: string, words: string, cure: string) =>
    finding({
      level: "caution",
      check: "not ready",
      set: "",
      subject,
      source: SHARED,
      words: `more than one crane carries a set, and ${words}`,
      cure,
    });
  const out: Finding[] = [];
  if (plan.header.preparedBy.trim() === "")
    out.push(
      say(
        "header.preparedBy",
        "nobody is named who prepared the plan",
        "name the qualified person who planned the lift",
      ),
    );
  const director = plan.people?.roles.find((one) => one.role.trim().toLowerCase() === "lift director");
  if (director === undefined || director.name.trim() === "")
    out.push(
      say(
        "people.roles",
        director === undefined ? "no role of a lift director is set" : "no lift director is named",
        "name the lift director in people.roles",
      ),
    );
  const meeting = plan.people?.meeting;
  if (meeting === undefined || meeting.date.trim() === "" || meeting.by.trim() === "")
    out.push(
      say(
        "people.meeting",
        "no meeting is set in which all who work by the plan review it",
        "set the meeting and who holds it in people.meeting",
      ),
    );
  return out;
}

/** Data of the cranes on a set without which a check is left out: limits that nobody set, and what is not stated. */
export function openCraneData(plan: Plan): Finding[] {
  const used = new Set(plan.sets.flatMap((set) => set.picks.map((pick) => pick.crane)));
  return [...used].flatMap((id) => {
    const crane = byId(plan.cranes, id);
    const path = `cranes[${plan.cranes.indexOf(crane)}]`;
    const lacks: [unknown, "limit not set" | "missing data", string, string][] = [
      [
        crane.hoistLine,
        "missing data",
        "hoistLine",
        "pull of the hoist line and wraps on the drum are not judged",
      ],
      [
        crane.leastHookToTip_m,
        "limit not set",
        "leastHookToTip_m",
        "how near the hook may come to the boom tip is not judged",
      ],
      [crane.outOfLevel_pct, "missing data", "outOfLevel_pct", "the radius grows by no level error"],
      [crane.allowedOutOfLevel_pct, "limit not set", "allowedOutOfLevel_pct", "its level is not judged"],
      [
        crane.hoistLine === undefined ? 0 : crane.hoistLine.lead_m,
        "missing data",
        "hoistLine.lead_m",
        "the boom's length stands in for the rope from drum to tip",
      ],
    ];
    return lacks.flatMap(([value, check, field, words]) =>
      value === undefined
        ? [
            finding({
              level: "note",
              check,
              set: "",
              subject: `${path}.${field}`,
              words: `${path}.${field}: ${id} states none: ${words}`,
              cure: "take it from the maker's documents, or from the survey of the place",
            }),
          ]
        : [],
    );
  });
}
