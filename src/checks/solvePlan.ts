// One plan to one Result: every set run with all watches, every measure read at every stored pose, findings joined.

import { type Plan, planHash } from "../plan/index.ts";
import {
  type Pose,
  prepareContext,
  runSet,
  type SetContext,
  type SetRun,
  type Watch,
} from "../sequence/index.ts";
import { ruleSetWords } from "./limits.ts";
import { makers } from "./list.ts";
import { type Measure, marginOf, type Reading, useOf } from "./measure.ts";
import { planFindings } from "./planFindings.ts";
import { carryFindings, happeningFinding, sharesAtEnd } from "./runFindings.ts";
import type { Finding, Level, Result, SetResult, UseStrip, When } from "./types.ts";

export const solverVersion = "0.1.0";

export interface SolveOptions {
  /** Sets by id; all when left out. */
  sets?: string[];
  /** Prepared contexts by set id, used instead of new ones. */
  contexts?: Map<string, SetContext>;
  /** Progress: set id, step index, steps; returning false ends the work. */
  onStep?: (set: string, index: number, of: number) => boolean;
}

/** Solves a plan that was read. Pure but for the clock of its caller: the same plan gives the same Result. */
export function solvePlan(plan: Plan, options: SolveOptions = {}): Result {
  const findings = planFindings(plan);
  const sets: SetResult[] = [];
  for (const set of plan.sets) {
    if (options.sets && !options.sets.includes(set.id)) continue;
    const ctx = options.contexts?.get(set.id) ?? prepareContext(plan, set.id);
    const { result, found } = solveSet(ctx, (index, of) => options.onStep?.(set.id, index, of) ?? true);
    sets.push(result);
    findings.push(...found);
  }
  const rank: Record<Level, number> = { stop: 0, caution: 1, note: 2 };
  findings.sort(
    (a, b) =>
      rank[a.level] - rank[b.level] ||
      (a.from?.step ?? -1) - (b.from?.step ?? -1) ||
      (a.from?.progress ?? 0) - (b.from?.progress ?? 0),
  );
  return {
    planHash: planHash(plan),
    solverVersion,
    ruleSet: ruleSetWords(plan),
    sets,
    findings,
    worst: findings.length > 0 ? findings[0].level : null,
    complete: sets.every((s) => s.steps.every((x) => x.solved)),
  };
}

function solveSet(
  ctx: SetContext,
  onStep: (index: number, of: number) => boolean,
): { result: SetResult; found: Finding[] } {
  const measures = makers.flatMap((make) => make(ctx));
  // One reading per measure and pose, shared by the watches, the strips and the findings.
  const readings = new WeakMap<Pose, (Reading | undefined)[]>();
  const read = (pose: Pose, k: number): Reading => {
    let list = readings.get(pose);
    if (!list) {
      list = new Array(measures.length);
      readings.set(pose, list);
    }
    let r = list[k];
    if (!r) {
      r = measures[k].read(pose);
      list[k] = r;
    }
    return r;
  };
  const watches: Watch[] = measures.map((m, k) => ({
    check: m.check,
    subject: m.subject,
    margin: (pose) => {
      const r = read(pose, k);
      return Number.isNaN(r.value) ? Number.NaN : marginOf(m, r);
    },
  }));
  const stored: Pose[] = [];
  const run = runSet(ctx, watches, { onStep, onPose: (pose) => stored.push(pose) });
  const uses = measures.map((_, k) => Float64Array.from(stored, (pose) => useOf(measures[k], read(pose, k))));
  const found = [
    ...measures.flatMap((m, k) => measureFindings(ctx, run, m, (i) => read(stored[i], k), uses[k])),
    ...run.steps.flatMap((s) => carryFindings(ctx, s, sharesAtEnd(run, s), run.weight)),
    ...run.steps.flatMap((s) => s.happenings.map((h) => happeningFinding(ctx, s.index, h))),
  ];
  const strips: UseStrip[] = measures.flatMap((m, k) =>
    m.strip
      ? [
          {
            check: m.check,
            subject: m.subject,
            kind: m.kind,
            limitWords: limitWords(
              m,
              stored.map((p) => read(p, k)),
            ),
            use: uses[k],
          },
        ]
      : [],
  );
  return { result: { ...run, name: ctx.set.name, strips }, found };
}

function limitWords(m: Measure, all: Reading[]): string {
  const first = all.find((r) => !Number.isNaN(r.value));
  if (!first) return m.unit;
  const varies = all.some(
    (r) => !Number.isNaN(r.value) && Math.abs(r.limit - first.limit) > 1e-9 * Math.abs(first.limit),
  );
  return varies
    ? `limit by pose, ${m.unit}`
    : `limit ${(first.limit * m.factor).toFixed(m.digits)} ${m.unit}`;
}

const when = (run: SetRun, i: number): When => ({ step: run.step[i], progress: run.progress[i] });

/** One finding for every unbroken stretch of stored poses beyond the limit. */
function measureFindings(
  ctx: SetContext,
  run: SetRun,
  m: Measure,
  reading: (i: number) => Reading,
  use: Float64Array,
): Finding[] {
  const out: Finding[] = [];
  for (let i = 0; i < run.count; i++) {
    const beyond = (k: number) => {
      const r = reading(k);
      return !Number.isNaN(r.value) && marginOf(m, r) < 0;
    };
    if (!beyond(i)) continue;
    let end = i;
    let worst = i;
    while (end + 1 < run.count && beyond(end + 1)) {
      end++;
      if (use[end] > use[worst]) worst = end;
    }
    const r = reading(worst);
    const value = r.value * m.factor;
    const limit = r.limit * m.factor;
    const relation = m.sense === "greatest" ? "above" : "below";
    out.push({
      id: `${m.check}:${ctx.set.id}:${m.subject}:${run.step[i]}:${run.progress[i]}`,
      level: m.level,
      check: m.check,
      set: ctx.set.id,
      subject: m.subject,
      from: when(run, i),
      to: when(run, end),
      worst: when(run, worst),
      value,
      limit,
      unit: m.unit,
      use: use[worst],
      source: r.source ?? m.source,
      chosenBy: r.chosenBy ?? m.chosenBy,
      words: `${m.check} of ${m.subject}: ${value.toFixed(m.digits)} is ${relation} ${limit.toFixed(m.digits)} ${m.unit}${r.where ? ` (${r.where})` : ""}`,
      cure: m.cure,
    });
    i = end;
  }
  return out;
}
