// The scenarios as the tests of sequence, checks and scenarios use them: read once, changed in copies, run.

import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { checkPlan, type Plan, readPlan, type Step, sentence } from "../../src/plan/index.ts";
import {
  type Pose,
  poseAt,
  prepareContext,
  runSet,
  type SetContext,
  type SetRun,
  type Situation,
  type StepRun,
} from "../../src/sequence/index.ts";

export type ScenarioName = "demo" | "one-girder" | "planted-faults" | "order-faults";
export const scenarioNames: readonly ScenarioName[] = ["demo", "one-girder", "planted-faults"];

const read = new Map<ScenarioName, Plan>();

/** A fresh copy of a scenario, changed; throws with all errors when it is no longer a plan. */
export function scenario(name: ScenarioName, change: (plan: Plan) => void = () => {}): Plan {
  let plan = read.get(name);
  if (!plan) {
    const file = new URL(`../../scenarios/${name}.json`, import.meta.url);
    const result = readPlan(readFileSync(file, "utf8"));
    if (!result.ok) throw new Error(result.errors.map(sentence).join("\n"));
    plan = result.plan;
    read.set(name, plan);
  }
  const copy = structuredClone(plan);
  change(copy);
  // What names a step that was taken out goes with it.
  const known = (id: string) => copy.sets.some((set) => set.steps.some((s) => s.id === id));
  const { below } = copy.site;
  if (below?.states) below.states = below.states.filter((s) => known(s.step));
  copy.accept = copy.accept.filter((a) => a.step === undefined || known(a.step));
  if (copy.expected) copy.expected = copy.expected.filter((e) => e.step === undefined || known(e.step));
  const checked = checkPlan(structuredClone(copy));
  if (!checked.ok) throw new Error(checked.errors.map(sentence).join("\n"));
  return checked.plan;
}

/** A step with what a test has to say about it: its id is its kind unless given, and it lists no support. */
export function step(brief: { do: Step["do"]; id?: string; [field: string]: unknown }): Step {
  return { id: brief.do, carries: [], ...brief } as unknown as Step;
}

/** The steps of a scenario up to and including one, then others. */
export function upTo(plan: Plan, id: string, ...then: Step[]): Step[] {
  const { steps } = plan.sets[0];
  const i = steps.findIndex((s) => s.id === id);
  if (i < 0) throw new Error(`no step '${id}'`);
  return [...steps.slice(0, i + 1), ...then];
}

export interface Ran {
  plan: Plan;
  ctx: SetContext;
  run: SetRun;
  /** The run of a step by its id. */
  step: (id: string) => StepRun;
  /** The last stored situation and pose of a step. */
  end: (id: string) => Pose;
}

/** The first set of a plan, run. */
export function ran(plan: Plan): Ran {
  const ctx = prepareContext(plan, plan.sets[0].id);
  const run = runSet(ctx, []);
  const of = (id: string): StepRun => {
    const found = run.steps.find((s) => s.step.id === id);
    if (!found) throw new Error(`no step '${id}'`);
    return found;
  };
  return { plan, ctx, run, step: of, end: (id) => poseAt(ctx, of(id), 1) };
}

/** The one-girder plan with steps put after one of its own, run. */
export function oneGirderAfter(id: string, ...then: Parameters<typeof step>[0][]): Ran {
  return ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(plan, id, ...then.map(step));
    }),
  );
}

/** The one-girder plan with nothing but these steps, run. */
export function oneGirderWith(...list: Parameters<typeof step>[0][]): Ran {
  return ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = list.map(step);
    }),
  );
}

const kept = new Map<ScenarioName, Ran>();

/** A scenario as it stands, run once for all tests of a file. */
export function ranScenario(name: ScenarioName): Ran {
  let found = kept.get(name);
  if (!found) {
    found = ran(scenario(name));
    kept.set(name, found);
  }
  return found;
}

/** Force of a support in a pose, N; throws when there is no such support. */
export function force(ctx: SetContext, pose: Pose, name: string): number {
  return pose.forces[indexOf(ctx, name)];
}

/** Share of the set's weight on a support in a pose, N. */
export function share(ctx: SetContext, pose: Pose, name: string): number {
  return pose.shares[indexOf(ctx, name)];
}

function indexOf(ctx: SetContext, name: string): number {
  const i = ctx.supports.findIndex((s) => s.name === name);
  if (i < 0) throw new Error(`no support '${name}' among ${ctx.supports.map((s) => s.name).join(", ")}`);
  return i;
}

/** Sum of the shares of some supports, N. */
export function shares(ctx: SetContext, pose: Pose, names: readonly string[]): number {
  return names.reduce((sum, name) => sum + share(ctx, pose, name), 0);
}

export const rearGroups = ["rear aft", "rear left", "rear right"] as const;
export const frontGroups = ["front aft", "front left", "front right"] as const;

/** The crane of a situation by id. */
export function craneOf(s: Situation, id: string): Situation["cranes"][number] {
  const found = s.cranes.find((c) => c.id === id);
  if (!found) throw new Error(`no crane '${id}'`);
  return found;
}

/** Within `relative` of the expected value. */
export function near(value: number, expected: number, relative: number): void {
  expect(
    Math.abs(value - expected),
    `${value} against ${expected}, allowed ${relative} of it`,
  ).toBeLessThanOrEqual(relative * Math.abs(expected));
}

/** Within `bound` of the expected value, in its own unit. */
export function within(value: number, expected: number, bound: number): void {
  expect(Math.abs(value - expected), `${value} against ${expected}, allowed ${bound}`).toBeLessThanOrEqual(
    bound,
  );
}
