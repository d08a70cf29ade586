// Numbers of the demonstration day by hand, for what comes up when its order is changed.

import { bunkAt, lever, trainOf } from "./hand/levers.ts";
import { hangs, pickOf, radius } from "./hand/reach.ts";
import { about, type Span } from "./hand/span.ts";
import { weigh } from "./hand/weights.ts";
import { steps, whole } from "./order.ts";

const w = weigh(whole);
const at = { near: pickOf(whole, "near").at_m, far: pickOf(whole, "far").at_m };

/** Length of a roll of the day, m. */
export function rolled(id: string): number {
  const step = steps.find((s) => s.id === id);
  if (step?.do !== "roll" && step?.do !== "roll together") throw new Error(id);
  return step.distance_m;
}

/** Where a hook is put on after these rolls: chainage and y. */
const plumb = (kind: "far" | "near", rolls: string[]): [number, number] => {
  const { rearEnd_m, y_m = 0 } = whole.sets[0].start;
  return [rearEnd_m + rolls.reduce((sum, id) => sum + rolled(id), 0) + at[kind], y_m];
};

/** Radius of a hook put on after these rolls, m, with anything from nothing to all that it ever carries below its tip. */
export const radiusAfter = (kind: "far" | "near", rolls: string[]): Span =>
  radius(whole, kind, plumb(kind, rolls), { low: 0, high: 670e3 });

/** Gross load (kN) on a hook that carries `net` (N) where it was put on after these rolls. */
export function gross(kind: "far" | "near", net: number, rolls: string[]): Span {
  return about((net + hangs(whole, kind, plumb(kind, rolls), 35)) / 1000, 0.015);
}

/** Net load of a hook with nothing but both hooks, kN. */
export const hung = (kind: "far" | "near"): Span =>
  about(lever(at[kind], kind === "far" ? at.near : at.far, [[w.x, w.W]]) / 1000, 0.012);

/** Share of a train's group while no hook carries, kN, by its wheels. */
export function groupShare(id: "rear" | "front", group: string): Span {
  const other = id === "rear" ? "front" : "rear";
  const t = trainOf(whole, id);
  const wheels = t.groups.find((g) => g.name === group)?.wheels.length ?? Number.NaN;
  const share = lever(bunkAt(whole, id), bunkAt(whole, other), [[w.x, w.W]]);
  return about((share * wheels) / (2 * t.lines) / 1000, 0.1);
}

/** Distance that the rear train may roll until it meets the front one, m. */
export const betweenTrains =
  bunkAt(whole, "front") -
  bunkAt(whole, "rear") -
  (trainOf(whole, "front").deckLength_m + trainOf(whole, "rear").deckLength_m) / 2;
