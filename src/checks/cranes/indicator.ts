// What the load indicator of a crane should show: the parts that it counts, give or take its accuracy; and readings of the
// record against that.

import { type Crane, hookName, spreadOf } from "../../plan/index.ts";
import { type Pose, poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, KN, type Recorder, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { cranesOf, type HookLoad, hookLoadOf } from "./hookLoad.ts";
import { recordGross } from "./hookTrace.ts";
import { craneField } from "./reach.ts";

/** Reading of a load indicator, N. */
export interface IndicatorReading {
  expected: number;
  low: number;
  high: number;
}

/** Symbols of the parts of a hook load in its trace. */
const SYMBOLS = { set: "F_net", rigging: "F_rig", block: "F_block", rope: "F_rope", auxiliary: "F_aux" };

const countedParts = (crane: Crane) => [...new Set(crane.indicator.counts)];

/** What an indicator counts of a hook load, N. */
function counted(crane: Crane, load: HookLoad): number {
  const parts = {
    set: load.net,
    rigging: load.rigging,
    block: load.block,
    rope: load.rope,
    auxiliary: load.auxiliary,
  };
  return countedParts(crane).reduce((sum, part) => sum + parts[part], 0);
}

/** What the indicator of a crane should show at a pose, with its accuracy; null while its hook is not on. */
export function indicatorReading(ctx: SetContext, pose: Pose, crane: Crane): IndicatorReading | null {
  const load = hookLoadOf(ctx, pose, crane);
  if (load === null || !(load.gross >= 0)) return null;
  const expected = counted(crane, load);
  const off = crane.indicator.accuracy_pct / 100;
  return { expected, low: expected * (1 - off), high: expected * (1 + off) };
}

const cure =
  "stop, find what differs from the plan: weight, share, radius or what is snagged, before going on";
const sourceOf = (crane: Crane) => `indicator of ${crane.id}, accurate to ${crane.indicator.accuracy_pct} %`;

/** The end of its range that a reading is held against. */
const endOf = (should: IndicatorReading, shown: number): "low" | "high" =>
  shown < should.low ? "low" : "high";

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
      const limit = should[endOf(should, shown)];
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
          source: `${sourceOf(crane)}; spread of the weight ${light} to ${heavy} %`,
          chosenBy: "plan",
          words: `the indicator of ${reading.what} showed ${kN(shown)} kN where ${kN(should.low)} to ${kN(should.high)} kN should be seen${beyond ? `, and the spread of the weight explains ${kN(least)} to ${kN(most)} kN only` : ""}`,
          cure,
        }),
      ];
    });
  });
}

/** The recorded reading of a hook in a step, with its place in the plan; null where there is none. */
function recordedIn(ctx: SetContext, crane: Crane, step: number): { path: string; load_kN: number } | null {
  for (const [i, entry] of (ctx.plan.record ?? []).entries()) {
    if (entry.set !== ctx.set.id || entry.step !== ctx.set.steps[step]?.id) continue;
    for (const [j, { what, load_kN }] of entry.readings.entries())
      if (what === hookName(crane) && load_kN !== undefined)
        return { path: `record[${i}].readings[${j}].load_kN`, load_kN };
  }
  return null;
}

/** Recorded readings against the end of the range that they are held against, with their trace, at the end of a step. */
export function readingMeasures(ctx: SetContext): Measure[] {
  return cranesOf(ctx).flatMap((crane) =>
    (["low", "high"] as const).map((end) =>
      measure(
        {
          check: "indicated load",
          subject: hookName(crane),
          kind: `${crane.kind} crane`,
          sense: end === "low" ? "least" : "greatest",
          watched: false,
          cure,
          ...traced(ctx, (pose, rec): Reading => {
            const recorded = pose.progress === 1 ? recordedIn(ctx, crane, pose.step) : null;
            const load = hookLoadOf(ctx, pose, crane);
            const should = indicatorReading(ctx, pose, crane);
            if (recorded === null || load === null || should === null)
              return { ...NOT_HERE, why: "the record has no reading of this hook at the end of this step" };
            const shown = recorded.load_kN * 1000;
            if (endOf(should, shown) !== end) return NOT_HERE;
            if (rec !== null) {
              field(rec, "I", shown, "reading in the record", recorded.path, recorded.load_kN, KN);
              recordGross(rec, ctx, crane, pose, load);
              recordRange(rec, ctx, crane, should, end);
              rec.ends("I", "I_a");
            }
            return { value: shown, limit: should[end] };
          }),
        },
        { source: sourceOf(crane), chosenBy: "plan" },
      ),
    ),
  );
}

/** Writes down the end of the range that an indicator should show, as the symbol `I_a`; the parts must stand there. */
function recordRange(
  rec: Recorder,
  ctx: SetContext,
  crane: Crane,
  should: IndicatorReading,
  end: "low" | "high",
): void {
  const sum = countedParts(crane).map((part) => SYMBOLS[part]);
  trace(rec, "I_e", should.expected, sum.join(" + ") || "0", "N", "what the indicator counts");
  const { accuracy_pct: off } = crane.indicator;
  const path = `${craneField(ctx, crane)}.indicator.accuracy_pct`;
  field(rec, "a", off, "accuracy of the indicator", path, off, { unit: "%", si: "%", change: "" });
  const formula = end === "low" ? "I_e*(1 - a/100)" : "I_e*(1 + a/100)";
  trace(rec, "I_a", should[end], formula, "N", `${end === "low" ? "least" : "most"} that it should show`);
}
