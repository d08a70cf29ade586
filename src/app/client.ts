// The worker's client: hands plans to the solver's thread, reports how far it is, and ends a run that nobody waits for.
import { proxy, type Remote, wrap } from "comlink";
import type { Solver } from "../worker.ts";
import type { Plan, Result, SetResult, SpreadResult } from "./types.ts";

/** Told while a plan is being solved: sets and steps done, of how many. */
export type Progress = (words: string, done: number, of: number) => void;

/** Solves plans somewhere else than on the thread of the screen. */
export interface SolverClient {
  /**
   * Solves a plan; an earlier run that has not ended is ended, and its promise stays open for ever. `completed` is
   * handed the same result once more when everything in it is worked out.
   */
  solve(plan: Plan, progress: Progress, completed: (result: Result) => void): Promise<Result>;
  /** Low and high of a solved set over the corners that govern; null when another plan was solved meanwhile. */
  spread(
    plan: Plan,
    set: SetResult,
    progress: (done: number, of: number) => void,
  ): Promise<SpreadResult | null>;
  /** The reactions of a result as the text of a CSV file. */
  csv(plan: Plan, result: Result): Promise<string>;
}

/** A client with a worker of its own, started with the first plan. A run is ended by ending its worker. */
export function workerClient(): SolverClient {
  let worker: Worker | null = null;
  let remote: Remote<Solver> | null = null;
  let solving = false;
  const started = (fail: (error: Error) => void): Remote<Solver> => {
    if (worker === null || remote === null) {
      worker = new Worker(new URL("../worker.ts", import.meta.url), { type: "module", name: "solver" });
      remote = wrap<Solver>(worker);
    }
    worker.onerror = (event) =>
      fail(
        new Error(`The solver's thread did not start or broke off: ${event.message || "no reason given"}.`),
      );
    return remote;
  };
  return {
    solve: (plan, progress, completed) =>
      new Promise((resolve, reject) => {
        if (solving) {
          worker?.terminate();
          worker = null;
        }
        solving = true;
        const whole = (result: Result) => {
          solving = false;
          completed(result);
        };
        const failed = (error: Error) => {
          solving = false;
          reject(error);
        };
        started(reject).solve(plan, proxy(progress), proxy(whole)).then(resolve, failed);
      }),
    spread: (plan, { setId, steps, step, progress, count, supports }, told) =>
      new Promise((resolve, reject) => {
        const set = { setId, steps, step, progress, count, supports };
        started(reject).spread(plan, set, proxy(told)).then(resolve, reject);
      }),
    csv: (plan, result) =>
      new Promise((resolve, reject) => started(reject).csv(plan, result).then(resolve, reject)),
  };
}
