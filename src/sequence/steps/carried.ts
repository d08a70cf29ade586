// What a hanging set is carried over: transporters left below it, the path, the bearings.

import { bearingsOf, byId, seatOf } from "../../plan/index.ts";
import { pathLevel, planeLevel } from "../place.ts";
import type { Happening, Pose, SetContext, Situation } from "../types.ts";
import { deckLevel, happening, soffitLevel } from "./kind.ts";
import { DRIVE_GAP } from "./way.ts";

/** Least height of a hanging set above ground and bearings while it is carried over them, m. Common practice, no source. */
export const CARRY_GAP = 0.3;

/** Stations of the soffit, and places along the way, are looked at this far apart at most, m. */
const APART = 0.5;

/** Numbers from a to b, both included, evenly and no more than APART apart. */
function evenly(a: number, b: number): number[] {
  const parts = Math.max(1, Math.ceil(Math.abs(b - a) / APART));
  return Array.from({ length: parts + 1 }, (_, i) => a + ((b - a) * i) / parts);
}

/** Least gap between the bunks of a standing transporter and the set that is carried `dx` along over it, m. */
function gapAbove(ctx: SetContext, start: Situation, pose: Pose, id: string, dx: number): number {
  const train = byId(start.trains, id);
  let least = Number.POSITIVE_INFINITY;
  for (const d of evenly(0, dx))
    for (const { at_m } of byId(ctx.plan.transporters, id).bunks) {
      const s = train.deckAt + at_m - d;
      if (s < 0 || s > ctx.length) continue;
      pose.solution.model.girders.forEach((g, k) => {
        // The set keeps its height: the deck below it comes nearer by the slope of the set's own datum plane.
        const top = deckLevel(pose, id, at_m, g.y) + start.plane.grade * d + (train.packing[g.name] ?? 0);
        least = Math.min(least, soffitLevel(pose, k, s) - top);
      });
    }
  return least;
}

/** Transporters that still stand below a set that is carried `dx` along over them. */
export function leftBelow(ctx: SetContext, start: Situation, pose: Pose, dx: number): Happening[] {
  return start.trains.flatMap(({ id, under }) => {
    const gap = under ? gapAbove(ctx, start, pose, id, dx) : Number.POSITIVE_INFINITY;
    if (!Number.isFinite(gap)) return [];
    const clear = gap >= DRIVE_GAP;
    return [
      happening(
        clear ? "out of order" : "not clear",
        id,
        `${id} still stands below the set, which is carried over it with ${(gap * 1000).toFixed(0)} mm between them: ` +
          "drive it out first",
        { value: gap, limit: DRIVE_GAP, unit: "m", ...(clear ? { level: "caution" as const } : {}) },
      ),
    ];
  });
}

/** What comes nearest to the set from below while it is carried, and by how much, m. */
interface Nearest {
  what: string;
  gap: number;
}

/** Least height of the hanging set above the path and above its bearings while it is carried `dx` along and `dy` across. */
function heightCarried(
  ctx: SetContext,
  start: Situation,
  pose: Pose,
  dx: number,
  dy: number,
): Nearest | null {
  const { plan, set } = ctx;
  const { points } = plan.site.path;
  const [first, last] = [points[0].chainage_m, points[points.length - 1].chainage_m];
  let nearest: Nearest | null = null;
  const meet = (what: string, gap: number) => {
    if (nearest === null || gap < nearest.gap) nearest = { what, gap };
  };
  const stations = evenly(0, ctx.length);
  pose.solution.model.girders.forEach((g, k) => {
    const soffit = stations.map((s) => planeLevel(start, s, g.y) + soffitLevel(pose, k, s));
    for (const d of evenly(0, dx)) {
      const across = start.across + (dx === 0 ? dy : (dy * d) / dx) + g.y;
      stations.forEach((s, i) => {
        const chainage = start.rearEnd + s + d;
        if (chainage < first || chainage > last) return;
        const { elevation, crossfall } = pathLevel(plan, chainage);
        meet("the path", soffit[i] - (elevation - crossfall * across));
      });
    }
  });
  for (const b of bearingsOf(plan, set)) {
    const seat = seatOf(plan, set, b.line, b.girder);
    const k = pose.solution.model.girders.findIndex((g) => g.name === b.girder);
    const level = seat?.asBuilt_m ?? seat?.design_m;
    if (level === undefined || k < 0) continue;
    const top = level + (b.height_mm ?? 0) / 1000;
    const chainage = b.line === "near" ? plan.site.nearBearing_m : plan.site.farBearing_m;
    for (const d of evenly(0, dx)) {
      const s = chainage - start.rearEnd - d;
      if (s < 0 || s > ctx.length) continue;
      const soffit = planeLevel(start, s, pose.solution.model.girders[k].y) + soffitLevel(pose, k, s);
      meet(`bearing ${b.line} ${b.girder}`, soffit - top);
    }
  }
  return nearest;
}

/** A set that is carried too low over the path or its own bearings. */
export function carriedLow(
  ctx: SetContext,
  start: Situation,
  pose: Pose,
  dx: number,
  dy: number,
): Happening[] {
  const nearest = heightCarried(ctx, start, pose, dx, dy);
  if (nearest === null || nearest.gap >= CARRY_GAP) return [];
  const { what, gap } = nearest;
  return [
    happening(
      "not clear",
      "set",
      gap > 0
        ? `the set is carried over ${what} with only ${(gap * 1000).toFixed(0)} mm between them: hoist it up first, and lower it when it stands over its seats`
        : `the set runs into ${what}, which stands ${(-gap * 1000).toFixed(0)} mm above its soffit: hoist it up first`,
      { value: gap, limit: CARRY_GAP, unit: "m", ...(gap > 0 ? { level: "caution" as const } : {}) },
    ),
  ];
}
