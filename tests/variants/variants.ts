// Seeded variants of the demonstration day: each changes one thing that a planner can get wrong.

import type { Plan } from "../../src/plan/index.ts";
import { chance } from "../sequence/chance.ts";
import { scenario, upTo } from "../sequence/plans.ts";

export const kinds = [
  "CG moved",
  "chart lowered",
  "stiffness lowered",
  "pick moved",
  "packing wrong",
] as const;
export type Kind = (typeof kinds)[number];

export interface Variant {
  seed: number;
  kind: Kind;
  /** What was changed, in words. */
  words: string;
  plan: Plan;
}

/** How many of each kind; with the steps that are left out and swapped they are the 200 variants. */
export const counts: Record<Kind, number> = {
  "CG moved": 50,
  "chart lowered": 41,
  "stiffness lowered": 25,
  "pick moved": 30,
  "packing wrong": 15,
};

type Change = (plan: Plan, between: (low: number, high: number) => number) => string;

const pick = <T>(list: readonly T[], between: (low: number, high: number) => number): T =>
  list[Math.min(list.length - 1, Math.floor(between(0, list.length)))];

const changes: Record<Kind, Change> = {
  // A heavy thing somewhere on the set; what is far off the axis is lighter, so that some group always still carries.
  "CG moved": (plan, between) => {
    const mass_t = between(1, 32);
    const at_m = between(0.5, 59.5);
    const line = pick(["L", "R"], between);
    const girder = plan.sets[0].girders.find((g) => g.line === line);
    const y = pick([0, between(-1, 1)], between) * Math.min(3.2, 40 / mass_t);
    plan.sets[0].attachments.push({
      name: "what nobody weighed",
      girder: line,
      at_m,
      mass_t,
      height_m: between(0.2, 2.6),
      y_m: y - (girder?.y_m ?? 0),
    });
    return `${mass_t.toFixed(1)} t more at ${at_m.toFixed(1)} m, ${y.toFixed(2)} m off the axis`;
  },
  "chart lowered": (plan, between) => {
    const crane = pick(plan.cranes, between);
    const factor = between(0.45, 1);
    for (const row of crane.chart.rows) row.rated_t *= factor;
    return `chart of ${crane.id} times ${factor.toFixed(3)}`;
  },
  "stiffness lowered": (plan, between) => {
    const what = pick([...plan.cranes.map((c) => c.id), ...plan.transporters.map((t) => t.id)], between);
    const factor = pick([0.5, between(0.4, 0.95)], between);
    for (const c of plan.cranes)
      if (c.id === what)
        for (const part of ["rope_kN_per_mm", "boom_kN_per_mm", "ground_kN_per_mm"] as const)
          for (const end of ["low", "best", "high"] as const) c.stiffness[part][end] *= factor;
    for (const t of plan.transporters) if (t.id === what) t.cylinderStiffness_kN_per_mm *= factor;
    return `stiffness of ${what} times ${factor.toFixed(3)}`;
  },
  "pick moved": (plan, between) => {
    const p = pick(plan.sets[0].picks, between);
    p.at_m = p.crane === "far-crane" ? between(45.5, 59.3) : between(1, 8.2);
    return `pick of ${p.crane} at ${p.at_m.toFixed(2)} m`;
  },
  "packing wrong": (plan, between) => {
    const mm = between(5, 110);
    const girder = pick(["L", "R"], between);
    const both = between(0, 1) < 0.7;
    const on = plan.sets[0].onTransporters;
    for (const x of both ? on : [pick(on, between)]) x.packing_mm[girder] = mm;
    return `${mm.toFixed(0)} mm too much below girder ${girder}${both ? "" : " on one train"}`;
  },
};

/** Without a yield stress the strength of the girders is not judged, which hand statics here say nothing about. */
function withoutStrength(plan: Plan): void {
  for (const set of plan.sets) {
    delete set.yield_MPa;
    for (const g of set.girders) for (const p of g.pieces) delete p.yield_MPa;
  }
}

/** The demonstration day, changed, without the strength of its girders, which hand statics do not know. */
export function day(change: (plan: Plan) => void = () => {}): Plan {
  return scenario("demo", (plan) => {
    withoutStrength(plan);
    change(plan);
  });
}

/** Steps after which a variant ends, in turn: for the time it takes, not every one lands. What is about the near hook goes on to it. */
const ENDS = ["roll-with-far", "lower", "near-off"];
const NEAR_ENDS = ["lower", "near-off"];

/** The variants of a kind, the same ones every time. */
export function variants(kind: Kind): Variant[] {
  return Array.from({ length: counts[kind] }, (_, i) => {
    const seed = 1000 * (kinds.indexOf(kind) + 1) + i;
    const random = chance(seed);
    const between = (low: number, high: number) => low + (high - low) * random();
    let words = "";
    const plan = day((p) => {
      words = changes[kind](p, between);
      const ends = words.includes("near") || words.includes("rear") ? NEAR_ENDS : ENDS;
      p.sets[0].steps = upTo(p, ends[i % ends.length]);
    });
    return { seed, kind, words, plan };
  });
}
