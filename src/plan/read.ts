// From the text of a file to a plan, or to every error in it at once. Nothing here throws on bad input.

import { draftOf } from "./check/draft.ts";
import { checkMachines } from "./check/machineCheck.ts";
import { namesOf } from "./check/names.ts";
import { checkRules, checkValues } from "./check/ruleCheck.ts";
import { checkSets } from "./check/setCheck.ts";
import { checkSite } from "./check/siteCheck.ts";
import { migrate } from "./migrate.ts";
import { type PlanError, type PlanPath, printPath } from "./reading/planError.ts";
import { bytesOf, scanJson } from "./reading/scanJson.ts";
import { issueErrors } from "./reading/words.ts";
import { type Plan, planSchema } from "./schema.ts";

/** A plan, or all errors. */
export type ReadResult = { ok: true; plan: Plan } | { ok: false; errors: PlanError[] };

/** Largest file that is read (bytes); 1 MB = 1e6 bytes. */
export const largestFile = 50e6;

/** Reads the text of a plan file. A byte order mark at its start is passed over. */
export function readPlan(text: string): ReadResult {
  const bytes = text.length > largestFile ? text.length : bytesOf(text);
  if (bytes > largestFile) {
    return fail({
      path: "the file",
      found: `${(bytes / 1e6).toFixed(1)} MB`,
      allowed: "at most 50 MB",
      mend: "Split the plan by sets, or take long records out.",
    });
  }
  const body = text.startsWith("\ufeff") ? text.slice(1) : text;
  const scan = scanJson(body);
  if (!Array.isArray(scan)) {
    return fail({
      path: "the file",
      found: `${scan.found} in line ${scan.line}, column ${scan.column}, which is not JSON`,
      allowed: `${scan.expected} there`,
      mend: "Correct that place, or save the file again from the program that wrote it.",
    });
  }
  const twice = scan.map((t): PlanError => {
    return {
      path: printPath(t.path),
      found: `the field a second time, in line ${t.line}, column ${t.column}`,
      allowed: "every field once",
      mend: "Take one of the two out; only one of them could be kept.",
    };
  });
  const data: unknown = JSON.parse(body);
  const result = checkPlan(data);
  if (twice.length === 0) return result;
  return { ok: false, errors: [...twice, ...(result.ok ? [] : result.errors)] };
}

/** Reads a plan from data, as after an edit or a paste: the same checks as for a file. */
export function checkPlan(input: unknown): ReadResult {
  const moved = migrate(input);
  if (!moved.ok) return fail(moved.error);
  const { data } = moved;
  const parsed = planSchema.safeParse(data);
  const issues = parsed.success ? [] : parsed.error.issues;
  const errors = issues.flatMap((issue) => issueErrors(planSchema, data, issue));
  const faulty = issues.flatMap((issue): PlanPath[] => {
    const path = issue.path.map((p) => (typeof p === "symbol" ? String(p) : p));
    return issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...path, key]) : [path];
  });
  const draft = draftOf(data, faulty, errors);
  const names = namesOf(draft);
  checkSite(draft, names);
  checkMachines(draft, names);
  checkSets(draft, names);
  checkRules(draft, names);
  checkValues(draft, data);
  if (errors.length === 0 && parsed.success) return { ok: true, plan: parsed.data };
  return { ok: false, errors };
}

function fail(error: PlanError): ReadResult {
  return { ok: false, errors: [error] };
}
