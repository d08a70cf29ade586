// Sets that lie on their bearings already when a later one is worked on: where they lie, and their plates drawn there.
import { asideOf, bearingsOf, bearingTop, camberAt, type Plan, type PlanSet, seatOf } from "../plan/index.ts";
import { platesOf } from "./curves.ts";
import type { Pen } from "./pen.ts";
import type { Vec3 } from "./vec.ts";

/** An earlier set in its place. How far it sags there is not worked out: `soffit` is the straight line, without camber. */
export interface Landed {
  set: PlanSet;
  /** Chainage of its rear end, and how far its axis lies to the left of the bridge's, m. */
  rearEnd: number;
  aside: number;
  soffit: (girder: number, station: number) => number;
}

/** Sets of the plan before this one whose place is known: sole plates, a seat and a bearing below every girder. */
export function landedSets(plan: Plan, set: PlanSet): Landed[] {
  const before = plan.sets.slice(0, plan.sets.indexOf(set));
  return before.flatMap((one): Landed[] => {
    const soles = one.soleStations_m;
    if (soles === undefined) return [];
    const top = (girder: string, line: "near" | "far"): number => {
      const b = bearingsOf(plan, one).find((x) => x.line === line && x.girder === girder);
      // Without a seat its level is not known.
      const known = b !== undefined && seatOf(plan, one, line, girder) !== null;
      return known ? bearingTop(plan, one, b, "it stands") : Number.NaN;
    };
    const levels = one.girders.map((g) => [top(g.line, "near"), top(g.line, "far")]);
    if (levels.flat().some(Number.isNaN)) return [];
    const soffit = (girder: number, station: number) => {
      const [a, b] = levels[girder];
      return a + ((station - soles.near) / (soles.far - soles.near)) * (b - a);
    };
    return [{ set: one, rearEnd: plan.site.nearBearing_m - soles.near, aside: asideOf(plan, one), soffit }];
  });
}

/** Draws a landed set by its plates, with its camber as made, and chords where its cross-frames are. */
export function drawLanded(pen: Pen, { set, rearEnd, aside, soffit }: Landed): void {
  const up: Vec3 = [0, 0, 1];
  pen.part({ name: `landed set ${set.name || set.id}`, what: "site", supports: [] });
  const point = (g: number, station: number, height: number): Vec3 => [
    rearEnd + station,
    aside + set.girders[g].y_m,
    soffit(g, station) + camberAt(set.girders[g], station) / 1000 + height,
  ];
  set.girders.forEach((girder, g) => {
    for (const piece of girder.pieces) {
      const inner = girder.camber_mm.map(([s]) => s).filter((s) => s > piece.from_m && s < piece.to_m);
      const stops = [piece.from_m, ...inner, piece.to_m];
      const { top, web, bottom } = platesOf(piece);
      for (const [plate, tone] of [
        [top, "steel dark"],
        [web, "steel"],
        [bottom, "steel dark"],
      ] as const)
        stops.slice(1).forEach((to, i) => {
          const middle = (plate.from + plate.to) / 2;
          pen.bar(
            point(g, stops[i], middle),
            point(g, to, middle),
            plate.width,
            plate.to - plate.from,
            up,
            tone,
          );
        });
    }
  });
  const order = set.girders.map((_, g) => g).sort((a, b) => set.girders[a].y_m - set.girders[b].y_m);
  for (const frame of set.crossFrames)
    for (let i = 1; i < order.length; i++)
      for (const height of [0.5 * frame.height_m, 1.5 * frame.height_m])
        pen.bar(
          point(order[i - 1], frame.at_m, height),
          point(order[i], frame.at_m, height),
          0.1,
          0.1,
          up,
          "frame",
        );
}

/** Draws the bearings below a landed set. */
export function drawLandedBearings(pen: Pen, plan: Plan, { set }: Landed): void {
  for (const bearing of bearingsOf(plan, set)) {
    const girder = set.girders.find((one) => one.line === bearing.girder);
    const near = bearing.line === "near";
    const top = bearingTop(plan, set, bearing, "it stands");
    const height = Math.max(0.02, (bearing.height_mm ?? 0) / 1000);
    const width = (bearing.width_mm ?? 450) / 1000;
    const x = near ? plan.site.nearBearing_m : plan.site.farBearing_m;
    const y = bearing.y_m ?? girder?.y_m ?? 0;
    const long = Math.min(0.3, width / 2);
    pen.block([x - long, x + long], [y - width / 2, y + width / 2], [top - height, top], "fitting");
  }
}
