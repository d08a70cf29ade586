// What a plan does not say of its transporters and of its owner's tolerances, so that a check has nothing to go by.

import type { Plan } from "../../plan/index.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
import { ownersLimits } from "./limits.ts";

function open(
  check: "missing data" | "limit not set" | "tip angle",
  subject: string,
  words: string,
  cure: string,
): Finding {
  const nothing = { from: null, to: null, worst: null, value: null, limit: null, unit: "", use: null };
  const id = `${check}::${subject}`;
  return {
    ...nothing,
    id,
    level: "note",
    check,
    set: "",
    subject,
    source: "plan",
    chosenBy: "",
    words,
    cure,
  };
}

/** One note for each kind of gap, naming all transporters that have it. */
export function transporterGaps(plan: Plan): Finding[] {
  if (plan.transporters.length === 0) return [];
  const out: Finding[] = [];
  const lack = (has: (t: Plan["transporters"][number]) => boolean) =>
    plan.transporters.filter((t) => !has(t)).map((t) => t.id);
  const missing = (field: string, ids: string[], words: string) => {
    if (ids.length === 0) return;
    const subject = `transporters ${field}`;
    out.push(
      open(
        "missing data",
        subject,
        `${field} of ${ids.join(", ")}: ${words}`,
        "give the value with its source",
      ),
    );
  };
  if (plan.site.path.wheelFriction === undefined)
    out.push(
      open(
        "missing data",
        "site.path.wheelFriction",
        "site.path.wheelFriction: friction of wheels on the path is not stated; the grip of braked and driven lines is not checked",
        "give the friction of the wettest surface on the way, with its source",
      ),
    );
  missing(
    "tyreSquash_mm",
    lack((t) => t.tyreSquash_mm !== undefined),
    "blank: the stroke budget has no tyres in it",
  );
  missing(
    "brakedLines",
    lack((t) => t.brakedLines !== undefined),
    "blank: what its wheels brake is not checked and counts as nothing",
  );
  missing(
    "drivenLines",
    lack((t) => t.drivenLines !== undefined),
    "blank: what its wheels drive is not checked and counts as nothing",
  );
  missing(
    "bunks[].rocks_pct",
    lack((t) => t.bunks.every((b) => b.kind === "fixed" || b.rocks_pct !== undefined)),
    "blank: whether its rocking or turning bunks follow the slope of the girders is not checked",
  );
  for (const set of plan.sets)
    if (set.girders.length === 1)
      out.push({
        ...open(
          "tip angle",
          "lean of a single girder",
          "its lean is taken as held: how near the set and its transporters are to turning over across is not judged",
          "say in the plan's notes what holds the girder upright, and have it checked",
        ),
        set: set.id,
        id: `tip angle:${set.id}:lean of a single girder`,
      });
  const unset = plan.sets.some((set) => set.girders.length > 1)
    ? ownersLimits.filter((name) => limitOf(plan, name) === null)
    : [];
  if (unset.length > 0)
    out.push(
      open(
        "limit not set",
        unset.join(", "),
        `${unset.join(", ")}: the owner's tolerances for the set under way are not set; they are not checked`,
        "take them from the contract into limits.rules, by these names",
      ),
    );
  return out;
}
