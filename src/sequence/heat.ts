// What temperature makes of the unstressed set: its length and its camber. Loads follow from the statics.

import type { SetModel } from "../mechanics/index.ts";
import type { PlanSet } from "../plan/index.ts";
import type { SetContext, Situation } from "./types.ts";

/** Thermal expansion of structural steel, 1/K: AASHTO LRFD 6.4.1, 6.5e-6 per degree Fahrenheit; from memory. */
export const expansion = 11.7e-6;

/** Depth of a set's girders over their flanges, m: mean along them. */
function depthOf(set: PlanSet): number {
  let area = 0;
  let length = 0;
  for (const g of set.girders)
    for (const p of g.pieces) {
      area += ((p.to_m - p.from_m) * (p.topFlange_mm[1] + p.web_mm[0] + p.bottomFlange_mm[1])) / 1000;
      length += p.to_m - p.from_m;
    }
  return area / length;
}

/**
 * Strain and curvature of the free set, from its mean change of temperature and from how much warmer its top flange is
 * (K), temperature running straight over the depth. Curvature in 1/m, > 0 with the middle up.
 */
export function heatOf(set: PlanSet, change: number, topWarmer: number): Situation["heat"] {
  return { strain: expansion * change, bow: (expansion * topWarmer) / depthOf(set) };
}

/** Models of a context by curvature; a hold makes some dozens at most. */
const made = new WeakMap<SetContext, Map<number, SetModel>>();
const MOST = 64;

/** Stations at which the bow is written into the camber, m apart: straight lines between err by bow / 8. */
const APART = 1;

/** The set's model with the bow of a situation in its camber; the frame itself does not change by it. */
export function modelIn(ctx: SetContext, situation: Situation): SetModel {
  const { bow } = situation.heat;
  if (bow === 0) return ctx.model;
  let models = made.get(ctx);
  if (!models) {
    models = new Map();
    made.set(ctx, models);
  }
  const known = models.get(bow);
  if (known) return known;
  if (models.size >= MOST) models.clear();
  const { model } = ctx;
  const camber = model.girders.map((g) => bowed(g.camber, g.from, g.to, bow));
  const heated: SetModel = {
    ...model,
    data: { ...model.data, girders: model.data.girders.map((g, i) => ({ ...g, camber: camber[i] })) },
    girders: model.girders.map((g, i) => ({ ...g, camber: camber[i] })),
    wiring: null,
  };
  models.set(bow, heated);
  return heated;
}

function bowed(
  camber: readonly (readonly [number, number])[],
  from: number,
  to: number,
  bow: number,
): [number, number][] {
  const stations = new Set<number>([from, to, ...camber.map(([s]) => s)]);
  for (let s = from + APART; s < to; s += APART) stations.add(s);
  return [...stations]
    .sort((a, b) => a - b)
    .map((s) => [s, heightAt(camber, s) + (bow / 2) * (s - from) * (to - s)]);
}

function heightAt(points: readonly (readonly [number, number])[], s: number): number {
  if (points.length === 0) return 0;
  const i = points.findIndex(([x]) => x >= s);
  if (i < 0) return points[points.length - 1][1];
  if (i === 0) return points[0][1];
  const [[x0, z0], [x1, z1]] = [points[i - 1], points[i]];
  return z0 + ((z1 - z0) * (s - x0)) / (x1 - x0);
}
