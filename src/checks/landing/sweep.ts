// Sweep of the girders as measured: against what is allowed, and what it makes of the centre of gravity.

import { type Plan, type PlanSet, setLength, spreadOf, takeOff } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, type Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { found } from "./found.ts";

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

const CURE = "straighten it, or take its sweep into the fit of frames and bearings";
const CG_CURE = "state the measured sweep's shift in spread.cgAcross_m, so that low and high count it";
const CG_SOURCE =
  "spread of the centre of gravity across, which low and high of all loads are worked out for";

/** Girders with more sweep than allowed, and sets whose centre of gravity it moves by more than the spread counts. */
export function sweepFindings(plan: Plan): Finding[] {
  const limit = limitOf(plan, "sweep");
  const out: Finding[] = [];
  for (const set of plan.sets) {
    if (limit !== null)
      for (const g of swept(set)) {
        const r = sweepReading(null, plan, set, g.line, limit.value);
        if (r.value <= r.limit * (1 + 1e-9)) continue;
        out.push(
          found(
            set.id,
            null,
            {
              level: "caution",
              check: "sweep",
              subject: `girder ${g.line}`,
              value: r.value * 1000,
              limit: r.limit * 1000,
              unit: "mm",
              use: r.value / r.limit,
              words: `girder ${g.line} sweeps ${(r.value * 1000).toFixed(0)} mm over ${setLength(set)} m, ${(r.limit * 1000).toFixed(1)} mm are allowed`,
              cure: CURE,
            },
            limit,
          ),
        );
      }
    if (swept(set).length === 0) continue;
    const r = cgReading(null, plan, set);
    if (r.value <= r.limit * (1 + 1e-9)) continue;
    out.push(
      found(set.id, null, {
        level: "caution",
        check: "sweep and CG",
        subject: "set",
        value: r.value * 1000,
        limit: r.limit * 1000,
        unit: "mm",
        use: r.value / r.limit,
        source: CG_SOURCE,
        words: `sweep moves the centre of gravity ${(r.value * 1000).toFixed(0)} mm across, the spread counts ${(r.limit * 1000).toFixed(0)} mm`,
        cure: CG_CURE,
      }),
    );
  }
  return out;
}

/** The same for the sets' traces. */
export function sweepMeasures(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  const limit = limitOf(plan, "sweep");
  const common = { kind: "", level: "caution" as const, unit: "mm", factor: 1000, watched: false };
  const each =
    limit === null
      ? []
      : swept(set).map((g) =>
          measure(
            {
              ...common,
              check: "sweep",
              subject: `girder ${g.line}`,
              cure: CURE,
              ...traced(ctx, (_pose, rec) => sweepReading(rec, plan, set, g.line, limit.value)),
            },
            limit,
          ),
        );
  if (swept(set).length === 0) return each;
  const cg = measure(
    {
      ...common,
      check: "sweep and CG",
      subject: "set",
      cure: CG_CURE,
      ...traced(ctx, (_pose, rec) => cgReading(rec, plan, set)),
    },
    { source: CG_SOURCE, chosenBy: "plan" },
  );
  return [...each, cg];
}
