// The picture of a pose: everything that moves, drawn into one pen and one girder mesh, from a plan and where things are.
import {
  bearingName,
  bearingsOf,
  byId,
  type Crane,
  hookName,
  type Plan,
  type PlanSet,
  pickOf,
  seatOf,
} from "../plan/index.ts";
import type { Situation, Vec3, World } from "../sequence/index.ts";
import { drawBracing } from "./bracing.ts";
import { drawCrane } from "./crane.ts";
import { type Curve, curvesOf, type GirderShape, pointOn, rigidPart, setFrame } from "./curves.ts";
import { bend, type GirderMesh } from "./girders.ts";
import type { Pen } from "./pen.ts";
import { drawRigging, picksOf } from "./rigging.ts";
import { seatLevel } from "./siteLines.ts";
import { deckFrame, drawLashing, drawTransporter } from "./transporter.ts";
import { type Frame, level } from "./vec.ts";

/** All that a picture of one pose is drawn from. */
export interface Pictured {
  plan: Plan;
  set: PlanSet;
  situation: Situation;
  world: World;
  shapes: readonly GirderShape[];
  /** Factor on the bending of the girders; 1 is true. */
  exaggeration: number;
  /** Stations at which the set is carried now, m: bending is drawn from the plane through them. */
  carriedAt: readonly number[];
}

/** Set frame and girder curves of a pose. */
export interface Drawn {
  frame: Frame;
  curves: Curve[];
}

/** Where bearings stand: on their seats, by name; [chainage, y, elevation of the seat], m. */
export function bearingPlaces(
  plan: Plan,
  set: PlanSet,
): { name: string; near: boolean; foot: Vec3; height: number; width: number }[] {
  return bearingsOf(plan, set).flatMap((bearing) => {
    const seat = seatOf(plan, set, bearing.line, bearing.girder);
    const girder = set.girders.find((one) => one.line === bearing.girder);
    if (seat === null || girder === undefined) return [];
    const near = bearing.line === "near";
    return {
      name: bearingName(bearing),
      near,
      foot: [
        near ? plan.site.nearBearing_m : plan.site.farBearing_m,
        bearing.y_m ?? girder.y_m,
        seatLevel(seat),
      ],
      height: (bearing.height_mm ?? 0) / 1000,
      width: (bearing.width_mm ?? 450) / 1000,
    };
  });
}

/** A bearing without height is drawn as a plate of 20 mm. */
function drawBearings(pen: Pen, plan: Plan, set: PlanSet): void {
  for (const { name, near, foot, height, width } of bearingPlaces(plan, set)) {
    pen.part({ name, what: "bearing", supports: [name] });
    pen.frame = level(foot);
    const h = Math.max(0.02, height);
    pen.box(0, 0, h / 2, Math.min(0.6, width), width, h, near ? "near bearings" : "far bearings");
  }
}

function drawSoles(pen: Pen, set: PlanSet, { frame, curves }: Drawn): void {
  if (set.soleStations_m === undefined) return;
  pen.part({ name: "sole plates", what: "fitting", supports: [] });
  for (const curve of curves) {
    for (const s of [set.soleStations_m.near, set.soleStations_m.far]) {
      pen.bar(
        pointOn(frame, curve, s - 0.25, 0, 0.012),
        pointOn(frame, curve, s + 0.25, 0, 0.012),
        0.5,
        0.03,
        frame.ez,
        "steel",
      );
    }
  }
}

function drawCranes(pen: Pen, of: Pictured, { frame, curves }: Drawn): void {
  const { plan, set, world } = of;
  for (const crane of plan.cranes) {
    const place = world.cranes[crane.id];
    if (place === undefined) continue;
    drawCrane(pen, crane, hookName(crane), place);
    drawRigging(
      pen,
      crane,
      hookName(crane),
      riggingOf(plan, set, crane),
      place,
      drawnPicks(set, crane, frame, curves),
    );
  }
}

function riggingOf(plan: Plan, set: PlanSet, crane: Crane) {
  const pick = pickOf(set, crane.id);
  return pick === null ? null : byId(plan.rigging, pick.rigging);
}

function drawnPicks(set: PlanSet, crane: Crane, frame: Frame, curves: readonly Curve[]): Vec3[] {
  const pick = pickOf(set, crane.id);
  return pick === null ? [] : picksOf(set, pick, frame, curves);
}

function drawTrains(pen: Pen, of: Pictured, { frame, curves }: Drawn): void {
  const { plan, set, situation, world } = of;
  for (const train of situation.trains) {
    drawTransporter(pen, byId(plan.transporters, train.id), set, situation, train, world);
  }
  for (const lashing of plan.lashings.filter((one) => situation.lashed.includes(one.id))) {
    const train = situation.trains.find((one) => one.id === lashing.transporter);
    const curve = curves.find((one) => one.girder.line === lashing.girder);
    if (train === undefined || curve === undefined || world.decks[train.id] === undefined) continue;
    const t = byId(plan.transporters, train.id);
    pen.part({ name: `lashing ${lashing.id}`, what: "fitting", supports: [`lashing ${lashing.id}`] });
    drawLashing(pen, t, deckFrame(t, situation, train, world), frame, curve, lashing.at_m);
  }
}

/** Draws a pose: `pen` is cleared first, `mesh` is bent. Returns frame and curves for whatever is hung on them. */
export function drawPicture(pen: Pen, mesh: GirderMesh, of: Pictured): Drawn {
  const { plan, set, situation, shapes } = of;
  const rigid = of.exaggeration === 1 ? undefined : rigidPart(set, shapes, of.carriedAt);
  const drawn: Drawn = { frame: setFrame(situation), curves: curvesOf(set, shapes, of.exaggeration, rigid) };
  pen.clear();
  bend(mesh, drawn.frame, drawn.curves);
  drawBracing(pen, drawn.frame, set, drawn.curves);
  drawSoles(pen, set, drawn);
  drawTrains(pen, of, drawn);
  drawCranes(pen, of, drawn);
  drawBearings(pen, plan, set);
  return drawn;
}
