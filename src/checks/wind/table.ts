// Go or no-go: the standing limits on wind at any work, and what of the plan's own limits is beyond them or missing.

import { gustOver } from "../../mechanics/index.ts";
import type { Step } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Limit } from "../limitForm.ts";
import { limitOf } from "../limits.ts";
import type { RunCheck } from "../measure.ts";
import type { Finding } from "../types.ts";
import { gustOverReading } from "./air.ts";
import { windLimits } from "./limits.ts";

/** The table as readings of the site's instrument, m/s, each with its limit. */
export interface GoTable {
  /** With great caution from here on. */
  caution: { reading: number; limit: Limit };
  /** No work from here on. */
  stop: { reading: number; limit: Limit };
}

/** The limit in force: a plan's own may be lower than the standing one, and higher only by an override. */
function inForce(ctx: Pick<SetContext, "plan">, name: string): Limit {
  const standing = { ...windLimits.standing[name], chosenBy: "default" };
  const own = limitOf(ctx.plan, name);
  if (own === null) return standing;
  const replaced = ctx.plan.limits.overrides.some((o) => o.limit === name);
  return replaced || own.value <= standing.value ? own : standing;
}

/** The table for the instrument of a plan. */
export function goTable(ctx: Pick<SetContext, "plan">): GoTable {
  const toGust = gustOverReading(ctx.plan);
  const stop = inForce(ctx, "strong wind");
  const caution = inForce(ctx, "wind caution");
  return {
    stop: { reading: (stop.value * gustOver(600)) / toGust, limit: stop },
    caution: { reading: caution.value / toGust, limit: caution },
  };
}

/** Steps in which the set stands still, unless it hangs on hooks. */
const still: ReadonlySet<Step["do"]> = new Set<Step["do"]>([
  "lash",
  "unlash",
  "hold",
  "rest",
  "brace",
  "hook up",
]);

/** A step in which the set moves, or hangs at its start on some hook. */
function movesOrHangs(ctx: SetContext, step: Step, first: Pose): boolean {
  return !still.has(step.do) || ctx.supports.some((s, i) => s.what === "hoist" && first.forces[i] > 0);
}

/** Wind limits of steps beyond the table, and steps that have none and need one. */
export const tableFindings: RunCheck = (ctx, run, stored) => {
  const table = goTable(ctx);
  const out: Finding[] = [];
  const careful: string[] = [];
  const without: string[] = [];
  for (const { index, step, first, count } of run.steps) {
    const V = step.windLimit_m_per_s;
    if (V === undefined) {
      if (count > 0 && movesOrHangs(ctx, step, stored[first])) without.push(step.id);
      continue;
    }
    if (V > table.caution.reading * (1 + 1e-9)) careful.push(step.id);
    if (V <= table.stop.reading * (1 + 1e-9)) continue;
    const { value, source, chosenBy } = table.stop.limit;
    out.push(
      finding({
        set: ctx.set.id,
        id: `wind limit:${ctx.set.id}:${step.id}`,
        level: "stop",
        check: "wind limit",
        subject: step.id,
        from: { step: index, progress: 0 },
        to: { step: index, progress: 1 },
        worst: { step: index, progress: 0 },
        value: V,
        limit: table.stop.reading,
        unit: "m/s",
        use: V / table.stop.reading,
        source,
        chosenBy,
        words: `wind limit of ${step.id}: ${V.toFixed(1)} is above ${table.stop.reading.toFixed(1)} m/s at the instrument, which is a mean of ${value} m/s over 10 minutes`,
        cure: "a lower wind limit, or an override of 'strong wind' by somebody who answers for it",
      }),
    );
  }
  if (careful.length > 0) {
    const { reading, limit } = table.caution;
    out.push(
      finding({
        set: ctx.set.id,
        level: "note",
        check: "wind limit",
        subject: "set",
        limit: reading,
        unit: "m/s",
        source: limit.source,
        chosenBy: limit.chosenBy,
        words: `steps with a wind limit above ${reading.toFixed(1)} m/s, from where on great caution is asked for: ${careful.join(", ")}`,
        cure: "let somebody watch the instrument throughout, or lower the limits",
      }),
    );
  }
  if (without.length > 0)
    out.push(
      finding({
        set: ctx.set.id,
        level: "note",
        check: "limit not set",
        subject: "wind limit",
        words: `steps that move the set, or leave it on hooks, without a wind limit: ${without.join(", ")}; nothing is checked in wind there`,
        cure: "give windLimit_m_per_s in each of them",
      }),
    );
  return out;
};
