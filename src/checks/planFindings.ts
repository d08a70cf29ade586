// Findings about the data of a plan: limits nobody set, what is missing, what is unconfirmed, weights out of the usual.

import { openItems, type Plan } from "../plan/index.ts";
import { dataFindings } from "./dataMeasure.ts";
import { finding } from "./finding.ts";
import { limitOf, unknownLimits } from "./limits.ts";
import type { CheckName } from "./names.ts";
import type { Finding, Level } from "./types.ts";
import { weightMeasures } from "./weights.ts";

function note(
  level: Level,
  check: CheckName,
  set: string,
  subject: string,
  words: string,
  cure: string,
): Finding {
  return finding({ level, check, set, subject, words, cure });
}

/** Everything that the data themselves leave open. */
export function planFindings(plan: Plan): Finding[] {
  const out: Finding[] = [];
  for (const item of openItems(plan)) {
    const unconfirmed = item.unconfirmed === true;
    out.push(
      note(
        unconfirmed ? "caution" : "note",
        unconfirmed ? "unconfirmed data" : "missing data",
        "",
        item.path,
        unconfirmed && item.what.startsWith(item.path) ? item.what : `${item.path}: ${item.what}`,
        unconfirmed
          ? "give or confirm the values against drawings, survey and the makers' documents"
          : "give the value with its source",
      ),
    );
  }
  for (const id of unknownLimits(plan))
    out.push(
      note(
        "caution",
        "limit not set",
        "",
        id,
        `limits name '${id}', which no check knows: it limits nothing`,
        "use the name of a known rule or limit",
      ),
    );
  for (const [limit, why] of [
    ["tandem use", "no rule for two cranes carrying together was chosen"],
    ["capacity above share", "no margin above the calculated share of a tandem lift was chosen"],
  ] as const)
    if (!limitOf(plan, limit))
      out.push(
        note(
          "note",
          "limit not set",
          "",
          limit,
          `${limit}: ${why}; the load chart alone limits`,
          "choose a rule set in limits.use",
        ),
      );
  for (const t of plan.transporters)
    for (const [field, what] of [
      ["allowedSide_kN", "load per axle-line side (half an axle line's stands in for groups)"],
      ["bunkRated_kN", "load per bunk"],
      ["bunkFriction", "friction at the bunks"],
      ["brakeLimit_kN", "braking force"],
      ["spineMoment_kNm", "bending of the spine"],
      ["allowedTwist_mm", "twist"],
    ] as const)
      if (t[field] === undefined)
        out.push(
          note(
            "note",
            "limit not set",
            "",
            `${t.id} ${field}`,
            `transporter ${t.id}: no limit on ${what}; it is not checked`,
            "take it from the maker's documents",
          ),
        );
  return [...out, ...dataFindings(weightMeasures(plan))];
}
