// The site: the path on its profile, the ground beside it, abutments with seats and backwalls, the gap and what lies below.
import { bearingsOf, type Plan, type PlanSet, seatsOf } from "../plan/index.ts";
import { FacePen, type Faces, type Outline } from "./faces.ts";
import { drawLanded, drawLandedBearings, landedSets } from "./landed.ts";
import { Pen, type Tone } from "./pen.ts";
import { pathCrossfall, pathTop, type SiteLines, seatLevel, siteLines, standsInGap } from "./siteLines.ts";
import { level, type Vec3 } from "./vec.ts";

/** Everything of a site that no pose moves. `nearSide` is the ground right of the bridge, left out of an elevation. */
export interface SiteBodies {
  lines: SiteLines;
  ground: Faces;
  nearSide: Faces;
  bodies: Pen;
}

type Span = readonly [number, number];

/** Top of a strip of ground between two lines along the bridge, given as heights at both ends. */
function strip(
  pen: FacePen,
  x: Span,
  y: Span,
  z: (x: number, y: number) => number,
  tone: Tone,
  outline: Outline,
) {
  const at = (i: 0 | 1, j: 0 | 1): Vec3 => [x[i], y[j], z(x[i], y[j])];
  pen.face(at(0, 0), at(1, 0), at(1, 1), at(0, 1), tone, outline);
}

/** A wall along the bridge, down to the base; seen from +y (1) or from -y (-1). */
function side(
  pen: FacePen,
  x: Span,
  y: number,
  top: (x: number) => number,
  base: number,
  way: 1 | -1,
  tone: Tone,
) {
  const [a, b] = way > 0 ? [x[1], x[0]] : [x[0], x[1]];
  pen.face([a, y, base], [b, y, base], [b, y, top(b)], [a, y, top(a)], tone, "none");
}

/** A wall across the bridge, seen from +x (1) or from -x (-1). */
function end(
  pen: FacePen,
  x: number,
  y: Span,
  top: (y: number) => number,
  base: number,
  way: 1 | -1,
  tone: Tone,
) {
  const [a, b] = way > 0 ? y : [y[1], y[0]];
  pen.face([x, a, base], [x, b, base], [x, b, top(b)], [x, a, top(a)], tone, "none");
}

/** Stations along the path between two chainages, at every point of its profile. */
function profile(plan: Plan, from: number, to: number): number[] {
  const inside = plan.site.path.points.map((p) => p.chainage_m).filter((x) => x > from && x < to);
  return [from, ...inside, to];
}

/** Level of the ground beside the path on one side: that of the cranes standing there, else the path's own. */
function besideLevel(plan: Plan, l: SiteLines, way: 1 | -1): number | null {
  const there = plan.cranes.filter(
    (c) =>
      c.position.chainage_m <= plan.site.nearFace_m &&
      way * c.position.y_m > l.pathHalf &&
      !standsInGap(plan, c),
  );
  return there.length === 0 ? null : Math.min(...there.map((c) => c.position.elevation_m));
}

/** Where the slope beside the path must have ended: before the tracks of any crane there. */
function slopeEnd(plan: Plan, l: SiteLines, way: 1 | -1, drop: number): number {
  const inner = plan.cranes
    .filter((c) => way * c.position.y_m > l.pathHalf)
    .map((c) => way * c.position.y_m - c.trackGauge_m / 2 - (c.trackWidth_m ?? 1) / 2 - 0.4);
  return Math.max(l.pathHalf + 0.1, Math.min(l.pathHalf + 0.2 + 1.5 * Math.abs(drop), ...inner));
}

function besidePath(pen: FacePen, plan: Plan, l: SiteLines, way: 1 | -1): void {
  const own = besideLevel(plan, l, way);
  const edge = way * l.pathHalf;
  const edgeTop = (x: number) => pathTop(plan, x) - pathCrossfall(plan, x) * edge;
  const flat = (x: number) => own ?? edgeTop(x);
  const foot = way * slopeEnd(plan, l, way, own === null ? 0 : edgeTop(l.nearBack) - own);
  const outer = way > 0 ? l.left : -l.right;
  const xs = profile(plan, l.from, l.nearBack);
  xs.slice(1).forEach((b, i) => {
    const x: Span = [xs[i], b];
    const bands = [
      { y: [edge, foot], z: (at: number, y: number) => (y === edge ? edgeTop(at) : flat(at)) },
      { y: [foot, outer], z: (at: number) => flat(at) },
    ];
    for (const band of bands) {
      const y = [Math.min(...band.y), Math.max(...band.y)] as const;
      strip(pen, x, y, band.z, "ground", "none");
    }
    side(pen, x, outer, flat, l.base, way, "ground cut");
  });
  const top = (at: number) => (y: number) =>
    Math.abs(y) <= l.pathHalf ? edgeTop(at) : Math.abs(y) >= Math.abs(foot) ? flat(at) : edgeTop(at);
  for (const y of [
    [edge, foot],
    [foot, outer],
  ]) {
    const span: Span = [Math.min(...y), Math.max(...y)];
    end(pen, l.from, span, top(l.from), l.base, -1, "ground cut");
    end(pen, l.nearBack, span, top(l.nearBack), l.base, 1, "ground cut");
  }
}

