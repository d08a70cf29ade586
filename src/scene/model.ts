// The model of one set of one plan: site and girders laid out once, and all that moves drawn anew for every pose.
import type { Plan, PlanSet } from "../plan/index.ts";
import { girderShape, type Pose, type SetContext, type World, worldOf } from "../sequence/index.ts";
import {
  carriedAt,
  drawnWorld,
  drawPicture,
  drawSite,
  type GirderMesh,
  layOutGirders,
  Pen,
  pathTop,
  type Reaction,
  reactionsOf,
  type SiteBodies,
} from "../shape/index.ts";

export interface Model {
  plan: Plan;
  set: PlanSet;
  /** Everything stored counts from here, m. */
  origin: [number, number, number];
  site: SiteBodies;
  pen: Pen;
  girders: GirderMesh;
  /** Of the pose last drawn; null before the first. */
  world: World | null;
  reactions: Reaction[];
  weight: number;
}

/** Lays out what does not move. */
export function modelOf(plan: Plan, set: PlanSet): Model {
  const { nearFace_m, farFace_m } = plan.site;
  const origin: Model["origin"] = [
    Math.round((nearFace_m + farFace_m) / 2),
    0,
    Math.round(pathTop(plan, nearFace_m)),
  ];
  return {
    plan,
    set,
    origin,
    site: drawSite(plan, set, origin),
    pen: new Pen(origin),
    girders: layOutGirders(set, origin),
    world: null,
    reactions: [],
    weight: 0,
  };
}

/** Draws a pose into the model; without one, or with one that found no equilibrium, all that moves goes. */
export function drawPose(model: Model, ctx: SetContext, pose: Pose | null, exaggeration: number): void {
  if (pose === null || pose.solution.status !== "solved") {
    model.pen.clear();
    model.world = null;
    model.reactions = [];
    return;
  }
  const world = drawnWorld(ctx.plan, ctx.set, worldOf(ctx, pose));
  model.world = world;
  model.weight = ctx.model.mass * ctx.gravity;
  model.reactions = reactionsOf(ctx, pose, world);
  drawPicture(model.pen, model.girders, {
    plan: ctx.plan,
    set: ctx.set,
    situation: pose.situation,
    world,
    shapes: girderShape(ctx, pose),
    exaggeration,
    carriedAt: carriedAt(ctx, pose),
  });
}
