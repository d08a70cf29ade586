// level: hydraulic groups corrected while everything stands, until the set lies level or as sloped as stated.

import { leanOf, levelOf } from "../../mechanics/index.ts";
import { byId } from "../../plan/index.ts";
import { wheelsOf } from "../place.ts";
import type { Pose, SetContext, Situation } from "../types.ts";
import { bunkGap, type Found, happening, type MotionOf, type Probe } from "./kind.ts";

type Level = Parameters<MotionOf<"level">["find"]>[1];

/** How exactly a set is levelled when nobody says, m over the bunks. Common practice, no source. */
const TOLERANCE = 0.005;
/** A support counts as carrying from this share of the set's weight on. */
const CARRIES = 1e-3;
const MOST_ROUNDS = 12;
/** Turn by which the answer of the set is tried, rad. */
const TRIAL = 1e-3;

/** Something that carries, at its place under the set: station, y, share of the weight. */
interface Place {
  name: string;
  x: number;
  y: number;
  share: number;
}

/** Groups of the context, in the order of the numbers that a search leaves. */
function groupNames(ctx: SetContext): string[] {
  return ctx.supports.filter((s) => s.what === "group").map((s) => s.name);
}

/** Where the groups and everything else that carries stand under the set. */
function placesOf(ctx: SetContext, pose: Pose): Place[] {
  const { plan, set } = ctx;
  const out: Place[] = [];
  ctx.supports.forEach((s, i) => {
    if (!s.band || Number.isNaN(pose.forces[i])) return;
    const share = pose.shares[i];
    if (s.what === "group") {
      const train = byId(pose.situation.trains, s.of);
      const wheels = byId(plan.transporters, s.of).groups.find((g) => g.name === s.name)?.wheels ?? [];
      const own = wheelsOf(plan, s.of).filter((w) => wheels.includes(w.id));
      const mean = (f: (w: { x: number; y: number }) => number) =>
        own.reduce((sum, w) => sum + f(w) / own.length, 0);
      out.push({ name: s.name, x: train.deckAt + mean((w) => w.x), y: mean((w) => w.y), share });
    } else if (s.what === "hoist") {
      const pick = set.picks.find((p) => p.crane === s.of);
      if (pick) out.push({ name: s.name, x: pick.at_m, y: 0, share });
    } else {
      const bearing = (pose.state.bearings ?? []).find((b) => b.name === s.name);
      const girder = set.girders.find((g) => g.line === bearing?.girder);
      if (bearing && girder) out.push({ name: s.name, x: bearing.at, y: girder.y_m, share });
    }
  });
  return out;
}

const spread = (values: number[]) => (values.length > 0 ? Math.max(...values) - Math.min(...values) : 0);

function meanBy(places: Place[], of: (p: Place) => number): number {
  const sum = places.reduce((a, p) => a + Math.max(p.share, 0), 0);
  if (!(sum > 0)) return places.reduce((a, p) => a + of(p) / places.length, 0);
  return places.reduce((a, p) => a + (of(p) * Math.max(p.share, 0)) / sum, 0);
}

/**
 * Lift of every commanded group for a unit of lean and a unit of level: a plane turned about what is not commanded and
 * carries, or about the middle of the load when everything is commanded, so that its height stays.
 */
function patterns(commanded: Place[], others: Place[]): { lean: number[]; level: number[] } {
  const about = others.length > 0 ? others : commanded;
  const x0 = meanBy(about, (p) => p.x);
  const y0 =
    spread(commanded.map((p) => p.y)) > 1e-6 ? meanBy(commanded, (p) => p.y) : meanBy(about, (p) => p.y);
  return { lean: commanded.map((p) => p.y - y0), level: commanded.map((p) => -(p.x - x0)) };
}

function lifted(ctx: SetContext, start: Situation, lifts: readonly number[], part: number): Situation {
  const groupLift = { ...start.groupLift };
  groupNames(ctx).forEach((g, i) => {
    groupLift[g] += part * lifts[i];
  });
  return { ...start, groupLift };
}

