// The command line's root: reads words and files, hands them to the core, writes what comes back. A command is one entry in a list.
import { readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { version } from "../package.json";
import {
  allCorners,
  chosenCorners,
  proposeSequence,
  type Result,
  runBuckling,
  runSpread,
  type SetResult,
  solvePlan,
  withBuckling,
  withSpread,
} from "./checks/index.ts";
import { readState, solveState } from "./mechanics/index.ts";
import {
  largestFile,
  openItems,
  type Plan,
  readPlan,
  readStepPlace,
  type StepPlace,
  sentence,
  writePlan,
} from "./plan/index.ts";
import {
  type Contexts,
  contextsOf,
  coverageText,
  csvMetadata,
  diagramCsv,
  envelopeCsv,
  metadataNameOf,
  partOf,
  proposalText,
  reactionsCsv,
  readWords,
  resultJson,
  sectionsNamed,
  solveText,
  stateJson,
  stateText,
  tracedText,
  usageText,
  withoutNumbers,
  withSections,
} from "./report/index.ts";
import { type Pose, poseAt } from "./sequence/index.ts";

/** Exit codes; a fault of the program itself has one of its own, so that it is never taken for an answer. */
const exit = { solved: 0, stop: 1, badInput: 2, noEquilibrium: 3, fault: 70 } as const;

/** What a command leaves: text for both streams and files, all of it made before the first of it is written. */
interface Outcome {
  code: number;
  out?: string;
  err?: string;
  files?: { path: string; text: string }[];
}

/** Bad input: its sentences go to the error stream, and nothing is written. */
class BadInput extends Error {}

interface Command {
  readonly usage: string;
  readonly summary: string;
  /** Names of the options, each with one value. */
  readonly options: readonly string[];
  /** How many words stand beside the options. */
  readonly words: number;
  readonly run: (words: readonly string[], options: ReadonlyMap<string, string>) => Outcome;
}

const commands: Readonly<Record<string, Command>> = {
  state: {
    usage: "state STATE.json [--json FILE]",
    summary: "solves one physical state and prints its reactions",
    options: ["--json"],
    words: 1,
    run: runState,
  },
  solve: {
    usage:
      "solve PLAN.json [--csv FILE] [--json FILE] [--set ID] [--spread chosen|all] [--buckling rests|stages] [--also NAMES] [--diagrams FILE] [--trace CHECK:SUBJECT] [--at STEP:PROGRESS [--state FILE]]",
    summary:
      "runs every step of a plan: who carries what, what is unbacked, what has no way back, the findings",
    options: [
      "--csv",
      "--json",
      "--set",
      "--spread",
      "--buckling",
      "--also",
      "--diagrams",
      "--trace",
      "--at",
      "--state",
    ],
    words: 1,
    run: runSolve,
  },
  check: {
    usage: "check PLAN.json",
    summary: "reads a plan and prints every error in it, or what is still open",
    options: [],
    words: 1,
    run: runCheck,
  },
  propose: {
    usage: "propose PLAN.json [--set ID] [--out FILE]",
    summary: "searches a first sequence for a set: positions, picks and steps of the lowest worst use",
    options: ["--set", "--out"],
    words: 1,
    run: runPropose,
  },
  coverage: {
    usage: "coverage",
    summary:
      "prints what is covered of all that an erection plan must answer: computed, shown, asked, or not and why",
    options: [],
    words: 0,
    run: () => ({ code: exit.solved, out: coverageText() }),
  },
  version: {
    usage: "version",
    summary: "prints the version",
    options: [],
    words: 0,
    run: () => ({ code: exit.solved, out: `${version}\n` }),
  },
};

function runState(words: readonly string[], options: ReadonlyMap<string, string>): Outcome {
  const read = readState(textOf(words[0]));
  if (!read.ok) throw new BadInput(read.errors.map(sentence).join("\n"));
  const answer = solveState(read.state);
  const json = options.get("--json");
  const files = json === undefined ? [] : [{ path: json, text: stateJson(answer, version) }];
  return {
    code: answer.status === "solved" ? exit.solved : exit.noEquilibrium,
    out: stateText(answer),
    files,
  };
}

function runCheck(words: readonly string[]): Outcome {
  const plan = planOf(words[0]);
  const steps = plan.sets.reduce((sum, set) => sum + set.steps.length, 0);
  const open = openItems(plan).map((item) => `open: ${item.path}: ${item.what}`);
  const head = `the plan can be read: ${plan.sets.length} sets, ${steps} steps, ${open.length} open items`;
  return { code: exit.solved, out: `${[head, ...open].join("\n")}\n` };
}

function runSolve(words: readonly string[], options: ReadonlyMap<string, string>): Outcome {
  const plan = planOf(words[0]);
  const only = options.get("--set");
  if (only !== undefined && !plan.sets.some((set) => set.id === only)) {
    const known = plan.sets.map((set) => set.id).join(", ");
    throw new BadInput(`--set: found '${only}'; allowed: the plan's sets, ${known}. Choose one of them.`);
  }
  const at = atOf(plan, only, options);
  const asked = { backed: true, waysBack: true, ...(only === undefined ? {} : { sets: [only] }) };
  const best = partOf(solvePlan(plan, asked), only);
  const contexts = contextsOf(best, plan);
  const which = options.get("--spread");
  const spreadOver = which === undefined ? best : spreadOut(plan, best, contexts, which);
  const stages = options.get("--buckling");
  const stood = stages === undefined ? spreadOver : buckled(spreadOver, contexts, stages);
  const also = sectionsNamed(options.get("--also") ?? "");
  if (options.has("--also") && typeof also === "string") throw new BadInput(`--also: ${also}`);
  const { result, lines } = withSections(stood, contexts, typeof also === "string" ? [] : also);
  const spread = which !== undefined;
  const files: { path: string; text: string }[] = [];
  const csv = options.get("--csv");
  if (csv !== undefined) {
    files.push({ path: csv, text: reactionsCsv(result, plan, contexts, spread) });
    files.push({ path: metadataNameOf(csv), text: csvMetadata(result, plan, basename(csv), spread) });
  }
  const json = options.get("--json");
  if (json !== undefined) files.push({ path: json, text: resultJson(result, plan, contexts) });
  const traced = tracedText(plan, result, contexts, options.get("--trace"), at);
  if ("error" in traced) throw new BadInput(`--trace: ${traced.error}`);
  const sections = lines.length === 0 ? "" : `${lines.join("\n")}\n`;
  const out = `${solveText(result, plan, contexts)}${sections}${traced.text}`;
  const fails = !result.complete || result.sets.some((set) => withoutNumbers(set).length > 0);
  const code = fails ? exit.noEquilibrium : result.worst === "stop" ? exit.stop : exit.solved;
  const diagrams = options.get("--diagrams");
  if (at === null) {
    if (diagrams !== undefined) files.push({ path: diagrams, text: envelopeCsv(result, plan) });
    return { code, out, files };
  }
  const pose = poseOf(result, contexts, at);
  if (typeof pose === "string") return { code: exit.noEquilibrium, out, err: `${pose}\n`, files };
  const state = options.get("--state");
  if (state !== undefined) files.push({ path: state, text: `${JSON.stringify(pose.state, null, 2)}\n` });
  const step = plan.sets.find((set) => set.id === at.set)?.steps[at.step].id ?? "";
  if (diagrams !== undefined)
    files.push({ path: diagrams, text: diagramCsv(result, plan, at.set, step, pose) });
  return { code, out, files };
}

function runPropose(words: readonly string[], options: ReadonlyMap<string, string>): Outcome {
  const plan = planOf(words[0]);
  const only = options.get("--set") ?? (plan.sets.length === 1 ? plan.sets[0].id : undefined);
  if (only === undefined || !plan.sets.some((set) => set.id === only)) {
    const known = plan.sets.map((set) => set.id).join(", ") || "none";
    throw new BadInput(
      `--set: found ${only === undefined ? "none" : `'${only}'`}; allowed: the plan's sets, ${known}. Choose one of them.`,
    );
  }
  const proposal = proposeSequence(plan, only);
  const file = options.get("--out");
  const files =
    file === undefined || proposal.plan === null ? [] : [{ path: file, text: writePlan(proposal.plan) }];
  const code = !proposal.solves ? exit.noEquilibrium : proposal.stops.length > 0 ? exit.stop : exit.solved;
  return { code, out: proposalText(proposal, only), files };
}

/** The result with the buckling of every set. */
function buckled(result: Result, contexts: Contexts, asked: string): Result {
  if (asked !== "rests" && asked !== "stages")
    throw new BadInput(`--buckling: found '${asked}'; allowed: rests or stages. Choose one of them.`);
  return result.sets.reduce((whole, set) => {
    const ctx = contexts.get(set.setId);
    const found = ctx === undefined ? null : runBuckling(ctx, set, asked);
    return found === null ? whole : withBuckling(whole, set.setId, found);
  }, result);
}

/** The result with the spread of every set, over the chosen corners or all of them. */
function spreadOut(plan: Plan, result: Result, contexts: Contexts, which: string): Result {
  const corners = which === "chosen" ? chosenCorners : which === "all" ? allCorners : null;
  if (corners === null)
    throw new BadInput(`--spread: found '${which}'; allowed: chosen or all. Choose one of them.`);
  return result.sets.reduce((whole, set) => {
    const ctx = contexts.get(set.setId);
    return ctx === undefined ? whole : withSpread(whole, runSpread(ctx, set, corners(plan, ctx.set)));
  }, result);
}

/** A pose asked for by `--at`. */
interface At extends StepPlace {
  set: string;
}

/** Reads `--at STEP:PROGRESS`, which goes with what it is asked for; null when it does not stand there. */
function atOf(plan: Plan, only: string | undefined, options: ReadonlyMap<string, string>): At | null {
  const at = options.get("--at");
  if (at === undefined && options.has("--state"))
    throw new BadInput("--state FILE: found no --at STEP:PROGRESS; allowed: both or none. Add it.");
  if (at === undefined) return null;
  if (!["--state", "--diagrams", "--trace"].some((option) => options.has(option)))
    throw new BadInput(
      "--at: found neither --state FILE nor --diagrams FILE nor --trace CHECK:SUBJECT; allowed: with one of them. Add what is wanted of that pose.",
    );
  if (only === undefined && plan.sets.length > 1)
    throw new BadInput(
      `--at: found no --set, and the plan has ${plan.sets.length} sets; allowed: one set. Add --set ID.`,
    );
  const set = plan.sets.find((one) => only === undefined || one.id === only);
  if (set === undefined)
    throw new BadInput("--at: found a plan without sets; allowed: a plan with one. Add a set.");
  const place = readStepPlace(at, set);
  if (typeof place === "string") throw new BadInput(`--at: ${place}`);
  return { set: set.id, ...place };
}

/** The pose of a place, or why there is none. */
function poseOf(result: Result, contexts: Contexts, at: At): Pose | string {
  const set = result.sets.find((one) => one.setId === at.set) as SetResult;
  const ctx = contexts.get(at.set);
  const step = set.steps[at.step];
  if (ctx === undefined || (!step.solved && step.count === 0))
    return `step ${at.step + 1} (${step.step.id}) is not solved: ${step.motion || "a step before it has no equilibrium"}`;
  const pose = poseAt(ctx, step, at.progress);
  return pose.solution.status === "solved"
    ? pose
    : `step ${at.step + 1} (${step.step.id}) at ${at.progress}: no equilibrium, ${pose.solution.motion}`;
}

/** The text of a file. */
function textOf(path: string): string {
  const bad = (found: string, allowed: string, mend: string) =>
    new BadInput(`${path}: found ${found}; allowed: ${allowed}. ${mend}`);
  const info = statSync(path, { throwIfNoEntry: false });
  if (info === undefined) throw bad("no such file", "a file that exists", "Check the path.");
  if (!info.isFile()) throw bad("something that is no file", "a JSON file", "Check the path.");
  if (info.size > largestFile) throw bad(`${(info.size / 1e6).toFixed(1)} MB`, "at most 50 MB", "Split it.");
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(path));
  } catch (error) {
    const why = error instanceof TypeError ? "bytes that are no UTF-8 text" : messageOf(error);
    throw bad(why, "a readable JSON file in UTF-8", "Save it again as UTF-8.");
  }
}

