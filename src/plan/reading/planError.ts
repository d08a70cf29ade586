// An error in a plan file: where it is, what was found, what is allowed, how to mend it; and the sentence that says so.

/** A place in a plan file, from the outermost field inward. */
export type PlanPath = readonly (string | number)[];

/** One error in a plan file. All four parts are words for the user; `path` reads like `sets[0].girders[1].y_m`. */
export interface PlanError {
  path: string;
  found: string;
  allowed: string;
  mend: string;
}

/** Prints a path: `sets[0].girders[1].y_m`; the whole file is `the file`. Odd names stand in quotes: `a["b c"]`. */
export function printPath(path: PlanPath): string {
  let out = "";
  for (const part of path) {
    if (typeof part === "number") out += `[${part}]`;
    else if (!/^[A-Za-z_]\w*$/.test(part)) out += `[${JSON.stringify(part)}]`;
    else out += out === "" ? part : `.${part}`;
  }
  return out === "" ? "the file" : out;
}

/** Reads a printed path, as `sets[0].girders[1].y_m`; null for anything else, such as free words with blanks. */
export function readPlace(text: string): PlanPath | null {
  const path: (string | number)[] = [];
  let rest = text;
  while (rest !== "") {
    const found =
      /^\[(\d+)\]/.exec(rest) ??
      (path.length === 0 ? /^([A-Za-z_]\w*)/.exec(rest) : /^\.([A-Za-z_]\w*)/.exec(rest));
    if (found !== null) {
      path.push(found[0].startsWith("[") ? Number(found[1]) : found[1]);
      rest = rest.slice(found[0].length);
      continue;
    }
    const quoted = /^\[("(?:[^"\\]|\\.)*")\]/.exec(rest);
    if (quoted === null) return null;
    path.push(JSON.parse(quoted[1]) as string);
    rest = rest.slice(quoted[0].length);
  }
  return path.length === 0 ? null : path;
}

/** One sentence for the user: place, what was found, what is allowed, how to mend it. */
export function sentence(error: PlanError): string {
  return `${error.path}: found ${error.found}; allowed: ${error.allowed}. ${error.mend}`;
}

/** What was found, in words short enough for a sentence. */
export function printFound(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (typeof value === "string") {
    return value.length > 60 ? `${JSON.stringify(value.slice(0, 57))}...` : JSON.stringify(value);
  }
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (typeof value === "object") {
    const keys = Object.keys(value);
    return keys.length === 0 ? "an empty object" : `an object with ${listOf(keys)}`;
  }
  return String(value);
}

/** `a, b or c`, shortened after a dozen; `none` for an empty list. */
export function listOf(names: readonly string[], last = "and"): string {
  if (names.length === 0) return "none";
  const shown = names.slice(0, 12).map((n) => (n.length > 60 ? `${n.slice(0, 57)}...` : n));
  if (names.length > 12) return `${shown.join(", ")} and ${names.length - 12} more`;
  if (shown.length === 1) return shown[0];
  return `${shown.slice(0, -1).join(", ")} ${last} ${shown[shown.length - 1]}`;
}

/** The known name nearest to `given`, or null when none is near (more than a third of its letters differ). */
export function nearest(given: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  if (given.length > 100) return null;
  for (const name of known) {
    const d = lettersApart(given.toLowerCase(), name.toLowerCase());
    if (d < least) {
      least = d;
      best = name;
    }
  }
  return best !== null && least <= Math.max(1, Math.ceil(best.length / 3)) ? best : null;
}

/** Levenshtein distance: insertions, deletions and replacements that turn one word into the other. */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    }
    row = next;
  }
  return row[b.length];
}
