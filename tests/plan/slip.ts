// Spoiling the sample plan at one place, and what reading it then says.
import { type PlanError, readPlan } from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

/** What is wrong, where a value is put, and the one error that it yields: path, found, allowed, how to mend it. */
export type Slip = [what: string, at: string, value: unknown, error: [string, string, string, string]];

/** Data of unknown shape, for spoiling. */
export type Loose = { [key: string]: Loose } & Loose[] & unknown;

/** Errors of the sample after `spoil` did its work on it. */
export function errorsAfter(spoil: (plan: Loose) => void): PlanError[] {
  const plan = structuredClone(samplePlan()) as unknown as Loose;
  spoil(plan);
  const result = readPlan(JSON.stringify(plan));
  return result.ok ? [] : result.errors;
}

/** Sets the value at a path like `sets.0.girders.1.y_m`; undefined takes the field away. */
export function put(plan: Loose, path: string, value: unknown): void {
  const parts = path.split(".");
  const last = parts.pop() ?? "";
  let at = plan as unknown as Record<string, unknown>;
  for (const part of parts) at = at[part] as Record<string, unknown>;
  if (value === undefined) delete at[last];
  else at[last] = value;
}
