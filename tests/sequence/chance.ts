// Chance that can be repeated: numbers from a seed, and scenarios varied by them.

import type { Plan } from "../../src/plan/index.ts";
import { type ScenarioName, scenario } from "./plans.ts";

/** Numbers from 0 to 1 from a seed (mulberry32, public domain). */
export function chance(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A scenario with other loads, distances, stiffnesses, packings, seats and bumps in its path. */
export function varied(name: ScenarioName, random: () => number): Plan {
  const between = (low: number, high: number) => low + (high - low) * random();
  return scenario(name, (plan) => {
    const { path } = plan.site;
    const [first, last] = [path.points[0].chainage_m, path.points[path.points.length - 1].chainage_m];
    // Dips and humps, as short as an axle pitch or as long as a transporter.
    for (let k = 0; k < 6; k++) {
      const half = between(0.8, 6);
      const middle = between(first + 10, last - 8);
      const around = path.points.filter((p) => Math.abs(p.chainage_m - middle) <= half + 0.1);
      if (around.length > 0) continue;
      const i = path.points.findIndex((p) => p.chainage_m > middle);
      const [a, b] = [path.points[i - 1], path.points[i]];
      const on = (chainage_m: number) => {
        const t = (chainage_m - a.chainage_m) / (b.chainage_m - a.chainage_m);
        return {
          chainage_m,
          elevation_m: a.elevation_m + t * (b.elevation_m - a.elevation_m),
          crossfall_pct: a.crossfall_pct + t * (b.crossfall_pct - a.crossfall_pct),
        };
      };
      const top = on(middle);
      top.elevation_m += between(-0.12, 0.12);
      top.crossfall_pct += between(-0.4, 0.4);
      path.points.splice(i, 0, on(middle - half), top, on(middle + half));
    }
    for (const t of plan.transporters) {
      t.cylinderStiffness_kN_per_mm *= between(0.6, 1.6);
      t.bunkStiffness_kN_per_mm *= between(0.3, 2);
      t.strokeUp_mm *= between(0.2, 1);
      t.strokeDown_mm *= between(0.2, 1);
    }
    for (const c of plan.cranes)
      for (const part of ["rope_kN_per_mm", "boom_kN_per_mm", "ground_kN_per_mm"] as const) {
        const factor = between(0.7, 1.4);
        for (const end of ["low", "best", "high"] as const) c.stiffness[part][end] *= factor;
      }
    for (const l of plan.lashings) l.slack_mm = between(0, 3);
    const [set] = plan.sets;
    for (const on of set.onTransporters)
      for (const girder of Object.keys(on.packing_mm)) on.packing_mm[girder] = between(0, 25);
    for (const s of plan.site.seats) if (s.asBuilt_m !== null) s.asBuilt_m += between(-0.008, 0.008);
    let lost = 0;
    for (const s of set.steps) {
      if (s.do === "take load" && "load_kN" in s.until) s.until.load_kN *= between(0.85, 1.1);
      if (s.do === "roll together") {
        lost = s.distance_m * between(0, 0.1);
        s.distance_m -= lost;
        s.bite_m *= between(0.7, 1.3);
      }
      if (s.do === "bring over") s.dx_m += lost;
      if (s.do === "land") s.order.sort(() => random() - 0.5);
      if (s.do === "jack down" && "gap_mm" in s.until) s.until.gap_mm *= between(0.5, 1);
    }
  });
}