function underPath(pen: FacePen, plan: Plan, l: SiteLines): void {
  const z = (x: number, y: number) => pathTop(plan, x) - pathCrossfall(plan, x) * y;
  const y: Span = [-l.pathHalf, l.pathHalf];
  const xs = profile(plan, l.from, l.nearBack);
  xs.slice(1).forEach((b, i) => {
    const x: Span = [xs[i], b];
    strip(pen, x, y, z, "path", "along");
    side(pen, x, y[0], (at) => z(at, y[0]), l.base, -1, "ground cut");
    side(pen, x, y[1], (at) => z(at, y[1]), l.base, 1, "ground cut");
  });
  end(pen, l.from, y, (at) => z(l.from, at), l.base, -1, "ground cut");
}

function farGround(pen: FacePen, l: SiteLines, y: Span, ends: boolean): void {
  const x: Span = [l.farBack, l.to];
  strip(pen, x, y, () => l.farTop, "ground", "none");
  side(pen, x, y[0], () => l.farTop, l.base, -1, "ground cut");
  side(pen, x, y[1], () => l.farTop, l.base, 1, "ground cut");
  if (!ends) return;
  end(pen, l.to, y, () => l.farTop, l.base, 1, "ground cut");
  end(pen, l.farBack, y, () => l.farTop, l.base, -1, "ground cut");
}

function belowGap(pen: FacePen, plan: Plan, l: SiteLines): void {
  const kind = plan.site.below.kind;
  const x: Span = [l.nearBack, l.farBack];
  const y: Span = [-l.right, l.left];
  strip(pen, x, y, () => l.below, kind === "water" ? "water" : "ground", "along");
  side(pen, x, y[0], () => l.below, l.base, -1, kind === "water" ? "water" : "ground cut");
  const middle = (x[0] + x[1]) / 2;
  if (kind === "road") {
    const half = Math.min(7, 0.3 * (x[1] - x[0]));
    strip(pen, [middle - half, middle + half], y, () => l.below + 0.03, "road", "all");
  } else if (kind === "rail") {
    strip(pen, [middle - 2.4, middle + 2.4], y, () => l.below + 0.03, "road", "all");
  }
}

/** Rails and sleepers, or the middle line of a road. */
function furnishBelow(pen: Pen, plan: Plan, l: SiteLines): void {
  const kind = plan.site.below.kind;
  const middle = (l.nearFace + l.farFace) / 2;
  const z = l.below;
  pen.part({ name: `${kind} below`, what: "site", supports: [] });
  if (kind === "rail") {
    for (let y = -l.right + 0.5; y < l.left; y += 1.2) pen.box(middle, y, z + 0.1, 2.4, 0.25, 0.14, "timber");
    for (const s of [-0.75, 0.75])
      pen.box(middle + s, (l.left - l.right) / 2, z + 0.24, 0.08, l.left + l.right, 0.16, "steel dark");
  } else if (kind === "road") {
    for (let y = -l.right + 1; y < l.left - 1.5; y += 4)
      pen.box(middle, y + 0.75, z + 0.05, 0.12, 1.5, 0.02, "marking");
  }
}

/** Stem, shelf, backwall and wings of one abutment. */
function abutment(pen: Pen, plan: Plan, l: SiteLines, which: "near" | "far"): void {
  const near = which === "near";
  const seat = near ? l.nearSeat : l.farSeat;
  const top = near ? pathTop(plan, l.nearBack) : l.farTop;
  const shelf = (seat ?? top) - 0.2;
  const [back, face] = near ? [l.nearBack, l.nearFace] : [l.farBack, l.farFace];
  const way = near ? -1 : 1;
  const given = near ? plan.site.nearBackwall_m : plan.site.farBackwall_m;
  const y: Span = [-l.abutmentHalf, l.abutmentHalf];
  const x = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];
  pen.part({ name: `${which} abutment`, what: "site", supports: [] });
  pen.block(x(back + way * 0.5, face), y, [l.base, shelf], "concrete");
  if (given !== undefined && top > shelf) {
    pen.block(x(back, back + way * 0.4), y, [shelf, top + 0.02], "concrete");
  }
  for (const s of [-1, 1]) {
    const edge = s * l.abutmentHalf;
    const wing: Span = s > 0 ? [edge - 0.35, edge] : [edge, edge + 0.35];
    if (top > shelf)
      pen.block(x(back + way * 0.4, back + way * 4), wing, [shelf - 0.6, top + 0.02], "concrete");
  }
}

