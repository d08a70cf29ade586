// One corner along the steps of a set: the same motions as in the best run, ends that the crew reads found again.

import type { Step } from "../../plan/index.ts";
import {
  type Happening,
  motionOf,
  type Pose,
  poseAt,
  type SetContext,
  type SetRun,
  type Situation,
  type StepRun,
  solvePose,
  startSituation,
  withBrakes,
} from "../../sequence/index.ts";
import type { AtCorner } from "./apply.ts";
import { bestName, type Corner } from "./corner.ts";
import { feltIn } from "./felt.ts";

/** What the best run left that a corner follows. */
export type BestRun = Pick<SetRun, "steps" | "step" | "progress" | "count">;

/** Ends of steps that were followed already, by what they depend on; null where the corner could not go on. */
export type Followed = Map<string, Situation | null>;

/** Told while a corner is followed. */
export interface Watcher {
  /** A stored pose of the best run by its index, solved at the corner with this part of its wind. */
  pose: (index: number, pose: Pose, wind: number) => void;
  happening: (step: number, happening: Happening) => void;
  /** The first pose of a step at which the corner has no equilibrium. */
  lost: (index: number, pose: Pose) => void;
}

/** Steps that end where they were commanded to, whatever is read: distances and heights. All others end on a reading. */
const commanded: ReadonlySet<Step["do"]> = new Set([
  "roll",
  "drive out",
  "hoist up",
  "hoist down",
  "bring over",
]);

/** The ends of a step at a corner, from those of the best run and those found anew. */
function endsOf(step: Step, best: readonly number[], found: number[]): number[] {
  if (commanded.has(step.do)) return [...best];
  if ((step.do === "jack up" || step.do === "jack down") && "height_mm" in step.until) return [...best];
  // Distance and travelling trains as commanded; a load to be held is that which is read at its start.
  if (step.do === "roll together") return [...best.slice(0, 2), ...found.slice(2)];
  return found;
}

/** A context in which a set is followed, and the corner whose it is; null for the best run itself. */
export interface Way extends AtCorner {
  corner: Corner | null;
}

/**
 * Follows the steps of the best run. Steps that were followed before from the same start under the same conditions are
 * passed over.
 */
export function follow(way: Way, best: BestRun, followed: Followed, watcher: Watcher): void {
  const { ctx, corner } = way;
  let situation = startSituation(ctx);
  for (const run of best.steps) {
    if (run.count === 0) return;
    const start = withBrakes(run.step, situation);
    const name = corner === null ? bestName : feltIn(ctx.plan, corner, run.step, start).name;
    const key = `${run.index}|${name}|${JSON.stringify(start)}`;
    let end = followed.get(key);
    if (end === undefined) {
      end = followStep(way, best, { ...run, start }, watcher);
      followed.set(key, end);
    }
    if (end === null) return;
    situation = end;
  }
}

/**
 * Follows one step; its end, or null when there is none to go on from. What the crew reads it reads while the wind is
 * calm, and the motions are those that follow; at every stored pose the wind is then let blow. Where a pose has no
 * equilibrium the motions go on as commanded, so that what comes after is seen too; ends that cannot be read are then
 * those of the best run, and a pose that the wind upsets counts in half of it, or in the calm.
 */
function followStep(way: Way, best: BestRun, run: StepRun, watcher: Watcher): Situation | null {
  const { ctx, corner, together, gust } = way;
  const motion = motionOf(run.step.do);
  const windy = corner !== null && corner.wind !== 0 && (run.step.windLimit_m_per_s ?? 0) > 0;
  together(false);
  gust(0);
  let first = solvePose(ctx, run.start, run.index, 0);
  if (corner !== null && corner.mismatch.mm !== 0 && hooksThatCarry(first) > 1) {
    together(true);
    first = solvePose(ctx, run.start, run.index, 0, first);
  }
  if (corner !== null && first.solution.status === "solved") readEnds(ctx, run, first, watcher);
  const settled = (pose: Pose): Situation | null => {
    if (!motion.settle) return pose.situation;
    return pose.solution.status === "solved" ? motion.settle(ctx, pose.situation, pose) : null;
  };
  const calm = windy && motion.settle && run.solved ? settled(poseAt(ctx, run, 1, first)) : undefined;
  gust(1);
  let last = windy ? solvePose(ctx, run.start, run.index, 0, first) : first;
  let lost = false;
  for (let i = run.first; i < run.first + run.count; i++) {
    const progress = best.progress[i];
    if (progress > 0) last = poseAt(ctx, run, progress, last);
    if (last.solution.status === "solved") {
      watcher.pose(i, last, 1);
      continue;
    }
    if (!lost) watcher.lost(i, last);
    lost = true;
    if (windy) inTheLee(way, run, i, progress, watcher);
  }
  if (!run.solved || last.progress < 1) return null;
  return calm === undefined ? settled(last) : calm;
}

/** A pose that does not stand in the wind counts in half of it, or as it is in the calm. */
function inTheLee({ ctx, gust }: Way, run: StepRun, index: number, progress: number, watcher: Watcher): void {
  for (const part of [0.5, 0]) {
    gust(part);
    const pose = poseAt(ctx, run, progress);
    if (pose.solution.status !== "solved") continue;
    watcher.pose(index, pose, part);
    break;
  }
  gust(1);
}

/** Finds the ends of a step again, where they are readings, and tells what the search met. */
function readEnds(ctx: SetContext, run: StepRun, first: Pose, watcher: Watcher): void {
  let last = first;
  let read = true;
  const probe = (s: Situation): Pose => {
    last = solvePose(ctx, s, run.index, 0, last);
    read &&= last.solution.status === "solved";
    return last;
  };
  const found = motionOf(run.step.do).find(ctx, run.step, run.start, probe);
  const ends = endsOf(run.step, run.ends, found.ends);
  // A search that met a place without equilibrium may have taken it for the end.
  if (!read && !stands(ctx, { ...run, ends })) return;
  for (const h of found.happenings) watcher.happening(run.index, h);
  run.ends = ends;
}

/** Whether a step stands at its marks and at its end. */
function stands(ctx: SetContext, run: StepRun): boolean {
  const marks = motionOf(run.step.do).marks?.(run.step, run.ends) ?? [];
  return [...marks, 1].every((p) => poseAt(ctx, run, p).solution.status === "solved");
}

function hooksThatCarry({ solution }: Pose): number {
  let n = 0;
  if (solution.status === "solved") for (const force of solution.hoistForce) if (force > 0) n++;
  return n;
}
