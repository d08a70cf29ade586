// One plan to one Result: every set run with all watches, every measure read at every stored pose, findings joined.

import { type Plan, planHash } from "../plan/index.ts";
import { type Pose, prepareContext, runSet, type SetContext, type Watch } from "../sequence/index.ts";
import { knownClearances } from "./clearance/clearances.ts";
import { completeResult } from "./complete.ts";
import { ruleSetWords } from "./limits.ts";
import { checkList } from "./list.ts";
import { type CheckList, type Measure, marginOf, type Reading, useOf } from "./measure.ts";
import { inOrder, measureFindings } from "./measureFindings.ts";
import type { Finding, Result, SetResult, UseStrip } from "./types.ts";

export const solverVersion = "0.1.0";

export interface SolveOptions {
  /** Sets by id; all when left out. */
  sets?: string[];
  /** Prepared contexts by set id, used instead of new ones. */
  contexts?: Map<string, SetContext>;
  /** Which checks are made; all when left out. */
  checks?: CheckList;
  /** Progress: set id, step index, steps; returning false ends the work. */
  onStep?: (set: string, index: number, of: number) => boolean;
  /** Also tell which poses stand with one hook or group lost; off when left out. */
  backed?: boolean;
  /** Also try the way back of every step; off when left out. */
  waysBack?: boolean;
}

/** Solves a plan that was read. Pure but for the clock of its caller: the same plan gives the same Result. */
export function solvePlan(plan: Plan, options: SolveOptions = {}): Result {
  const { checks = checkList } = options;
  const findings = checks.planChecks.flatMap((check) => check(plan));
  const sets: SetResult[] = [];
  const contexts = new Map<string, SetContext>();
  for (const set of plan.sets) {
    if (options.sets && !options.sets.includes(set.id)) continue;
    const ctx = options.contexts?.get(set.id) ?? prepareContext(plan, set.id);
    contexts.set(set.id, ctx);
    const { result, found } = solveSet(
      ctx,
      checks,
      (index, of) => options.onStep?.(set.id, index, of) ?? true,
    );
    sets.push(result);
    findings.push(...found);
  }
  const ordered = inOrder(findings);
  const result: Result = {
    planHash: planHash(plan),
    solverVersion,
    ruleSet: ruleSetWords(plan),
    sets,
    findings: ordered,
    worst: ordered.length > 0 ? ordered[0].level : null,
    complete: sets.every((s) => s.steps.every((x) => x.solved)),
  };
  const { backed = false, waysBack = false } = options;
  if (!backed && !waysBack) return result;
  return completeResult(plan, result, { backed, waysBack, contexts, checks }) ?? result;
}

function solveSet(
  ctx: SetContext,
  checks: CheckList,
  onStep: (index: number, of: number) => boolean,
): { result: SetResult; found: Finding[] } {
  const measures = checks.makers.flatMap((make) => make(ctx));
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
  const watches = measures.flatMap((m, k): Watch[] => {
    const margin = (pose: Pose) => {
      const r = read(pose, k);
      return Number.isNaN(r.value) ? Number.NaN : marginOf(m, r);
    };
    return m.watched ? [{ check: m.check, subject: m.subject, margin }] : [];
  });
  const stored: Pose[] = [];
  const run = runSet(ctx, watches, { onStep, onPose: (pose) => stored.push(pose) });
  const uses = measures.map((_, k) => Float64Array.from(stored, (pose) => useOf(measures[k], read(pose, k))));
  const found = [
    ...measures.flatMap((m, k) => measureFindings(ctx, run, m, (i) => read(stored[i], k), uses[k])),
    ...checks.runChecks.flatMap((check) => check(ctx, run, stored)),
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
  const clearances = knownClearances(run);
  const result = { ...run, name: ctx.set.name, strips, ...(clearances === undefined ? {} : { clearances }) };
  return { result, found };
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
