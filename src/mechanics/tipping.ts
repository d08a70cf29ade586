// How far the set is from turning over: axes through group centroids, bearings, picks and bunks.

import type { SetModel } from "./setModel.ts";
import type { Solution } from "./solution.ts";
import type { Tipping } from "./state/types.ts";

interface SupportPoint {
  name: string;
  x: number;
  y: number;
  /** A hook: it holds up, but not against lean. */
  hangs?: boolean;
}

/** Moments of the weight on either side of the line through two points, N m per unit gravity, and the CG's distance. */
export interface SideMoments {
  stabilising: number;
  overturning: number;
  distance: number;
}

/** The rectangle in plan in which all mass of a set lies, by its runs and points; worked out once for a set. */
const spans = new WeakMap<SetModel["runs"], { from: number; to: number; right: number; left: number }>();

function spanOf({ runs, points }: SetModel) {
  const known = spans.get(runs);
  if (known !== undefined) return known;
  const x = [...runs.flatMap((r) => [r.from, r.to]), ...points.map((p) => p.x)];
  const y = [...runs.map((r) => r.y), ...points.map((p) => p.y)];
  const span = { from: Math.min(...x), to: Math.max(...x), right: Math.min(...y), left: Math.max(...y) };
  spans.set(runs, span);
  return span;
}

/**
 * Moments of mass about the axis from `a` to `b`, the inside on its left: runs along girders are split where the
 * axis crosses them. Units kg m.
 */
export function sideMoments(model: SetModel, a: SupportPoint, b: SupportPoint): SideMoments {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const nx = -(b.y - a.y) / length;
  const ny = (b.x - a.x) / length;
  const at = (x: number, y: number) => (x - a.x) * nx + (y - a.y) * ny;
  const inside = at(model.cg[0], model.cg[1]);
  // Most edges have all of the mass on their inner side.
  const { from, to, right, left } = spanOf(model);
  if (at(from, right) >= 0 && at(from, left) >= 0 && at(to, right) >= 0 && at(to, left) >= 0)
    return { stabilising: model.mass * inside, overturning: 0, distance: inside };
  let stabilising = 0;
  let overturning = 0;
  const add = (mass: number, distance: number) => {
    if (distance >= 0) stabilising += mass * distance;
    else overturning -= mass * distance;
  };
  for (const r of model.runs) {
    const d0 = at(r.from, r.y);
    const d1 = at(r.to, r.y);
    const mass = r.massPerMetre * (r.to - r.from);
    if (d0 * d1 >= 0) add(mass, (d0 + d1) / 2);
    else {
      const t = d0 / (d0 - d1);
      add(mass * t, d0 / 2);
      add(mass * (1 - t), d1 / 2);
    }
  }
  for (const p of model.points) add(p.mass, at(p.x, p.y));
  return { stabilising, overturning, distance: inside };
}

