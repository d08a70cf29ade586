// What of the plan data is not confirmed: at a place and inside it, by the part that shows it, and the words of confirming it.
import type { PlanPart } from "../../../app/index.ts";
import {
  confirm,
  doubtsIn,
  fieldOf,
  type Plan,
  type PlanPath,
  printPath,
  unconfirmedIn,
  valueAt,
} from "../../../plan/index.ts";
import { liesIn, nameAround, nameAt } from "./cells.ts";
import { partOf } from "./parts.ts";

/**
 * For asking at many places: why the value at a place is not confirmed, or how many values inside it are not, as a sentence;
 * "" where it is confirmed.
 */
export function doubtWords(plan: Plan): (path: PlanPath) => string {
  const doubt = doubtsIn(plan);
  const listed = unconfirmedIn(plan).flatMap(({ path }) => (path === null ? [] : [path]));
  return (path) => {
    const why = doubt(path);
    if (why !== null) {
      const words = /not (yet )?confirmed/.test(why) ? why : `not confirmed: ${why}`;
      return `${words[0].toUpperCase()}${words.slice(1)}.`;
    }
    const inside = listed.filter((one) => liesIn(one, path)).length;
    if (inside === 0) return "";
    return `Not confirmed: ${inside === 1 ? "a value" : `${inside} values`} in it.`;
  };
}

/** Places that are not confirmed, by the part that shows them; those of sets are of the set with this index alone. */
export function doubtsByPart(
  plan: Plan,
  parts: readonly PlanPart[],
  set: number,
): ReadonlyMap<PlanPart, PlanPath[]> {
  const out = new Map<PlanPart, PlanPath[]>();
  for (const { path } of unconfirmedIn(plan)) {
    const found = path === null ? null : partOf(path, plan, parts);
    if (path === null || found === null || (found.set !== null && found.set !== set)) continue;
    out.set(found.part, [...(out.get(found.part) ?? []), path]);
  }
  return out;
}

/** What is confirmed, for the history: "near L: elevation of seats", "near L of seats", "3 values of seats". */
export function confirmedWords(plan: Plan, paths: readonly PlanPath[], of: string): string {
  const [path] = paths;
  if (paths.length !== 1) return `${paths.length} values of ${of}`;
  const own = nameAt(path, plan);
  const around = own === "" ? nameAround(path, plan) : "";
  const words = own || (fieldOf(path, plan)?.words ?? printPath(path));
  return `${around === "" ? "" : `${around}: `}${words} of ${of}`;
}

/** The draft with what was given by a person at some places taken off the list of what is not confirmed. */
export function givenAt(draft: Plan, paths: readonly PlanPath[]): Plan {
  const given = doubtedOf(draft, paths);
  return given.length === 0 ? draft : confirm(draft, null, given.map(printPath));
}

/**
 * Those of some places whose value is not confirmed. Of a group that is given in another form, values inside may have been
 * kept: they stay as they were.
 */
export function doubtedOf(plan: Plan, paths: readonly PlanPath[]): PlanPath[] {
  const doubt = doubtsIn(plan);
  const words = doubtWords(plan);
  const isGroup = (path: PlanPath) => {
    const value = valueAt(plan, path);
    return typeof value === "object" && value !== null && !Array.isArray(value);
  };
  return paths.filter((path) => (isGroup(path) ? doubt(path) !== null : words(path) !== ""));
}
