// The way back of every step: from its start, its middle and its end, run by the same step kinds, checked by the same
// measures. Good is one that settles without a stop of its own and ends where the step began.

import type { WayBackStep } from "../plan/index.ts";
import {
  motionOf,
  type Pose,
  poseAt,
  runSteps,
  type SetContext,
  type Situation,
  type StepRun,
  solvePose,
  worldOf,
} from "../sequence/index.ts";
import type { Progress } from "./backed.ts";
import { checkList } from "./list.ts";
import { type Measure, type Reading, useOf } from "./measure.ts";
import { measureFindings } from "./measureFindings.ts";
import { cutTo, reverseOf } from "./reverse.ts";
import { carryFindings, happeningFinding, sharesAtEnd } from "./runFindings.ts";
import { type InTurn, toTheEnd } from "./turns.ts";
import type { Finding, SetResult, WayBack, WayBackTry } from "./types.ts";

/** Where in a step a crew may have to turn back. */
const FROM = [0, 0.5, 1];
/** It is back where it began when no band differs by more than this share of the weight, */
const SAME_FORCE = 0.005;
/** and no end of a girder by more than this, m. Common practice, no source. */
const SAME_PLACE = 0.01;
/** A support counts as carrying from this share of the weight on. */
const CARRIES = 1e-4;
/** A stop is the way back's own when it is worse by this part than the step itself is. */
const WORSE = 1e-6;

/** The ways back of all steps of a solved set; null when `onProgress` returned false. Pure. */
export function waysBackOf(
  ctx: SetContext,
  set: SetResult,
  onProgress: Progress = () => true,
): WayBack[] | null {
  return toTheEnd(waysBackInTurn(ctx, set), onProgress);
}

/** The same, resting before each try of a step. */
export function* waysBackInTurn(ctx: SetContext, set: SetResult): InTurn<WayBack[]> {
  const measures = checkList.makers.flatMap((make) => make(ctx));
  const out: WayBack[] = [];
  const of = set.steps.length;
  for (const run of set.steps) {
    yield { done: run.index, of };
    out.push(yield* wayBackOf(ctx, set, run, measures));
  }
  yield { done: of, of };
  return out;
}

function* wayBackOf(ctx: SetContext, set: SetResult, run: StepRun, measures: Measure[]): InTurn<WayBack> {
  const stated = run.step.wayBack;
  if (!run.solved || run.count === 0)
    return {
      step: run.index,
      source: stated ? "plan" : "none",
      from: FROM.map((progress) => failed(progress, [], "the step itself is not solved")),
    };
  const judge = judgeOf(ctx, set, run, measures);
  const tried = (progress: number): WayBackTry => {
    const here = situationIn(ctx, run, progress);
    if (JSON.stringify(here) === JSON.stringify(run.start))
      return { progress, ok: true, steps: [], words: "nothing has been moved yet", findings: [] };
    if (stated) {
      const cut = progress < 1 ? judge(here, progress, cutTo(stated, progress)) : null;
      return cut?.ok ? cut : judge(here, progress, stated);
    }
    const proposed = reverseOf(run, here, carryingAtStart(set, run));
    if (proposed === null) return failed(progress, [], `no kind of step undoes '${run.step.do}'`);
    if (proposed.length === 0 && ["hold", "brace", "rest"].includes(run.step.do))
      return { progress, ok: true, steps: [], words: "nothing is commanded to move", findings: [] };
    return judge(here, progress, proposed);
  };
  const from: WayBackTry[] = [];
  for (const progress of FROM) {
    if (from.length > 0) yield { done: run.index, of: set.steps.length };
    from.push(tried(progress));
  }
  const source = stated ? "plan" : from.every((f) => f.ok) ? "proposed" : "none";
  return { step: run.index, source, from };
}

const failed = (progress: number, steps: WayBackStep[], words: string): WayBackTry => ({
  progress,
  ok: false,
  steps,
  words,
  findings: [],
});

/** What a crew that stops at a progress has before it: ropes locked, all else as the motion has it there. */
function situationIn(ctx: SetContext, run: StepRun, progress: number): Situation {
  const pose = poseAt(ctx, run, progress);
  const motion = motionOf(run.step.do);
  if (progress === 0 || pose.solution.status !== "solved" || !motion.settle) return pose.situation;
  return motion.settle(ctx, pose.situation, pose);
}

/** Names of the bands that carry at the start of a step. */
function carryingAtStart(set: SetResult, run: StepRun): string[] {
  const n = set.supports.length;
  return set.supports
    .filter((s, j) => s.band && set.shares[run.first * n + j] > CARRIES * set.weight)
    .map((s) => s.name);
}

