// Rigging by its data alone: edge guards, marking of custom gear, and all its numbers against what they must be.

import type { Plan, Rigging } from "../../plan/index.ts";
import { dataFindings } from "../dataMeasure.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
import { gearMeasures } from "./gearMeasures.ts";

const GUARDS =
  "slings are guarded from edges, and makeshift guards have failed: WorkSafeBC incident 2022178050011, NIOSH FACE 00CA001";

/** Everything that the data of the rigging say against lifting with it. */
export function gearFindings(plan: Plan): Finding[] {
  return plan.rigging.flatMap((rig) => [
    ...guards(plan, rig),
    ...marking(plan, rig),
    ...dataFindings(gearMeasures(plan, rig)),
  ]);
}

/** No guard, no lift, unless every pick of it is a clamp or a lug. */
function guards(plan: Plan, rig: Rigging): Finding[] {
  const picks = plan.sets.flatMap((set) => set.picks.filter((pick) => pick.rigging === rig.id));
  const slung = picks.filter((pick) => (pick.attachment?.kind ?? "sling") === "sling");
  if (slung.length === 0) return [];
  const say = (words: string) => [
    finding({
      level: "stop",
      check: "edge guard",
      set: "",
      subject: rig.id,
      chosenBy: "plan",
      words,
      cure: "issue the rigging with edge guards made for these flanges",
      source: GUARDS,
    }),
  ];
  if (!rig.softeners)
    return say(
      `rigging '${rig.id}' goes round the girders of ${slung.length} ${slung.length === 1 ? "pick" : "picks"} without edge guards: no guard, no issue`,
    );
  return rig.guards === "makeshift" ? say(`the edge guards of rigging '${rig.id}' are makeshift`) : [];
}

/** Custom gear carries its safe working load on it; what is blank is an open item, not a finding here. */
function marking(plan: Plan, rig: Rigging): Finding[] {
  const limit = limitOf(plan, "proof test", true);
  if (rig.custom?.marked !== false || limit === null) return [];
  return [
    finding({
      level: "stop",
      check: "proof test",
      set: "",
      subject: `${rig.id} marking`,
      words: `rigging '${rig.id}' is custom gear without its safe working load on it`,
      cure: "mark it before use",
      source: limit.source,
      chosenBy: limit.chosenBy,
    }),
  ];
}
