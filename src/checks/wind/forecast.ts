// The forecast over the hours of a set's steps, contingency behind the last one counted: each step against its own wind limit,
// and what else the sky brings.

import { gustOver } from "../../mechanics/index.ts";
import type { Forecast, Plan, PlanSet } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Measure, PlanCheck } from "../measure.ts";
import { constant, field, type Recorder, trace } from "../trace.ts";
import type { Finding } from "../types.ts";
import { DURST, factorAt, gustOverReading, HEIGHTS, SPEED } from "./air.ts";
import { findingOfStep, limitMeasures, recordLimit } from "./stepLimits.ts";

const CURE = "another time, or a step that stands more wind";

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

/** What the site's instrument would show of a forecast, m/s. Writes it down as V_f. */
export function readingOfForecast(plan: Plan, one: Forecast, rec: Recorder | null = null): number {
  const averaging = one.averaging_s ?? 3;
  const toGust = gustOver(averaging);
  const gust = one.speed_m_per_s * toGust;
  const here = factorAt(plan, plan.site.wind?.instrument?.height_m);
  const there = factorAt(plan, one.height_m ?? 10);
  const heights = here === null || there === null ? 1 : Math.sqrt(here / there);
  if (rec !== null) {
    const path = `site.wind.forecast[${plan.site.wind?.forecast?.indexOf(one)}].speed_m_per_s`;
    field(rec, "V_said", one.speed_m_per_s, "speed of the forecast", path, one.speed_m_per_s, SPEED);
    constant(rec, "G_said", toGust, "1", `3-s gust over a mean of ${averaging} s, the forecast's`, DURST);
    constant(
      rec,
      "k_z",
      heights,
      "1",
      `speed at the instrument over that at ${one.height_m ?? 10} m`,
      here === null || there === null ? "assumed 1: the plan lacks exposure or heights" : HEIGHTS,
    );
  }
  return trace(
    rec,
    "V_f",
    (gust * heights) / gustOverReading(plan, rec),
    "V_said*G_said*k_z/G_3s",
    "m/s",
    "forecast, as the site's instrument would show it",
  );
}

/** Entries of a forecast that meet the time of a step, in the order of the plan. */
const during = (forecast: readonly Forecast[], { from, to }: StepTime): Forecast[] =>
  forecast.filter((f) => minutesOf(f.from) < to && minutesOf(f.to) > from);

/** The one of some entries with the most wind; null of none. */
function windiest(plan: Plan, list: readonly Forecast[]): Forecast | null {
  let most: Forecast | null = null;
  for (const one of list)
    if (most === null || readingOfForecast(plan, one) > readingOfForecast(plan, most)) most = one;
  return most;
}

const sourceOf = (one: Forecast): string => one.source ?? "forecast in the plan";

/** The most wind that is forecast for each step against its own limit, for its trace. */
export function forecastLimits(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  const forecast = plan.site.wind?.forecast ?? [];
  const { steps } = timesOf(set);
  return limitMeasures(ctx, { check: "forecast", cure: CURE }, (step) => {
    // Times are known from the first step on: up to the first one without minutes.
    const most = step.index < steps.length ? windiest(plan, during(forecast, steps[step.index])) : null;
    if (most === null) return null;
    return {
      source: sourceOf(most),
      chosenBy: "plan",
      read: (_, rec) => {
        const value = readingOfForecast(plan, most, rec);
        recordLimit(rec, ctx, step);
        rec?.ends("V_f", "V_step");
        return { value, limit: step.V, where: spanOf(most) };
      },
    };
  });
}

const spanOf = (one: Forecast): string => `${one.from} to ${one.to}`;

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
  for (const time of steps) {
    const { index, from, to } = time;
    const step = set.steps[index];
    const here = during(forecast, time);
    if (!covers(here, from, to)) uncovered.push(step.id);
    const V = step.windLimit_m_per_s;
    const beyond = here.filter((one) => V !== undefined && readingOfForecast(plan, one) > V * (1 + 1e-9));
    const most = windiest(plan, beyond);
    if (V !== undefined && most !== null) {
      const reading = readingOfForecast(plan, most);
      const others = beyond.filter((one) => one !== most).map(spanOf);
      out.push(
        findingOfStep(set, index, {
          level: "stop",
          check: "forecast",
          value: reading,
          limit: V,
          unit: "m/s",
          use: reading / V,
          source: sourceOf(most),
          chosenBy: "plan",
          words: `forecast for ${step.id}: ${reading.toFixed(1)} is above its wind limit of ${V.toFixed(1)} m/s at the instrument, from ${spanOf(most)}${others.length > 0 ? `; above it also from ${others.join(", from ")}` : ""}`,
          cure: CURE,
        }),
      );
    }
    for (const one of here) {
      const span = spanOf(one);
      if ((one.warns ?? []).length > 0)
        out.push(
          findingOfStep(set, index, {
            id: `forecast:${set.id}:${step.id}:${span}:${one.warns?.join(" ")}`,
            level: one.warns?.includes("lightning") ? "stop" : "caution",
            check: "forecast",
            source: `${sourceOf(one)}; ASME P30.1 5-2.9(b) names lightning, ice, heat and visibility (as quoted)`,
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
