// A plan solved in turn: the step under the cursor first, then the statics of every set, then all checks; between two pieces
// of the work its caller may do other things, or drop it. Steps that an edit left as they were are not solved again.

import { type Plan, planHash } from "../plan/index.ts";
import {
  prepareContext,
  runOf,
  type SetContext,
  type SetRun,
  type SolvedStep,
  solveStep,
  startSituation,
} from "../sequence/index.ts";
import { knownClearances } from "./clearance/clearances.ts";
import { type KeptRuns, type KeptSet, keptSetOf, noRuns, stepAgain } from "./keptRuns.ts";
import { ruleSetWords } from "./limits.ts";
import { checkList } from "./list.ts";
import type { CheckList } from "./measure.ts";
import { inOrder } from "./measureFindings.ts";
import { type ReadMeasures, readMeasures } from "./readMeasures.ts";
import { quickRunChecks, quickRunNames } from "./runFindings.ts";
import type { Finding, Result, SetResult } from "./types.ts";

export const solverVersion = "0.1.0";

/** What comes before the whole Result, in this order for every set. */
export type Answer =
  /** One step alone: its run holds this step and no other. The steps before it may have been looked at coarsely. */
  | { is: "step"; set: string; run: SetRun; findings: Finding[] }
  /** The statics of a set, what is found at its poses by the checks `made`, and what the data of the plan say. */
  | { is: "statics"; set: SetResult; findings: Finding[]; made: string[]; ofPlan: Finding[] };

export interface InTurnOptions {
  /** Sets by id; all when left out. */
  sets?: readonly string[];
  /** Which checks are made; all when left out. */
  checks?: CheckList;
  /** Prepared contexts by set id, used instead of new ones; those made are added. */
  contexts?: Map<string, SetContext>;
  /** What is kept of plans solved before; this one is added as it is solved. */
  kept?: KeptRuns;
  /** The set and the index of the step that are answered first. */
  first?: { set: string; step: number };
  /** Called before every step with set id, step index and how many there are; returning false ends the run of the set. */
  onStep?: (set: string, index: number, of: number) => boolean;
}

