// The clearances of a set over its whole run, worked out once for a run.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { sweptBodies } from "../../shape/index.ts";
import { limitOf } from "../limits.ts";
import type { Look } from "./look.ts";
import { pairsOf } from "./pairs.ts";
import { StepSweep } from "./sweep.ts";
import type { Clearance, SetClearances } from "./types.ts";

const made = new WeakMap<SetRun, SetClearances>();

/** The clearances of a run that were worked out already. */
export const knownClearances = (run: SetRun): SetClearances | undefined => made.get(run);

/** The least distance of every pair in every step, pair by pair; `stored` are the stored poses of the run, in order. */
export function* clearancesOf(
  ctx: SetContext,
  run: SetRun,
  stored: readonly Pose[],
): Generator<null, SetClearances> {
  const known = made.get(run);
  if (known !== undefined) return known;
  const list: Clearance[] = [];
  let solved = 0;
  for (const step of run.steps) {
    if (step.count === 0) continue;
    const poses = stored.slice(step.first, step.first + step.count);
    const sweep = new StepSweep(ctx, step, poses, step.index === 0);
    const sway = swayIn(ctx, sweep.looks);
    yield null;
    const { bodies } = sweptBodies(ctx);
    for (const pair of pairsOf(ctx)) {
      const found = sweep.pair(pair);
      yield null;
      if (found === null) continue;
      const { least, within } = found;
      const { subject, kind, limit } = pair;
      const own = swings(ctx, pair.a) || swings(ctx, pair.b) ? sway : 0;
      const below = limit !== null && least.distance < limit.value + own;
      list.push({
        step: step.index,
        subject,
        kind,
        distance: least.distance,
        progress: inStep(least.progress),
        within,
        limit: limit?.value ?? null,
        source: limit?.source ?? "",
        chosenBy: limit?.chosenBy ?? "",
        sway: own,
        bodies: [bodies[least.bodyA].name, bodies[least.bodyB].name],
        points: least.points,
        below: below ? sweep.below(pair, limit.value + own) : [],
      });
    }
    solved += sweep.solved;
  }
  const found = { list, solved };
  made.set(run, found);
  return found;
}

/** Just inside a step is told as its end. */
const inStep = (progress: number): number => (progress < 1e-6 ? 0 : progress > 1 - 1e-6 ? 1 : progress);

/** Whether a group swings with a hanging set. */
export function swings(ctx: SetContext, group: number): boolean {
  const { kind } = sweptBodies(ctx).groups[group];
  return kind === "set" || kind === "rigging" || kind === "line";
}

/** The allowance for sway in a step: a part of the longest line while nothing but lines holds the set, m. */
function swayIn(ctx: SetContext, looks: readonly Look[]): number {
  const part = limitOf(ctx.plan, "sway allowance");
  return part === null ? 0 : (part.value / 100) * Math.max(0, ...looks.map((look) => hangs(ctx, look)));
}

/** Length of the longest line that carries, m; 0 while the set stands on anything. */
export function hangs(ctx: SetContext, { pose, xyz, there }: Look): number {
  const { devices, contact } = pose.solution;
  const stands = devices.some((d, j) => (d.kind === "bunk" || d.kind === "bearing") && contact.F[j] > 0);
  if (stands) return 0;
  let longest = 0;
  sweptBodies(ctx).groups.forEach(({ kind, first }, g) => {
    if (kind === "line" && there[g] === 1)
      longest = Math.max(longest, xyz[3 * first + 2] - xyz[3 * first + 5]);
  });
  return longest;
}
