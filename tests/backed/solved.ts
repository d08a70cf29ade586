// Scenarios solved once for the tests of losses and ways back, changed in copies.

import { completeResult, type Result, type SetResult, solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { type Pose, poseAt, prepareContext, type SetContext } from "../../src/sequence/index.ts";
import { type ScenarioName, scenario } from "../sequence/plans.ts";

export interface Solved {
  plan: Plan;
  ctx: SetContext;
  result: Result;
  set: SetResult;
  /** Index of a step by its id. */
  step: (id: string) => number;
  /** A pose of a step by its id. */
  pose: (id: string, progress: number) => Pose;
}

/** A scenario, changed, solved without what is worked out later. */
export function solved(name: ScenarioName, change?: (plan: Plan) => void): Solved {
  const plan = scenario(name, change);
  const ctx = prepareContext(plan, plan.sets[0].id);
  const result = solvePlan(plan, { contexts: new Map([[ctx.set.id, ctx]]) });
  const set = result.sets[0];
  const step = (id: string): number => {
    const i = set.steps.findIndex((s) => s.step.id === id);
    if (i < 0) throw new Error(`no step '${id}'`);
    return i;
  };
  return { plan, ctx, result, set, step, pose: (id, progress) => poseAt(ctx, set.steps[step(id)], progress) };
}

/** The result of a solved scenario with all that is worked out later, or a part of it. */
export function whole(s: Solved, part: { backed?: boolean; waysBack?: boolean } = {}): Result {
  const contexts = new Map([[s.ctx.set.id, s.ctx]]);
  const result = completeResult(s.plan, s.result, { ...part, contexts });
  if (result === null) throw new Error("it was broken off");
  return result;
}
