// The root of a second thread, started only for a proposal: a search that takes seconds holds up no answer of the solver.
import { expose } from "comlink";
import { type ProposedSets, proposedSets } from "./checks/index.ts";
import type { Plan } from "./plan/index.ts";

/** The one question that the page may ask; it is ended by ending its thread. */
export const proposer = {
  /** Proposes positions and steps for the named sets; `progress` is told which set, of how many, and how far its search is. */
  propose: (
    plan: Plan,
    sets: readonly string[],
    progress: (set: number, sets: number, done: number, of: number) => void,
  ): ProposedSets =>
    proposedSets(plan, sets, (set, of, done, budget) => {
      progress(set, of, done, budget);
      return true;
    }),
};

export type Proposer = typeof proposer;

expose(proposer);