/** Corner points of the convex hull, counter-clockwise (Andrew's monotone chain). */
function hull(points: SupportPoint[]): SupportPoint[] {
  const p = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const turn = (o: SupportPoint, a: SupportPoint, b: SupportPoint) =>
    (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  const half = (list: SupportPoint[]) => {
    const out: SupportPoint[] = [];
    for (const q of list) {
      while (out.length >= 2 && turn(out[out.length - 2], out[out.length - 1], q) <= 1e-12) out.pop();
      out.push(q);
    }
    out.pop();
    return out;
  };
  return [...half(p), ...half([...p].reverse())];
}

/**
 * The governing tipping axis of a solved pose: the hull edge with the least moment ratio of weight, over two
 * polygons: where the set stands on its supports (group centroids, bearings, hoist picks), and where it stands on
 * its bunks. Sideways forces and the lift of force-controlled hoists count on the side they act.
 */
export function tippingOf(s: Solution): Tipping | null {
  const { devices, contact, model, layout, tension } = s;
  const ground: SupportPoint[] = [];
  const bunks: SupportPoint[] = [];
  let smallestGroup: number | null = null;
  devices.forEach((d, j) => {
    const F = contact.F[j];
    if (d.kind === "group") smallestGroup = smallestGroup === null ? F : Math.min(smallestGroup, F);
    if (!(F > 0)) return;
    if (d.kind === "group" || d.kind === "bearing" || d.kind === "hoist" || d.kind === "stop") {
      const carries =
        d.kind !== "group" && d.kind !== "stop"
          ? true
          : devices.some((b, i) => b.kind === "bunk" && contact.F[i] > 0 && d.decks.includes(b.decks[0]));
      if (carries) ground.push({ name: d.name, x: d.x, y: d.y, hangs: d.kind === "hoist" });
      if (d.kind === "bearing" || d.kind === "hoist")
        bunks.push({ name: d.name, x: d.x, y: d.y, hangs: d.kind === "hoist" });
    }
    if (d.kind === "bunk") bunks.push({ name: d.name, x: d.x, y: d.y });
  });
  const forceHoists = layout.hoists
    .map((h, i) => ({ h, i }))
    .filter(({ h, i }) => h.mode === "load" && tension[i] > 0);
  let best: Tipping | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [points, height] of [
    [ground, true],
    [bunks, false],
  ] as const) {
    const distinct = hull(points);
    const edges: [SupportPoint, SupportPoint][] = [];
    if (distinct.length >= 3)
      distinct.forEach((a, i) => {
        edges.push([a, distinct[(i + 1) % distinct.length]]);
      });
    else if (model.lean < 0 || distinct.length === 2) {
      // One line of supports (a one-girder set): only the ends tip, about lines across the set.
      const xs = points.map((p) => p.x);
      if (xs.length < 2) continue;
      const rear = points[xs.indexOf(Math.min(...xs))];
      const front = points[xs.indexOf(Math.max(...xs))];
      if (front.x - rear.x < 1e-9) continue;
      // The inside lies on the left of each axis.
      edges.push([
        { ...rear, y: 1 },
        { ...rear, y: -1 },
      ]);
      edges.push([
        { ...front, y: -1 },
        { ...front, y: 1 },
      ]);
    } else continue;
    for (const [a, b] of edges) {
      // Between two hooks the set hangs: it swings back, and its stability is the pendulum's.
      if (a.hangs && b.hangs) continue;
      const m = sideMoments(model, a, b);
      const g = s.state.gravity * layout.up[2];
      let stabilising = m.stabilising * g;
      let overturning = m.overturning * g;
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const nx = -(b.y - a.y) / length;
      const ny = (b.x - a.x) / length;
      for (const { h, i } of forceHoists) {
        const d = (h.at - a.x) * nx - a.y * ny;
        const moment = tension[i] * d;
        if (moment >= 0) overturning += moment;
        else stabilising -= moment;
      }
      // Sideways weight (grade, crossfall) and wind act at their heights above what the set stands on.
      const foot = height ? -Math.max(0, ...layout.trains.map((t) => t.bunkHeight)) : 0;
      const arm = model.cg[2] - foot;
      const sideX = -layout.up[0] * model.mass * s.state.gravity;
      const sideY = -layout.up[1] * model.mass * s.state.gravity;
      const wind = s.state.wind;
      let extra = 0;
      if (wind && wind.pressure !== 0) {
        const c = model.wind.get(wind.toward);
        if (c) extra = wind.pressure * wind.factor * c.force * (c.height - foot) * ny;
      }
      const sideways = (sideX * nx + sideY * ny) * arm + extra;
      if (sideways < 0) overturning -= sideways;
      const ratio = overturning > 0 ? stabilising / overturning : Number.POSITIVE_INFINITY;
      if (ratio < least || best === null) {
        least = ratio;
        best = {
          axis: `${a.name} to ${b.name}`,
          momentRatio: Number.isFinite(ratio) ? ratio : null,
          cgDistance: m.distance,
          smallestGroup,
        };
      }
    }
  }
  return best;
}
