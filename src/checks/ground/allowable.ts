// What the ground may bear: the plan's own value with its source, or that of its soil class as a named stand-in.

import type { Soil } from "../../plan/index.ts";
import { constant, type FieldUnit, field, type Recorder } from "../trace.ts";
import { presumptive } from "./presumptive.ts";

export const KPA: FieldUnit = { unit: "kPa", si: "Pa", change: "*1000" };

/** An allowable pressure, Pa, with where it comes from. */
export interface Allowable {
  value: number;
  source: string;
  chosenBy: string;
  /** Its field in the plan; null for a presumptive value. */
  path: string | null;
}

/** What part of a plan says of the ground below it. */
export interface GroundWords {
  allowablePressure_kPa?: number;
  pressureSource?: string;
  source?: string;
  soil?: Soil;
}

/** The allowable pressure at a place of the plan; null where it gives neither a value nor a soil class. */
export function allowableAt(path: string, words: GroundWords): Allowable | null {
  const { allowablePressure_kPa: stated, soil } = words;
  if (stated !== undefined)
    return {
      value: stated * 1000,
      source: `${path}: ${words.pressureSource ?? words.source ?? "no source given"}`,
      chosenBy: "plan",
      path: `${path}.allowablePressure_kPa`,
    };
  if (soil === undefined) return null;
  const { value, source } = presumptive[soil];
  return { value, source: `${source}, soil '${soil}'`, chosenBy: "presumptive", path: null };
}

/** Writes an allowable pressure down as q_a. */
export function recordAllowable(rec: Recorder | null, a: Allowable): void {
  if (a.path === null) constant(rec, "q_a", a.value, "Pa", "allowable pressure of the ground", a.source);
  else field(rec, "q_a", a.value, "allowable pressure of the ground", a.path, a.value / 1000, KPA);
}
