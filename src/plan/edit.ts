// Editing a plan by place: values, and entries of lists. Every edit gives a new plan that shares all it did not touch.
import { placesMoved } from "./placesMoved.ts";
import { type PlanPath, printPath } from "./reading/planError.ts";

type Holder = Record<string | number, unknown>;

function isHolder(value: unknown): value is Holder {
  return typeof value === "object" && value !== null;
}

/** The value at a path inside data of unknown shape; undefined where the path leaves it. */
export function valueAt(data: unknown, path: PlanPath): unknown {
  let value = data;
  for (const part of path) {
    if (!isHolder(value) || !Object.hasOwn(value, part)) return undefined;
    value = value[part];
  }
  return value;
}

function nowhere(path: PlanPath, at: number): RangeError {
  const place = printPath(path.slice(0, at));
  return new RangeError(
    `edit: found nothing at ${place} that holds ${JSON.stringify(path[at])}, on the way to ${printPath(path)}; allowed are places of the plan. Set ${place} first.`,
  );
}

/** What `change` makes of the value at a path, with everything beside the path shared. */
function changed(data: unknown, path: PlanPath, at: number, change: (value: unknown) => unknown): unknown {
  if (at === path.length) return change(data);
  const part = path[at];
  if (!isHolder(data)) throw nowhere(path, at);
  if (Array.isArray(data)) {
    const items: unknown[] = data;
    const index = Number(part);
    if (!Number.isInteger(index) || index < 0 || index >= items.length) throw nowhere(path, at);
    const after = changed(items[index], path, at + 1, change);
    if (Object.is(items[index], after)) return data;
    return after === undefined ? items.toSpliced(index, 1) : items.with(index, after);
  }
  const before = Object.hasOwn(data, part) ? data[part] : undefined;
  const after = changed(before, path, at + 1, change);
  if (Object.is(before, after)) return data;
  if (after !== undefined) return { ...data, [part]: after };
  const { [part]: _taken, ...rest } = data;
  return rest;
}

/**
 * A plan with another value at a place. The very same plan when the value stands there already.
 * @param value undefined takes an optional field, an entry of a record or an entry of a list away
 * @throws {RangeError} when the path leads nowhere
 */
export function withValue<T>(plan: T, path: PlanPath, value: unknown): T {
  return changed(plan, path, 0, () => value) as T;
}

function ofList(path: PlanPath, change: (list: readonly unknown[]) => readonly unknown[]) {
  return (value: unknown): unknown => {
    if (value !== undefined && !Array.isArray(value)) {
      throw new RangeError(`edit: found no list at ${printPath(path)}; allowed is a list. Name its place.`);
    }
    return change((value as unknown[] | undefined) ?? []);
  };
}

function inside(path: PlanPath, index: number, most: number): void {
  if (Number.isInteger(index) && index >= 0 && index <= most) return;
  throw new RangeError(
    `edit: found entry ${index} of ${printPath(path)}; allowed are 0 to ${most}. Count from 0.`,
  );
}

/** A plan with one more entry in a list, before the one at `index`; a list that is not set begins with it. */
export function withInserted<T>(plan: T, listPath: PlanPath, index: number, item: unknown): T {
  const change = ofList(listPath, (list) => {
    inside(listPath, index, list.length);
    return list.toSpliced(index, 0, item);
  });
  const next = changed(plan, listPath, 0, change) as T;
  return placesMoved(next, listPath, (i) => (i < index ? i : i + 1));
}

/** A plan without `count` entries of a list, from `index` on. */
export function withRemoved<T>(plan: T, listPath: PlanPath, index: number, count = 1): T {
  if (count === 0) return plan;
  const change = ofList(listPath, (list) => {
    inside(listPath, index, list.length - 1);
    inside(listPath, index + count, list.length);
    return list.toSpliced(index, count);
  });
  const next = changed(plan, listPath, 0, change) as T;
  return placesMoved(next, listPath, (i) => (i < index ? i : i < index + count ? null : i - count));
}

/** A plan with one entry of a list moved, so that it stands at `to` afterwards. */
export function withMoved<T>(plan: T, listPath: PlanPath, from: number, to: number): T {
  if (from === to) return plan;
  const change = ofList(listPath, (list) => {
    inside(listPath, from, list.length - 1);
    inside(listPath, to, list.length - 1);
    return list.toSpliced(from, 1).toSpliced(to, 0, list[from]);
  });
  const next = changed(plan, listPath, 0, change) as T;
  const after = (i: number) => (i > from ? i - 1 : i);
  return placesMoved(next, listPath, (i) => (i === from ? to : after(i) < to ? after(i) : after(i) + 1));
}
