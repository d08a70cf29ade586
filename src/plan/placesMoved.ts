// Places that are not confirmed go along when the entries of a list move, so that a doubt stays with its value.
import { type PlanPath, printPath, readPlace } from "./reading/planError.ts";

interface Listed {
  unconfirmed?: { why: string; places: string[] }[];
  sets: { unconfirmed?: string[] }[];
}

function isListed(data: unknown): data is Listed {
  return typeof data === "object" && data !== null && "sets" in data && Array.isArray(data.sets);
}

/** A list of places after the move; the very same list when none of them is in it. */
function followed(
  places: readonly string[],
  base: PlanPath,
  list: PlanPath,
  to: (index: number) => number | null,
): string[] {
  const next = places.flatMap((place) => {
    const path = readPlace(place);
    if (path === null) return [place];
    const whole = [...base, ...path];
    const at = whole[list.length];
    if (typeof at !== "number" || list.some((part, i) => part !== whole[i])) return [place];
    const index = to(at);
    if (index === null) return [];
    return [printPath([...list, index, ...whole.slice(list.length + 1)].slice(base.length))];
  });
  const same = next.length === places.length && next.every((place, i) => place === places[i]);
  return same ? (places as string[]) : next;
}

/**
 * The plan's listed places after the entries of a list moved: `to` gives an entry's new index, or null where it is gone. A
 * set's own list goes along with the set; lists inside the set change the places in it. Data without such lists, and plans
 * with nothing listed there, come back as they were.
 */
export function placesMoved<T>(plan: T, list: PlanPath, to: (index: number) => number | null): T {
  if (!isListed(plan)) return plan;
  let next: Listed = plan;
  if (plan.unconfirmed !== undefined) {
    const groups = plan.unconfirmed.map((group) => {
      const places = followed(group.places, [], list, to);
      return places === group.places ? group : { ...group, places };
    });
    if (groups.some((group, i) => group !== plan.unconfirmed?.[i])) {
      const { unconfirmed: _, ...rest } = next;
      const left = groups.filter((group) => group.places.length > 0);
      next = { ...rest, ...(left.length > 0 ? { unconfirmed: left } : {}) };
    }
  }
  const own = list[0] === "sets" && typeof list[1] === "number" ? next.sets[list[1]] : undefined;
  if (own?.unconfirmed !== undefined) {
    const left = followed(own.unconfirmed, ["sets", list[1]], list, to);
    if (left !== own.unconfirmed) {
      const { unconfirmed: _, ...rest } = own;
      const set = left.length > 0 ? { ...rest, unconfirmed: left } : rest;
      next = { ...next, sets: next.sets.map((one) => (one === own ? set : one)) };
    }
  }
  return next as T;
}
