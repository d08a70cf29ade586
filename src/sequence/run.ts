// The run of one set: every step searched, sampled, its events found; history handed on.

import type { Step } from "../plan/index.ts";
import { findContacts } from "./contacts.ts";
import { startSituation } from "./context.ts";
import { solvePose, whyUnsolved } from "./pose.ts";
import { crossing, peak } from "./search.ts";
import { motionOf } from "./steps/index.ts";
import { happening } from "./steps/kind.ts";
import {
  MOTIONS,
  type Pose,
  type SetContext,
  type SetRun,
  type Situation,
  type StepRun,
  type Watch,
} from "./types.ts";

/** Equal parts that every step is looked at in. */
const PARTS = 16;
const COARSE_PARTS = 4;
const COARSE_MARKS = 8;
/** Events are found to this part of the step. */
const EXACT = 1e-9;
/** Straight lines between stored poses may err by this share of the weight, as looked at in the middle of each. */
export const STRAIGHT = 0.005;
const MOST_POSES = 200;

export interface RunOptions {
  /** Called before every step with its index and how many there are; returning false ends the run. */
  onStep?: (index: number, of: number) => boolean;
  /** Every stored pose, in order, as it is stored. */
  onPose?: (pose: Pose) => void;
  /** Begins in this situation instead of where the set stands at its start. */
  from?: Situation;
  /** For searches: only start, end, quarters and some marks of every step, no events and no poses between. */
  coarse?: boolean;
}

/** Solves the pose of a step at a progress, from the stored start and ends of that step: never interpolated. */
export function poseAt(ctx: SetContext, run: StepRun, progress: number, near: Pose | null = null): Pose {
  return solvePose(ctx, situationAt(ctx, run, progress), run.index, progress, near);
}

/** The situation of a step at a progress, from the stored start and ends of that step; nothing is solved. */
export function situationAt(ctx: SetContext, run: StepRun, progress: number): Situation {
  if (progress <= 0) return run.start;
  return motionOf(run.step.do).at(ctx, run.step, run.start, run.ends, Math.min(1, progress));
}

/** A stored pose with the words of what happens there. */
export interface Sample {
  pose: Pose;
  words: string[];
}

/** A step that was run: all that the steps after it and the run of the set need of it. */
export interface SolvedStep {
  run: StepRun;
  samples: readonly Sample[];
  /** What it leaves to the next step; its start where it was not solved. */
  end: Situation;
}

/** Runs all steps of a set. A step without equilibrium ends the run: the steps after it are marked not solved. */
export function runSet(ctx: SetContext, watches: Watch[], options: RunOptions = {}): SetRun {
  return runSteps(ctx, options.from ?? startSituation(ctx), ctx.set.steps, watches, options);
}

/** Runs steps of a set from a situation, as its operation or as a way back; step indices count within the list. */
export function runSteps(
  ctx: SetContext,
  start: Situation,
  list: readonly Step[],
  watches: Watch[],
  options: RunOptions = {},
): SetRun {
  const solved: SolvedStep[] = [];
  for (const index of list.keys()) {
    if (options.onStep && !options.onStep(index, list.length)) break;
    const one = solveStep(ctx, list, solved, start, watches, options.coarse === true);
    solved.push(one);
    if (options.onPose) for (const s of one.samples) options.onPose(s.pose);
  }
  return runOf(ctx, solved);
}

/** Runs the step of a list that comes after those solved already, which began in the situation `start`. Nothing is changed. */
export function solveStep(
  ctx: SetContext,
  list: readonly Step[],
  before: readonly SolvedStep[],
  start: Situation,
  watches: Watch[],
  coarse = false,
): SolvedStep {
  const index = before.length;
  const last = before[index - 1];
  const from = last?.end ?? start;
  const stopped = last === undefined || last.run.solved ? "" : last.run.motion;
  const run: StepRun = {
    index,
    step: list[index],
    solved: stopped === "",
    start: from,
    ends: [],
    happenings: [],
    first: last === undefined ? 0 : last.run.first + last.run.count,
    count: 0,
    motion: stopped,
  };
  if (stopped !== "") return { run, samples: [], end: from };
  const outcome = runStep(ctx, run, watches, coarse);
  run.count = outcome.samples.length;
  if (outcome.failed === "") return { run, samples: outcome.samples, end: outcome.end };
  run.solved = false;
  run.motion = outcome.failed;
  return { run, samples: outcome.samples, end: from };
}

/** The run of a set made of its solved steps. */
export function runOf(ctx: SetContext, solved: readonly SolvedStep[]): SetRun {
  return collect(
    ctx,
    solved.map(({ run }) => run),
    solved.flatMap(({ samples }) => samples),
  );
}