/** Rests with null after each piece of the work, and with an answer where one is there; returns the whole Result. */
export function* solveInTurn(plan: Plan, options: InTurnOptions = {}): Generator<Answer | null, Result> {
  const { checks = checkList, contexts = new Map<string, SetContext>(), kept = noRuns(), first } = options;
  const wanted = plan.sets.filter(({ id }) => options.sets?.includes(id) ?? true);
  const inHand = wanted.find(({ id }) => id === first?.set);
  const order = inHand === undefined ? wanted : [inHand, ...wanted.filter((set) => set !== inHand)];
  const prepare = (_: Plan, id: string, before?: SetContext): SetContext => {
    const ctx = contexts.get(id) ?? prepareContext(plan, id, before);
    contexts.set(id, ctx);
    return ctx;
  };
  const solved = new Map<string, SolvedSetInTurn>();
  let ofPlan: Finding[] | null = null;
  for (const set of order) {
    const work = new SolvedSetInTurn(keptSetOf(kept, plan, set, prepare), checks);
    solved.set(set.id, work);
    if (set === inHand && first !== undefined) yield* work.stepFirst(first.step);
    ofPlan ??= checks.planChecks.flatMap((check) => check(plan));
    yield* work.statics((index, of) => options.onStep?.(set.id, index, of) ?? true);
    if (first !== undefined)
      yield { is: "statics", set: work.result(), findings: work.found(), made: work.made(), ofPlan };
  }
  for (const work of solved.values()) yield* work.rest();
  const all = wanted.map(({ id }) => solved.get(id) as SolvedSetInTurn);
  ofPlan ??= checks.planChecks.flatMap((check) => check(plan));
  const findings = inOrder([...ofPlan, ...all.flatMap((work) => work.found())]);
  const sets = all.map((work) => work.result());
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

/** One set on its way from its first step to its last check. */
class SolvedSetInTurn {
  private readonly kept: KeptSet;
  private readonly checks: CheckList;
  private readonly measures: ReadMeasures;
  private readonly steps: SolvedStep[] = [];
  private run: SetRun | null = null;
  /** Findings of the measures, and of every check over the run in the order of the list; null where it is still to be made. */
  private ofMeasures: Finding[] = [];
  private readonly ofRun: (Finding[] | null)[];

  constructor(kept: KeptSet, checks: CheckList) {
    this.kept = kept;
    this.checks = checks;
    this.measures = readMeasures(kept.ctx, checks);
    this.ofRun = checks.runChecks.map(() => null);
  }

  /** The step of an index alone, as soon as may be: steps before it that are not kept are looked at coarsely. */
  *stepFirst(index: number): Generator<Answer | null, void> {
    const { ctx } = this.kept;
    const list = ctx.set.steps;
    const start = startSituation(ctx);
    const before: SolvedStep[] = [];
    if (list[index] === undefined) return;
    while (before.length < index) {
      const again = stepAgain(this.kept.steps[before.length], list, before, start);
      before.push(again ?? solveStep(ctx, list, before, start, [], true));
      if (again === null) yield null;
    }
    const step = this.next(before, start);
    const alone = { ...step, run: { ...step.run, first: 0 } };
    const run = runOf(ctx, [alone]);
    const stored = step.samples.map(({ pose }) => pose);
    const findings = inOrder([
      ...this.measures.findings(run, stored),
      ...this.checks.runChecks
        .filter((check) => quickRunChecks.has(check))
        .flatMap((check) => check(ctx, run, stored)),
    ]);
    yield { is: "step", set: ctx.set.id, run, findings };
  }

  /** All steps, and what is read at their poses. */
  *statics(onStep: (index: number, of: number) => boolean): Generator<null, void> {
    const { ctx } = this.kept;
    const list = ctx.set.steps;
    const start = startSituation(ctx);
    for (const index of list.keys()) {
      if (!onStep(index, list.length)) break;
      this.steps.push(this.next(this.steps, start));
      yield null;
    }
    this.run = runOf(ctx, this.steps);
    const stored = this.stored();
    this.ofMeasures = this.measures.findings(this.run, stored);
    this.checks.runChecks.forEach((check, k) => {
      if (quickRunChecks.has(check)) this.ofRun[k] = check(ctx, this.run as SetRun, stored);
    });
    yield null;
  }

  /** Every check over the run that is still to be made. */
  *rest(): Generator<null, void> {
    const stored = this.stored();
    for (const [k, check] of this.checks.runChecks.entries()) {
      if (this.ofRun[k] !== null) continue;
      const { inPieces = null } = check;
      const asked = [this.kept.ctx, this.run as SetRun, stored] as const;
      this.ofRun[k] = inPieces === null ? check(...asked) : yield* inPieces(...asked);
      yield null;
    }
  }

  /** What was found so far, in the order of the list of checks. */
  found(): Finding[] {
    return [...this.ofMeasures, ...this.ofRun.flatMap((found) => found ?? [])];
  }

  /** Names of the checks that are made with the statics. */
  made(): string[] {
    return [...this.measures.checks, ...quickRunNames];
  }

  /** The set as far as it is worked out; there must be a run. */
  result(): SetResult {
    const run = this.run as SetRun;
    const strips = this.measures.strips(this.stored());
    const clearances = knownClearances(run);
    return {
      ...run,
      name: this.kept.ctx.set.name,
      strips,
      ...(clearances === undefined ? {} : { clearances }),
    };
  }

  /** The step after some: the kept one where it moves as it did and every watched margin reads the same, else solved anew. */
  private next(before: readonly SolvedStep[], start: ReturnType<typeof startSituation>): SolvedStep {
    const { ctx, steps: known } = this.kept;
    const { watches, words, watchedAt } = this.measures;
    const index = before.length;
    const list = ctx.set.steps;
    const again = stepAgain(known[index], list, before, start);
    if (again !== null && known[index].watched === words) {
      const now = watchedAt(again.samples.map(({ pose }) => pose));
      if (sameNumbers(now, known[index].readings)) return again;
    }
    const from = before[index - 1]?.end ?? start;
    const solved = solveStep(ctx, list, before, start, watches);
    // A step behind one without equilibrium was not solved, and is nothing to keep.
    if (solved.samples.length > 0) {
      const readings = watchedAt(solved.samples.map(({ pose }) => pose));
      known[index] = { solved, from, watched: words, readings };
    }
    return solved;
  }

  private stored() {
    // A list of its own each time: some checks keep what they read of one by the list itself.
    return this.steps.flatMap(({ samples }) => samples.map(({ pose }) => pose));
  }
}

/** Whether two rows of numbers are the same to the last bit; NaN is NaN. */
function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => Object.is(value, b[i]));
}
