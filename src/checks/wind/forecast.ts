// The forecast over the hours of a set's steps, contingency behind the last one counted: each step against its own wind limit,
// and what else the sky brings.

import { gustOver } from "../../mechanics/index.ts";
import type { Forecast, Plan, PlanSet } from "../../plan/index.ts";
import { finding } from "../finding.ts";
import type { PlanCheck } from "../measure.ts";
import type { Finding } from "../types.ts";
import { factorAt, gustOverReading } from "./air.ts";

/** When a step is meant to be done, minutes since 1970 of local time. */
interface StepTime {
  index: number;
  from: number;
  to: number;
}

/** A local time such as 2026-05-04T06:30 in minutes since 1970; days are of 24 hours. */
function minutesOf(time: string): number {
  const [date, clock] = time.split("T");
  const [year, month, day] = date.split("-").map(Number);
  const [hour, minute] = clock.split(":").map(Number);
  return Date.UTC(year, month - 1, day, hour, minute) / 60000;
}

/** Steps in their time, the last with its contingency; and the first step without minutes, behind which nothing is known. */
function timesOf(set: PlanSet): { steps: StepTime[]; unknown: number | null } {
  const steps: StepTime[] = [];
  if (set.times === undefined) return { steps, unknown: null };
  let now = minutesOf(set.times.starts);
  for (const [index, step] of set.steps.entries()) {
    if (step.minutes === undefined) return { steps, unknown: index };
    steps.push({ index, from: now, to: now + step.minutes });
    now += step.minutes;
  }
  const last = steps.at(-1);
  if (last !== undefined) last.to += set.times.contingency_min ?? 0;
  return { steps, unknown: null };
}

/** What the site's instrument would show of a forecast, m/s. */
export function readingOfForecast(plan: Plan, one: Forecast): number {
  const gust = one.speed_m_per_s * gustOver(one.averaging_s ?? 3);
  const here = factorAt(plan, plan.site.wind?.instrument?.height_m);
  const there = factorAt(plan, one.height_m ?? 10);
  const heights = here === null || there === null ? 1 : Math.sqrt(here / there);
  return (gust * heights) / gustOverReading(plan);
}

/** Findings of the forecast; none where the plan has none. */
export const forecastFindings: PlanCheck = (plan) => {
  const forecast = plan.site.wind?.forecast ?? [];
  if (forecast.length === 0) return [];
  return plan.sets.flatMap((set) => ofSet(plan, set, forecast));
};

function ofSet(plan: Plan, set: PlanSet, forecast: readonly Forecast[]): Finding[] {
  const missing = (subject: string, words: string, cure: string): Finding =>
    finding({ level: "note", check: "missing data", set: set.id, subject, words, cure });
  if (set.times === undefined)
    return [
      missing(
        "times",
        `the plan has a forecast, but set ${set.id} does not say when it starts: the forecast is not compared`,
        "give times.starts of the set and the minutes of its steps",
      ),
    ];
  const { steps, unknown } = timesOf(set);
  const out: Finding[] = [];
  if (unknown !== null)
    out.push(
      missing(
        `minutes of ${set.steps[unknown].id}`,
        `step ${set.steps[unknown].id} has no minutes: from there on the forecast is not compared`,
        "give the minutes of every step",
      ),
    );
  const uncovered: string[] = [];
  for (const { index, from, to } of steps) {
    const step = set.steps[index];
    const at = { step: index, progress: 0 };
    const here = forecast.filter((f) => minutesOf(f.from) < to && minutesOf(f.to) > from);
    if (!covers(here, from, to)) uncovered.push(step.id);
    const V = step.windLimit_m_per_s;
    for (const one of here) {
      const reading = readingOfForecast(plan, one);
      const span = `${one.from} to ${one.to}`;
      if (V !== undefined && reading > V * (1 + 1e-9))
        out.push(
          finding({
            id: `forecast:${set.id}:${step.id}:${span}`,
            level: "stop",
            check: "forecast",
            set: set.id,
            subject: step.id,
            from: at,
            to: { step: index, progress: 1 },
            worst: at,
            value: reading,
            limit: V,
            unit: "m/s",
            use: reading / V,
            source: one.source ?? "forecast in the plan",
            chosenBy: "plan",
            words: `forecast for ${step.id}: ${reading.toFixed(1)} is above its wind limit of ${V.toFixed(1)} m/s at the instrument, from ${span}`,
            cure: "another time, or a step that stands more wind",
          }),
        );
      if ((one.warns ?? []).length > 0)
        out.push(
          finding({
            id: `forecast:${set.id}:${step.id}:${span}:${one.warns?.join(" ")}`,
            level: one.warns?.includes("lightning") ? "stop" : "caution",
            check: "forecast",
            set: set.id,
            subject: step.id,
            from: at,
            to: { step: index, progress: 1 },
            worst: at,
            source: `${one.source ?? "forecast in the plan"}; ASME P30.1 5-2.9(b) names lightning, ice, heat and visibility (as quoted)`,
            words: `forecast for ${step.id}: ${one.warns?.join(", ")} from ${span}`,
            cure: "another time, or say how the crew works in it",
          }),
        );
    }
  }
  if (uncovered.length > 0)
    out.push(
      missing(
        "site.wind.forecast",
        `no forecast for the whole time of ${uncovered.join(", ")}`,
        "enter the forecast up to the end of the last step and the contingency behind it",
      ),
    );
  return out;
}

/** Whether entries leave no minute of a span out. */
function covers(list: readonly Forecast[], from: number, to: number): boolean {
  let reached = from;
  for (const one of [...list].sort((a, b) => minutesOf(a.from) - minutesOf(b.from))) {
    if (minutesOf(one.from) > reached) return false;
    reached = Math.max(reached, minutesOf(one.to));
  }
  return reached >= to;
}
