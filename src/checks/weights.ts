// Weights against what was said of them: the take-off against each line of the ledger, and mass per metre against what is
// usual.

import { type Plan, type PlanSet, setLength, takeOff } from "../plan/index.ts";
import { dataMeasure } from "./dataMeasure.ts";
import { limitOf } from "./limits.ts";
import type { DataMeasure } from "./measure.ts";
import { constant, field, METRE, TONNE, trace } from "./trace.ts";

const CHECK = "weight check";

/** Every weight of a plan that something is known of: below the lower bound, or else against the higher one. */
export function weightMeasures(plan: Plan): DataMeasure[] {
  return plan.sets.flatMap((set) => [...perMetre(plan, set), ...ledger(plan, set)]);
}

/** Mass per metre of a two-girder set of 60 to 75 m against what such sets usually weigh. */
function perMetre(plan: Plan, set: PlanSet): DataMeasure[] {
  const length = setLength(set);
  if (set.girders.length !== 2 || length < 60 - 1e-9 || length > 75 + 1e-9) return [];
  const { mass, meanMassPerMetre } = takeOff(set);
  const low = limitOf(plan, "mass per metre low", true);
  const high = limitOf(plan, "mass per metre high");
  if (!low || !high) return [];
  const light = meanMassPerMetre / 1000 < low.value;
  const limit = light ? low : high;
  const last = set.girders[0].pieces.length - 1;
  const path = `sets[${plan.sets.indexOf(set)}].girders[0].pieces[${last}].to_m`;
  return [
    dataMeasure(
      {
        check: CHECK,
        set: set.id,
        subject: "mass per metre",
        sense: light ? "least" : "greatest",
        unit: "t/m",
        factor: 1e-3,
        digits: 2,
        words: ({ value }) =>
          `the set weighs ${(value / 1000).toFixed(2)} t per metre; ${low.value} to ${high.value} is usual for its kind`,
        cure: "check plates, stiffeners, frames and everything carried on the set",
      },
      (rec) => {
        constant(rec, "m", mass, "kg", "mass of the set", TAKE_OFF);
        const stated = set.girders[0].pieces[last].to_m;
        field(rec, "L", stated, "length of the set", path, stated, METRE);
        const value = trace(rec, "m_L", meanMassPerMetre, "m/L", "kg/m", "mass per metre");
        constant(rec, "m_t", limit.value, "t/m", "usual", `${limit.source} (${limit.chosenBy})`);
        const allowed = trace(rec, "m_a", limit.value * 1000, "m_t*1000", "kg/m", "usual");
        rec?.ends("m_L", "m_a");
        return { value, limit: allowed };
      },
      limit,
    ),
  ];
}

const TAKE_OFF =
  "take-off of the plan: plates by their sizes and density, and all that is stated to hang on them";

/** Lines of the ledger that the take-off covers. */
function ledger(plan: Plan, set: PlanSet): DataMeasure[] {
  return takeOff(set).ledger.flatMap((line, i) => {
    const { item, low, high, source, takeOff: own } = line;
    if (own === null) return [];
    const light = own < low;
    const t = (kg: number) => (kg / 1000).toFixed(1);
    const end = light ? "low" : "high";
    const path = `sets[${plan.sets.indexOf(set)}].ledger[${i}].mass_t.${end}`;
    return [
      dataMeasure(
        {
          check: CHECK,
          set: set.id,
          subject: item,
          sense: light ? "least" : "greatest",
          unit: "t",
          factor: 1e-3,
          words: () =>
            `${item}: the take-off gives ${t(own)} t, outside the ledger's ${t(low)} to ${t(high)} t`,
          cure: "find which of the two is wrong before any step",
        },
        (rec) => {
          constant(rec, "m", own, "kg", `mass of ${item}`, TAKE_OFF);
          const stated = set.ledger[i].mass_t[end];
          const words = `${light ? "least" : "greatest"} mass by the ledger`;
          field(rec, "m_a", light ? low : high, words, path, stated, TONNE);
          rec?.ends("m", "m_a");
          return { value: own, limit: light ? low : high };
        },
        { source, chosenBy: "plan" },
      ),
    ];
  });
}
