// Where things are: the path under the wheels, the datum plane of the set, the boom of a crane.

import { byId, type Crane, type Plan, pathAt, type Rigging } from "../plan/index.ts";
import type { DatumPlane, SetContext, Situation, TrainSituation, Vec3 } from "./types.ts";

/** Path elevation at a chainage and crossfall there, m and tangent; beyond its ends it runs on at the last slope. */
export function pathLevel(plan: Plan, chainage: number): { elevation: number; crossfall: number } {
  const points = plan.site.path.points;
  const first = points[0];
  const last = points[points.length - 1];
  const inside = Math.min(Math.max(chainage, first.chainage_m), last.chainage_m);
  const at = pathAt(plan, inside);
  if (!at) throw new Error(`the path has no level at chainage ${chainage} m`);
  return {
    elevation: at.elevation_m + ((chainage - inside) * at.grade_pct) / 100,
    crossfall: at.crossfall_pct / 100,
  };
}

/** Elevation of the set's datum plane at station s and local y, m. */
export function planeLevel(situation: Situation, s: number, y: number): number {
  const p = situation.plane;
  return p.elevation + p.grade * (situation.rearEnd + s - p.chainage) - p.crossfall * y;
}

/** A point given in set coordinates (station, y, height above the datum plane) in the world. */
export function datumPoint(situation: Situation, s: number, y: number, z: number): Vec3 {
  const { grade, crossfall } = situation.plane;
  // z is normal to the plane: slopes are small, and the shift along them is kept.
  return [
    situation.rearEnd + s - grade * z,
    situation.across + y + crossfall * z,
    planeLevel(situation, s, y) + z,
  ];
}

/** Wheel positions of a transporter relative to its deck centre, with ids as in its groups (`1L`). */
export function wheelsOf(plan: Plan, transporter: string): { id: string; x: number; y: number }[] {
  const t = byId(plan.transporters, transporter);
  const out: { id: string; x: number; y: number }[] = [];
  for (let line = 1; line <= t.lines; line++)
    for (const [side, sign] of [
      ["L", 1],
      ["R", -1],
    ] as const)
      out.push({
        id: `${line}${side}`,
        x: (line - (t.lines + 1) / 2) * t.pitch_m,
        y: (sign * t.gauge_m) / 2,
      });
  return out;
}

/** The plane through the bunk tops of the trains that stand under the set, cylinders at mid-stroke. */
export function planeUnderTrains(plan: Plan, rearEnd: number, trains: TrainSituation[]): DatumPlane | null {
  const under = trains.filter((t) => t.under);
  if (under.length === 0) return null;
  const levels = under.map((t) => {
    const machine = byId(plan.transporters, t.id);
    const centre = rearEnd + t.deckAt;
    const half = (machine.lines * machine.pitch_m) / 2;
    let elevation = 0;
    let crossfall = 0;
    for (let line = 0; line < machine.lines; line++) {
      const at = pathLevel(plan, centre + (line - (machine.lines - 1) / 2) * machine.pitch_m);
      elevation += at.elevation / machine.lines;
      crossfall += at.crossfall / machine.lines;
    }
    const ahead = pathLevel(plan, centre + half);
    const behind = pathLevel(plan, centre - half);
    return {
      centre,
      elevation: elevation + machine.bunkHeight_m,
      crossfall,
      grade: (ahead.elevation - behind.elevation) / (2 * half),
    };
  });
  levels.sort((a, b) => a.centre - b.centre);
  const rear = levels[0];
  const front = levels[levels.length - 1];
  const run = front.centre - rear.centre;
  const crossfall = levels.reduce((sum, l) => sum + l.crossfall / levels.length, 0);
  return {
    chainage: rear.centre,
    elevation: rear.elevation,
    grade: run > 0 ? (front.elevation - rear.elevation) / run : rear.grade,
    crossfall,
  };
}

/** The datum plane after the trains travelled: it changes as the plane under them does, so that no step jumps. */
export function movedPlane(
  plan: Plan,
  start: Situation,
  rearEnd: number,
  movers: TrainSituation[],
): DatumPlane {
  const before = planeUnderTrains(plan, start.rearEnd, movers);
  const after = planeUnderTrains(plan, rearEnd, movers);
  const old = start.plane;
  const travelled = rearEnd - start.rearEnd;
  if (!before || !after) return { ...old, chainage: old.chainage + travelled };
  const grade = old.grade + after.grade - before.grade;
  // Level of the old plane above the plane under the trains at the rear train, carried along.
  const above = old.elevation + old.grade * (before.chainage - old.chainage) - before.elevation;
  return {
    chainage: after.chainage,
    elevation: after.elevation + above,
    grade,
    crossfall: old.crossfall + after.crossfall - before.crossfall,
  };
}

/**
 * Boom of a crane with its tip over a point (chainage, y), after the crane walked by `moved`: radius, centre of
 * rotation, foot, tip elevation (m) and angle (rad). Out of reach the boom lies level.
 */
export function boomOf(
  crane: Crane,
  tip: readonly [number, number],
  moved: readonly [number, number] = [0, 0],
) {
  const centre: Vec3 = [
    crane.position.chainage_m + moved[0],
    crane.position.y_m + moved[1],
    crane.position.elevation_m,
  ];
  const dx = tip[0] - centre[0];
  const dy = tip[1] - centre[1];
  const radius = Math.hypot(dx, dy);
  const ux = radius > 0 ? dx / radius : 1;
  const uy = radius > 0 ? dy / radius : 0;
  const foot: Vec3 = [
    centre[0] + ux * crane.boomFootForward_m,
    centre[1] + uy * crane.boomFootForward_m,
    centre[2] + crane.boomFootHeight_m,
  ];
  const reach = radius - crane.boomFootForward_m;
  const rise = crane.boomLength_m ** 2 - reach ** 2;
  const height = rise > 0 ? Math.sqrt(rise) : 0;
  return {
    radius,
    centre,
    foot,
    tip: [tip[0], tip[1], foot[2] + height] as Vec3,
    angle: Math.atan2(height, reach),
    inReach: rise > 0,
  };
}

/** Height of the hook above the picks, m: slings and spreader, or the pin of slings that meet in one point. */
export function hookAbovePicks(rigging: Rigging): number {
  return rigging.kind === "point" ? rigging.hookPinHeight_m : rigging.slingLength_m + rigging.hookPinHeight_m;
}

/** Plumb point of a crane's picks in plan: chainage and y, m. */
export function plumbOf(ctx: SetContext, situation: Situation, crane: string): [number, number] {
  const pick = ctx.set.picks.find((p) => p.crane === crane);
  const s = pick ? pick.at_m : 0;
  const girders = pick?.girders ?? ctx.set.girders.map((g) => g.line);
  let y = 0;
  for (const g of ctx.set.girders) if (girders.includes(g.line)) y += g.y_m / girders.length;
  const [x, across] = datumPoint(situation, s, y, pick?.height_m ?? 0);
  return [x, across];
}
