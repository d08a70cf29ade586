// Plans for witnesses: a scenario of the project, changed.

import { readFileSync } from "node:fs";
import { type Plan, readPlan, sentence } from "../../src/plan/index.ts";

/** A scenario by name, with a change made to it; throws when it cannot be read. */
export function readScenario(name: string, change: (plan: Plan) => void = () => {}): Plan {
  const read = readPlan(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), "utf8"));
  if (!read.ok) throw new Error(read.errors.map((e) => sentence(e)).join("; "));
  const plan = structuredClone(read.plan);
  change(plan);
  return plan;
}
