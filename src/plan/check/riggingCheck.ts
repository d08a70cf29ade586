// Rigging taken as a whole: parts told apart by name, legs that meet above the spreader, slings that part along a girder.
import type { PlanPath } from "../reading/planError.ts";
import type { Pick, Rigging } from "../schema.ts";
import { type Draft, refer, unique } from "./draft.ts";

/** Checks every rigging assembly by itself. */
export function checkRigging(draft: Draft): void {
  for (const { item, path } of draft.each<Rigging>(["rigging"])) {
    unique(draft, [...path, "parts"], "name", "part");
    const { topLegs, legs } = item;
    if (topLegs?.length_m !== undefined && topLegs.length_m <= topLegs.apart_m / 2)
      draft.say(
        [...path, "topLegs", "length_m"],
        `legs of ${topLegs.length_m} m to ends ${topLegs.apart_m} m apart`,
        "more than half the distance between their ends, so that they meet above",
        "Correct one of the two.",
      );
    if (topLegs !== undefined && item.kind !== "spreader")
      draft.say(
        [...path, "topLegs"],
        `legs above a spreader in rigging of kind "${item.kind}"`,
        'rigging of kind "spreader"',
        "Correct the kind, or take them out.",
      );
    if ((legs?.alongApart_m ?? 0) > 0 && legs?.perPick !== 2)
      draft.say(
        [...path, "legs", "alongApart_m"],
        `slings that part along the girder, ${legs?.perPick} at each`,
        "two slings at each girder",
        "Correct perPick, or take alongApart_m out.",
      );
  }
}

/** Girders named in a pick's lengths of slings are girders of the set. */
export function checkPickSlings(draft: Draft, pick: Pick, path: PlanPath, girders: string[] | null): void {
  for (const girder of Object.keys(pick.slingLonger_mm ?? {}))
    refer(draft, [...path, "slingLonger_mm", girder], girder, girders, "girder of this set");
}
