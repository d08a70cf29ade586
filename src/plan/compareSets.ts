// Sets side by side: a row for every value in which they differ or that is not confirmed, part by part.
import { valueAt } from "./edit.ts";
import { type PlanPath, printPath } from "./reading/planError.ts";
import type { Plan, PlanSet } from "./schema.ts";
import { doubtsIn, leavesAt } from "./unconfirmed.ts";

/** One value in every set that is compared. `place` counts from the top of a set. */
export interface SetRow {
  place: string;
  /** The part of the set it belongs to, as `girders[1]`; `set` for its own fields. */
  part: string;
  values: (unknown | undefined)[];
  /** Why each is not confirmed; null where it is, or where there is none. */
  doubts: (string | null)[];
  /** Not the same in all sets. */
  differs: boolean;
}

/** Fields of a set that are no values to compare. */
const LEFT_OUT = ["id", "name", "unconfirmed", "steps"];

/** Fields of the set itself are one part. */
const partOfPlace = (path: PlanPath): string =>
  path.length === 1 ? "set" : printPath(path.slice(0, typeof path[1] === "number" ? 2 : 1));

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Paths of all values of a set that are compared; the steps are a row of their own. */
function pathsOf(set: PlanSet): PlanPath[] {
  const fields = Object.entries(set).filter(([key]) => !LEFT_OUT.includes(key));
  return fields.flatMap(([key, value]) => leavesAt(value, [key]));
}

/** Where a set lies and what it lies on: seats and bearings, by line and girder. */
function underneath(
  plan: Plan,
  set: PlanSet,
): { place: string; part: string; value: unknown; path: PlanPath }[] {
  const of = <T extends { line: string; girder: string; set?: string | undefined }>(
    list: readonly T[],
    field: "seats" | "bearings",
    what: string,
  ) =>
    list.flatMap((one, i) => {
      const mine =
        one.set === undefined ? set.girders.some((g) => g.line === one.girder) : one.set === set.id;
      if (!mine) return [];
      const name = `${what} ${one.line} ${one.girder}`;
      return leavesAt(one, ["site", field, i])
        .filter((path) => !["line", "girder", "set"].includes(String(path[3])))
        .map((path) => ({
          place: `${name}: ${printPath(path.slice(3))}`,
          part: name,
          value: valueAt(plan, path),
          path,
        }));
    });
  return [...of(plan.site.seats, "seats", "seat"), ...of(plan.site.bearings, "bearings", "bearing")];
}

/** Every value of the named sets, in the order of the first set that has it. Throws nothing; unknown names give no column. */
export function compareSets(plan: Plan, ids: readonly string[]): SetRow[] {
  const columns = ids.flatMap((id) => {
    const index = plan.sets.findIndex((set) => set.id === id);
    return index < 0 ? [] : [{ set: plan.sets[index], index }];
  });
  const rows = new Map<string, SetRow>();
  const put = (column: number, place: string, part: string, value: unknown, doubt: string | null) => {
    let row = rows.get(place);
    if (row === undefined) {
      const blank = columns.map(() => undefined);
      row = { place, part, values: blank, doubts: columns.map(() => null), differs: false };
      rows.set(place, row);
    }
    row.values[column] = value;
    row.doubts[column] = doubt;
  };
  const doubtAt = doubtsIn(plan);
  columns.forEach(({ set, index }, c) => {
    for (const path of pathsOf(set))
      put(c, printPath(path), partOfPlace(path), valueAt(set, path), doubtAt(["sets", index, ...path]));
    const steps = set.steps.map((step) => step.do).join(", ");
    put(c, "steps", "steps", steps, doubtAt(["sets", index, "steps"]));
    for (const { place, part, value, path } of underneath(plan, set))
      put(c, place, part, value, doubtAt(path));
  });
  return [...rows.values()].map((row) => ({
    ...row,
    differs: row.values.some((value) => !same(value, row.values[0])),
  }));
}

/** Places of a set's rows, as `compareSets` gives them, from the top of the plan: for `confirm(plan, null, places)`. */
export function placesInPlan(plan: Plan, setId: string, places: readonly string[]): string[] {
  const index = plan.sets.findIndex((set) => set.id === setId);
  if (index < 0) return [];
  const below = new Map(
    underneath(plan, plan.sets[index]).map(({ place, path }) => [place, printPath(path)]),
  );
  return places.map((place) => below.get(place) ?? `${printPath(["sets", index])}.${place}`);
}
