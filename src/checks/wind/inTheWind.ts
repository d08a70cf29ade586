// Every check of a pose read anew in the wind of its own step: what stands in the calm and not in the wind that the plan lets
// it meet. The checks themselves are those of the calm; only the pose is solved again.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import {
  type MeasureMaker,
  marginOf,
  NOT_HERE,
  ofPieces,
  useOf as partOfLimit,
  type Reading,
  type RunCheck,
} from "../measure.ts";
import { measureFindings } from "../measureFindings.ts";
import type { CheckName } from "../names.ts";
import type { Finding } from "../types.ts";
import { pressureAt, type Toward, WAYS, wayWords } from "./air.ts";
import { blowerOf } from "./blow.ts";
import { measuresIn, type Wind, windy } from "./worseWay.ts";

/** Name of a check in the wind. */
export const inTheWind = (check: CheckName): CheckName => `in the wind: ${check}`;

const limitOfStep = (ctx: SetContext, step: number): number => ctx.set.steps[step]?.windLimit_m_per_s ?? 0;

/** What a check says beside itself when it was read in the wind. */
function inWords(reading: Reading, V: number, toward: Toward): Reading {
  const { where } = reading;
  return {
    ...reading,
    where: `${where ? `${where}, ` : ""}wind limit of ${V.toFixed(1)} m/s blowing ${wayWords(toward)}`,
  };
}

/** What a check is in the wind of its step. */
const form: Wind["form"] = (m) => ({
  check: inTheWind(m.check),
  cure: `a lower wind limit in this step; or ${m.cure}`,
});

/** Makes the check of a whole run in the wind of its steps, out of the checks of a pose. */
export function windRunCheck(makers: readonly MeasureMaker[]): RunCheck {
  return ofPieces(function* windOfEveryStep(ctx, run, stored) {
    const measures = makers.flatMap((make) => make(ctx)).filter((m) => m.level !== "note");
    const blower = blowerOf(ctx);
    const beyond: (Map<number, Reading> | null)[] = measures.map(() => null);
    const fallen: { i: number; toward: Toward; why: string }[] = [];
    for (const [i, pose] of stored.entries()) {
      const V = limitOfStep(ctx, pose.step);
      if (V === 0 || pose.solution.status !== "solved") continue;
      const pressure = pressureAt(ctx.plan, V);
      for (const toward of WAYS) {
        const gust = blower.at(pose, pressure, toward);
        if (gust.solution.status !== "solved") {
          fallen.push({ i, toward, why: gust.solution.motion });
          continue;
        }
        measures.forEach((m, k) => {
          const r = m.read(gust);
          if (!(marginOf(m, r) < 0)) return;
          beyond[k] ??= new Map();
          const before = beyond[k].get(i);
          if (before === undefined || partOfLimit(m, r) > partOfLimit(m, before))
            beyond[k].set(i, inWords(r, V, toward));
        });
      }
      yield null;
    }
    return [
      ...measures.flatMap((m, k) => {
        const found = beyond[k];
        // What is beyond its limit in the calm has its finding, and a cure that changes the wind's answer too.
        const calm = (pose: Pose) => pose.solution.status === "solved" && marginOf(m, m.read(pose)) < 0;
        if (found === null || stored.some(calm)) return [];
        const reading = (i: number): Reading => found.get(i) ?? NOT_HERE;
        return measureFindings(
          ctx,
          run,
          windy(m, { form }),
          reading,
          Float64Array.from(stored, (_, i) => partOfLimit(m, reading(i))),
        );
      }),
      ...fallenFindings(ctx, run, fallen),
    ];
  });
}

/** One finding for every step in which the wind leaves no equilibrium. */
function fallenFindings(
  ctx: SetContext,
  run: SetRun,
  fallen: readonly { i: number; toward: Toward; why: string }[],
): Finding[] {
  const out: Finding[] = [];
  for (const { i, toward, why } of fallen) {
    const at = { step: run.step[i], progress: run.progress[i] };
    const known = out.find((f) => f.from?.step === at.step);
    if (known) {
      known.to = at;
      continue;
    }
    const V = limitOfStep(ctx, at.step);
    out.push(
      finding({
        id: `${inTheWind("no equilibrium")}:${ctx.set.id}:${at.step}`,
        level: "stop",
        check: inTheWind("no equilibrium"),
        set: ctx.set.id,
        subject: "set",
        from: at,
        to: at,
        worst: at,
        source: "the statics of this pose",
        words: `in its wind limit of ${V.toFixed(1)} m/s blowing ${wayWords(toward)} the set does not stand: ${why || "heights, tensions and sideways forces do not settle together"}`,
        cure: "a lower wind limit in this step, or lashings, guides and tag lines that hold it across",
      }),
    );
  }
  return out;
}

/** Makes of the checks of a pose those in the wind, for one pose and its trace. */
export function windMeasures(makers: readonly MeasureMaker[]): MeasureMaker {
  return (ctx) => {
    const blower = blowerOf(ctx);
    return measuresIn(ctx, makers, {
      words: "the wind limit of the step",
      form,
      pressure: ({ step }) => {
        const V = limitOfStep(ctx, step);
        return V === 0 ? null : pressureAt(ctx.plan, V);
      },
      blower: () => blower,
      say: ({ reading, toward }, _, { step }) => inWords(reading, limitOfStep(ctx, step), toward),
    });
  };
}