function seats(pen: Pen, plan: Plan, set: PlanSet, l: SiteLines): void {
  const below = (line: string, girder: string) =>
    bearingsOf(plan, set).find((b) => b.line === line && b.girder === girder);
  for (const seat of seatsOf(plan, set)) {
    const girder = set.girders.find((one) => one.line === seat.girder);
    if (girder === undefined) continue;
    const near = seat.line === "near";
    const x = near ? plan.site.nearBearing_m : plan.site.farBearing_m;
    const shelf = ((near ? l.nearSeat : l.farSeat) ?? 0) - 0.2;
    const bearing = below(seat.line, seat.girder);
    const across = Math.max(0.7, (bearing?.width_mm ?? 600) / 1000 + 0.2);
    const y = bearing?.y_m ?? girder.y_m;
    pen.part({
      name: `seat ${seat.line} ${seat.girder}`,
      what: "site",
      supports: [`${seat.line} ${seat.girder}`],
    });
    pen.block(
      [x - 0.4, x + 0.4],
      [y - across / 2, y + across / 2],
      [shelf, seatLevel(seat)],
      "concrete dark",
    );
  }
}

/** Pads under cranes that stand in the gap, stop lines, structures underfoot and obstacles. */
function furnish(pen: Pen, plan: Plan, l: SiteLines): void {
  for (const c of plan.cranes.filter((one) => standsInGap(plan, one))) {
    const r = Math.hypot(c.trackLength_m, c.trackGauge_m) / 2 + 1.5;
    const { chainage_m: x, y_m: y, elevation_m: z } = c.position;
    pen.part({ name: `pad of ${c.name}`, what: "site", supports: [] });
    pen.block([x - r, x + r], [y - r, y + r], [Math.min(l.below, z) - 0.2, z], "ground");
  }
  for (const line of plan.site.stopLines) {
    pen.part({ name: `stop line ${line.name}`, what: "site", supports: [] });
    const z = pathTop(plan, line.chainage_m);
    pen.box(line.chainage_m, 0, z + 0.02, 0.16, 2 * l.pathHalf, 0.06, "marking");
    for (const s of [-1, 1]) pen.box(line.chainage_m, s * l.pathHalf, z + 0.45, 0.12, 0.12, 0.9, "marking");
  }
  for (const one of plan.site.underfoot) {
    pen.part({ name: one.name, what: "site", supports: [] });
    const z = pathTop(plan, (one.from_m + one.to_m) / 2);
    pen.block(
      [one.from_m, one.to_m],
      [-l.pathHalf - 0.05, l.pathHalf + 0.05],
      [z - 0.35, z - 0.03],
      "concrete dark",
    );
  }
  for (const one of plan.site.obstacles) {
    pen.part({ name: one.name, what: "site", supports: [] });
    const a: Vec3 = [one.from.chainage_m, one.from.y_m, one.from.elevation_m];
    const b: Vec3 = [one.to.chainage_m, one.to.y_m, one.to.elevation_m];
    if (one.kind === "overhead line") pen.rod(a, b, 0.08, "obstacle");
    else {
      const pair = (k: 0 | 1 | 2): Span => [Math.min(a[k], b[k]), Math.max(a[k], b[k])];
      pen.block(pair(0), pair(1), pair(2), "obstacle");
    }
  }
}

/** Draws the site of a plan around one of its sets; positions count from `origin`. */
export function drawSite(plan: Plan, set: PlanSet, origin: Vec3): SiteBodies {
  const lines = siteLines(plan, set);
  const ground = new FacePen(origin);
  const nearSide = new FacePen(origin);
  underPath(ground, plan, lines);
  besidePath(ground, plan, lines, 1);
  besidePath(nearSide, plan, lines, -1);
  farGround(ground, lines, [-lines.pathHalf, lines.left], true);
  farGround(nearSide, lines, [-lines.right, -lines.pathHalf], true);
  belowGap(ground, plan, lines);
  const bodies = new Pen(origin);
  bodies.frame = level([0, 0, 0]);
  abutment(bodies, plan, lines, "near");
  abutment(bodies, plan, lines, "far");
  seats(bodies, plan, set, lines);
  for (const one of landedSets(plan, set)) {
    seats(bodies, plan, one.set, lines);
    drawLanded(bodies, one);
    drawLandedBearings(bodies, plan, one);
  }
  furnishBelow(bodies, plan, lines);
  furnish(bodies, plan, lines);
  return { lines, ground: ground.done(), nearSide: nearSide.done(), bodies };
}
