// One plan to one Result at once: the work that `solveInTurn` does in pieces, done to its end.

import type { Plan } from "../plan/index.ts";
import type { SetContext } from "../sequence/index.ts";
import { completeResult } from "./complete.ts";
import { solveInTurn } from "./inTurn.ts";
import type { CheckList } from "./measure.ts";
import type { Result } from "./types.ts";

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
  const { backed = false, waysBack = false, contexts: given, ...rest } = options;
  const contexts = new Map(given);
  const work = solveInTurn(plan, { ...rest, contexts });
  let next = work.next();
  while (!next.done) next = work.next();
  if (!backed && !waysBack) return next.value;
  return completeResult(plan, next.value, { backed, waysBack, contexts, checks: rest.checks }) ?? next.value;
}