function planOf(path: string): Plan {
  const read = readPlan(textOf(path));
  if (!read.ok) throw new BadInput(read.errors.map(sentence).join("\n"));
  return read.plan;
}

/** The place of a path with links followed, also of a file that is still to be made. */
function placeOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    try {
      return join(realpathSync(dirname(resolve(path))), basename(path));
    } catch {
      return resolve(path);
    }
  }
}

/** Writes all files or none: each beside its place first, and put there when all of them are written. */
function writeAll(files: readonly { path: string; text: string }[], inputs: readonly string[]): void {
  const taken = new Set(inputs.map(placeOf));
  for (const { path } of files) {
    const place = placeOf(path);
    if (taken.has(place))
      throw new BadInput(
        `${path}: found a file that is read or written here already; allowed: another. Choose one.`,
      );
    if (statSync(path, { throwIfNoEntry: false })?.isDirectory())
      throw new BadInput(`${path}: found a folder; allowed: the name of a file. Add one.`);
    taken.add(place);
  }
  const made: string[] = [];
  try {
    for (const { path, text } of files) {
      const aside = `${path}.${process.pid}.part`;
      made.push(aside);
      writeFileSync(aside, text);
    }
    files.forEach(({ path }, i) => {
      renameSync(made[i], path);
    });
  } catch (error) {
    for (const aside of made) rmSync(aside, { force: true });
    throw new BadInput(
      `output: found ${messageOf(error)}; allowed: a place that can be written to. Choose one.`,
    );
  }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Runs one command line and gives its exit code. */
function main(words: readonly string[]): number {
  const [name, ...rest] = words;
  if (name === undefined || words.includes("--help") || name === "help") {
    process.stdout.write(usageText(Object.values(commands), version));
    return exit.solved;
  }
  try {
    const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
    if (command === undefined)
      throw new BadInput(
        `found '${name}'; allowed commands: ${Object.keys(commands).join(", ")}. --help tells more.`,
      );
    const read = readWords(name, command, rest);
    if (typeof read === "string") throw new BadInput(read);
    const { plain, options } = read;
    const outcome = command.run(plain, options);
    writeAll(outcome.files ?? [], plain);
    process.stdout.write(outcome.out ?? "");
    process.stderr.write(outcome.err ?? "");
    return outcome.code;
  } catch (error) {
    if (error instanceof BadInput) {
      process.stderr.write(`${error.message}\n`);
      return exit.badInput;
    }
    process.stderr.write(
      `a fault of the program, no answer: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    return exit.fault;
  }
}

process.exitCode = main(process.argv.slice(2));
