// A plan that may still hold errors, for checks that look at several places at once. Parts in which the reader found
// a fault are left out, so that one slip is reported once and everything sound is still checked.

import { valueAt } from "../edit.ts";
import {
  listOf,
  nearest,
  type PlanError,
  type PlanPath,
  printFound,
  printPath,
} from "../reading/planError.ts";

/** A sound part and where it stands. */
export interface Part<T> {
  item: T;
  path: PlanPath;
}

/** What the checks read and where they write. */
export interface Draft {
  /** Sound members of the list at `path`, as the reader types them; none if there is no list. */
  each<T>(path: PlanPath): Part<T>[];
  /** The value at `path` if the reader found no fault in it, else null. */
  sound<T>(path: PlanPath): T | null;
  /** Members of the list at `path`, faulty ones included. */
  count(path: PlanPath): number;
  /** One text field of every member of a list, faulty members included; null if some or all cannot be told. */
  names(path: PlanPath, field: string): string[] | null;
  /** Adds an error. */
  say(path: PlanPath, found: string, allowed: string, mend: string): void;
}

/** A draft over data of unknown shape; `faulty` are the paths where the reader found faults. */
export function draftOf(data: unknown, faulty: readonly PlanPath[], errors: PlanError[]): Draft {
  const key = (path: PlanPath) => JSON.stringify(path);
  const touched = new Set<string>();
  for (const path of faulty) {
    for (let n = 0; n <= path.length; n++) touched.add(key(path.slice(0, n)));
  }
  const insideFault = new Set(faulty.map(key));
  const broken = (path: PlanPath) => path.some((_, n) => insideFault.has(key(path.slice(0, n + 1))));
  const listAt = (path: PlanPath): unknown[] | null => {
    const list = valueAt(data, path);
    return Array.isArray(list) && !broken(path) ? list : null;
  };
  return {
    each: <T>(path: PlanPath) => {
      const parts: Part<T>[] = [];
      for (const [i, item] of (listAt(path) ?? []).entries()) {
        const at = [...path, i];
        if (!touched.has(key(at))) parts.push({ item: item as T, path: at });
      }
      return parts;
    },
    sound: <T>(path: PlanPath) => {
      const value = valueAt(data, path);
      return value === undefined || touched.has(key(path)) || broken(path) ? null : (value as T);
    },
    count: (path) => listAt(path)?.length ?? 0,
    names: (path, field) => {
      const list = listAt(path);
      if (list === null) return null;
      const values = list.map((item) => valueAt(item, [field]));
      const texts = values.filter((value) => typeof value === "string");
      return texts.length === values.length ? texts : null;
    },
    say: (path, found, allowed, mend) => {
      errors.push({ path: printPath(path), found, allowed, mend });
    },
  };
}

/** Says so when `value` is not among the known names of a kind; `known` null means that the names cannot be told. */
export function refer(
  draft: Draft,
  path: PlanPath,
  value: string,
  known: readonly string[] | null,
  kind: string,
): void {
  if (known === null || known.includes(value)) return;
  const near = nearest(value, known);
  draft.say(
    path,
    printFound(value),
    known.length === 0
      ? `the name of a ${kind}; there is none`
      : `the name of a ${kind}: ${listOf(known, "or")}`,
    near === null ? `Correct the name, or add the ${kind}.` : `Did you mean "${near}"?`,
  );
}

/** Says so for every name that stands earlier in the same list. */
export function unique(draft: Draft, path: PlanPath, field: string, kind: string): void {
  const seen = new Set<string>();
  for (const { item, path: at } of draft.each<Record<string, unknown>>(path)) {
    const value = String(item[field]);
    if (seen.has(value)) {
      draft.say(
        [...at, field],
        printFound(value),
        `${field === "id" ? "an" : "a"} ${field} that no other ${kind} has`,
        "Give it another one.",
      );
    }
    seen.add(value);
  }
}

/** Says so when a list of names holds one twice. */
export function noRepeats(draft: Draft, path: PlanPath, names: readonly string[]): void {
  names.forEach((value, i) => {
    if (names.indexOf(value) < i) {
      draft.say(
        [...path, i],
        `${printFound(value)} a second time`,
        "every name once",
        "Take one of the two out.",
      );
    }
  });
}

/** Says so when a station lies off the set. */
export function onSet(draft: Draft, path: PlanPath, at: number, length: number | null, what: string): void {
  if (length === null || (at >= -1e-9 && at <= length + 1e-9)) return;
  draft.say(
    path,
    `${what} at ${at} m`,
    `a station on the set, from 0 to ${length} m`,
    "Move it on to the set.",
  );
}

/** Says so for every member whose number does not exceed the one before it. */
export function rising(
  draft: Draft,
  values: readonly { value: number; path: PlanPath }[],
  what: string,
  unit: string,
): void {
  for (let i = 1; i < values.length; i++) {
    const before = values[i - 1].value;
    if (values[i].value > before) continue;
    draft.say(
      values[i].path,
      `${what} ${values[i].value} ${unit} after ${before} ${unit}`,
      `rising values, here more than ${before} ${unit}`,
      "Put the points in order, and give each place once.",
    );
  }
}