function runStep(
  ctx: SetContext,
  run: StepRun,
  watches: Watch[],
  coarse: boolean,
): { samples: Sample[]; end: Situation; failed: string } {
  const motion = motionOf(run.step.do);
  let near: Pose | null = null;
  const probe = (s: Situation): Pose => {
    near = solvePose(ctx, s, run.index, 0, near);
    return near;
  };
  const start = withBrakes(run.step, run.start);
  run.start = start;
  const first = solvePose(ctx, start, run.index, 0);
  if (first.solution.status !== "solved") return failedAt(run, first, []);
  const found = motion.find(ctx, run.step, start, probe);
  run.ends = found.ends;
  run.happenings.push(...found.happenings);
  if (found.happenings.some((h) => h.kind === "no equilibrium"))
    return { samples: [{ pose: first, words: ["start"] }], end: start, failed: found.happenings[0].words };

  const cache = new Map<number, Pose>([[0, first]]);
  let last: Pose = first;
  const at = (progress: number): Pose => {
    const known = cache.get(progress);
    if (known) return known;
    last = poseAt(ctx, run, progress, last);
    cache.set(progress, last);
    return last;
  };
  const words = new Map<number, string[]>();
  const say = (progress: number, what: string) => {
    const list = words.get(progress) ?? [];
    if (!list.includes(what)) list.push(what);
    words.set(progress, list);
  };
  say(0, "start");
  const every = motion.marks?.(run.step, run.ends) ?? [];
  const marks = coarse ? thinned(every) : every;
  const parts = coarse ? COARSE_PARTS : PARTS;
  const grid = [
    ...new Set([0, 1, ...marks, ...Array.from({ length: parts - 1 }, (_, i) => (i + 1) / parts)]),
  ].sort((a, b) => a - b);
  // Kinds that move nothing until their end are one jump: their start and end say all.
  const still = isStill(run.step) || (standsStill(run.step) && run.ends.length === 0);
  const places = still ? [0, 1] : grid;
  const looks = still || coarse ? [] : (motion.looks?.(ctx, run.step, start, run.ends) ?? []);
  const searched = [...new Set([...places, ...looks])].sort((a, b) => a - b);
  for (const p of searched) {
    const pose = at(p);
    if (pose.solution.status !== "solved") {
      const kept = [...cache.keys()]
        .filter((x) => cache.get(x)?.solution.status === "solved")
        .sort((a, b) => a - b);
      const before = Math.max(0, ...kept.filter((x) => x < p));
      const edge = crossing((x) => (at(x).solution.status === "solved" ? -1 : 1), before, p, -1, 1, EXACT);
      const final = at(edge);
      return failedAt(
        run,
        final,
        kept.filter((x) => x < edge).map((x) => ({ pose: at(x), words: words.get(x) ?? [] })),
      );
    }
  }
  if (!still && !coarse) {
    findContacts(ctx, searched, EXACT, at, say);
    findCrossings(
      watches,
      [...cache.keys()].sort((a, b) => a - b),
      at,
      say,
    );
    findPeaks(ctx, grid, new Set([...words.keys(), ...marks, ...looks]), at, say);
  }
  say(1, "end");
  const keep = new Set<number>(places);
  for (const p of words.keys()) keep.add(p);
  // On a path of many corners only those are kept that show something beyond its limit.
  const all = keep.size + looks.length <= MOST_POSES;
  for (const p of looks) if (all || watches.some((w) => w.margin(at(p)) < 0)) keep.add(p);
  if (!still && !coarse) straighten(ctx, keep, at);
  const ordered = [...keep].sort((a, b) => a - b);
  const samples = ordered.map((p) => ({ pose: at(p), words: words.get(p) ?? [] }));
  // An event pose that does not settle is no less a failure than a pose of the grid.
  const lost = samples.findIndex((s) => s.pose.solution.status !== "solved");
  if (lost >= 0) return failedAt(run, samples[lost].pose, samples.slice(0, lost));
  const endPose = at(1);
  let end = endPose.situation;
  if (motion.settle) end = motion.settle(ctx, end, endPose);
  return { samples, end, failed: "" };
}

/** The situation in which a step begins: its own brakes on, those before it where it says nothing. */
export function withBrakes({ brakes }: Step, s: Situation): Situation {
  return brakes ? { ...s, trains: s.trains.map((t) => ({ ...t, braked: brakes.includes(t.id) })) } : s;
}

/** At most about COARSE_MARKS of a list: the first four, the last one, and some between. */
function thinned(marks: number[]): number[] {
  const stride = Math.ceil(marks.length / COARSE_MARKS);
  return marks.filter((_, i) => i < 4 || i === marks.length - 1 || i % stride === 0);
}

function isStill(step: Step): boolean {
  return ["hook up", "lash", "unlash", "brace"].includes(step.do);
}

/** Kinds that leave no number behind when nothing acts in them. */
function standsStill(step: Step): boolean {
  return step.do === "hold" || step.do === "rest";
}

