// The numbers of what motions met on their way and of supports at the end of a step, for their traces: where each is found,
// and nowhere else.

import { type Step, supportNames } from "../plan/index.ts";
import {
  expansion,
  type Happening,
  ledgerMass,
  type SetContext,
  type SetRun,
  type StepRun,
} from "../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import { CARRIES, carryFindings, happeningFinding, sharesAtEnd } from "./runFindings.ts";
import {
  constant,
  type FieldUnit,
  field,
  KN,
  METRE,
  MM,
  NUMBER,
  type Recorder,
  solved,
  trace,
} from "./trace.ts";
import { traced } from "./traced.ts";
import type { Finding } from "./types.ts";

/** Supports of a run that carry or not against what their step says, and what its motions met. */
export function metMeasures(ctx: SetContext, run: SetRun): Measure[] {
  return run.steps.flatMap((s) => [
    ...ofEnd(ctx, run, s),
    ...s.happenings.flatMap((h) => ofHappening(ctx, run, s, h)),
  ]);
}

/** A measure with the numbers of a finding, which applies where that stands. */
function ofFinding(
  ctx: SetContext,
  finding: Finding,
  factor: number,
  record: (rec: Recorder) => void,
): Measure[] {
  const { check, subject, level, worst, value, limit, unit, source, chosenBy, cure } = finding;
  if (value === null || worst === null) return [];
  return [
    measure(
      {
        ...{ check, subject, level, cure, unit, factor },
        kind: "",
        sense: limit !== null && value < limit ? "least" : "greatest",
        watched: false,
        ...traced(ctx, (pose, rec): Reading => {
          if (pose.step !== worst.step || Math.abs(pose.progress - worst.progress) > 1e-9)
            return {
              ...NOT_HERE,
              why: `it is found in step ${worst.step + 1} at progress ${worst.progress}`,
            };
          if (rec !== null) record(rec);
          return { value: value / factor, limit: limit === null ? Number.NaN : limit / factor };
        }),
      },
      { source, chosenBy },
    ),
  ];
}

/** At the end of a step: supports meant to carry that do not, and the other way round. */
function ofEnd(ctx: SetContext, run: SetRun, s: StepRun): Measure[] {
  const shares = sharesAtEnd(run, s);
  const names = supportNames(ctx.plan, ctx.set);
  return carryFindings(ctx, s, shares, run.weight).flatMap((finding) =>
    ofFinding(ctx, finding, 1e-3, (rec) => {
      const j = ctx.supports.findIndex((one) => one.name === finding.subject && names.includes(one.name));
      solved(rec, "S", shares[j], "N", `part of the weight on ${finding.subject} at the end of the step`);
      partOfWeight(rec, run, CARRIES, "from which on a support carries");
      rec.ends("S", "S_a");
    }),
  );
}

/** A part of the set's weight as a limit. */
function partOfWeight(rec: Recorder, run: SetRun, part: number, words: string): void {
  solved(rec, "W", run.weight, "N", "weight of the set");
  constant(rec, "p", part, "1", `part of the weight ${words}`, "chosen for this program");
  trace(rec, "S_a", part * run.weight, "p*W", "N", `load ${words}`);
}

/** Fields of a step in which a number that its motion met may be stated, with how they are brought to SI. */
const stated: readonly [string, FieldUnit][] = [
  ["loadCap_kN", KN],
  ["heightCap_mm", MM],
  ["distance_m", METRE],
  ["tolerance_mm", MM],
];

/** A number of a motion: the step's own field where that is what it is, else what the run found. */
function numberOf(
  rec: Recorder,
  path: string,
  step: Step,
  symbol: string,
  value: number,
  h: Happening,
): void {
  for (const [name, unit] of stated) {
    const own = (step as Record<string, unknown>)[name];
    if (typeof own !== "number" || unit.si !== h.unit) continue;
    const si = unit === KN ? own * 1000 : unit === MM ? own / 1000 : own;
    if (si !== value) continue;
    field(rec, symbol, value, "as the step states it", `${path}.${name}`, own, unit);
    return;
  }
  solved(rec, symbol, value, h.unit, h.words);
}

