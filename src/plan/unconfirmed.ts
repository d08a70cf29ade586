// What nobody has confirmed yet: starter values of a set-up and values copied from another set, by the places where they stand.
import { valueAt } from "./edit.ts";
import { listOf, type PlanPath, printPath, readPlace } from "./reading/planError.ts";
import type { Plan } from "./schema.ts";

/** One place that is not confirmed. `set` is the index of the set whose own list holds it, null for the plan's list. */
export interface Unconfirmed {
  /** The place as it is listed: from the top of the plan, or from the top of the set for a set's own list. */
  place: string;
  /** Its path from the top of the plan; null for free words that name no place. */
  path: PlanPath | null;
  set: number | null;
  /** Index in the list that holds it: of the set's list, or of the group in the plan's list. */
  index: number;
  why: string;
}

/** What stands as the reason for places in a set's own list. */
export const copied = "copied from another set";

/**
 * Paths of the single values below a path: numbers, words, flags, low-best-high bands, and lists of plain values or of
 * pairs (wheels, camber points), which are confirmed as one. An empty list is one as well: it says that there is none.
 */
export function leavesAt(value: unknown, path: PlanPath): PlanPath[] {
  if (value === undefined) return [];
  if (typeof value !== "object" || value === null) return [path];
  if (Array.isArray(value)) {
    const records = value.some((item) => typeof item === "object" && item !== null && !Array.isArray(item));
    return records ? value.flatMap((item, i) => leavesAt(item, [...path, i])) : [path];
  }
  const fields = Object.entries(value);
  if ("low" in value && "best" in value && "high" in value) return [path];
  return fields.flatMap(([key, item]) => leavesAt(item, [...path, key]));
}

/** Every place that is not confirmed, first those of the plan, then set by set. */
export function unconfirmedIn(plan: Plan): Unconfirmed[] {
  const of = (plan.unconfirmed ?? []).flatMap((group, index) =>
    group.places.map((place) => ({ place, path: readPlace(place), set: null, index, why: group.why })),
  );
  const inSets = plan.sets.flatMap((set, i) =>
    (set.unconfirmed ?? []).map((place, index) => {
      const path = readPlace(place);
      // Words such as "camber" read like a path; they are one only where the set has such a field.
      const known = path !== null && valueAt(set, path) !== undefined;
      return { place, path: known ? ["sets", i, ...path] : null, set: i, index, why: copied };
    }),
  );
  return [...of, ...inSets];
}

/** Whether `path` is `above` or lies below it. */
export function isWithin(path: PlanPath, above: PlanPath): boolean {
  return above.length <= path.length && above.every((part, i) => part === path[i]);
}

/** For asking at many places: why the value at a path is not confirmed, or null where it is (or never was in doubt). */
export function doubtsIn(plan: Plan): (path: PlanPath) => string | null {
  const whys = new Map<string, string>();
  for (const { path, why } of unconfirmedIn(plan)) if (path !== null) whys.set(printPath(path), why);
  return (path) => {
    for (let n = path.length; n > 0 && whys.size > 0; n--) {
      const why = whys.get(printPath(path.slice(0, n)));
      if (why !== undefined) return why;
    }
    return null;
  };
}

/** Why the value at a path is not confirmed, or null where it is (or never was in doubt). */
export function doubtAt(plan: Plan, path: PlanPath): string | null {
  return doubtsIn(plan)(path);
}

/** Lists of a set that are parts of their own even where they are listed as a whole. */
const LISTS = ["girders", "picks", "onTransporters", "steps"];

/** The part of a plan that a path belongs to, which is looked at as one: a machine, a girder, the seats. */
export function partOf(path: PlanPath): PlanPath {
  if (path[0] === "sets") {
    const inside = path.slice(2);
    if (inside.length === 1 && !LISTS.includes(String(inside[0]))) return path.slice(0, 2);
    const one = ["girders", "picks", "onTransporters"].includes(String(inside[0]));
    return [...path.slice(0, 2), ...inside.slice(0, one ? 2 : 1)];
  }
  if (path[0] === "site") return path.slice(0, path.length === 2 ? 1 : 2);
  return path.slice(0, typeof path[1] === "number" ? 2 : 1);
}

/** The name of what stands at a path, in brackets, where it has one. */
function named(plan: Plan, path: PlanPath): string {
  const value = valueAt(plan, path);
  if (typeof value !== "object" || value === null) return "";
  const { id, line, crane, transporter } = value as Record<string, unknown>;
  const name = [id, line, crane, transporter].find((word) => typeof word === "string");
  return name === undefined ? "" : ` (${String(name)})`;
}

