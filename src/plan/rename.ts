// Giving a thing another name, in every place that refers to it.
import { placesRenamed } from "./placesMoved.ts";
import { type NameKind, namedAt, type Reference, references } from "./references.ts";
import type { Plan } from "./schema.ts";

type Holder = Record<string | number, unknown>;

/** Answers what a name becomes. `trail` are the things around it, from the plan inward. */
type Rename = (name: string, trail: readonly unknown[]) => string;

const isHolder = (value: unknown): value is Holder => typeof value === "object" && value !== null;

/** The data with every name at a pattern put through `rename`; shares what did not change. */
function mapNames(data: unknown, pattern: readonly string[], rename: Rename, trail: unknown[]): unknown {
  if (pattern.length === 0) return typeof data === "string" ? rename(data, trail) : data;
  if (!isHolder(data)) return data;
  const [part, ...rest] = pattern;
  const around = [...trail, data];
  if (part === "*") {
    if (!Array.isArray(data)) return data;
    const items = data.map((item: unknown) => mapNames(item, rest, rename, around));
    return items.every((item, i) => item === data[i]) ? data : items;
  }
  if (part === "@") {
    const entries = Object.entries(data).map(([key, value]) => [rename(key, around), value] as const);
    return entries.every(([key]) => Object.hasOwn(data, key)) ? data : Object.fromEntries(entries);
  }
  if (!Object.hasOwn(data, part)) return data;
  const after = mapNames(data[part], rest, rename, around);
  return after === data[part] ? data : { ...data, [part]: after };
}

/** Id of the set in which a name is looked up; undefined: of any set. */
function setOf(reference: Reference, trail: readonly unknown[]): string | undefined {
  if (reference.whose === "own set") return (trail[2] as { id?: string }).id;
  const beside = trail.findLast((one) => isHolder(one) && !Array.isArray(one)) as Holder;
  if (reference.whose === "set in to") return String(beside.to);
  return typeof beside.set === "string" ? beside.set : undefined;
}

/** What a support is called after the thing it is named after got another name. */
function supportRename(kind: NameKind, from: string, to: string): ((name: string) => string) | null {
  if (kind === "group") return (name) => (name === from ? to : name);
  if (kind !== "girder") return null;
  return (name) => (name === `near ${from}` ? `near ${to}` : name === `far ${from}` ? `far ${to}` : name);
}

/** Subjects of acceptances and expectations are words of findings: a name alone, or before a colon. */
const subjects = [
  ["accept", "*", "subject"],
  ["expected", "*", "subject"],
];

/** What a subject becomes; `set` is the word for the whole set and no name. */
function subjectRename(kind: NameKind, from: string, to: string): ((subject: string) => string) | null {
  const words: readonly [string, string][] =
    kind === "girder"
      ? ["near", "far"].map((line) => [`${line} ${from}`, `${line} ${to}`])
      : kind === "step" || kind === "channel" || from === "set"
        ? []
        : [[from, to]];
  if (words.length === 0) return null;
  return (subject) => {
    for (const [old, now] of words) {
      if (subject === old) return now;
      if (subject.startsWith(`${old}: `)) return now + subject.slice(old.length);
    }
    return subject;
  };
}

/** Whether a name of a set is also meant, without naming the set, for another set that has the same name. */
function sharedAmongSets(plan: Plan, kind: "girder" | "step", name: string): boolean {
  const has = plan.sets.filter((set) =>
    kind === "girder"
      ? set.girders.some((girder) => girder.line === name)
      : set.steps.some((step) => step.id === name || step.wayBack?.some((back) => back.id === name)),
  );
  if (has.length < 2) return false;
  let found = false;
  for (const reference of references) {
    if (reference.to !== kind || reference.whose !== "set beside") continue;
    mapNames(
      plan,
      reference.at,
      (one, trail) => {
        if (one === name && setOf(reference, trail) === undefined) found = true;
        return one;
      },
      [],
    );
  }
  return found;
}

/**
 * A plan in which a thing and every reference to it has another name: also supports that are named after it (`near L`)
 * and subjects of accepted and expected findings. Names in free text stay. Whether the new name is free only `checkPlan`
 * tells.
 *
 * @param set for girders and steps, the set whose name is meant; absent, or where seats, bearings, lashings or
 * acceptances that name no set mean several sets at once: all sets that have the name
 */
export function renamed(plan: Plan, kind: NameKind, from: string, to: string, set?: string): Plan {
  const scoped = kind === "girder" || kind === "step";
  const only = scoped && set !== undefined && !sharedAmongSets(plan, kind, from) ? set : undefined;
  const inSet = (reference: Reference, trail: readonly unknown[]): boolean => {
    if (only === undefined || reference.whose === "plan") return true;
    const of = setOf(reference, trail);
    return of === undefined || of === only;
  };
  const exactly = (name: string) => (name === from ? to : name);
  const support = supportRename(kind, from, to);
  let out: unknown = plan;
  for (const reference of references) {
    const change = reference.to === kind ? exactly : reference.to === "support" ? support : null;
    if (change === null) continue;
    const rename: Rename = (name, trail) => (inSet(reference, trail) ? change(name) : name);
    out = mapNames(out, reference.at, rename, []);
    if (reference.at[reference.at.length - 1] !== "@") continue;
    // Records that are kept by name stand in sets alone.
    const meant = (index: number) => only === undefined || plan.sets[index]?.id === only;
    out = placesRenamed(out, reference.at, (name, index) => (meant(index) ? change(name) : name));
  }
  const subject = subjectRename(kind, from, to);
  if (subject !== null) {
    for (const at of subjects) {
      const rename: Rename = (words, trail) => {
        const of = (trail[trail.length - 1] as { set?: string }).set;
        return only === undefined || of === undefined || of === only ? subject(words) : words;
      };
      out = mapNames(out, at, rename, []);
    }
  }
  for (const at of namedAt[kind]) {
    const own: Reference = { at, to: kind, whose: scoped ? "own set" : "plan" };
    out = mapNames(out, at, (name, trail) => (inSet(own, trail) ? exactly(name) : name), []);
  }
  return out as Plan;
}
