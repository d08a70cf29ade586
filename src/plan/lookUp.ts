// Looking things up in a plan: by name, by set, by place. A plan that was read holds every name that it uses.
import type {
  Bearing,
  BearingLine,
  Crane,
  Girder,
  Pick,
  Plan,
  PlanSet,
  Seat,
  Step,
  WayBackStep,
} from "./schema.ts";

/** The member with this id. Throws if there is none, which a plan that was read does not do. */
export function byId<T extends { id: string }>(list: readonly T[], id: string): T {
  const found = list.find((item) => item.id === id);
  if (found === undefined) {
    const known = list.map((item) => item.id).join(", ");
    throw new Error(
      `byId: found no "${id}"; known are ${known === "" ? "none" : known}. Read the plan again.`,
    );
  }
  return found;
}

/** Length of a set (m): the end of its first girder's last piece; all girders end there. */
export function setLength(set: PlanSet): number {
  const pieces = set.girders[0].pieces;
  return pieces[pieces.length - 1].to_m;
}

/** Camber of a girder at station `s` (m), as rise over the straight line in mm; linear between points, level beyond them. */
export function camberAt(girder: Girder, s: number): number {
  const points = girder.camber_mm;
  if (points.length === 0) return 0;
  const i = points.findIndex(([at]) => at >= s);
  if (i < 0) return points[points.length - 1][1];
  if (i === 0) return points[0][1];
  const [s0, h0] = points[i - 1];
  const [s1, h1] = points[i];
  return h0 + ((s - s0) / (s1 - s0)) * (h1 - h0);
}

/** Elevation (m), grade and crossfall (pct) of the path; null where no point of the path lies on both sides. */
export function pathAt(
  plan: Plan,
  chainage_m: number,
): { elevation_m: number; grade_pct: number; crossfall_pct: number } | null {
  const points = plan.site.path.points;
  const last = points.length - 1;
  if (chainage_m < points[0].chainage_m || chainage_m > points[last].chainage_m) return null;
  const i = Math.max(
    1,
    points.findIndex((p) => p.chainage_m >= chainage_m),
  );
  const [a, b] = [points[i - 1], points[i]];
  const run = b.chainage_m - a.chainage_m;
  const t = (chainage_m - a.chainage_m) / run;
  return {
    elevation_m: a.elevation_m + t * (b.elevation_m - a.elevation_m),
    grade_pct: (100 * (b.elevation_m - a.elevation_m)) / run,
    crossfall_pct: a.crossfall_pct + t * (b.crossfall_pct - a.crossfall_pct),
  };
}

function belongs(place: { girder: string; set?: string | undefined }, set: PlanSet): boolean {
  if (place.set !== undefined && place.set !== set.id) return false;
  return set.girders.some((girder) => girder.line === place.girder);
}

/** Bearings on which this set comes to lie. */
export function bearingsOf(plan: Plan, set: PlanSet): Bearing[] {
  return plan.site.bearings.filter((bearing) => belongs(bearing, set));
}

/** Seats under this set. */
export function seatsOf(plan: Plan, set: PlanSet): Seat[] {
  return plan.site.seats.filter((seat) => belongs(seat, set));
}

/** The seat of one girder of a set at a bearing line, or null. */
export function seatOf(plan: Plan, set: PlanSet, line: BearingLine, girder: string): Seat | null {
  return seatsOf(plan, set).find((seat) => seat.line === line && seat.girder === girder) ?? null;
}

/**
 * Elevation of a bearing's top (m): its seat with the bearing's own height. As it stands: the seat as built, or as designed
 * where it was not surveyed, and the shims on it; as designed: without shims.
 */
export function bearingTop(plan: Plan, set: PlanSet, bearing: Bearing, as: "it stands" | "designed"): number {
  const seat = seatOf(plan, set, bearing.line, bearing.girder);
  const design = seat?.design_m ?? 0;
  const height = (bearing.height_mm ?? 0) / 1000;
  if (as === "designed") return design + height;
  return (seat?.asBuilt_m ?? design) + height + (seat?.shims_mm ?? 0) / 1000;
}

/** How far to the left of the bridge's axis (m) a set's own axis comes to lie over its bearings; 0 where none is set aside. */
export function asideOf(plan: Plan, set: PlanSet): number {
  const shifts = bearingsOf(plan, set).flatMap((bearing) =>
    bearing.y_m === undefined
      ? []
      : [bearing.y_m - (set.girders.find((girder) => girder.line === bearing.girder)?.y_m ?? 0)],
  );
  return shifts.reduce((sum, y) => sum + y / shifts.length, 0);
}

/** Name of a bearing as a support: `near L`. */
export function bearingName(bearing: { line: BearingLine; girder: string }): string {
  return `${bearing.line} ${bearing.girder}`;
}

/** Name of a crane's hook as a support: `far crane`. */
export function hookName(crane: Crane): string {
  return `${crane.kind} crane`;
}

/** The pick of a crane on a set, or null. */
export function pickOf(set: PlanSet, crane: string): Pick | null {
  return set.picks.find((pick) => pick.crane === crane) ?? null;
}

/** How many mats lie side by side below one track of a crane; they reach a little beyond it. */
export function matsAlong(crane: Crane): number {
  return crane.mat ? Math.max(1, Math.ceil((crane.trackLength_m + 0.5) / crane.mat.width_m)) : 0;
}

/** Names of everything that may carry this set, as steps use them in `carries`: hooks, groups, bearings. */
export function supportNames(plan: Plan, set: PlanSet): string[] {
  return [
    ...set.picks.map((pick) => hookName(byId(plan.cranes, pick.crane))),
    ...plan.transporters.flatMap((transporter) => transporter.groups.map((group) => group.name)),
    ...bearingsOf(plan, set).map(bearingName),
  ];
}

/** Groups that a step of jacking moves, by name; empty for other steps. */
export function jackedGroups(plan: Plan, step: Step | WayBackStep): string[] {
  if (step.do !== "jack up" && step.do !== "jack down") return [];
  if (step.groups !== undefined) return step.groups;
  if (step.transporter === undefined) return [];
  return byId(plan.transporters, step.transporter).groups.map((group) => group.name);
}
