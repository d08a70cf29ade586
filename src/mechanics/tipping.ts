// How far the set is from turning over: axes through group centroids, bearings, picks and bunks.

import type { SetModel } from "./setModel.ts";
import type { Solution } from "./solution.ts";
import { hullOf, type PlanPoint } from "./standing/hull.ts";
import type { Tipping } from "./state/types.ts";

interface SupportPoint extends PlanPoint {
  name: string;
  /** A hook: it holds up, but not against lean. */
  hangs: boolean;
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
export function sideMoments(model: SetModel, a: PlanPoint, b: PlanPoint): SideMoments {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const nx = -(b.y - a.y) / length;
  const ny = (b.x - a.x) / length;
  const distance = (model.cg[0] - a.x) * nx + (model.cg[1] - a.y) * ny;
  // Most edges have all of the mass on their inner side.
  const { from, to, right, left } = spanOf(model);
  const nearest =
    Math.min((from - a.x) * nx, (to - a.x) * nx) + Math.min((right - a.y) * ny, (left - a.y) * ny);
  if (nearest >= 0) return { stabilising: model.mass * distance, overturning: 0, distance };
  let stabilising = 0;
  let overturning = 0;
  const { runs, points } = model;
  for (let i = 0; i < runs.length; i++) {
    const r = runs[i];
    const mass = r.massPerMetre * (r.to - r.from);
    const d0 = (r.from - a.x) * nx + (r.y - a.y) * ny;
    const d1 = (r.to - a.x) * nx + (r.y - a.y) * ny;
    const both = (mass * (d0 + d1)) / 2;
    if (d0 * d1 >= 0) {
      if (both >= 0) stabilising += both;
      else overturning -= both;
      continue;
    }
    // The axis crosses the run: a part of it lies on either side.
    const t = d0 / (d0 - d1);
    const [inner, outer] = d0 > 0 ? [t * d0, (1 - t) * d1] : [(1 - t) * d1, t * d0];
    stabilising += (mass * inner) / 2;
    overturning -= (mass * outer) / 2;
  }
  for (let i = 0; i < points.length; i++) {
    const p = points[i];
    const moment = p.mass * ((p.x - a.x) * nx + (p.y - a.y) * ny);
    if (moment >= 0) stabilising += moment;
    else overturning -= moment;
  }
  return { stabilising, overturning, distance };
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
  // A deck without a bunk that carries is no support of the set.
  const loaded = new Uint8Array(layout.trains.length);
  for (let j = 0; j < devices.length; j++)
    if (devices[j].kind === "bunk" && contact.F[j] > 0) loaded[devices[j].decks[0]] = 1;
  for (let j = 0; j < devices.length; j++) {
    const { kind, name, x, y, decks } = devices[j];
    const F = contact.F[j];
    if (kind === "group") smallestGroup = smallestGroup === null ? F : Math.min(smallestGroup, F);
    if (!(F > 0)) continue;
    const point = { name, x, y, hangs: kind === "hoist" };
    if (kind === "bearing" || kind === "hoist") {
      ground.push(point);
      bunks.push(point);
    } else if (kind === "bunk") bunks.push(point);
    else if ((kind === "group" || kind === "stop") && decks.some((deck) => loaded[deck] === 1))
      ground.push(point);
  }
  const forceHoists = layout.hoists
    .map((h, i) => ({ h, i }))
    .filter(({ h, i }) => h.mode === "load" && tension[i] > 0);
  let best: Tipping | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [points, height] of [
    [ground, true],
    [bunks, false],
  ] as const) {
    const distinct = hullOf(points);
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
