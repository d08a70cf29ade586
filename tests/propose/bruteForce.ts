// Every choice of a coarse grid judged by the solver, with no filter and no search: what a proposal is compared with.

import { boundsOf, type Choice } from "../../src/checks/propose/choice.ts";
import { Judge, type Judged } from "../../src/checks/propose/evaluate.ts";
import { prospectsOf } from "../../src/checks/propose/prospect.ts";
import { possible } from "../../src/checks/propose/search.ts";
import type { Plan } from "../../src/plan/index.ts";

export interface Brute {
  best: Judged | null;
  judged: number;
}

const grid = ([low, high]: readonly [number, number], n: number) =>
  Array.from({ length: n }, (_, i) => Number((low + ((high - low) * i) / (n - 1)).toFixed(2)));

/** The best of a grid of n1 x n1 train places, n2 x n2 picks and two shares of load taken before jacking down; a run is given up once it is worse than the best so far. */
export function bruteForce(plan: Plan, n1: number, n2: number): Brute {
  const prospects = prospectsOf(plan, plan.sets[0].id);
  if (typeof prospects === "string") throw new Error(prospects);
  let best: Judged | null = null;
  let judged = 0;
  for (const p of prospects) {
    const judge = new Judge(p);
    const b = boundsOf(p);
    // The inner half of both picks' ranges only loads the hooks more; they are left out to keep the grid small.
    const outer = (r: readonly [number, number], side: "low" | "high"): [number, number] =>
      side === "high" ? [(r[0] + r[1]) / 2, r[1]] : [r[0], (r[0] + r[1]) / 2];
    for (const rearDeck of grid(b.rearDeck, n1))
      for (const frontDeck of grid(b.frontDeck, n1))
        for (const farPick of grid(outer(b.farPick, "high"), n2))
          for (const nearPick of grid(outer(b.nearPick, "low"), n2))
            for (const share of [0.75, b.farShare[1]]) {
              const choice: Choice = {
                rearDeck,
                frontDeck,
                farPick,
                nearPick,
                shortOf: 0,
                farShare: share,
                nearShare: share,
                landFirst: "far",
              };
              if (!possible(p, choice)) continue;
              judged++;
              const j = judge.judge(choice, best?.worst);
              if (!j.cut && (best === null || j.worst < best.worst)) best = j;
            }
  }
  return { best, judged };
}
