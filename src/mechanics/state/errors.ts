// An error in a state file: where it is, what was found, what is allowed, how to mend it.

export type StatePath = readonly (string | number)[];

/** All four parts are words for the user; `path` reads like `girders[0].pieces[1].from`. */
export interface StateError {
  path: string;
  found: string;
  allowed: string;
  mend: string;
}

/** Prints a path; the whole file is `the file`, and odd names stand in quotes: `ground["rear:4L"]`. */
export function printPath(path: StatePath): string {
  let out = "";
  for (const part of path) {
    if (typeof part === "number") out += `[${part}]`;
    else if (!/^[A-Za-z_]\w*$/.test(part)) out += `[${JSON.stringify(part)}]`;
    else out += out === "" ? part : `.${part}`;
  }
  return out === "" ? "the file" : out;
}

/** What was found, in words short enough for a sentence. */
export function printFound(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string")
    return value.length > 60 ? `${JSON.stringify(value.slice(0, 57))}...` : JSON.stringify(value);
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (typeof value === "object" && value !== null) return "an object";
  return String(value);
}

/** `a, b or c`, shortened after a dozen; `none` for an empty list. */
export function listOf(names: readonly string[], last: "and" | "or"): string {
  if (names.length === 0) return "none";
  const shown = names.slice(0, 12);
  if (names.length > 12) return `${shown.join(", ")} and ${names.length - 12} more`;
  if (shown.length === 1) return shown[0];
  return `${shown.slice(0, -1).join(", ")} ${last} ${shown[shown.length - 1]}`;
}

/** The value at a path inside data of unknown shape; undefined where the path leaves it. */
export function valueAt(data: unknown, path: StatePath): unknown {
  let value = data;
  for (const part of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}
