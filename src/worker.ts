// The root of the solver's thread: what the page may ask of it.
import { expose } from "comlink";
import { version } from "../package.json";

/** The questions that the page may ask; each answer comes back as a promise. */
export const solver = {
  /** Version of the solver, written into every result. */
  version: (): string => version,
};

export type Solver = typeof solver;

expose(solver);
