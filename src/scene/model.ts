// The model of one set of one plan: site and girders laid out once, and all that moves drawn anew for every pose.
import type { Plan, PlanSet } from "../plan/index.ts";
import { girderShape, type Pose, type SetContext, type World, worldOf } from "../sequence/index.ts";
import {
  type BuckledShape,
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
import type { Buckled } from "./types.ts";

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

/** Greatest displacement of a buckled shape as it is drawn, m: its size means nothing. */
const BUCKLED_BY = 1.2;

/** A buckled shape of one girder as it is drawn, at the level of its soffit. */
function buckledShape(buckled: Buckled | null, name: string): BuckledShape | undefined {
  const own = buckled?.shape.find((one) => one.girder === name);
  if (buckled === null || own === undefined) return undefined;
  return {
    stations: own.x,
    aside: own.sideways.map((v, i) => BUCKLED_BY * (v + buckled.reference * own.twist[i])),
    rise: own.upright.map((w) => BUCKLED_BY * w),
    twist: own.twist.map((t) => BUCKLED_BY * t),
  };
}

/** Draws a pose into the model; without one, or with one that found no equilibrium, all that moves goes. */
export function drawPose(
  model: Model,
  ctx: SetContext,
  pose: Pose | null,
  exaggeration: number,
  buckled: Buckled | null = null,
): void {
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
    shapes: girderShape(ctx, pose).map((shape) => ({ ...shape, buckled: buckledShape(buckled, shape.name) })),
    exaggeration,
    carriedAt: carriedAt(ctx, pose),
  });
}
