// Hand wind on a set: the pressure of its speed on the depth of a girder, as one force across at half the depth.

import type { Plan } from "../../../src/plan/index.ts";

/** A force across: N, > 0 to the left; its station and its height above the soffit, m. */
export interface Push {
  F: number;
  x: number;
  z: number;
}

/** Half the density of air, kg/m3; force coefficient of a pair of bare girders on the depth of one. */
const AIR = 0.613;
const PAIR = 2.2;

/** The wind of a speed (m/s, a gust at the height of the set), to the left for 1 and to the right for -1. */
export function pushOf(plan: Plan, V: number, toward: 1 | -1): Push {
  const { instrument, setHeight_m } = plan.site.wind ?? {};
  if (instrument?.averaging_s !== 3 || instrument.height_m !== setHeight_m)
    throw new Error("hand statics know an instrument that shows gusts at the height of the set");
  const girders = [...plan.sets[0].girders].sort((a, b) => toward * (a.y_m - b.y_m));
  const parts = girders[0].pieces.map((p) => {
    const depth = (p.topFlange_mm[1] + p.web_mm[0] + p.bottomFlange_mm[1]) / 1000;
    return { A: depth * (p.to_m - p.from_m), x: (p.from_m + p.to_m) / 2, z: depth / 2 };
  });
  const A = parts.reduce((sum, p) => sum + p.A, 0);
  const mean = (of: (p: { x: number; z: number }) => number) =>
    parts.reduce((sum, p) => sum + p.A * of(p), 0) / A;
  return { F: toward * AIR * V * V * PAIR * A, x: mean((p) => p.x), z: mean((p) => p.z) };
}
