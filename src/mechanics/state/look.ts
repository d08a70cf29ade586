// A state that may still hold errors, for checks that look at several places at once: parts in which the reader found
// a fault are passed over, so that one slip is reported once and the rest is checked.

import { listOf, printFound, printPath, type StateError, type StatePath, valueAt } from "./errors.ts";

/** A sound part and where it stands. */
export interface Part<T> {
  item: T;
  path: StatePath;
}

/** What the checks read and where they write. */
export interface Look {
  /** Sound members of a list at the top of the file. */
  each<T>(list: string): Part<T>[];
  /** Sound entries of an object of names. */
  entries<T>(path: StatePath): [string, T, StatePath][];
  /** Names in an object of names, faulty entries included; null when the object itself is faulty. */
  keys(path: StatePath): string[] | null;
  /** Names in a list, those of faulty members too; null when some cannot be told. */
  names(list: string): string[] | null;
  say(path: StatePath, found: string, allowed: string, mend: string): void;
}

/** A look at data of unknown shape; `faulty` are the places where the reader found faults. */
export function lookAt(data: unknown, faulty: readonly StatePath[], errors: StateError[]): Look {
  const key = (path: StatePath) => JSON.stringify(path);
  const above = new Set<string>();
  for (const path of faulty) for (let n = 0; n <= path.length; n++) above.add(key(path.slice(0, n)));
  const faults = new Set(faulty.map(key));
  const inside = (path: StatePath) => path.some((_, n) => faults.has(key(path.slice(0, n + 1))));
  const sound = (path: StatePath) => !above.has(key(path)) && !inside(path);
  return {
    each: <T>(list: string) => {
      const members = valueAt(data, [list]);
      if (!Array.isArray(members) || inside([list])) return [];
      return members
        .map((item, i): Part<T> => ({ item: item as T, path: [list, i] }))
        .filter(({ path }) => sound(path));
    },
    entries: <T>(path: StatePath) => {
      const object = valueAt(data, path);
      if (typeof object !== "object" || object === null || Array.isArray(object) || inside(path)) return [];
      return Object.entries(object)
        .map(([name, value]): [string, T, StatePath] => [name, value as T, [...path, name]])
        .filter(([, , at]) => sound(at));
    },
    keys: (path) => {
      const object = valueAt(data, path);
      if (object === undefined) return [];
      return typeof object !== "object" || object === null || inside(path) ? null : Object.keys(object);
    },
    names: (list) => {
      const members = valueAt(data, [list]);
      if (members === undefined) return [];
      if (!Array.isArray(members) || inside([list])) return null;
      const all = members.map((item) => valueAt(item, ["name"]));
      const texts = all.filter((name) => typeof name === "string");
      return texts.length === all.length ? texts : null;
    },
    say: (path, found, allowed, mend) => {
      errors.push({ path: printPath(path), found, allowed, mend });
    },
  };
}

/** Says so for every name that stands earlier in the same list. */
export function unique(look: Look, list: string, kind: string): void {
  const seen = new Set<string>();
  for (const { item, path } of look.each<{ name: string }>(list)) {
    if (seen.has(item.name))
      look.say(
        [...path, "name"],
        printFound(item.name),
        `a name that no other ${kind} has`,
        "Give it another one.",
      );
    seen.add(item.name);
  }
}

/** Says so when a list holds an entry twice. */
export function noRepeats(look: Look, path: StatePath, values: readonly (string | number)[]): void {
  values.forEach((value, i) => {
    if (values.indexOf(value) < i)
      look.say(
        [...path, i],
        `${printFound(value)} a second time`,
        "every entry once",
        "Take one of the two out.",
      );
  });
}

/** Says so when a name is not among the known ones; null means that they cannot be told. */
export function refer(
  look: Look,
  path: StatePath,
  name: string,
  known: readonly string[] | null,
  kind: string,
): void {
  if (known === null || known.includes(name)) return;
  look.say(
    path,
    printFound(name),
    known.length === 0
      ? `the name of a ${kind}; there is none`
      : `the name of a ${kind}: ${listOf(known, "or")}`,
    `Correct the name, or add the ${kind}.`,
  );
}
