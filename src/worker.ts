// The root of the solver's thread: what the page may ask of it.
import { expose, transfer } from "comlink";
import { version } from "../package.json";
import { type Result, solvePlan } from "./checks/index.ts";
import type { Plan } from "./plan/index.ts";
import { reactionsCsv } from "./report/index.ts";

/** The memory of every typed array in a result, each once: it is handed over, not copied. */
function buffersOf(result: Result): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const add = (array: Float64Array | Int32Array) => {
    if (array.buffer instanceof ArrayBuffer) found.add(array.buffer);
  };
  for (const set of result.sets) {
    for (const array of [set.step, set.progress, set.forces, set.shares, set.motions]) add(array);
    for (const strip of set.strips) add(strip.use);
  }
  return [...found];
}

/** The questions that the page may ask; each answer comes back as a promise. */
export const solver = {
  /** Version of the solver, written into every result. */
  version: (): string => version,

  /** Solves a plan; the arrays of the result change hands. `progress` is told words and how much is done. */
  solve: (plan: Plan, progress: (words: string, done: number, of: number) => void): Result => {
    const onStep = (set: string, index: number, of: number): boolean => {
      progress(plan.sets.length > 1 ? `solving set ${set}: step` : "solving step", index + 1, of);
      return true;
    };
    const result = solvePlan(plan, { onStep });
    return transfer(result, buffersOf(result));
  },

  /** The reactions of a result as CSV; every stored pose is solved once more for it. */
  csv: (plan: Plan, result: Result): string => reactionsCsv(result, plan),
};

export type Solver = typeof solver;

expose(solver);
