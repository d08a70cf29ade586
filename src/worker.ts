// The root of the solver's thread: what the page may ask of it.
import { expose, transfer } from "comlink";
import { version } from "../package.json";
import {
  allCorners,
  bucklingOver,
  type Corner,
  chosenCorners,
  completeResult,
  type Finding,
  type Result,
  type SetBuckling,
  type SetResult,
  type SolvedSet,
  type SpreadResult,
  type StagesAsked,
  solvePlan,
  spreadOver,
} from "./checks/index.ts";
import type { Plan } from "./plan/index.ts";
import { reactionsCsv, sections, type Table } from "./report/index.ts";
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

/** Told what is being worked out, and how much of it is done. */
type Told = (words: string, done: number, of: number) => void;

/** Completes a result in two pieces of work, between which other questions are answered, and hands it over. */
function completeLater(plan: Plan, result: Result, told: Told, completed: (result: Result) => void): void {
  const onStep = (words: string, set: string, done: number, of: number): boolean => {
    told(plan.sets.length > 1 ? `set ${set}, ${words}` : words, done, of);
    return true;
  };
  setTimeout(() => {
    const backed = completeResult(plan, result, { waysBack: false, onStep }) ?? result;
    setTimeout(() => {
      const whole = completeResult(plan, backed, { onStep }) ?? backed;
      completed(transfer(whole, buffersOf(whole)));
    });
  });
}

/** Counts the plans solved, so that work for an earlier one is given up. */
let plans = 0;
/** Count the spreads, and the searches for buckling, told to stop. */
let stopped = 0;
let stoppedBuckling = 0;
let stoppedTables = 0;

/** Those that govern come first, so that a run over all that is broken off covers no less. */
function cornersOf(asked: "chosen" | "all", chosen: Corner[], all: Corner[]): Corner[] {
  if (asked === "chosen") return chosen;
  const first = new Set(chosen.map(({ name }) => name));
  return [...chosen, ...all.filter(({ name }) => !first.has(name))];
}

/** Low and high of a set with what they cover. */
interface Spread {
  spread: SpreadResult;
  asked: "chosen" | "all";
  of: number;
  all: number;
}

/** Runs the corners of a set one at a time, between which other questions are answered. */
async function spreadOf(
  plan: Plan,
  set: SolvedSet,
  asked: "chosen" | "all",
  progress: (done: number, of: number) => void,
): Promise<Spread | null> {
  const [mine, before] = [plans, stopped];
  const ctx = prepareContext(plan, set.setId);
  const [chosen, every] = [chosenCorners(plan, ctx.set), allCorners(plan, ctx.set)];
  const all = cornersOf("all", chosen, every).length;
  const spreading = spreadOver(ctx, set, cornersOf(asked, chosen, every));
  const { of } = spreading;
  while (before === stopped && spreading.next()) {
    progress(spreading.done(), of);
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== plans) return null;
  }
  const spread = spreading.result();
  const arrays = [spread.low, spread.high, spread.lowCorner, spread.highCorner];
  for (const strip of spread.strips) arrays.push(strip.low, strip.high, strip.highCorner);
  const buffers = arrays.flatMap(({ buffer }) => (buffer instanceof ArrayBuffer ? [buffer] : []));
  return transfer({ spread, asked, of, all }, buffers);
}

/** Buckles the stages of a set one at a time, between which other questions are answered. */
async function bucklingOf(
  plan: Plan,
  set: Pick<SetResult, "setId" | "steps" | "step" | "progress" | "count" | "supports" | "forces">,
  asked: StagesAsked,
  progress: (done: number, of: number) => void,
): Promise<SetBuckling | null> {
  const [mine, before] = [plans, stoppedBuckling];
  const search = bucklingOver(prepareContext(plan, set.setId), set, asked);
  while (before === stoppedBuckling && search.next()) {
    progress(search.done(), search.of);
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== plans) return null;
  }
  return search.result();
}

/** Tables on one matter, with what they found and how much of them is there. */
interface Tables {
  tables: Table[];
  findings: Finding[];
  done: number;
  of: number;
}

/** Works out the tables of a section piece by piece, between which other questions are answered. */
async function tablesOf(
  plan: Plan,
  set: SetResult,
  name: string,
  progress: (done: number, of: number) => void,
): Promise<Tables | null> {
  const [mine, before] = [plans, stoppedTables];
  const section = sections.find((one) => one.name === name);
  if (section === undefined) throw new Error(`there is no section '${name}'`);
  const work = section.begin(prepareContext(plan, set.setId), set);
  while (before === stoppedTables && work.next()) {
    progress(work.done(), work.of);
    await new Promise((resolve) => setTimeout(resolve));
    if (mine !== plans) return null;
  }
  return { tables: work.tables(), findings: work.findings(), done: work.done(), of: work.of };
}

/** The questions that the page may ask; each answer comes back as a promise. */
export const solver = {
  /** Version of the solver, written into every result. */
  version: (): string => version,

  /**
   * Solves a plan; the arrays of the result change hands. `progress` is told words and how much is done. What takes
   * longer, which poses are backed and the ways back, is told to `completing` and follows in a whole Result of its own,
   * handed to `completed`.
   */
  solve: (plan: Plan, progress: Told, completing?: Told, completed?: (result: Result) => void): Result => {
    plans++;
    const onStep = (set: string, index: number, of: number): boolean => {
      progress(plan.sets.length > 1 ? `solving set ${set}: step` : "solving step", index + 1, of);
      return true;
    };
    const result = solvePlan(plan, { onStep });
    if (completing !== undefined && completed !== undefined)
      completeLater(plan, structuredClone(result), completing, completed);
    return transfer(result, buffersOf(result));
  },

  /**
   * Low and high of a solved set over the corners that govern, or over all; over those run so far when it was told to
   * stop; null when another plan was solved meanwhile.
   */
  spread: spreadOf,

  /**
   * At how many times its loads a solved set buckles, stage by stage; those looked at so far when it was told to stop;
   * null when another plan was solved meanwhile.
   */
  buckling: bucklingOf,

  /** Tables of a section for a solved set; those there are when it was told to stop; null when another plan was solved. */
  tables: tablesOf,

  /** Ends the spread under way after the corner at hand. */
  stopSpread: (): void => {
    stopped++;
  },

  /** Ends the search for buckling under way after the stage at hand. */
  stopBuckling: (): void => {
    stoppedBuckling++;
  },

  /** Ends the tables under way after the piece at hand. */
  stopTables: (): void => {
    stoppedTables++;
  },

  /** The reactions of a result as CSV; every stored pose is solved once more for it. */
  csv: (plan: Plan, result: Result): string => reactionsCsv(result, plan),
};

export type Solver = typeof solver;

expose(solver);