function find(ctx: SetContext, step: Level, start: Situation, probe: Probe): Found {
  const names = groupNames(ctx);
  const none = names.map(() => 0);
  const pose = probe(start);
  const carrying = start.trains.filter((t) => t.under && bunkGap(pose, t.id) === 0).map((t) => t.id);
  const owner = (g: string) => ctx.supports.find((s) => s.what === "group" && s.name === g)?.of ?? "";
  const wanted = step.groups ?? names.filter((g) => carrying.includes(owner(g)));
  const idle = wanted.filter((g) => !carrying.includes(owner(g)));
  if (wanted.length === 0 || idle.length > 0)
    return {
      ends: none,
      happenings: [
        happening(
          "out of order",
          idle[0] ?? "set",
          idle.length > 0
            ? `the train of ${idle.join(", ")} carries nothing of the set: it cannot level it`
            : "no transporter carries the set: there is nothing to level it with",
        ),
      ],
    };
  const places = placesOf(ctx, pose);
  const commanded = places.filter((p) => wanted.includes(p.name));
  const least = CARRIES * ctx.model.mass * ctx.gravity;
  const others = places.filter((p) => !wanted.includes(p.name) && p.share > least);
  const pattern = patterns(commanded, others);
  const liftsAt = (u: readonly [number, number]) =>
    names.map((g) => {
      const i = commanded.findIndex((p) => p.name === g);
      return i < 0 ? 0 : u[0] * pattern.lean[i] + u[1] * pattern.level[i];
    });

  // Height by which lean and level are off over the bunks; a slope that nobody asks for is left as it is.
  const free = step.lean_pct === undefined && step.level_pct === undefined;
  const asked = [free || step.lean_pct !== undefined, free || step.level_pct !== undefined];
  const ys = ctx.set.girders.map((g) => g.y_m);
  const across = spread(ys) > 0 ? spread(ys) : spread(commanded.map((p) => p.y));
  const along = spread(places.filter((p) => p.share > least).map((p) => p.x)) || ctx.length;
  const spans = [across, along];
  const off = (u: readonly [number, number]): [number, number] | null => {
    const p = probe(lifted(ctx, start, liftsAt(u), 1));
    if (p.solution.status !== "solved") return null;
    const { crossfall, grade } = p.situation.plane;
    const lean = leanOf(p.solution) - crossfall - (step.lean_pct ?? 0) / 100;
    const level = levelOf(p.solution) - grade - (step.level_pct ?? 0) / 100;
    return [asked[0] ? lean * spans[0] : 0, asked[1] ? level * spans[1] : 0];
  };
  const tolerance = step.tolerance_mm === undefined ? TOLERANCE : step.tolerance_mm / 1000;
  const size = (e: readonly [number, number]) => Math.max(Math.abs(e[0]), Math.abs(e[1]));
  let u: [number, number] = [0, 0];
  let e = off(u) ?? [Number.NaN, Number.NaN];
  if (size(e) <= tolerance) return { ends: none, happenings: [] };
  for (let round = 0; round < MOST_ROUNDS && size(e) > 1e-6; round++) {
    const next = better(u, e, asked, off);
    if (next === null || !(size(next.e) < size(e))) break;
    ({ u, e } = next);
  }
  const happenings = [];
  if (!(size(e) <= tolerance))
    happenings.push(
      happening(
        "end not reached",
        "set",
        `levelling leaves the set ${(size(e) * 1000).toFixed(1)} mm off over its supports`,
        { value: size(e), limit: tolerance, unit: "m", progress: 1 },
      ),
    );
  return { ends: liftsAt(u), happenings };
}

/** One Newton step on the turns asked for, with the answer of the set tried about where it stands. */
function better(
  u: readonly [number, number],
  e: readonly [number, number],
  asked: readonly boolean[],
  off: (u: readonly [number, number]) => [number, number] | null,
): { u: [number, number]; e: [number, number] } | null {
  const column = (k: 0 | 1): [number, number] | null => {
    const v: [number, number] = [u[0], u[1]];
    v[k] += TRIAL;
    const f = off(v);
    return f && [(f[0] - e[0]) / TRIAL, (f[1] - e[1]) / TRIAL];
  };
  const a = asked[0] ? column(0) : [0, 0];
  const b = asked[1] ? column(1) : [0, 0];
  if (!a || !b) return null;
  const det = a[0] * b[1] - a[1] * b[0];
  // A turn that moves nothing, as the lean of a single girder, is left alone.
  const [da, db] =
    asked[0] && asked[1] && Math.abs(det) > 1e-9
      ? [(e[0] * b[1] - e[1] * b[0]) / det, (a[0] * e[1] - a[1] * e[0]) / det]
      : [Math.abs(a[0]) > 1e-6 ? e[0] / a[0] : 0, Math.abs(b[1]) > 1e-6 ? e[1] / b[1] : 0];
  const next: [number, number] = [u[0] - da, u[1] - db];
  const found = off(next);
  return found && { u: next, e: found };
}

export const level: MotionOf<"level"> = {
  find,
  at: (ctx, _step, start, ends, progress) => lifted(ctx, start, ends, progress),
};
