// What the load indicator of a crane should show: the parts that it counts, give or take its accuracy; and readings of the
// record against that.

import { type Crane, hookName, spreadOf } from "../../plan/index.ts";
import { type Pose, poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";
import { cranesOf, type HookLoad, hookLoadOf } from "./hookLoad.ts";

/** Reading of a load indicator, N. */
export interface IndicatorReading {
  expected: number;
  low: number;
  high: number;
}

/** What an indicator counts of a hook load, N. */
function counted(crane: Crane, load: HookLoad): number {
  const parts = {
    set: load.net,
    rigging: load.rigging,
    block: load.block,
    rope: load.rope,
    auxiliary: load.auxiliary,
  };
  return [...new Set(crane.indicator.counts)].reduce((sum, part) => sum + parts[part], 0);
}

/** What the indicator of a crane should show at a pose, with its accuracy; null while its hook is not on. */
export function indicatorReading(ctx: SetContext, pose: Pose, crane: Crane): IndicatorReading | null {
  const load = hookLoadOf(ctx, pose, crane);
  if (load === null || !(load.gross >= 0)) return null;
  const expected = counted(crane, load);
  const off = crane.indicator.accuracy_pct / 100;
  return { expected, low: expected * (1 - off), high: expected * (1 + off) };
}

/**
 * Recorded readings of hooks (`what` is the hook's name) against what the indicator should show at the end of their
 * step: beyond its accuracy a caution; beyond what the spread of the set's weight explains as well, a stop.
 */
export function recordedReadings(ctx: SetContext, run: SetRun): Finding[] {
  const [light, heavy] = spreadOf(ctx.plan).spread.weight_pct;
  return (ctx.plan.record ?? []).flatMap((entry) => {
    const step = run.steps.find((one) => one.step.id === entry.step);
    if (entry.set !== ctx.set.id || step === undefined || !step.solved) return [];
    return entry.readings.flatMap((reading): Finding[] => {
      const crane = cranesOf(ctx).find((one) => hookName(one) === reading.what);
      if (crane === undefined || reading.load_kN === undefined) return [];
      const pose = poseAt(ctx, step, 1);
      const should = indicatorReading(ctx, pose, crane);
      const load = hookLoadOf(ctx, pose, crane);
      if (should === null || load === null) return [];
      const shown = reading.load_kN * 1000;
      if (shown >= should.low * (1 - 1e-9) && shown <= should.high * (1 + 1e-9)) return [];
      const off = crane.indicator.accuracy_pct / 100;
      const set = crane.indicator.counts.includes("set") ? load.net : 0;
      const least = (should.expected + (set * light) / 100) * (1 - off);
      const most = (should.expected + (set * heavy) / 100) * (1 + off);
      const beyond = shown < least * (1 - 1e-9) || shown > most * (1 + 1e-9);
      const limit = shown < should.low ? should.low : should.high;
      const at = { step: step.index, progress: 1 };
      const kN = (N: number) => (N / 1000).toFixed(1);
      return [
        finding({
          id: `indicated load:${ctx.set.id}:${reading.what}:${entry.step}`,
          level: beyond ? "stop" : "caution",
          check: "indicated load",
          set: ctx.set.id,
          subject: reading.what,
          from: at,
          to: at,
          worst: at,
          value: shown / 1000,
          limit: limit / 1000,
          unit: "kN",
          source: `indicator of ${crane.id}, accurate to ${crane.indicator.accuracy_pct} %; spread of the weight ${light} to ${heavy} %`,
          chosenBy: "plan",
          words: `the indicator of ${reading.what} showed ${kN(shown)} kN where ${kN(should.low)} to ${kN(should.high)} kN should be seen${beyond ? `, and the spread of the weight explains ${kN(least)} to ${kN(most)} kN only` : ""}`,
          cure: "stop, find what differs from the plan: weight, share, radius or what is snagged, before going on",
        }),
      ];
    });
  });
}
