// Places that are not confirmed go along when entries of a list move or get other names, so that a doubt stays with its value.
import { type PlanPath, printPath, readPlace } from "./reading/planError.ts";
import { fits } from "./references.ts";

interface Listed {
  unconfirmed?: { why: string; places: string[] }[];
  sets: { unconfirmed?: string[] }[];
}

function isListed(data: unknown): data is Listed {
  return typeof data === "object" && data !== null && "sets" in data && Array.isArray(data.sets);
}

/** A place from the top of the plan, and the place that it becomes; null where it is gone. */
type Becomes = (whole: PlanPath) => PlanPath | null;

/** A list of places as they become, read from `base`; the very same list when none of them is another. */
function followed(places: readonly string[], base: PlanPath, becomes: Becomes): string[] {
  const next = places.flatMap((place) => {
    const path = readPlace(place);
    if (path === null) return [place];
    const whole = [...base, ...path];
    const to = becomes(whole);
    if (to === null) return [];
    return [to === whole ? place : printPath(to.slice(base.length))];
  });
  const same = next.length === places.length && next.every((place, i) => place === places[i]);
  return same ? (places as string[]) : next;
}

/** The plan with its list of places as they become, and those of the sets that are meant. */
function withPlaces<T extends Listed>(plan: T, ofSet: (set: number) => boolean, becomes: Becomes): T {
  let next: Listed = plan;
  if (plan.unconfirmed !== undefined) {
    const groups = plan.unconfirmed.map((group) => {
      const places = followed(group.places, [], becomes);
      return places === group.places ? group : { ...group, places };
    });
    if (groups.some((group, i) => group !== plan.unconfirmed?.[i])) {
      const { unconfirmed: _, ...rest } = next;
      const left = groups.filter((group) => group.places.length > 0);
      next = { ...rest, ...(left.length > 0 ? { unconfirmed: left } : {}) };
    }
  }
  const sets = plan.sets.map((set, i) => {
    if (set.unconfirmed === undefined || !ofSet(i)) return set;
    const left = followed(set.unconfirmed, ["sets", i], becomes);
    if (left === set.unconfirmed) return set;
    const { unconfirmed: _, ...rest } = set;
    return left.length > 0 ? { ...rest, unconfirmed: left } : rest;
  });
  if (sets.some((set, i) => set !== plan.sets[i])) next = { ...next, sets };
  return next as T;
}

/**
 * The plan's listed places after the entries of a list moved: `to` gives an entry's new index, or null where it is gone. A
 * set's own list goes along with the set; lists inside the set change the places in it. Data without such lists, and plans
 * with nothing listed there, come back as they were.
 */
export function placesMoved<T>(plan: T, list: PlanPath, to: (index: number) => number | null): T {
  if (!isListed(plan)) return plan;
  const inside = (set: number) => list.length > 1 && list[0] === "sets" && list[1] === set;
  return withPlaces(plan, inside, (whole) => {
    const at = whole[list.length];
    if (typeof at !== "number" || list.some((part, i) => part !== whole[i])) return whole;
    const index = to(at);
    return index === null ? null : [...list, index, ...whole.slice(list.length + 1)];
  });
}

/**
 * The plan's listed places after names of entries of a record became others. `at` is where such a name stands; `rename` is
 * told the name and the index of its set.
 */
export function placesRenamed<T>(
  plan: T,
  at: readonly string[],
  rename: (name: string, set: number) => string,
): T {
  if (!isListed(plan)) return plan;
  const end = at.length - 1;
  return withPlaces(
    plan,
    () => true,
    (whole) => {
      if (!fits(whole.slice(0, at.length), at)) return whole;
      const name = String(whole[end]);
      const to = rename(name, Number(whole[1]));
      return to === name ? whole : whole.with(end, to);
    },
  );
}