function failedAt(run: StepRun, pose: Pose, samples: Sample[]) {
  const why = whyUnsolved(pose.solution);
  run.happenings.push(happening("no equilibrium", run.step.id, why, { progress: pose.progress }));
  return { samples, end: pose.situation, failed: why };
}

/** Limits crossed between neighbouring solved places. */
function findCrossings(
  watches: Watch[],
  places: number[],
  at: (p: number) => Pose,
  say: (p: number, what: string) => void,
): void {
  for (const w of watches) {
    let before = w.margin(at(places[0]));
    for (let i = 1; i < places.length; i++) {
      const after = w.margin(at(places[i]));
      if (!Number.isNaN(before) && !Number.isNaN(after) && before >= 0 !== after >= 0) {
        const sign = after >= 0 ? 1 : -1;
        const g = (p: number) => sign * w.margin(at(p));
        const p =
          places[i] - places[i - 1] <= EXACT
            ? places[i]
            : crossing(g, places[i - 1], places[i], sign * before, sign * after, EXACT);
        say(p, `${w.check} of ${w.subject} ${sign > 0 ? "comes back within" : "passes"} its limit`);
        // The pose just before, in which it is still beyond: it was so until here, and not until some pose before.
        if (sign > 0) say(Math.max(places[i - 1], p - 2 * EXACT), "");
      }
      before = after;
    }
  }
}

/** Interior peaks of the band forces that stand out by more than the straightness allowed. */
function findPeaks(
  ctx: SetContext,
  grid: number[],
  kinks: Set<number>,
  at: (p: number) => Pose,
  say: (p: number, what: string) => void,
): void {
  const corners = [...kinks].sort((a, b) => a - b);
  const least = STRAIGHT * ctx.model.mass * ctx.gravity;
  ctx.supports.forEach((support, j) => {
    if (!support.band) return;
    for (let i = 1; i < grid.length - 1; i++) {
      const [a, b, c] = [at(grid[i - 1]).forces[j], at(grid[i]).forces[j], at(grid[i + 1]).forces[j]];
      if (!(b > a && b > c) || b - Math.min(a, c) < least) continue;
      // Where the path has a corner the peak is that corner; only a smooth one needs a search.
      const corner = corners
        .filter((x) => x > grid[i - 1] && x < grid[i + 1])
        .reduce((best, x) => (at(x).forces[j] > at(best).forces[j] ? x : best), grid[i]);
      const smooth = corner === grid[i] && !kinks.has(grid[i]);
      const p = smooth ? peak((x) => at(x).forces[j], grid[i - 1], grid[i + 1], 1e-6) : corner;
      say(at(p).forces[j] >= at(corner).forces[j] ? p : corner, `${support.name} peaks`);
    }
  });
}

/** Adds poses until straight lines between stored ones are true enough. */
function straighten(ctx: SetContext, keep: Set<number>, at: (p: number) => Pose): void {
  const allowed = STRAIGHT * ctx.model.mass * ctx.gravity;
  const work: [number, number][] = [];
  const ordered = [...keep].sort((a, b) => a - b);
  for (let i = 1; i < ordered.length; i++) work.push([ordered[i - 1], ordered[i]]);
  while (work.length > 0 && keep.size < MOST_POSES) {
    const [a, b] = work.pop() as [number, number];
    if (b - a < 1e-3) continue;
    const pa = at(a);
    const pb = at(b);
    // A stretch between equal ends at least as flat as the tolerance needs no look inside when nothing moved much.
    const middle = (a + b) / 2;
    const pm = at(middle);
    let worst = 0;
    ctx.supports.forEach((s, j) => {
      if (s.what !== "cylinder" && s.what !== "line")
        worst = Math.max(worst, Math.abs(pm.forces[j] - (pa.forces[j] + pb.forces[j]) / 2) || 0);
    });
    if (worst <= allowed) continue;
    keep.add(middle);
    work.push([a, middle], [middle, b]);
  }
}

function collect(ctx: SetContext, steps: StepRun[], samples: Sample[]): SetRun {
  const n = samples.length;
  const m = ctx.supports.length;
  const out: SetRun = {
    setId: ctx.set.id,
    supports: ctx.supports,
    weight: ctx.model.mass * ctx.gravity,
    cg: [...ctx.model.cg],
    length: ctx.length,
    steps,
    count: n,
    step: new Int32Array(n),
    progress: new Float64Array(n),
    events: samples.map((s) => s.words.filter((w) => w !== "").join("; ")),
    forces: new Float64Array(n * m),
    shares: new Float64Array(n * m),
    motions: new Float64Array(n * MOTIONS.length),
  };
  samples.forEach((s, i) => {
    out.step[i] = s.pose.step;
    out.progress[i] = s.pose.progress;
    out.forces.set(s.pose.forces, i * m);
    out.shares.set(s.pose.shares, i * m);
    out.motions.set(s.pose.motions, i * MOTIONS.length);
  });
  return out;
}
