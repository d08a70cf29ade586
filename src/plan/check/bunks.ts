// Where the bunks of a transporter come to lie under a set.
import type { PlanPath } from "../reading/planError.ts";
import type { Bunk } from "../schema.ts";
import { type Draft, onSet } from "./draft.ts";
import type { Names } from "./names.ts";

const round = (value: number): number => Math.round(value * 1e6) / 1e6;

/** Says so when a bunk of the transporter lies off the set with its deck's centre at station `deckAt_m`. */
export function bunksOnSet(
  draft: Draft,
  names: Names,
  transporter: string,
  deckAt_m: number,
  path: PlanPath,
  length: number | null,
): void {
  const index = names.transporters?.indexOf(transporter) ?? -1;
  if (index < 0 || length === null) return;
  for (const { item } of draft.each<Bunk>(["transporters", index, "bunks"])) {
    const s = round(deckAt_m + item.at_m);
    onSet(draft, path, s, length, `a bunk of ${transporter}`);
  }
}
