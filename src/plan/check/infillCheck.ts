// Members that join a set to one that stands: to an earlier set of the plan, on girders that both have.
import type { PlanPath } from "../reading/planError.ts";
import type { PlanSet } from "../schema.ts";
import { type Draft, onSet, refer, unique } from "./draft.ts";
import type { Names } from "./names.ts";

/** Checks the members of the set at path `at`, which is the `index`-th of the plan. */
export function checkInfill(
  draft: Draft,
  names: Names,
  at: PlanPath,
  index: number,
  id: string,
  length: number | null,
): void {
  unique(draft, [...at, "infill"], "name", "member");
  const earlier = names.sets === null ? null : names.sets.slice(0, index);
  for (const { item, path } of draft.each<NonNullable<PlanSet["infill"]>[number]>([...at, "infill"])) {
    refer(draft, [...path, "girder"], item.girder, names.girdersOf(id), "girder of this set");
    onSet(draft, [...path, "at_m"], item.at_m, length, "a member");
    refer(draft, [...path, "to"], item.to, earlier, "set that comes before this one");
    if (earlier?.includes(item.to))
      refer(
        draft,
        [...path, "toGirder"],
        item.toGirder,
        names.girdersOf(item.to),
        `girder of set ${item.to}`,
      );
  }
}
