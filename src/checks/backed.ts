// Backed or not: which poses of a run still stand with any one hook or group lost, and for how long they do not.

import type { Acceptance } from "../plan/index.ts";
import { type Pose, poseAt, type SetContext, type StepRun, type Support } from "../sequence/index.ts";
import { acceptanceOf } from "./acceptances.ts";
import { extentOf } from "./extent.ts";
import { type Loss, losable, lose, lossesOf } from "./losses.ts";
import { type InTurn, toTheEnd } from "./turns.ts";
import type { Fall, SetBacked, SetResult, UnbackedStretch } from "./types.ts";

/** Marks of stored poses in `SetBacked.marks`. */
export const BACKED = 0;
export const UNBACKED = 1;
export const NO_NUMBERS = 255;

/** Progress of the equal parts that are looked at in every step, beside its events. */
const QUARTERS = [0, 0.25, 0.5, 0.75, 1];
/** The ends of an unbacked stretch are found to this part of its step. */
const EXACT = 1e-3;

/** Told how many steps are done, of how many; returning false breaks the work off. */
export type Progress = (done: number, of: number) => boolean;

/** A looked-at place of a step and what a loss does there. */
interface Look {
  progress: number;
  losses: Loss[] | null;
}

/**
 * Loses every hook and every group in turn at start, end, quarters and events of every step. Poses between two looks
 * belong to the stretch that they lie in. Null when it was broken off. Pure: the same run gives the same answer.
 */
export function backedOf(
  ctx: SetContext,
  set: SetResult,
  onProgress: Progress = () => true,
): SetBacked | null {
  return toTheEnd(backedInTurn(ctx, set), onProgress);
}

/** The same, resting after each step. */
export function* backedInTurn(ctx: SetContext, set: SetResult): InTurn<SetBacked> {
  const marks = new Uint8Array(set.count);
  const stretches: UnbackedStretch[] = [];
  const known = new Map<string, Loss[] | null>();
  for (const step of set.steps) {
    yield { done: step.index, of: set.steps.length };
    const looks = looksOf(ctx, set, step, known);
    const spans = spansOf(ctx, step, looks);
    stretches.push(...joined(ctx, step, spans));
    for (let i = step.first; i < step.first + step.count; i++) {
      const p = set.progress[i];
      const look = looks.find((l) => l.progress === p);
      if (look?.losses === null) marks[i] = NO_NUMBERS;
      else if (look?.losses) marks[i] = look.losses.every((l) => l.stands) ? BACKED : UNBACKED;
      else marks[i] = spans.some((f) => f.from <= p && p <= f.to) ? UNBACKED : BACKED;
    }
  }
  yield { done: set.steps.length, of: set.steps.length };
  return { marks, stretches };
}

/** What losses do at the places of a step that are looked at; `known` holds situations met before. */
function looksOf(ctx: SetContext, set: SetResult, step: StepRun, known: Map<string, Loss[] | null>): Look[] {
  const looks: Look[] = [];
  let near: Pose | null = null;
  const n = set.supports.length;
  for (let i = step.first; i < step.first + step.count; i++) {
    const progress = set.progress[i];
    const solved = !set.forces.subarray(i * n, (i + 1) * n).every(Number.isNaN);
    const edge = i === step.first || i === step.first + step.count - 1;
    if (solved && !edge && set.events[i] === "" && !QUARTERS.includes(progress)) continue;
    const pose: Pose = poseAt(ctx, step, progress, near);
    near = pose;
    const key = JSON.stringify(pose.situation);
    let losses = known.get(key);
    if (losses === undefined) {
      losses = pose.solution.status === "solved" ? lossesOf(ctx, pose) : null;
      known.set(key, losses);
    }
    looks.push({ progress, losses });
  }
  return looks;
}

/** For every support whose loss brings the set down: the parts of the step in which it does. */
function spansOf(ctx: SetContext, step: StepRun, looks: Look[]): Fall[] {
  const out: Fall[] = [];
  const falling = (look: Look, support: string) =>
    look.losses?.find((l) => l.support === support && !l.stands);
  const names = new Set(
    looks.flatMap((l) => (l.losses ?? []).filter((x) => !x.stands).map((x) => x.support)),
  );
  for (const name of names) {
    const support = ctx.supports.find((s) => s.name === name) as Support;
    const accepted: Acceptance | null = acceptanceOf(ctx.plan, "unbacked", name, ctx.set.id, step.step.id);
    for (let i = 0; i < looks.length; i++) {
      const first = falling(looks[i], name);
      if (!first) continue;
      let j = i;
      while (j + 1 < looks.length && falling(looks[j + 1], name)) j++;
      const edge = (inside: number, outside: Look | undefined) =>
        outside === undefined || outside.losses === null
          ? inside
          : edgeOf(ctx, step, support, inside, outside.progress);
      out.push({
        support: name,
        from: edge(looks[i].progress, looks[i - 1]),
        to: edge(looks[j].progress, looks[j + 1]),
        at: looks[i].progress,
        words: first.words,
        accepted,
      });
      i = j;
    }
  }
  return out.sort((a, b) => a.from - b.from);
}

/** The last progress found, going from one that falls to one that stands, at which the loss brings the set down. */
function edgeOf(ctx: SetContext, step: StepRun, support: Support, falls: number, stands: number): number {
  let inside = falls;
  let outside = stands;
  while (Math.abs(outside - inside) > EXACT) {
    const middle = (inside + outside) / 2;
    const pose = poseAt(ctx, step, middle);
    const down =
      pose.solution.status === "solved" &&
      losable(ctx, pose).includes(support) &&
      !lose(ctx, pose, support).stands;
    if (down) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** Spans that overlap, as one stretch of their step. */
function joined(ctx: SetContext, step: StepRun, spans: Fall[]): UnbackedStretch[] {
  const out: UnbackedStretch[] = [];
  const groups: Fall[][] = [];
  let reach = Number.NEGATIVE_INFINITY;
  for (const span of spans) {
    if (span.from <= reach) groups[groups.length - 1].push(span);
    else groups.push([span]);
    reach = Math.max(reach, span.to);
  }
  for (const falls of groups) {
    const from = falls[0].from;
    const to = Math.max(...falls.map((f) => f.to));
    const accepted = falls.every((f) => f.accepted !== null);
    out.push({ step: step.index, from, to, ...extentOf(ctx, step, from, to), falls, accepted });
  }
  return out;
}
