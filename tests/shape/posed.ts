// One solved pose of the sample plan with everything that a picture is drawn from, for the tests of shape.
import {
  girderShape,
  type Pose,
  poseAt,
  prepareContext,
  runSet,
  type SetContext,
  type SetRun,
  type World,
  worldOf,
} from "../../src/sequence/index.ts";
import {
  carriedAt,
  type Drawn,
  drawnWorld,
  drawPicture,
  type GirderMesh,
  layOutGirders,
  Pen,
} from "../../src/shape/index.ts";
import { samplePlan } from "../plan/sample.ts";

export interface Posed {
  ctx: SetContext;
  run: SetRun;
  pose: Pose;
  world: World;
  pen: Pen;
  mesh: GirderMesh;
  drawn: Drawn;
}

/** The sample plan with ballast and mats filled in and the far crane within reach, cut after the trial lift. */
function plan() {
  const made = samplePlan();
  made.sets[0].steps = made.sets[0].steps.slice(0, 6);
  made.cranes[0].position.chainage_m = 45;
  for (const crane of made.cranes) {
    crane.ballast_t = 80;
    crane.mat = { length_m: 3, width_m: 1, mass_t: 0.8 };
  }
  return made;
}

/** The picture of a pose: step index and progress. */
export function posed(step: number, progress: number, exaggeration = 1): Posed {
  const ctx = prepareContext(plan(), "S1");
  const run = runSet(ctx, []);
  const pose = poseAt(ctx, run.steps[step], progress);
  const world = drawnWorld(ctx.plan, ctx.set, worldOf(ctx, pose));
  const origin: Pen["origin"] = [ctx.plan.site.nearFace_m, 0, 100];
  const pen = new Pen(origin);
  const mesh = layOutGirders(ctx.set, origin);
  const drawn = drawPicture(pen, mesh, {
    plan: ctx.plan,
    set: ctx.set,
    situation: pose.situation,
    world,
    shapes: girderShape(ctx, pose),
    exaggeration,
    carriedAt: carriedAt(ctx, pose),
  });
  return { ctx, run, pose, world, pen, mesh, drawn };
}
