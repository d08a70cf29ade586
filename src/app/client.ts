// The worker's client: hands plans to the solver's thread and reports how far it is.
import { proxy, type Remote, wrap } from "comlink";
import type { Solver } from "../worker.ts";
import type { CornersAsked, HeldSpread, HeldTables } from "./state.ts";
import type { Answer, Plan, Result, SetBuckling, SetResult, StagesAsked } from "./types.ts";

/** Told while a plan is being solved: sets and steps done, of how many. */
export type Progress = (words: string, done: number, of: number) => void;

/** What comes before the whole answer, and what follows it: which poses are backed, and the ways back. */
export interface Completing {
  /** The set and the index of the step that are wanted first; null for the order of the plan. */
  first: { set: string; step: number } | null;
  /** Handed the step wanted first, and the statics of every set, before all checks are made. */
  answered: (answer: Answer) => void;
  /** Told how far what follows is. */
  progress: Progress;
  /** Handed the same result once more, when that is worked out. */
  completed: (result: Result) => void;
}

/** Solves plans somewhere else than on the thread of the screen. */
export interface SolverClient {
  /** Solves a plan; an earlier run that has not ended is dropped, and its promise stays open for ever. */
  solve(plan: Plan, progress: Progress, later: Completing): Promise<Result>;
  /**
   * Low and high of a solved set over the corners asked for, fewer when it was told to stop; null when another plan was
   * solved meanwhile.
   */
  spread(
    plan: Plan,
    set: SetResult,
    asked: CornersAsked,
    progress: (done: number, of: number) => void,
  ): Promise<HeldSpread | null>;
  /** At how many times its loads a solved set buckles; null when another plan was solved meanwhile. */
  buckling(
    plan: Plan,
    set: SetResult,
    asked: StagesAsked,
    progress: (done: number, of: number) => void,
  ): Promise<SetBuckling | null>;
  /** Tables of a section for a solved set; null when another plan was solved meanwhile. */
  tables(
    plan: Plan,
    set: SetResult,
    section: string,
    progress: (done: number, of: number) => void,
  ): Promise<HeldTables | null>;
  /** Ends the spread that is under way; its promise then gives what it has. */
  stopSpread(): void;
  /** Ends the search for buckling that is under way; its promise then gives what it has. */
  stopBuckling(): void;
  /** Ends the tables that are under way; their promise then gives what there is. */
  stopTables(): void;
  /** The reactions of a result as the text of a CSV file. */
  csv(plan: Plan, result: Result): Promise<string>;
}

/** A client with a worker of its own, started with the first plan and never ended: what it keeps makes edits quick. */
export function workerClient(): SolverClient {
  let worker: Worker | null = null;
  let remote: Remote<Solver> | null = null;
  const started = (fail: (error: Error) => void): Remote<Solver> => {
    if (worker === null || remote === null) {
      worker = new Worker(new URL("../worker.ts", import.meta.url), { type: "module", name: "solver" });
      remote = wrap<Solver>(worker);
    }
    const own = worker;
    worker.onerror = (event) => {
      // What broke off answers nothing more: the next question starts another one.
      own.terminate();
      if (worker === own) worker = null;
      fail(
        new Error(`The solver's thread did not start or broke off: ${event.message || "no reason given"}.`),
      );
    };
    return remote;
  };
  return {
    solve: (plan, progress, { first, answered, progress: later, completed }) =>
      new Promise((resolve, reject) => {
        started(reject)
          .solve(plan, proxy(progress), first, proxy(answered), proxy(later), proxy(completed))
          .then((result) => {
            // Null was overtaken by a newer plan, for which somebody else waits.
            if (result !== null) resolve(result);
          }, reject);
      }),
    spread: (plan, { setId, steps, step, progress, count, supports }, asked, told) =>
      new Promise((resolve, reject) => {
        const set = { setId, steps, step, progress, count, supports };
        started(reject).spread(plan, set, asked, proxy(told)).then(resolve, reject);
      }),
    buckling: (plan, { setId, steps, step, progress, count, supports, forces }, asked, told) =>
      new Promise((resolve, reject) => {
        const set = { setId, steps, step, progress, count, supports, forces };
        started(reject).buckling(plan, set, asked, proxy(told)).then(resolve, reject);
      }),
    tables: (
      plan,
      { strips: _, backed: __, waysBack: ___, spread: ____, envelopes: _____, ...set },
      section,
      told,
    ) =>
      new Promise((resolve, reject) => {
        started(reject)
          .tables(plan, { ...set, strips: [] }, section, proxy(told))
          .then(resolve, reject);
      }),
    stopSpread: () => void remote?.stopSpread(),
    stopBuckling: () => void remote?.stopBuckling(),
    stopTables: () => void remote?.stopTables(),
    csv: (plan, result) =>
      new Promise((resolve, reject) => started(reject).csv(plan, result).then(resolve, reject)),
  };
}
