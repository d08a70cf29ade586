// From the text of a state file to a State, or to every error in it at once. Nothing here throws on bad input.

import type * as z from "zod/mini";
import { crossCheck } from "./check.ts";
import { listOf, printFound, printPath, type StateError, type StatePath, valueAt } from "./errors.ts";
import { walkJson } from "./json.ts";
import { stateFormat, stateSchema, stateVersion } from "./schema.ts";
import type { State } from "./types.ts";

/** A State, or all errors. */
export type ReadStateResult = { ok: true; state: State } | { ok: false; errors: StateError[] };

/** Longest text that is read, in signs. */
const longest = 20e6;

/**
 * Reads the text of a state file. Optional fields stay as they are written; a byte order mark at the start is passed
 * over. A text that is no JSON gives that one error; anything else gives all errors of form and of sense together.
 */
export function readState(text: string): ReadStateResult {
  if (text.length > longest)
    return fail({
      path: "the file",
      found: `${(text.length / 1e6).toFixed(1)} million signs`,
      allowed: "at most 20 million",
      mend: "A state holds one pose of one set: take the rest out.",
    });
  const body = text.startsWith("\ufeff") ? text.slice(1) : text;
  const walked = walkJson(body);
  if (!Array.isArray(walked))
    return fail({
      path: "the file",
      found: `${walked.found} in line ${walked.line}, column ${walked.column}, which is not JSON`,
      allowed: `${walked.allowed} there`,
      mend: "Correct that place, or save the file again from the program that wrote it.",
    });
  const data: unknown = JSON.parse(body);
  const other = kindOf(data);
  if (other !== null) return fail(other);
  const repeats = walked.map((r): StateError => {
    return {
      path: printPath(r.path),
      found: `the field a second time, in line ${r.line}, column ${r.column}`,
      allowed: "every field once",
      mend: "Take one of the two out; only one of them could be kept.",
    };
  });
  const parsed = stateSchema.safeParse(data);
  const issues = parsed.success ? [] : parsed.error.issues;
  const faulty = issues.flatMap((issue) => {
    const path = plainPath(issue.path);
    return issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...path, key]) : [path];
  });
  const errors = [
    ...repeats,
    ...issues.flatMap((issue) => errorsOf(data, issue)),
    ...crossCheck(data, faulty),
  ];
  if (errors.length === 0 && parsed.success) return { ok: true, state: parsed.data };
  return { ok: false, errors };
}

const fail = (error: StateError): ReadStateResult => ({ ok: false, errors: [error] });

/** Why the data are no state file of this version at all, or null. */
function kindOf(data: unknown): StateError | null {
  if (typeof data !== "object" || data === null || Array.isArray(data))
    return {
      path: "the file",
      found: printFound(data),
      allowed: "one object, the state",
      mend: "Open a state file.",
    };
  const format = valueAt(data, ["format"]);
  if (typeof format === "string" && format !== stateFormat)
    return {
      path: "format",
      found: printFound(format),
      allowed: `"${stateFormat}"`,
      mend: "This is a file of another kind: open a state file.",
    };
  const version = valueAt(data, ["version"]);
  if (typeof version === "number" && Number.isInteger(version) && version > stateVersion)
    return {
      path: "version",
      found: `version ${version}, newer than this program knows`,
      allowed: `versions up to ${stateVersion}`,
      mend: "Open it with a newer version of this program; the file was not changed.",
    };
  return null;
}

const plainPath = (path: readonly PropertyKey[]): StatePath =>
  path.map((part) => (typeof part === "symbol" ? String(part) : part));

/** One issue of the reader in words; its message says what is allowed at its place. */
function errorsOf(data: unknown, issue: z.core.$ZodIssue): StateError[] {
  const path = plainPath(issue.path);
  const value = valueAt(data, path);
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => ({
      path: printPath([...path, key]),
      found: `the unknown field ${printFound(key)}`,
      allowed: `here ${issue.message}`,
      mend: `Take the field out, or correct its name${near(key, issue.message)}.`,
    }));
  const error = { path: printPath(path), found: printFound(value), allowed: issue.message };
  if (value === undefined) return [{ ...error, mend: `Add the field "${String(path[path.length - 1])}".` }];
  if (typeof value === "string" && /number/.test(issue.message))
    return [{ ...error, mend: "Write a number, without quotes or unit." }];
  if (typeof value === "number")
    return [{ ...error, mend: "Correct the number; the file is in m, N, kg and Pa." }];
  return [{ ...error, mend: "Write a value of the allowed kind." }];
}

/** A hint when the unknown name differs from a known one in case or in a single sign at an end. */
function near(key: string, words: string): string {
  const plain = (name: string) => name.toLowerCase().replace(/[^a-z]/g, "");
  const known = words.replace(/^the fields /, "").split(/, | and /);
  const hits = known.filter((name) => {
    const [a, b] = [plain(name), plain(key)];
    return a === b || (a.length > 2 && (b.startsWith(a) || (b.length > 2 && a.startsWith(b))));
  });
  return hits.length === 0 ? "" : `: did you mean ${listOf(hits, "or")}?`;
}