type Judge = (here: Situation, progress: number, list: readonly WayBackStep[]) => WayBackTry;

/** Runs and judges lists of commands for one step. */
function judgeOf(ctx: SetContext, set: SetResult, run: StepRun, measures: Measure[]): Judge {
  const start = poseAt(ctx, run, 0);
  const worst = new Map<Measure, number>();
  const poses: Pose[] = [];
  // What the step itself reaches is no fault of its way back.
  const worstInStep = (m: Measure): number => {
    const known = worst.get(m);
    if (known !== undefined) return known;
    if (poses.length === 0)
      for (let i = run.first; i < run.first + run.count; i++) poses.push(poseAt(ctx, run, set.progress[i]));
    const most = poses.reduce((top, p) => Math.max(top, useOf(m, m.read(p)) || 0), 0);
    worst.set(m, most);
    return most;
  };
  return (here, progress, list) => {
    const stored: Pose[] = [];
    // Judged as poses of the step that is undone: its wind limit and all else that belongs to it hold on the way back too.
    const onPose = (pose: Pose) =>
      stored.push(solvePose(ctx, pose.situation, run.index, pose.progress, pose));
    const back = runSteps(ctx, here, list, [], { onPose });
    const broken = back.steps.find((s) => !s.solved);
    if (broken) return failed(progress, [...list], `no equilibrium in '${broken.step.id}': ${broken.motion}`);
    const stops = [
      ...measures.flatMap((m) => {
        if (m.level !== "stop") return [];
        const readings: Reading[] = stored.map((p) => m.read(p));
        const uses = Float64Array.from(readings, (r) => useOf(m, r));
        const found = measureFindings(ctx, back, m, (i) => readings[i], uses);
        return found.filter((f) => !((f.use ?? 0) <= worstInStep(m) * (1 + WORSE)));
      }),
      ...back.steps.flatMap((s) => carryFindings(ctx, s, sharesAtEnd(back, s), back.weight)),
      ...back.steps.flatMap((s) => s.happenings.map((h) => happeningFinding(ctx, s.index, h))),
    ].filter((f) => f.level === "stop" && !inStep(ctx, run, f));
    const findings = stops.map((f) => placed(f, run, progress, list));
    const end = stored[stored.length - 1];
    const away = end ? awayFrom(ctx, start, end) : "it moves nothing";
    const words = findings[0]?.words ?? away ?? "back where the step began";
    return { progress, ok: findings.length === 0 && away === null, steps: [...list], words, findings };
  };
}

/** Whether the step itself met the same thing on its way. */
function inStep(ctx: SetContext, run: StepRun, f: Finding): boolean {
  return run.happenings.some((h) => {
    const known = happeningFinding(ctx, run.index, h);
    return known.check === f.check && known.subject === f.subject && known.words === f.words;
  });
}

/** A finding of a way back, at the place in the operation from which it is gone. */
function placed(f: Finding, run: StepRun, progress: number, list: readonly WayBackStep[]): Finding {
  const at = { step: run.index, progress };
  const id = list[f.worst?.step ?? f.from?.step ?? 0]?.id ?? "";
  return {
    ...f,
    id: `way back:${run.step.id}:${progress}:${f.id}`,
    from: at,
    to: at,
    worst: at,
    words: `on the way back ('${id}'): ${f.words}`,
  };
}

/** How an end differs from the start of the step, in words; null when it does not. */
function awayFrom(ctx: SetContext, start: Pose, end: Pose): string | null {
  const weight = ctx.model.mass * ctx.gravity;
  for (const [j, s] of ctx.supports.entries()) {
    if (!s.band) continue;
    const [was, is] = [start.forces[j] || 0, end.forces[j] || 0];
    if (Math.abs(is - was) > SAME_FORCE * weight)
      return `it ends with ${(is / 1000).toFixed(1)} kN on ${s.name}, where the step began with ${(was / 1000).toFixed(1)} kN`;
  }
  const [a, b] = [worldOf(ctx, start).girders, worldOf(ctx, end).girders];
  let most = 0;
  for (const name of Object.keys(a))
    for (const which of ["tail", "nose"] as const)
      for (let k = 0; k < 3; k++) most = Math.max(most, Math.abs(a[name][which][k] - b[name][which][k]));
  return most > SAME_PLACE ? `it ends ${(most * 1000).toFixed(0)} mm from where the step began` : null;
}
