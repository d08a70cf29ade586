// Where temperature puts the soles over their bearings: from how long the girders are when they land.

import { type Bearing, bearingName, bearingsOf, type Plan, type PlanSet } from "../../plan/index.ts";
import { expansion, type Pose, type SetContext } from "../../sequence/index.ts";
import { missing, notSet } from "../finding.ts";
import { type Measure, measure, type Reading } from "../measure.ts";
import { constant, type FieldUnit, field, METRE, MM, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";

const CELSIUS: FieldUnit = { unit: "C", si: "C", change: "" };

/**
 * Strain of the set against its drawn length: from the temperature at which it is drawn to that at its start, and what
 * its steps change from there. Null where the plan lacks one of the temperatures.
 */
export function strainOf(
  rec: Recorder | null,
  ctx: SetContext,
  pose: Pick<Pose, "situation">,
): number | null {
  const { plan, set } = ctx;
  if (set.temperature_C === undefined || plan.site.temperature_C === undefined) return null;
  const at = `sets[${plan.sets.indexOf(set)}].temperature_C`;
  constant(
    rec,
    "alpha",
    expansion,
    "1/K",
    "thermal expansion of steel",
    "AASHTO LRFD 6.4.1, 6.5e-6 per degree Fahrenheit (from memory)",
  );
  field(rec, "T_s", set.temperature_C, "temperature of the set at its start", at, set.temperature_C, CELSIUS);
  field(
    rec,
    "T_r",
    plan.site.temperature_C,
    "temperature at which it has its drawn length",
    "site.temperature_C",
    plan.site.temperature_C,
    CELSIUS,
  );
  solved(
    rec,
    "eps_h",
    pose.situation.heat.strain,
    "1",
    "strain from changes of temperature in the steps so far",
  );
  return trace(
    rec,
    "eps",
    expansion * (set.temperature_C - plan.site.temperature_C) + pose.situation.heat.strain,
    "alpha*(T_s - T_r) + eps_h",
    "1",
    "strain against the drawn length",
  );
}

/** Station that stays in place when the set grows: that of the line with a fixed bearing, else the middle of both. */
export function stillStation(plan: Plan, set: PlanSet): { station: number; words: string } | null {
  const soles = set.soleStations_m;
  if (soles === undefined) return null;
  const fixed = (["near", "far"] as const).filter((line) =>
    bearingsOf(plan, set).some((b) => b.line === line && b.holds === "fixed"),
  );
  return fixed.length === 1
    ? { station: soles[fixed[0]], words: `from the fixed bearing on the ${fixed[0]} line` }
    : { station: (soles.near + soles.far) / 2, words: "from the middle: not one line holds it along" };
}

/**
 * How far forward of the middle of its bearing's play a sole stands, m: where the set was put, and what temperature
 * makes of its length. Null without soles or temperatures. Soles are taken to be drawn for the shape of the landed set.
 */
export function soleOffset(
  rec: Recorder | null,
  ctx: SetContext,
  pose: Pick<Pose, "situation">,
  b: Bearing,
): number | null {
  const { plan, set } = ctx;
  const eps = strainOf(rec, ctx, pose);
  const still = stillStation(plan, set);
  const soles = set.soleStations_m;
  if (eps === null || still === null || soles === undefined) return null;
  const setPath = `sets[${plan.sets.indexOf(set)}].soleStations_m`;
  const line = b.line === "near" ? "nearBearing_m" : "farBearing_m";
  const s = soles[b.line];
  field(rec, "s", s, "station of the sole", `${setPath}.${b.line}`, s, METRE);
  field(rec, "x_b", plan.site[line], "bearing line", `site.${line}`, plan.site[line], METRE);
  solved(rec, "x_0", pose.situation.rearEnd, "m", "chainage of the set's rear end");
  constant(rec, "s_0", still.station, "m", "station that stays in place", still.words);
  const set_mm = b.offset_mm ?? 0;
  const path = `site.bearings[${plan.site.bearings.indexOf(b)}].offset_mm`;
  if (b.offset_mm === undefined)
    constant(rec, "o", 0, "m", "middle of its play", "not stated: on the bearing line");
  else field(rec, "o", set_mm / 1000, "middle of its play", path, set_mm, MM);
  return trace(
    rec,
    "d",
    pose.situation.rearEnd + s + eps * (s - still.station) - plan.site[line] - set_mm / 1000,
    "x_0 + s + eps*(s - s_0) - x_b - o",
    "m",
    "sole forward of the middle of its bearing's play",
  );
}

/** Soles against the play of their bearings, while the set stands over them. */
export function bearingOffsets(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  return bearingsOf(plan, set).flatMap((b) => {
    const { play_mm } = b;
    if (play_mm === undefined) return [];
    const path = `site.bearings[${plan.site.bearings.indexOf(b)}].play_mm`;
    return [
      measure(
        {
          check: "bearing offset",
          subject: bearingName(b),
          kind: `${b.line} bearings`,
          unit: "mm",
          factor: 1000,
          watched: false,
          source: "play of the bearing in the plan",
          chosenBy: "plan",
          cure: "set the bearing off for the temperature of the landing, wait for another one, or put the set elsewhere",
          ...traced(ctx, (pose, rec): Reading => {
            if (!pose.situation.overSeats) return { value: Number.NaN, limit: Number.NaN };
            const d = soleOffset(rec, ctx, pose, b);
            if (d === null)
              return {
                value: Number.NaN,
                limit: Number.NaN,
                why: "the plan lacks temperatures or stations of soles",
              };
            const value = trace(rec, "off", Math.abs(d), "abs(d)", "m", "out of the middle of its play");
            field(rec, "p", play_mm / 1000, "play either way", path, play_mm, MM);
            rec?.ends("off", "p");
            return { value, limit: play_mm / 1000, where: d > 0 ? "forward" : "back" };
          }),
        },
        { source: "play of the bearing in the plan", chosenBy: "plan" },
      ),
    ];
  });
}

/** What a plan lacks for these. */
export function temperatureOpen(plan: Plan): Finding[] {
  const out: Finding[] = [];
  if (plan.site.bearings.length > 0 && plan.site.temperature_C === undefined)
    out.push(missing("", "site.temperature_C", "blank: how temperature shifts the soles is not worked out"));
  plan.sets.forEach((set, i) => {
    if (bearingsOf(plan, set).length === 0) return;
    if (set.temperature_C === undefined)
      out.push(
        missing(
          set.id,
          `sets[${i}].temperature_C`,
          "blank: how temperature shifts the soles is not worked out",
        ),
      );
    if (set.soleStations_m === undefined)
      out.push(
        missing(set.id, `sets[${i}].soleStations_m`, "blank: nothing is worked out of the landed set"),
      );
  });
  const bare = plan.site.bearings.filter((b) => b.holds !== "fixed" && b.play_mm === undefined);
  if (bare.length > 0)
    out.push(
      notSet(
        "",
        "bearing play",
        `bearings ${bare.map(bearingName).join(", ")}: no play along the girder is stated; their offset is not judged`,
        "take play_mm from the bearings' drawings",
      ),
    );
  return out;
}
