// The root of the solver's thread: what the page may ask of it.
import { expose, transfer } from "comlink";
import { version } from "../package.json";
import {
  type Answer,
  allCorners,
  bucklingOver,
  type Completed,
  type Corner,
  chosenCorners,
  completeInTurn,
  type Finding,
  noRuns,
  type Result,
  type SetBuckling,
  type SetResult,
  type SolvedSet,
  type SpreadResult,
  type StagesAsked,
  solveInTurn,
  spreadOver,
} from "./checks/index.ts";
import type { Plan } from "./plan/index.ts";
import { reactionsCsv, sections, type Table } from "./report/index.ts";
import { prepareContext, type SetContext } from "./sequence/index.ts";

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

/** What follows while a plan is worked out, and who is told of it. */
interface Following {
  /** The set and the index of the step that are answered first. */
  first: { set: string; step: number } | null;
  answered: (answer: Answer) => void;
  progress: Told;
  completed: (result: Result) => void;
}

/** The last runs, of which an edit leaves most steps as they were. */
const kept = noRuns();

/** A prepared context of a set; the frame of its last run is used again where it is the same. */
const contextOf = (plan: Plan, setId: string): SetContext =>
  prepareContext(plan, setId, kept.sets.find(({ ctx }) => ctx.set.id === setId)?.ctx);

/** So long a piece of work may hold up questions that wait, where it can be divided, ms. */
const LONGEST = 8;

/** Lets questions that wait be answered first. A timer would wait for 4 ms each time. */
const rest = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Does work that rests, and lets other questions in where it does; null when another plan has come meanwhile. */
async function inTurn<T, R>(work: Generator<T, R>, each: (part: T) => void): Promise<R | null> {
  const mine = plans;
  let since = performance.now();
  for (let next = work.next(); ; next = work.next()) {
    if (next.done) return next.value;
    each(next.value);
    if (performance.now() - since < LONGEST) continue;
    await rest();
    since = performance.now();
    if (mine !== plans) return null;
  }
}

/** Completes a result and hands it over, unless another plan has come. */
async function completeLater(plan: Plan, result: Result, told: Following): Promise<void> {
  const contexts = new Map(plan.sets.map(({ id }) => [id, contextOf(plan, id)]));
  let last = "";
  const each = ({ words, set, done, of }: Completed) => {
    const now = `${set} ${words} ${done}`;
    if (now !== last) told.progress(plan.sets.length > 1 ? `set ${set}, ${words}` : words, done, of);
    last = now;
  };
  const backed = await inTurn(completeInTurn(plan, result, { contexts, waysBack: false }), each);
  const whole = backed && (await inTurn(completeInTurn(plan, backed, { contexts }), each));
  if (whole !== null) told.completed(transfer(whole, buffersOf(whole)));
}

/** Solves a plan in turn; null when another plan has come meanwhile. */
async function solve(plan: Plan, progress: Told, following?: Following): Promise<Result | null> {
  plans++;
  const mine = plans;
  // The plan that is to be solved may have been overtaken while it waited.
  await rest();
  if (mine !== plans) return null;
  const onStep = (set: string, index: number, of: number): boolean => {
    progress(plan.sets.length > 1 ? `solving set ${set}: step` : "solving step", index + 1, of);
    return true;
  };
  const first = following?.first ?? undefined;
  const result = await inTurn(solveInTurn(plan, { kept, first, onStep }), (answer) => {
    if (answer !== null) following?.answered(answer);
  });
  if (result === null) return null;
  if (following !== undefined) void completeLater(plan, structuredClone(result), following);
  return transfer(result, buffersOf(result));
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
  const ctx = contextOf(plan, set.setId);
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
  const search = bucklingOver(contextOf(plan, set.setId), set, asked);
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
  const work = section.begin(contextOf(plan, set.setId), set);
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
   * Solves a plan; the arrays of the result change hands; null when another plan has come meanwhile. `progress` is told words
   * and how much is done. `answered` gets the step asked for first, and the statics of every set, before all checks are
   * made. What takes longer, which poses are backed and the ways back, follows in a whole Result handed to `completed`.
   */
  solve: (
    plan: Plan,
    progress: Told,
    first: Following["first"] = null,
    answered?: Following["answered"],
    completing?: Told,
    completed?: Following["completed"],
  ): Promise<Result | null> =>
    answered === undefined || completing === undefined || completed === undefined
      ? solve(plan, progress)
      : solve(plan, progress, { first, answered, progress: completing, completed }),

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