/** Reasons without what they begin with in common, as `starter value: no camber; none`. */
function reasonsOf(ones: readonly Unconfirmed[]): string {
  const heads = new Map<string, string[]>();
  for (const why of new Set(ones.map((u) => u.why))) {
    const end = why.indexOf(": ");
    const [head, rest] = end < 0 ? [why, []] : [why.slice(0, end), [why.slice(end + 2)]];
    heads.set(head, [...(heads.get(head) ?? []), ...rest]);
  }
  return [...heads]
    .map(([head, rest]) => [head, rest.join("; ")].filter((w) => w !== "").join(": "))
    .join("; ");
}

/** What is not confirmed, part by part: the part or its entry in the set's list, and what and why in words. */
export function unconfirmedItems(plan: Plan): { path: string; what: string }[] {
  const parts = new Map<string, Unconfirmed[]>();
  for (const one of unconfirmedIn(plan)) {
    const part = one.path === null ? one.place : printPath(partOf(one.path));
    const key = JSON.stringify([one.set, one.path === null, part]);
    parts.set(key, [...(parts.get(key) ?? []), one]);
  }
  return [...parts.values()].map((ones) => {
    const [{ set, index, path, place }] = ones;
    const why = set === null ? reasonsOf(ones) : `${copied}, not yet confirmed`;
    const entry = set === null ? ["unconfirmed", index] : ["sets", set, "unconfirmed", index];
    if (path === null) return { path: printPath(entry), what: `${place}: ${why}` };
    const part = partOf(path);
    const at = printPath(set === null ? part : entry);
    if (ones.length === 1) return { path: at, what: `${place}: ${why}` };
    const fields = ones.map((u) => printPath((u.path ?? []).slice(part.length)).replace(/\[\d+\]\.?/g, ""));
    const names = [...new Set(fields)].map((f) => (f === "" || f === "the file" ? "all of it" : f));
    return {
      path: at,
      what: `${printPath(part)}${named(plan, part)}: ${ones.length} values: ${listOf(names)}: ${why}`,
    };
  });
}

/** A list of places without those that are confirmed; a place that holds more than is confirmed is split up. */
function without(top: unknown, places: readonly string[], confirmed: readonly string[]): string[] {
  const done = confirmed.map((text) => ({ text, path: readPlace(text) }));
  const under = (path: PlanPath) => done.some((d) => d.path !== null && isWithin(path, d.path));
  return places.flatMap((place) => {
    if (confirmed.includes(place)) return [];
    const path = readPlace(place);
    if (path === null) return [place];
    if (under(path)) return [];
    if (!done.some((d) => d.path !== null && isWithin(d.path, path))) return [place];
    const leaves = leavesAt(valueAt(top, path), path);
    return leaves.filter((leaf) => !under(leaf)).map((leaf) => printPath(leaf));
  });
}

/**
 * The plan with places confirmed. `setId` null: places from the top of the plan, in whatever list they stand; else places
 * from the top of that set. A place confirms everything below it: `girders[1]` the whole girder. Unknown places change
 * nothing; a list that becomes empty goes.
 */
export function confirm(plan: Plan, setId: string | null, places: readonly string[]): Plan {
  const index = plan.sets.findIndex((set) => set.id === setId);
  if (setId !== null && index < 0) return plan;
  const inSet = setId === null ? "" : printPath(["sets", index]);
  const whole = places.map((place) =>
    setId === null ? place : `${inSet}${place.startsWith("[") ? "" : "."}${place}`,
  );
  const groups = (plan.unconfirmed ?? [])
    .map((group) => ({ ...group, places: without(plan, group.places, whole) }))
    .filter((group) => group.places.length > 0);
  const sets = plan.sets.map((set, i) => {
    if (set.unconfirmed === undefined || (setId !== null && i !== index)) return set;
    const prefix = printPath(["sets", i]);
    const own = setId !== null ? places : insideOf(prefix, places, set);
    const left = without(set, set.unconfirmed, own);
    if (left.length === set.unconfirmed.length && left.every((p, k) => p === set.unconfirmed?.[k]))
      return set;
    const { unconfirmed: _, ...rest } = set;
    return left.length === 0 ? rest : { ...rest, unconfirmed: left };
  });
  const { unconfirmed: _, ...rest } = plan;
  const kept = sets.every((set, i) => set === plan.sets[i]) ? plan.sets : sets;
  return { ...rest, ...(groups.length > 0 ? { unconfirmed: groups } : {}), sets: kept };
}

/** Of places from the top of the plan those inside one set, as seen from that set; the whole set stands for all its fields. */
function insideOf(prefix: string, places: readonly string[], set: object): string[] {
  return places.flatMap((place) => {
    if (place === prefix || place === "sets") return Object.keys(set);
    if (place.startsWith(`${prefix}.`)) return [place.slice(prefix.length + 1)];
    return [];
  });
}
