// Random choices inside the box of a plan's spread, and how far they lie outside the band of the chosen corners.

import type { SetResult, SpreadResult } from "../../src/checks/index.ts";
import { atCorner } from "../../src/checks/spread/apply.ts";
import { type Corner, cornerOf } from "../../src/checks/spread/corner.ts";
import { follow } from "../../src/checks/spread/follow.ts";
import { carried } from "../../src/checks/spread/gather.ts";
import { bearingName, bearingsOf, type Plan, type PlanSet, spreadOf } from "../../src/plan/index.ts";
import type { SetContext } from "../../src/sequence/index.ts";

/** A generator of numbers in [0, 1) from a seed (mulberry32, public domain). */
export function chance(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A choice of every quantity anywhere between its low and high, evenly. */
export function anyCorner(plan: Plan, set: PlanSet, random: () => number): Corner {
  const { spread: s } = spreadOf(plan);
  const between = ([low, high]: readonly number[]) => low + random() * (high - low);
  const either = (most: number) => between([-most, most]);
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const places = [
    ...set.onTransporters.map((on) => on.transporter),
    ...bearingsOf(plan, set).map((b) => bearingName(b)),
  ];
  const blown = set.steps.some((step) => step.windLimit_m_per_s !== undefined);
  return cornerOf(plan, {
    weight_pct: between(s.weight_pct),
    cgAlong_m: either(s.cgAlong_m),
    cgAcross_m: set.girders.length < 2 ? 0 : either(s.cgAcross_m),
    cranes_pct: between(s.stiffness_pct),
    trains_pct: between(s.stiffness_pct),
    mismatch: { crane: one(set.picks).crane, mm: random() * s.hookMismatch_mm },
    settlement: { under: one(places), mm: random() * s.settlement_mm },
    friction: between(s.friction),
    wind: blown ? either(1) : 0,
  });
}

export interface Outside {
  /** N beyond the band. */
  by: number;
  support: string;
  pose: number;
  corner: Corner;
}

/** The furthest that a choice lies outside a band, over all stored poses and the supports asked for. */
export function outside(
  ctx: SetContext,
  set: SetResult,
  band: SpreadResult,
  corner: Corner,
  asked: (support: SetContext["supports"][number]) => boolean = (s) => s.band,
): Outside {
  const worst: Outside = { by: 0, support: "", pose: -1, corner };
  const m = ctx.supports.length;
  follow({ ...atCorner(ctx, corner, new Map()), corner }, set, new Map(), {
    happening: () => {},
    lost: () => {},
    pose: (i, pose) => {
      ctx.supports.forEach((support, j) => {
        if (!asked(support)) return;
        const value = carried(support, pose, j);
        const by = Math.max(value - band.high[i * m + j], band.low[i * m + j] - value);
        if (by > worst.by) Object.assign(worst, { by, support: support.name, pose: i });
      });
    },
  });
  return worst;
}
