// Hand motions of handing over: how far a hook must hoist, and how far a train must go down, by springs in series.

import type { Plan } from "../../../src/plan/index.ts";
import { bunkAt, flexibility, lever, lineStiffness, type Spring, trainOf, trainStiffness } from "./levers.ts";
import { pickOf } from "./reach.ts";
import { about, exactly, hull, plus, pushed, type Span } from "./span.ts";
import type { Weight } from "./weights.ts";

const G = 9.80665;
/** Loads by the lever, of themselves: slopes of the path and of the set, lines a little out of plumb. */
export const LEVER = 0.012;
/** Heights by springs in series, of themselves: shear and frames only in part, slopes of the set. */
const HEIGHT = 0.03;
/** Strokes also take up the path's unevenness below the wheels, m. */
const PATH = 0.012;

export type Word = "yes" | "no" | "maybe";

const certainly = (s: Span, limit: number): Word => (s.low > limit ? "yes" : s.high < limit ? "no" : "maybe");

export interface Taken {
  /** Net load on the hook at the end, N, and the one at which the other support frees. */
  load: Span;
  frees: number;
  /** The step ends at a cap instead of at its load. */
  capped: Word;
  /** The support on the ground that the hook relieves is free at the end. */
  freed: Word;
  /** Height hoisted from just taut, m. */
  height: Span;
}

/** The supports of the set while a hook takes load, its place, and the load at which the relieved one frees. */
function takes(plan: Plan, w: Weight, kind: "far" | "near") {
  const a: Spring = { x: bunkAt(plan, "rear"), k: trainStiffness(plan, "rear") };
  const front: Spring = { x: bunkAt(plan, "front"), k: trainStiffness(plan, "front") };
  const far: Spring = { x: pickOf(plan, "far").at_m, k: lineStiffness(plan, "far") };
  const near: Spring = { x: pickOf(plan, "near").at_m, k: lineStiffness(plan, "near") };
  return kind === "far"
    ? { a, b: front, hook: far, frees: lever(far.x, a.x, [[w.x, w.W]]) }
    : { a, b: far, hook: near, frees: lever(near.x, far.x, [[w.x, w.W]]) };
}

/** What a `take load` of the far or near hook ends with. */
export function taken(plan: Plan, w: Weight, kind: "far" | "near", stated: number, cap: number): Taken {
  const { a, b, hook, frees } = takes(plan, w, kind);
  const flex = flexibility(plan, a, b, hook.x);
  const give = { low: (1 / hook.k + flex.low) * (1 - HEIGHT), high: (1 / hook.k + flex.high) * (1 + HEIGHT) };
  const heightTo = (N: number): Span => ({ low: N * give.low, high: N * give.high });
  const reach = certainly(about(frees, LEVER), stated);
  const atCap: Span = {
    low: Math.min(frees, cap / give.high),
    high: Math.min(frees * (1 + LEVER), cap / give.low),
  };
  if (reach === "yes") {
    const height = heightTo(stated);
    const capped = certainly(height, cap);
    if (capped === "no") return { load: exactly(stated), frees, capped, freed: "no", height };
    const load = capped === "yes" ? atCap : hull(exactly(stated), { low: atCap.low, high: stated });
    return { load, frees, capped, freed: "no", height: { low: Math.min(height.low, cap), high: cap } };
  }
  // The load is never reached: the hook goes on to its height cap, once the support is free without more load.
  const height = exactly(cap);
  const freed = certainly({ low: -heightTo(frees).high, high: -heightTo(frees).low }, -cap);
  if (reach === "no") return { load: atCap, frees, capped: "yes", freed, height };
  return {
    load: { low: Math.min(stated * (1 - LEVER), atCap.low), high: Math.max(stated, frees * (1 + LEVER)) },
    frees,
    capped: "maybe",
    freed: "maybe",
    height: { low: heightTo(stated).low, high: cap },
  };
}

export interface Lowered {
  /** Stroke of a cylinder at the end, m from the middle, inward; never more than there is. */
  stroke: Span;
  /** The stated gap is not reached, because there is no more stroke. */
  short: Word;
  /** The train still carries at the end. */
  carries: Word;
  /** Gap above its bunks at the end, m. */
  gap: Span;
}

/**
 * What a `jack down` of a train to a gap ends with, its share of the set (N) at the start being given: the set follows
 * it down on what else carries, the train grows by what presses it, and the gap comes on top. `tilt` is how far the set
 * hangs below its middle over a bunk once it is free (m).
 */
export function lowered(
  plan: Plan,
  id: "rear" | "front",
  share: Span,
  gap: number,
  freed: Word,
  tilt: Span,
): Lowered {
  const rear: Spring = { x: bunkAt(plan, "rear"), k: trainStiffness(plan, "rear") };
  const far: Spring = { x: pickOf(plan, "far").at_m, k: lineStiffness(plan, "far") };
  const near: Spring = { x: pickOf(plan, "near").at_m, k: lineStiffness(plan, "near") };
  const flex =
    id === "front"
      ? flexibility(plan, rear, far, bunkAt(plan, "front"))
      : flexibility(plan, near, far, bunkAt(plan, "rear"));
  const own = 1 / trainStiffness(plan, id);
  const t = trainOf(plan, id);
  const tare = (t.mass_t * 1000 * G) / (2 * t.lines * t.cylinderStiffness_kN_per_mm * 1e6);
  const F = pushed(share);
  const down: Span = {
    low: F.low * (flex.low + own) * (1 - HEIGHT),
    high: F.high * (flex.high + own) * (1 + HEIGHT),
  };
  // The bunk below the lower side frees last, and the gap counts from there.
  const last = plus(down, tilt);
  const there = t.strokeDown_mm / 1000 - tare;
  const needed: Span = { low: last.low + gap - PATH, high: last.high + gap + PATH };
  // A train that was free before has some of its gap already, nobody says how much.
  if (freed !== "no") needed.low = 0;
  const short = certainly(needed, there);
  const stroke = {
    low: Math.min(needed.low + tare, t.strokeDown_mm / 1000),
    high: Math.min(needed.high + tare, t.strokeDown_mm / 1000),
  };
  if (short === "no") return { stroke, short, carries: "no", gap: exactly(gap) };
  const carries = certainly({ low: last.low - PATH, high: last.high + PATH }, there);
  const left: Span = { low: there - last.high - PATH, high: there - last.low + PATH };
  return { stroke, short, carries, gap: { low: Math.max(0, left.low), high: Math.min(gap, left.high) } };
}
