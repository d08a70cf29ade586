// What stands still around a set, as convex bodies: abutments with their seats and bearings, backwalls, the path, sets
// landed before, and the site's obstacles. Widths of abutments are not in a plan: as wide as drawn.

import { bearingsOf, bearingTop, type Plan, type PlanSet, seatsOf } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { landedSets } from "../landed.ts";
import { pathCrossfall, pathTop, type SiteLines, seatLevel, siteLines } from "../siteLines.ts";
import type { BodyKind, Draft } from "./form.ts";
import { girderBodies, landedPoints, landedSections } from "./set.ts";

type Span = readonly [number, number];

/** Collects boxes of a group. */
class Boxes {
  private readonly draft: Draft & { still: number[] };

  constructor(kind: BodyKind, of: string, name: string) {
    this.draft = { kind, of, name, bodies: [], points: 0, still: [] };
  }

  /** A body through points, x, y, z after each other. */
  hull(name: string, coordinates: readonly number[]): void {
    const count = coordinates.length / 3;
    this.draft.bodies.push({ name, first: this.draft.points, count, radius: 0, disc: 0 });
    this.draft.points += count;
    this.draft.still.push(...coordinates);
  }

  box(name: string, x: Span, y: Span, z: Span): void {
    const points: number[] = [];
    for (const i of x) for (const j of y) for (const k of z) points.push(i, j, k);
    this.hull(name, points);
  }

  /** The group; none where nothing was put in. */
  done(): Draft[] {
    return this.draft.bodies.length > 0 ? [this.draft] : [];
  }
}

const sorted = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];

/** Stem below the seats, seats, and bearings up to their tops. */
function abutment(plan: Plan, set: PlanSet, l: SiteLines, line: "near" | "far"): Draft[] {
  const lowest = line === "near" ? l.nearSeat : l.farSeat;
  if (lowest === null) return [];
  const boxes = new Boxes("abutment", line, `${line} abutment`);
  const [back, face] = line === "near" ? [l.nearBack, l.nearFace] : [l.farBack, l.farFace];
  const y: Span = [-l.abutmentHalf, l.abutmentHalf];
  boxes.box(`${line} abutment`, sorted(back, face), y, [l.base, lowest - 0.2]);
  const x = line === "near" ? plan.site.nearBearing_m : plan.site.farBearing_m;
  for (const seat of seatsOf(plan, set)) {
    if (seat.line !== line) continue;
    const girder = set.girders.find((g) => g.line === seat.girder);
    if (girder === undefined) continue;
    const bearing = bearingsOf(plan, set).find((b) => b.line === line && b.girder === seat.girder);
    const half = Math.max(0.7, (bearing?.width_mm ?? 600) / 1000 + 0.2) / 2;
    const name = `${line} ${seat.girder}`;
    boxes.box(
      `seat ${name}`,
      [x - 0.4, x + 0.4],
      [girder.y_m - half, girder.y_m + half],
      [lowest - 0.2, seatLevel(seat)],
    );
    if (bearing === undefined) continue;
    const [along, across] = [(bearing.length_mm ?? 500) / 2000, (bearing.width_mm ?? 500) / 2000];
    boxes.box(
      `bearing ${name}`,
      [x - along, x + along],
      [girder.y_m - across, girder.y_m + across],
      [seatLevel(seat), bearingTop(plan, set, bearing, "it stands")],
    );
  }
  return boxes.done();
}

function backwall(plan: Plan, l: SiteLines, line: "near" | "far"): Draft[] {
  const given = line === "near" ? plan.site.nearBackwall_m : plan.site.farBackwall_m;
  const lowest = line === "near" ? l.nearSeat : l.farSeat;
  if (given === undefined || lowest === null) return [];
  const top = line === "near" ? pathTop(plan, given) : l.farTop;
  const boxes = new Boxes("backwall", line, `${line} backwall`);
  const behind = given + (line === "near" ? -0.4 : 0.4);
  if (top > lowest)
    boxes.box(
      `${line} backwall`,
      sorted(given, behind),
      [-l.abutmentHalf, l.abutmentHalf],
      [lowest - 0.2, top],
    );
  return boxes.done();
}

/** The path from point to point of its profile, half a metre deep; its crossfall between two of them is taken at both. */
function path(plan: Plan, l: SiteLines): Draft[] {
  const boxes = new Boxes("path", "path", "path");
  const last = l.nearBack;
  const inner = plan.site.path.points.map((p) => p.chainage_m).filter((x) => x < last);
  const xs = [...inner, last];
  for (let i = 1; i < xs.length; i++) {
    const points: number[] = [];
    for (const x of [xs[i - 1], xs[i]])
      for (const y of [-l.pathHalf, l.pathHalf])
        for (const deep of [0, 0.5]) points.push(x, y, pathTop(plan, x) - pathCrossfall(plan, x) * y - deep);
    boxes.hull(`path at ${((xs[i - 1] + xs[i]) / 2).toFixed(0)} m`, points);
  }
  return boxes.done();
}

/** Sets of the plan before this one, on their bearings. */
function landed(plan: Plan, set: PlanSet): Draft[] {
  return landedSets(plan, set).map(({ set: one, rearEnd, aside, soffit }): Draft => {
    const { bodies, points } = girderBodies(one, landedSections(one));
    const still = landedPoints(one, [rearEnd, aside], soffit);
    return { kind: "landed set", of: one.id, name: `landed set ${one.id}`, bodies, points, still };
  });
}

function obstacles(plan: Plan): Draft[] {
  return plan.site.obstacles.flatMap(({ name, kind, from, to }) => {
    const boxes = new Boxes(kind === "box" ? "obstacle" : "overhead line", name, name);
    if (kind === "box")
      boxes.box(
        name,
        sorted(from.chainage_m, to.chainage_m),
        sorted(from.y_m, to.y_m),
        sorted(from.elevation_m, to.elevation_m),
      );
    else
      boxes.hull(name, [from.chainage_m, from.y_m, from.elevation_m, to.chainage_m, to.y_m, to.elevation_m]);
    return boxes.done();
  });
}

/** All groups that no pose moves. */
export function stillGroups(ctx: SetContext): Draft[] {
  const { plan, set } = ctx;
  const l = siteLines(plan, set);
  return [
    ...abutment(plan, set, l, "near"),
    ...abutment(plan, set, l, "far"),
    ...backwall(plan, l, "near"),
    ...backwall(plan, l, "far"),
    ...path(plan, l),
    ...landed(plan, set),
    ...obstacles(plan),
  ];
}
