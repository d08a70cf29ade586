// The lines of a site: levels and limits from which ground, abutments, views and dimensions are drawn.
import {
  asideOf,
  type BearingLine,
  byId,
  type Crane,
  type Plan,
  type PlanSet,
  pathAt,
  seatsOf,
  setLength,
} from "../plan/index.ts";

/** Chainages, levels and half-widths, m. */
export interface SiteLines {
  /** Limits of the model. */
  from: number;
  to: number;
  /** Backs of the seats: the gap side of both backwalls, or, where a plan has none, a metre behind the bearing line. */
  nearBack: number;
  farBack: number;
  nearFace: number;
  farFace: number;
  /** Lowest seat on each side; null without seats. */
  nearSeat: number | null;
  farSeat: number | null;
  /** Level of what lies below, and whether the plan gives it. */
  below: number;
  belowGiven: boolean;
  /** Foot of the model. */
  base: number;
  /** Half-widths of the path and the abutments. */
  pathHalf: number;
  abutmentHalf: number;
  /** How far the model reaches to the left and to the right of the axis. */
  left: number;
  right: number;
  /** Level of the ground behind the far abutment. */
  farTop: number;
}

/** Depth (m) at which what lies below is drawn under the lowest seat when the plan gives no level. */
const unknownDepth = 5;

/** Elevation of the path (m); beyond its ends as at the end. */
export function pathTop(plan: Plan, chainage: number): number {
  const points = plan.site.path.points;
  const inside = Math.min(Math.max(chainage, points[0].chainage_m), points[points.length - 1].chainage_m);
  return pathAt(plan, inside)?.elevation_m ?? points[0].elevation_m;
}

/** Crossfall of the path as a tangent, > 0 falls to the left. */
export function pathCrossfall(plan: Plan, chainage: number): number {
  const points = plan.site.path.points;
  const inside = Math.min(Math.max(chainage, points[0].chainage_m), points[points.length - 1].chainage_m);
  return (pathAt(plan, inside)?.crossfall_pct ?? 0) / 100;
}

/** Elevation in force of a seat: as built where surveyed, else as designed. */
export function seatLevel(seat: Plan["site"]["seats"][number]): number {
  return seat.asBuilt_m ?? seat.design_m;
}

function lowestSeat(plan: Plan, set: PlanSet, line: BearingLine): number | null {
  const levels = seatsOf(plan, set)
    .filter((seat) => seat.line === line)
    .map(seatLevel);
  return levels.length === 0 ? null : Math.min(...levels);
}

/** Whether a crane stands in the gap, below the bridge. */
export function standsInGap(plan: Plan, c: Crane): boolean {
  const x = c.position.chainage_m;
  return x > plan.site.nearFace_m && x < plan.site.farFace_m;
}

function farTop(plan: Plan, nearTop: number, nearSeat: number | null, farSeat: number | null): number {
  const behind = plan.cranes.filter((c) => c.position.chainage_m >= plan.site.farFace_m);
  if (behind.length > 0) return Math.min(...behind.map((c) => c.position.elevation_m));
  return farSeat === null || nearSeat === null ? nearTop : farSeat + nearTop - nearSeat;
}

/** How far things stand or go to one side: cranes with their tails, transporters that drive out sideways. */
function sideReach(plan: Plan, set: PlanSet, pathHalf: number, way: 1 | -1): number {
  const cranes = plan.cranes.map((c) => way * c.position.y_m + c.tailRadius_m + 2);
  const drives = set.steps.map((step) =>
    step.do === "drive out" && step.toward === (way > 0 ? "left" : "right")
      ? step.distance_m + byId(plan.transporters, step.transporter).deckWidth_m / 2 + 2
      : 0,
  );
  return Math.max(9, pathHalf + 4, ...cranes, ...drives);
}

/** The lines of a plan's site around one of its sets. */
export function siteLines(plan: Plan, set: PlanSet): SiteLines {
  const { site } = plan;
  const nearSeat = lowestSeat(plan, set, "near");
  const farSeat = lowestSeat(plan, set, "far");
  const nearTop = pathTop(plan, site.nearFace_m);
  const seats = [nearSeat, farSeat].filter((level) => level !== null);
  const lowest = Math.min(...seats, nearTop);
  const below = site.below.elevation_m ?? lowest - unknownDepth;
  const standing = plan.cranes.map((c) => c.position.elevation_m);
  const deck = Math.max(0, ...plan.transporters.map((t) => t.deckWidth_m / 2));
  // Sets side by side roll in line with their own places.
  const outer = plan.sets.flatMap((one) => {
    const aside = asideOf(plan, one);
    return [Math.abs(aside) + deck, ...one.girders.map((girder) => Math.abs(aside + girder.y_m))];
  });
  const pathHalf = Math.max(...outer) + 0.9;
  const tails = plan.cranes.map((c) => [
    c.position.chainage_m - c.tailRadius_m,
    c.position.chainage_m + c.tailRadius_m,
  ]);
  const start = set.start.rearEnd_m;
  const first = site.path.points[0].chainage_m;
  const length = setLength(set);
  return {
    from: Math.min(start - 4, Math.max(first, start - length / 2), ...tails.map(([a]) => a - 3)),
    to: Math.max(site.farFace_m + 8, start + length + 3, ...tails.map(([, b]) => b + 3)),
    nearBack: site.nearBackwall_m ?? Math.min(site.nearBearing_m - 1, site.nearFace_m),
    farBack: site.farBackwall_m ?? Math.max(site.farBearing_m + 1, site.farFace_m),
    nearFace: site.nearFace_m,
    farFace: site.farFace_m,
    nearSeat,
    farSeat,
    below,
    belowGiven: site.below.elevation_m !== undefined,
    base: Math.min(below, lowest - 2.5, ...standing.map((z) => z - 1)) - 1,
    pathHalf,
    abutmentHalf: pathHalf + 0.4,
    left: sideReach(plan, set, pathHalf, 1),
    right: sideReach(plan, set, pathHalf, -1),
    farTop: farTop(plan, nearTop, nearSeat, farSeat),
  };
}
