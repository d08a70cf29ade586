// Go or no-go: the standing limits on wind at any work, and what of the plan's own limits is beyond them or missing.

import { gustOver } from "../../mechanics/index.ts";
import type { Step } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Limit } from "../limitForm.ts";
import { limitOf } from "../limits.ts";
import type { Measure, RunCheck } from "../measure.ts";
import { constant, type Recorder, trace } from "../trace.ts";
import type { Finding } from "../types.ts";
import { DURST, gustOverReading } from "./air.ts";
import { windLimits } from "./limits.ts";
import { findingOfStep, limitMeasures, recordLimit } from "./stepLimits.ts";

const CURE = "a lower wind limit, or an override of 'strong wind' by somebody who answers for it";

/** The table as readings of the site's instrument, m/s, each with its limit. */
export interface GoTable {
  /** With great caution from here on. */
  caution: { reading: number; limit: Limit };
  /** No work from here on. */
  stop: { reading: number; limit: Limit };
}

/** The limit in force. It always stands: nothing but an override, which names who chose it, may be higher. */
function inForce(ctx: Pick<SetContext, "plan">, name: string): Limit {
  return limitOf(ctx.plan, name) ?? { ...windLimits.standing[name], chosenBy: "default" };
}

/** The table for the instrument of a plan. Writes the reading from which on there is no work down as V_no. */
export function goTable(ctx: Pick<SetContext, "plan">, rec: Recorder | null = null): GoTable {
  const toGust = gustOverReading(ctx.plan, rec);
  const stop = inForce(ctx, "strong wind");
  const caution = inForce(ctx, "wind caution");
  constant(
    rec,
    "V_600s",
    stop.value,
    "m/s",
    "mean over 10 minutes from which on there is no work",
    `${stop.source} (${stop.chosenBy})`,
  );
  constant(rec, "G_600s", gustOver(600), "1", "3-s gust over a mean of 10 minutes", DURST);
  const reading = trace(
    rec,
    "V_no",
    (stop.value * gustOver(600)) / toGust,
    "V_600s*G_600s/G_3s",
    "m/s",
    "no work from here on, as the site's instrument shows it",
  );
  return {
    stop: { reading, limit: stop },
    caution: { reading: caution.value / toGust, limit: caution },
  };
}

/** The wind limits of steps against the table, for their traces. */
export function tableLimits(ctx: SetContext): Measure[] {
  const { source, chosenBy } = goTable(ctx).stop.limit;
  return limitMeasures(ctx, { check: "wind limit", cure: CURE }, (step) => ({
    source,
    chosenBy,
    read: (_, rec) => {
      recordLimit(rec, ctx, step);
      const { reading } = goTable(ctx, rec).stop;
      rec?.ends("V_step", "V_no");
      return { value: step.V, limit: reading };
    },
  }));
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
  const without: string[] = [];
  for (const { index, step, first, count } of run.steps) {
    const V = step.windLimit_m_per_s;
    if (V === undefined) {
      if (count > 0 && movesOrHangs(ctx, step, stored[first])) without.push(step.id);
      continue;
    }
    if (V <= table.stop.reading * (1 + 1e-9)) continue;
    const { value, source, chosenBy } = table.stop.limit;
    out.push(
      findingOfStep(ctx.set, index, {
        level: "stop",
        check: "wind limit",
        value: V,
        limit: table.stop.reading,
        unit: "m/s",
        use: V / table.stop.reading,
        source,
        chosenBy,
        words: `wind limit of ${step.id}: ${V.toFixed(1)} is above ${table.stop.reading.toFixed(1)} m/s at the instrument, which is a mean of ${value} m/s over 10 minutes`,
        cure: CURE,
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
