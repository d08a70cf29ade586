// Findings about the data of a plan: limits nobody set, what is missing, what is unconfirmed, weights out of the usual.

import { openItems, type Plan, type PlanSet, setLength, takeOff } from "../plan/index.ts";
import { finding } from "./finding.ts";
import { limitOf, unknownLimits } from "./limits.ts";
import type { Finding, Level } from "./types.ts";

function note(
  level: Level,
  check: string,
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
    const unconfirmed = item.path.includes("unconfirmed");
    out.push(
      note(
        unconfirmed ? "caution" : "note",
        unconfirmed ? "unconfirmed data" : "missing data",
        "",
        item.path,
        `${item.path}: ${item.what}`,
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
  for (const set of plan.sets) {
    const mass = massCheck(plan, set);
    if (mass) out.push(mass);
    for (const line of takeOff(set).ledger)
      if (line.takeOff !== null && (line.takeOff < line.low || line.takeOff > line.high))
        out.push({
          ...note(
            "caution",
            "weight check",
            set.id,
            line.item,
            `${line.item}: the take-off gives ${(line.takeOff / 1000).toFixed(1)} t, outside the ledger's ${(line.low / 1000).toFixed(1)} to ${(line.high / 1000).toFixed(1)} t`,
            "find which of the two is wrong before any step",
          ),
          value: line.takeOff / 1000,
          limit: (line.takeOff < line.low ? line.low : line.high) / 1000,
          unit: "t",
          source: line.source,
        });
  }
  return out;
}

/** Mass per metre of a two-girder set of 60 to 75 m against what such sets usually weigh. */
function massCheck(plan: Plan, set: PlanSet): Finding | null {
  const length = setLength(set);
  if (set.girders.length !== 2 || length < 60 - 1e-9 || length > 75 + 1e-9) return null;
  const perMetre = takeOff(set).meanMassPerMetre / 1000;
  const low = limitOf(plan, "mass per metre low", true);
  const high = limitOf(plan, "mass per metre high");
  if (!low || !high || (perMetre >= low.value && perMetre <= high.value)) return null;
  const limit = perMetre < low.value ? low : high;
  return {
    ...note(
      "caution",
      "weight check",
      set.id,
      "mass per metre",
      `the set weighs ${perMetre.toFixed(2)} t per metre; ${low.value} to ${high.value} is usual for its kind`,
      "check plates, stiffeners, frames and everything carried on the set",
    ),
    value: perMetre,
    limit: limit.value,
    unit: "t/m",
    source: limit.source,
    chosenBy: limit.chosenBy,
  };
}