function ofHappening(ctx: SetContext, run: SetRun, s: StepRun, h: Happening): Measure[] {
  const { value, limit } = h;
  if (value === null) return [];
  const path = `sets[${ctx.plan.sets.indexOf(ctx.set)}].steps[${s.index}]`;
  return ofFinding(ctx, happeningFinding(ctx, s.index, h), h.unit === "N" ? 1e-3 : 1, (rec) => {
    if (h.kind === "count not met") recordCounts(rec, s.step, path, h);
    else if (h.kind === "length change") recordLength(rec, ctx, s.step, path, value);
    else if (h.kind === "reading off") recordReading(rec, ctx, s.step, path, h);
    else if (h.kind === "rest" && limit !== null) {
      solved(rec, "v", value, h.unit, h.words);
      partOfWeight(rec, run, limit / run.weight, "that may stay on it");
      rec.ends("v", "S_a");
    } else {
      numberOf(rec, path, s.step, "v", value, h);
      if (limit === 0) constant(rec, "v_a", 0, h.unit, "none", "the plan's own steps");
      else if (limit !== null) numberOf(rec, path, s.step, "v_a", limit, h);
      rec.ends("v", limit === null ? null : "v_a");
    }
  });
}

/** What a hook carries at the end of a trial lift, and the bound of the band about what the ledger lets expect. */
function recordReading(rec: Recorder, ctx: SetContext, step: Step, path: string, h: Happening): void {
  const band = step.do === "trial lift" ? (step.band_pct ?? 0) : 0;
  const [F, bound] = [h.value ?? 0, h.limit ?? 0];
  const ledger = ledgerMass(ctx) ?? 0;
  solved(rec, "F", F, "N", `${h.subject} carries of the set`);
  constant(
    rec,
    "m_l",
    ledger,
    "kg",
    "mass of the set by its ledger",
    "sets[].ledger: the best masses of its lines",
  );
  constant(rec, "m", ctx.model.mass, "kg", "mass of the set as solved", "take-off of the plan");
  const expected = trace(
    rec,
    "F_e",
    (F * ledger) / ctx.model.mass,
    "F*m_l/m",
    "N",
    "what the ledger lets expect",
  );
  field(rec, "p", band, "band", `${path}.band_pct`, band, { unit: "%", si: "%", change: "" });
  const formula = `F_e*(1 ${F > expected ? "+" : "-"} p/100)`;
  trace(rec, "F_a", bound, formula, "N", `${F > expected ? "most" : "least"} that the band allows`);
  rec.ends("F", "F_a");
}

/** What is counted in, and of how many. */
function recordCounts(rec: Recorder, step: Step, path: string, h: Happening): void {
  const items = step.do === "brace" ? step.items : [];
  const i = items.findIndex((one) => one.what === h.subject);
  field(
    rec,
    "n",
    items[i].count,
    `${h.subject} that are in`,
    `${path}.items[${i}].count`,
    items[i].count,
    NUMBER,
  );
  field(
    rec,
    "n_a",
    items[i].of,
    `${h.subject} that there are`,
    `${path}.items[${i}].of`,
    items[i].of,
    NUMBER,
  );
  rec.ends("n", "n_a");
}

/** How much a set grows or shrinks between its soles while it stands. */
function recordLength(rec: Recorder, ctx: SetContext, step: Step, path: string, value: number): void {
  const { soleStations_m: soles } = ctx.set;
  const set = `sets[${ctx.plan.sets.indexOf(ctx.set)}]`;
  const t = "temperature_C" in step ? (step.temperature_C ?? 0) : 0;
  constant(rec, "alpha", expansion, "1/K", "expansion of steel", "as for the strain of the set");
  const degrees: FieldUnit = { unit: "K", si: "K", change: "" };
  field(rec, "dT", t, "change of temperature while it stands", `${path}.temperature_C`, t, degrees);
  if (soles === undefined) constant(rec, "L", ctx.length, "m", "length of the set", "girders of the plan");
  else {
    field(rec, "x_n", soles.near, "near soles", `${set}.soleStations_m.near`, soles.near, METRE);
    field(rec, "x_f", soles.far, "far soles", `${set}.soleStations_m.far`, soles.far, METRE);
    trace(rec, "L", soles.far - soles.near, "x_f - x_n", "m", "length between the soles");
  }
  trace(rec, "dL", value, "abs(alpha*dT*L)", "m", "change of length");
  rec.ends("dL", null);
}
