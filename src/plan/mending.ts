// Whether a file with errors can be mended here: its lists and parts stand where they belong, and only values are at fault.

import type * as z from "zod/mini";
import { valueAt } from "./edit.ts";
import { migrate } from "./migrate.ts";
import { largestFile } from "./read.ts";
import { printPath } from "./reading/planError.ts";
import { bytesOf, scanJson } from "./reading/scanJson.ts";
import { type Plan, planFormat, planSchema, planVersion } from "./schema.ts";

/** A draft that forms can show although it has errors; or why there is none, in one sentence. */
export type Mendable = { ok: true; draft: Plan } | { ok: false; why: string };

type Issue = z.core.$ZodIssue;

/** What stands in one cell of a form; a list, a pair or a part of the plan does not. */
const single = new Set(["number", "int", "string", "boolean", "null", "nan"]);

const beyond = (why: string): Mendable => ({ ok: false, why: `It cannot be mended here: ${why}.` });

/** Whether an issue is about a value in one cell, beyond its bounds or missing. `at` is what stands at its place. */
function isOfOneCell(issue: Issue, at: unknown): boolean {
  const scalar = typeof at !== "object" || at === null;
  switch (issue.code) {
    case "invalid_type":
      // Only where nothing stands: a text for a number is more than forms that draw can bear.
      return (at === undefined || at === null) && single.has(issue.expected);
    case "too_small":
    case "too_big":
    case "not_multiple_of":
    case "invalid_format":
    case "custom":
      return true;
    case "invalid_value":
      return scalar;
    case "invalid_union":
      // What may be one of several kinds: one of them has to fit but for its value.
      return (
        scalar &&
        issue.errors.some((kind) => kind.every((one) => one.path.length === 0 && isOfOneCell(one, at)))
      );
    default:
      return false;
  }
}

/** Whether data with errors can be shown and mended in forms; never throws. Data without errors always can. */
export function mendable(data: unknown): Mendable {
  const moved = migrate(data);
  if (!moved.ok) return beyond("it is not a plan of a version that this program knows");
  if (valueAt(moved.data, ["format"]) !== planFormat || valueAt(moved.data, ["version"]) !== planVersion)
    return beyond(`it does not say "format": "${planFormat}", "version": ${planVersion}`);
  const parsed = planSchema.safeParse(moved.data);
  for (const issue of parsed.success ? [] : parsed.error.issues) {
    const path = issue.path.map((part) => (typeof part === "symbol" ? String(part) : part));
    if (isOfOneCell(issue, valueAt(moved.data, path))) continue;
    const what =
      issue.code === "unrecognized_keys"
        ? "a field that no form shows"
        : "something of another kind than belongs there";
    return beyond(`at ${printPath(path)} stands ${what}`);
  }
  return { ok: true, draft: moved.data as Plan };
}

/** The same for the text of a file. */
export function mendableText(text: string): Mendable {
  if (text.length > largestFile || bytesOf(text) > largestFile) return beyond("it is too large");
  const body = text.startsWith("\ufeff") ? text.slice(1) : text;
  const twice = scanJson(body);
  if (!Array.isArray(twice)) return beyond("it is not JSON");
  if (twice.length > 0) return beyond(`at ${printPath(twice[0].path)} a field stands twice`);
  return mendable(JSON.parse(body));
}
