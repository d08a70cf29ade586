// Sweep of the girders as measured: against what is allowed, and what it makes of the centre of gravity.

import { type Plan, type PlanSet, setLength, spreadOf, takeOff } from "../../plan/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import type { Limit } from "../limitForm.ts";
import { limitOf } from "../limits.ts";
import type { DataMeasure, Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, trace } from "../trace.ts";

/** Mean of a parabola over its rise in the middle. */
const MEAN = 2 / 3;

const swept = (set: PlanSet) => set.girders.filter((g) => g.sweep_mm !== undefined);

/** Sweep of a girder and what is allowed on its length, m. */
function sweepReading(
  rec: Recorder | null,
  plan: Plan,
  set: PlanSet,
  girder: string,
  perMetre: number,
): Reading {
  const i = set.girders.findIndex((g) => g.line === girder);
  const mm = set.girders[i].sweep_mm ?? 0;
  const path = `sets[${plan.sets.indexOf(set)}].girders[${i}]`;
  const last = set.girders[i].pieces.length - 1;
  const length = set.girders[i].pieces[last].to_m;
  field(rec, "e", mm / 1000, "sweep in the middle, left positive", `${path}.sweep_mm`, mm, MM);
  field(rec, "L", length, "length of the girder", `${path}.pieces[${last}].to_m`, length, METRE);
  constant(rec, "r", perMetre / 1000, "1", "sweep allowed per length", "limit 'sweep'");
  const value = trace(rec, "e_a", Math.abs(mm / 1000), "abs(e)", "m", "sweep");
  const limit = trace(rec, "e_max", (perMetre / 1000) * length, "r*L", "m", "allowed sweep");
  rec?.ends("e_a", "e_max");
  return { value, limit };
}

/** How far sweep moves the centre of gravity of a set to the left, m: each girder a parabola between its ends. */
export function sweptCg(rec: Recorder | null, plan: Plan, set: PlanSet): number {
  const { lines, mass } = takeOff(set);
  let moment = 0;
  const terms: string[] = [];
  set.girders.forEach((g, i) => {
    if (g.sweep_mm === undefined) return;
    const own = lines.filter((l) => l.kind === "girders" && l.girder === g.line);
    const m = own.reduce((sum, l) => sum + l.mass, 0);
    const path = `sets[${plan.sets.indexOf(set)}].girders[${i}].sweep_mm`;
    constant(rec, `m_${i}`, m, "kg", `mass of girder ${g.line}`, "take-off of its plates");
    field(rec, `e_${i}`, g.sweep_mm / 1000, `sweep of girder ${g.line}`, path, g.sweep_mm, MM);
    moment += m * (g.sweep_mm / 1000);
    terms.push(`m_${i}*e_${i}`);
  });
  if (terms.length === 0) return 0;
  constant(rec, "M", mass, "kg", "mass of the set", "take-off");
  return trace(
    rec,
    "y_s",
    (MEAN * moment) / mass,
    `(2/3)*(${terms.join(" + ")})/M`,
    "m",
    "centre of gravity moved to the left by sweep",
  );
}

function cgReading(rec: Recorder | null, plan: Plan, set: PlanSet): Reading {
  const y = sweptCg(rec, plan, set);
  const allowed = spreadOf(plan).spread.cgAcross_m;
  const value = trace(rec, "off", Math.abs(y), "abs(y_s)", "m", "across");
  if (plan.spread.cgAcross_m === undefined)
    constant(rec, "y_a", allowed, "m", "spread of the CG", "starter value");
  else field(rec, "y_a", allowed, "spread of the CG across", "spread.cgAcross_m", allowed, METRE);
  rec?.ends("off", "y_a");
  return { value, limit: allowed };
}

/** Girders against the sweep allowed, and how far sweep moves the centre of gravity against what the spread counts. */
export function sweepMeasures(plan: Plan): DataMeasure[] {
  const limit = limitOf(plan, "sweep");
  return plan.sets.flatMap((set) => {
    const girders = swept(set);
    if (girders.length === 0) return [];
    const each = limit === null ? [] : girders.map((g) => girderMeasure(plan, set, g.line, limit));
    return [...each, cgMeasure(plan, set)];
  });
}

function girderMeasure(plan: Plan, set: PlanSet, girder: string, limit: Limit): DataMeasure {
  return dataMeasure(
    {
      check: "sweep",
      set: set.id,
      subject: `girder ${girder}`,
      unit: "mm",
      factor: 1000,
      words: ({ value, limit: allowed }) =>
        `girder ${girder} sweeps ${(value * 1000).toFixed(0)} mm over ${setLength(set)} m, ${(allowed * 1000).toFixed(1)} mm are allowed`,
      cure: "straighten it, or take its sweep into the fit of frames and bearings",
    },
    (rec) => sweepReading(rec, plan, set, girder, limit.value),
    limit,
  );
}

function cgMeasure(plan: Plan, set: PlanSet): DataMeasure {
  return dataMeasure(
    {
      check: "sweep and CG",
      set: set.id,
      subject: "set",
      unit: "mm",
      factor: 1000,
      words: ({ value, limit: counted }) =>
        `sweep moves the centre of gravity ${(value * 1000).toFixed(0)} mm across, the spread counts ${(counted * 1000).toFixed(0)} mm`,
      cure: "state the measured sweep's shift in spread.cgAcross_m, so that low and high count it",
    },
    (rec) => cgReading(rec, plan, set),
    {
      source: "spread of the centre of gravity across, which low and high of all loads are worked out for",
      chosenBy: "plan",
    },
  );
}
