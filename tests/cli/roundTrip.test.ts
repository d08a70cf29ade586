// A pose of a plan written as a state and read back is solved to the same reactions, bit for bit.
import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { readState, solveState } from "../../src/mechanics/index.ts";
import { contextsOf } from "../../src/report/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { goodSteps, smallPlan } from "../report/plans.ts";

/** Numbers from 0 to 1 that follow from a seed (Park and Miller 1988). */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const seed = 20240611;

describe("state of a pose, written and read back", () => {
  test(`gives the plan's reactions bit for bit at 50 random poses (seed ${seed})`, () => {
    const plan = smallPlan(goodSteps());
    const result = solvePlan(plan);
    const ctx = contextsOf(result, plan).get("S1");
    if (ctx === undefined) throw new Error("no context");
    const random = randoms(seed);
    const [set] = result.sets;
    let compared = 0;
    for (let i = 0; i < 50; i++) {
      const step = set.steps[Math.floor(random() * set.steps.length)];
      const progress = random();
      const pose = poseAt(ctx, step, progress);
      const read = readState(JSON.stringify(pose.state, null, 2));
      if (!read.ok) throw new Error(JSON.stringify(read.errors));
      const { forces, status } = solveState(read.state);
      expect(status).toBe("solved");
      for (const support of ctx.supports) {
        const force = pose.forces[ctx.supportIndex.get(support.force) as number];
        if (Number.isNaN(force)) continue;
        // Statics know a lashing by its girder and station, a plan by its id.
        const tie = plan.lashings.find((one) => support.what === "lashing" && one.id === support.of);
        const name = tie ? `lashing ${tie.girder} ${tie.at_m}` : support.force;
        // toBe alone would tell 0 from -0, which no force does.
        expect(forces[name] + 0, `${name}, step ${step.step.id} at ${progress}`).toBe(force + 0);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(50 * 20);
  });
});
