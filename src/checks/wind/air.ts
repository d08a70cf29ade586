// From what an instrument shows to the wind on the set: average to gust, height to height, pressure, force coefficient.
//
// Assumptions, each of them named in a finding or a trace: without `site.wind.instrument` a wind limit is a 3-s gust at the
// set; without exposure or a height the speed is the same at both heights; the set stands in the wind as a pair of bare
// girders. One height stands for the whole operation: the highest of the set's middle.

import { AIR, BARE_GIRDERS, gustOver, heightFactor, type StateWind } from "../../mechanics/index.ts";
import { type Plan, type PlanSet, printPath } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { constant, type FieldUnit, field, NUMBER, type Recorder, trace } from "../trace.ts";

/** Unit of speeds. */
export const SPEED: FieldUnit = { unit: "m/s", si: "m/s", change: "" };

/** Both ways across the path: wind that blows to the left (+y), and to the right. */
export const WAYS = ["+y", "-y"] as const;
export type Toward = StateWind["toward"];

/** A way in words. */
export const wayWords = (toward: Toward): string => (toward === "+y" ? "to the left" : "to the right");

/** Source of means as gusts. */
export const DURST = "Durst's curve over open country, ASCE 7 figure C26.5-1 (from memory)";
/** Source of height factors. */
export const HEIGHTS = "AASHTO LRFD 3.8.1.2.1-2 to -4 (from memory)";

/** 3-s gust over the reading of the site's instrument; 1 where the plan names none. */
export function gustOverReading(plan: Plan, rec: Recorder | null = null): number {
  const { instrument } = plan.site.wind ?? {};
  if (instrument === undefined)
    return constant(
      rec,
      "G_3s",
      1,
      "1",
      "wind limits are 3-s gusts",
      "assumed: the plan names no instrument",
    );
  const { gustFactor, averaging_s } = instrument;
  if (gustFactor !== undefined)
    return field(
      rec,
      "G_3s",
      gustFactor,
      "3-s gust over the reading",
      "site.wind.instrument.gustFactor",
      gustFactor,
      NUMBER,
    );
  return constant(
    rec,
    "G_3s",
    gustOver(averaging_s),
    "1",
    `3-s gust over a mean of ${averaging_s} s, the instrument's`,
    DURST,
  );
}

/** Height factor on pressure at a height, m; null where the plan lacks exposure or height. */
export function factorAt(plan: Plan, height: number | undefined): number | null {
  const { exposure } = plan.site.wind ?? {};
  return exposure === undefined || height === undefined ? null : heightFactor(exposure, height);
}

/** Pressure at one height over that at another for the same wind; 1 where either is not known. */
function heightRatio(plan: Plan, at: number | undefined, from: number | undefined): number {
  const [a, b] = [factorAt(plan, at), factorAt(plan, from)];
  return a === null || b === null ? 1 : a / b;
}

/** Factors on pressure at the set: of its height over the instrument's, and of hills. */
function factorAtSet(plan: Plan, rec: Recorder | null): number {
  const wind = plan.site.wind ?? {};
  const ratio = constant(
    rec,
    "K_z",
    heightRatio(plan, wind.setHeight_m, wind.instrument?.height_m),
    "1",
    "height factor at the set over that at the instrument",
    wind.exposure === undefined ? "assumed 1: the plan lacks exposure or heights" : HEIGHTS,
  );
  const hills =
    wind.hills === undefined
      ? constant(rec, "K_zt", 1, "1", "factor of hills", "assumed: the plan names none")
      : field(rec, "K_zt", wind.hills, "factor of hills", "site.wind.hills", wind.hills, NUMBER);
  return ratio * hills;
}

/** Pressure at the set, Pa, for a speed that the site's instrument shows, m/s. */
export function pressureAt(plan: Plan, reading: number, rec: Recorder | null = null): number {
  const gust = gustOverReading(plan, rec);
  const factor = factorAtSet(plan, rec);
  constant(rec, "half_rho", AIR, "kg/m3", "half the density of air at 15 C", "ASCE 7 26.10");
  return trace(
    rec,
    "q",
    AIR * factor * (gust * reading) ** 2,
    "half_rho*(K_z*K_zt)*(G_3s*V)^2",
    "Pa",
    "pressure of the wind at the set",
    "ASCE 7",
    "26.10-1",
  );
}

/** Speed at a crane's boom tip as a 3-s gust, m/s, for a reading. @param tip height above the ground around, m */
export function gustAtTip(plan: Plan, reading: number, tip: number): number {
  return (
    reading * gustOverReading(plan) * Math.sqrt(heightRatio(plan, tip, plan.site.wind?.instrument?.height_m))
  );
}

/** Seen from the side: depth times length of the girder that the wind meets first, m2. */
export function sideArea(set: PlanSet, toward: Toward): number {
  let first = set.girders[0];
  for (const g of set.girders) if (toward === "+y" ? g.y_m < first.y_m : g.y_m > first.y_m) first = g;
  let area = 0;
  for (const p of first.pieces)
    area += ((p.topFlange_mm[1] + p.web_mm[0] + p.bottomFlange_mm[1]) / 1000) * (p.to_m - p.from_m);
  return area;
}

/** Where a set stands in its plan, as `sets[0]`. */
const pathOf = (plan: Plan, set: PlanSet): string =>
  printPath(["sets", plan.sets.findIndex((one) => one.id === set.id)]);

/** Area seen from the side times force coefficient, m2. */
export function dragArea(plan: Plan, set: PlanSet, toward: Toward, rec: Recorder | null = null): number {
  const path = pathOf(plan, set);
  const { drag, area_m2 } = set.wind ?? {};
  const C =
    drag === undefined
      ? constant(
          rec,
          "C_d",
          BARE_GIRDERS,
          "1",
          "force coefficient of a pair of bare girders on the depth of one, the one in the lee counted with it",
          "AASHTO guide specifications for wind during construction, 2017 (from memory)",
        )
      : field(rec, "C_d", drag, "force coefficient", `${path}.wind.drag`, drag, NUMBER);
  if (area_m2 === undefined) {
    const area = sideArea(set, toward);
    constant(
      rec,
      "A",
      area,
      "m2",
      "depth times length of the girder to windward",
      "the set's plates in the plan",
    );
    return trace(rec, "A_d", C * area, "C_d*A", "m2", "drag area of the set");
  }
  field(rec, "A", area_m2, "area seen from the side", `${path}.wind.area_m2`, area_m2, {
    unit: "m2",
    si: "m2",
    change: "",
  });
  return trace(rec, "A_d", C * area_m2, "C_d*A", "m2", "drag area of the set");
}

/** Force of the wind on the whole set, N, for a reading: the greater of both ways. */
export function forceOn(plan: Plan, set: PlanSet, reading: number): number {
  return pressureAt(plan, reading) * Math.max(dragArea(plan, set, "+y"), dragArea(plan, set, "-y"));
}

/** Wind of a pressure (Pa) as part of a State: the statics put it on the depth of the girder to windward. */
export function windOf(
  { plan, set }: Pick<SetContext, "plan" | "set">,
  pressure: number,
  toward: Toward,
): StateWind {
  return { pressure, factor: dragArea(plan, set, toward) / sideArea(set, toward), toward };
}
