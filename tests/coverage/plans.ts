// Plans for witnesses: a scenario of the project, changed.

import { readFileSync } from "node:fs";
import type { Finding, Result } from "../../src/checks/index.ts";
import { type Plan, readPlan, sentence } from "../../src/plan/index.ts";

/** A scenario by name, with a change made to it; throws when it cannot be read. */
export function readScenario(name: string, change: (plan: Plan) => void = () => {}): Plan {
  const read = readPlan(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), "utf8"));
  if (!read.ok) throw new Error(read.errors.map((e) => sentence(e)).join("; "));
  const plan = structuredClone(read.plan);
  change(plan);
  return plan;
}

/** One plan for several witnesses, read when the first of them asks for it. */
export function shared(make: () => Plan): () => Plan {
  let plan: Plan | null = null;
  return () => {
    plan ??= make();
    return plan;
  };
}

/** Keeps the first steps of a plan's first set only, up to the one with this id. */
export function cutAfter(plan: Plan, id: string): void {
  const [set] = plan.sets;
  const last = set.steps.findIndex((step) => step.id === id);
  if (last < 0) throw new Error(`the plan has no step '${id}'`);
  set.steps = set.steps.slice(0, last + 1);
}

/** Findings of a check, of one level if given. */
export const found = (result: Result, check: string, level?: Finding["level"]): Finding[] =>
  result.findings.filter((f) => f.check === check && (level === undefined || f.level === level));

/** Subjects of findings, each once, in the order of the alphabet. */
export const subjects = (list: readonly Finding[]): string[] =>
  [...new Set(list.map((f) => f.subject))].sort();
