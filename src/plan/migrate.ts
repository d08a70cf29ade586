// Older file versions: each gets one entry here that turns it into the next, and a fixture that is kept for good.

import { valueAt } from "./edit.ts";
import { type PlanError, printFound } from "./reading/planError.ts";
import { planFormat, planVersion } from "./schema.ts";

/** Turns the data of one version into the data of the next. */
type Migration = (data: Record<string, unknown>) => Record<string, unknown>;

/** By the version that it starts from. Version 1 is the first, so that nothing stands here yet. */
const migrations: ReadonlyMap<number, Migration> = new Map();

/** The data in today's version, or why they cannot be brought there. */
export function migrate(data: unknown): { ok: true; data: unknown } | { ok: false; error: PlanError } {
  if (typeof data !== "object" || data === null || Array.isArray(data)) {
    return {
      ok: false,
      error: {
        path: "the file",
        found: printFound(data),
        allowed: "one object, the plan",
        mend: "Open a plan file.",
      },
    };
  }
  const format = valueAt(data, ["format"]);
  if (typeof format === "string" && format !== planFormat) {
    return {
      ok: false,
      error: {
        path: "format",
        found: printFound(format),
        allowed: `"${planFormat}"`,
        mend: "This is a file of another kind: open a plan file.",
      },
    };
  }
  const version = valueAt(data, ["version"]);
  if (typeof version !== "number" || !Number.isInteger(version)) return { ok: true, data };
  if (version > planVersion) {
    return {
      ok: false,
      error: {
        path: "version",
        found: `version ${version}, newer than this program knows`,
        allowed: `versions up to ${planVersion}`,
        mend: "Open it with a newer version of this program; the file was not changed.",
      },
    };
  }
  let moved = { ...data } as Record<string, unknown>;
  for (let v = version; v < planVersion; v++) {
    const step = migrations.get(v);
    if (step === undefined) return { ok: true, data };
    moved = step(moved);
  }
  return { ok: true, data: moved };
}
