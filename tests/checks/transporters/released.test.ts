// Brakes on a grade that hold a train with released brakes too, by hand: one girder of 102.77 kN on two trains of 7 t.

import { expect, test } from "vitest";
import type { Plan } from "../../../src/plan/index.ts";
import { type Pose, prepareContext, runSet, type SetContext } from "../../../src/sequence/index.ts";
import { onlyStands, readScenario } from "../../coverage/plans.ts";
import { within } from "../../reference/close.ts";
import { readingOf } from "../readings.ts";

const G = 9.80665;
const GRADE = 0.03;
/** Sine of the grade. */
const s = GRADE / Math.hypot(1, GRADE);
/** Load of the front train, by levers: CG at 15 m, trains at 4 and 20 m. */
const ON_FRONT = 11 / 16;

/** The set at rest on a path that rises forward, with some brakes on. */
function standing(brakes: string[], change: (plan: Plan) => void = () => {}): [SetContext, Pose] {
  const plan = readScenario("one-girder", (p) => {
    onlyStands(p, brakes);
    p.site.path.points = [0, 60].map((chainage_m) => ({
      ...p.site.path.points[0],
      chainage_m,
      elevation_m: 10 + GRADE * chainage_m,
    }));
    change(p);
  });
  const ctx = prepareContext(plan, plan.sets[0].id);
  const poses: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => poses.push(pose) });
  expect(poses.length).toBeGreaterThan(0);
  return [ctx, poses[0]];
}
const weightOf = (ctx: SetContext): number => ctx.model.mass * G;
const TRAIN = 7000 * G;

test("the brakes of one train hold the set, itself and the train whose brakes are released", () => {
  const [ctx, pose] = standing(["rear"]);
  const brake = readingOf(ctx, pose, "brake", "rear");
  within(brake.value, s * (weightOf(ctx) + 2 * TRAIN), 1e-6);
  expect(brake.where).toBe("2.1 kN of it for front, whose brakes are released, through the set");
  within(readingOf(ctx, pose, "brake grip", "rear").value, s * (weightOf(ctx) + 2 * TRAIN), 1e-6);
  // Its brakes hold nothing, and are asked for nothing.
  expect(readingOf(ctx, pose, "brake", "front").value).toBeNaN();
  const released = readingOf(ctx, pose, "released train", "front");
  within(released.value, s * TRAIN, 1e-6);
  within(released.limit, 0.25 * ON_FRONT * weightOf(ctx), 0.01);
});

test("what the bunks cannot hold rolls away, and no brake of another train holds it", () => {
  const [ctx, pose] = standing(["rear"], (plan) => {
    plan.transporters[1].bunkFriction = 0.01;
  });
  const held = 0.01 * ON_FRONT * weightOf(ctx);
  expect(held).toBeLessThan(s * TRAIN);
  within(readingOf(ctx, pose, "released train", "front").limit, held, 0.01);
  within(readingOf(ctx, pose, "brake", "rear").value, s * (weightOf(ctx) + TRAIN) + held, 1e-3);
});

test("with all brakes on every train holds its own weight, and none is released", () => {
  const [ctx, pose] = standing(["rear", "front"]);
  const sum = ["rear", "front"].reduce((all, id) => all + readingOf(ctx, pose, "brake", id).value, 0);
  within(sum, s * (weightOf(ctx) + 2 * TRAIN), 1e-6);
  expect(readingOf(ctx, pose, "brake", "rear").where).toBe("");
  expect(readingOf(ctx, pose, "released train", "front").value).toBeNaN();
});
