// The root of the solver's thread: what the page may ask of it.
import { expose, transfer } from "comlink";
import { version } from "../package.json";
import {
  chosenCorners,
  completeResult,
  type Result,
  type SolvedSet,
  type SpreadResult,
  solvePlan,
  spreadOver,
} from "./checks/index.ts";
import type { Plan } from "./plan/index.ts";
import { reactionsCsv } from "./report/index.ts";
import { prepareContext } from "./sequence/index.ts";

/** The memory of every typed array in a result, each once: it is handed over, not copied. */
function buffersOf(result: Result): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const add = (array: Float64Array | Int32Array | Uint8Array) => {
    if (array.buffer instanceof ArrayBuffer) found.add(array.buffer);
  };
  for (const set of result.sets) {
    for (const array of [set.step, set.progress, set.forces, set.shares, set.motions]) add(array);
    for (const strip of set.strips) add(strip.use);
    if (set.backed) add(set.backed.marks);
  }
  return [...found];
}

/** Completes a result in two pieces of work, between which other questions are answered, and hands it over. */
function completeLater(plan: Plan, result: Result, completed: (result: Result) => void): void {
  setTimeout(() => {
    const backed = completeResult(plan, result, { waysBack: false }) ?? result;
    setTimeout(() => {
      const whole = completeResult(plan, backed) ?? backed;
      completed(transfer(whole, buffersOf(whole)));
    });
  });
}

/** Counts the plans solved, so that work for an earlier one is given up. */
let plans = 0;

/** Runs the corners of a set one at a time, between which other questions are answered. */
async function spreadOf(
  plan: Plan,
  set: SolvedSet,
  progress: (done: number, of: number) => void,
): Promise<SpreadResult | null> {
  const mine = plans;
  const ctx = prepareContext(plan, set.setId);
  const spreading = spreadOver(ctx, set, chosenCorners(plan, ctx.set));
  while (spreading.next()) {
    progress(spreading.done(), spreading.of);
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== plans) return null;
  }
  const spread = spreading.result();
  const arrays = [spread.low, spread.high, spread.lowCorner, spread.highCorner];
  for (const strip of spread.strips) arrays.push(strip.low, strip.high, strip.highCorner);
  const buffers = arrays.flatMap(({ buffer }) => (buffer instanceof ArrayBuffer ? [buffer] : []));
  return transfer(spread, buffers);
}

/** The questions that the page may ask; each answer comes back as a promise. */
export const solver = {
  /** Version of the solver, written into every result. */
  version: (): string => version,

  /**
   * Solves a plan; the arrays of the result change hands. `progress` is told words and how much is done. What takes
   * longer, which poses are backed and the ways back, follows in a whole Result of its own, handed to `completed`.
   */
  solve: (
    plan: Plan,
    progress: (words: string, done: number, of: number) => void,
    completed?: (result: Result) => void,
  ): Result => {
    plans++;
    const onStep = (set: string, index: number, of: number): boolean => {
      progress(plan.sets.length > 1 ? `solving set ${set}: step` : "solving step", index + 1, of);
      return true;
    };
    const result = solvePlan(plan, { onStep });
    if (completed !== undefined) completeLater(plan, structuredClone(result), completed);
    return transfer(result, buffersOf(result));
  },

  /** Low and high of a solved set over the corners that govern; null when another plan was solved meanwhile. */
  spread: spreadOf,

  /** The reactions of a result as CSV; every stored pose is solved once more for it. */
  csv: (plan: Plan, result: Result): string => reactionsCsv(result, plan),
};

export type Solver = typeof solver;

expose(solver);
