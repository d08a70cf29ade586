// Plans for witnesses: a scenario of the project, changed.

import { readFileSync } from "node:fs";
import { expect } from "vitest";
import type { CheckList, Finding, Measure, Result } from "../../src/checks/index.ts";
import { type Plan, readPlan, type Step, sentence } from "../../src/plan/index.ts";
import type { SetContext } from "../../src/sequence/index.ts";

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

/** A value lies within a part of a number worked out by hand. */
export const about = (value: number | null | undefined, hand: number, part: number): void =>
  expect(Math.abs((value ?? Number.NaN) - hand), `${value}; by hand ${hand}`).toBeLessThanOrEqual(
    part * Math.abs(hand),
  );

/** A step without what a witness does not need: its id is its kind unless given, and it lists no support. */
export const step = (brief: { do: Step["do"]; id?: string; [field: string]: unknown }): Step =>
  ({ id: brief.do, carries: [], ...brief }) as unknown as Step;

/** Leaves of the first set's steps a single one, in which it stands on its trains. */
export function onlyStands(plan: Plan, brakes: string[] = []): void {
  const carries = plan.transporters.flatMap((t) => t.groups.map((g) => g.name));
  plan.sets[0].steps = [step({ do: "hold", id: "stand", releasedBy: "", evidence: "", carries, brakes })];
  plan.accept = [];
}

/** The measure of a check that is read at a pose, out of the checks handed in. */
export function measured(checks: CheckList, ctx: SetContext, check: string, subject: string): Measure {
  const all = [...checks.makers, ...checks.onDemand].flatMap((make) => make(ctx));
  const one = all.find((m) => m.check === check && m.subject === subject);
  if (one === undefined) throw new Error(`nothing measures ${check} of ${subject}`);
  return one;
}
