// The highest wind in which each step of a solved set passes, on demand: every pose solved again at rising speeds, either way,
// until a check is at its limit; beside it what the table, the charts and the lines allow. The lowest governs and is named.

import { byId, hookName } from "../../plan/index.ts";
import { crossing, type Pose, poseAt, type SetContext, type StepRun } from "../../sequence/index.ts";
import { checkList } from "../list.ts";
import { type CheckList, type Measure, useOf as partOfLimit } from "../measure.ts";
import { inOrder } from "../measureFindings.ts";
import type { Result, SetResult, SetWindLimits } from "../types.ts";
import { forceOn, gustAtTip, pressureAt, WAYS } from "./air.ts";
import { type Blower, blowerOf } from "./blow.ts";
import { chartSpeed, tipHeight } from "./chart.ts";
import { goTable } from "./table.ts";
import type { Allowed, StepWind } from "./types.ts";

/** Speeds are looked for up to this, m/s: nobody works in a violent storm (Beaufort 11 begins at 28.5 m/s). */
export const MOST_WIND = 30;
/** A speed is found to this part of itself. */
const CLOSE = 1e-6;
/** A use this far beyond 1 is at the limit: poses that are alike do not hand the lowest speed to and fro. */
const AT_LIMIT = 2e-5;
/** Uses above it say no more than that the limit is passed, and a jump of them is found as well as a crossing. */
const FAR = 2;
/** Lines out of plumb have a column of their own. */
const PLUMB = "line lean";
/** Poses between stored ones are looked at around the one that governs, in so many halvings. */
const HALVINGS = 4;

/** A search under way: one step at each `next`, so that whoever runs it can look up between them. */
export interface WindSearch {
  done: () => number;
  of: number;
  /** Looks at the next step; false when there was none left. */
  next: () => boolean;
  result: () => SetWindLimits;
}

/** The part of a solved set that the search needs. */
export type RunSet = Pick<SetResult, "steps" | "progress">;

/** Prepares to search the steps of a solved set. Pure: the same run gives the same answer. */
export function windOver(ctx: SetContext, set: RunSet, checks: CheckList = checkList): WindSearch {
  const seeker = seekerOf(ctx, checks);
  const steps = set.steps.filter((step) => step.count > 0);
  const found: StepWind[] = [];
  return {
    done: () => found.length,
    of: steps.length,
    next: () => {
      const step = steps[found.length];
      if (step === undefined) return false;
      found.push(seeker(step, set.progress.subarray(step.first, step.first + step.count)));
      return true;
    },
    result: () => ({
      steps: [...found],
      of: steps.length,
      findings: checks.highestChecks.flatMap((check) => check(ctx, found)),
    }),
  };
}

/** The whole search at once; null when `onProgress` broke it off. */
export function runWind(
  ctx: SetContext,
  set: RunSet,
  onProgress: (done: number, of: number) => boolean = () => true,
  checks: CheckList = checkList,
): SetWindLimits | null {
  const search = windOver(ctx, set, checks);
  while (search.next()) if (!onProgress(search.done(), search.of)) return null;
  return search.result();
}

/** A new Result with the highest winds of one set and the findings that follow. Pure: the given Result stays as it is. */
export function withWind(result: Result, setId: string, wind: SetWindLimits): Result {
  const sets = result.sets.map((set) => (set.setId === setId ? { ...set, wind } : set));
  const old = new Set(result.sets.find((set) => set.setId === setId)?.wind?.findings.map((f) => f.id));
  const findings = inOrder([...result.findings.filter((f) => !old.has(f.id)), ...wind.findings]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}

/** What is worst of some checks at a pose in a wind: its use, and which check it is. */
interface Worst {
  use: number;
  what: string;
  subject: string;
  source: string;
}

/** The worst of some checks of a pose; FAR, and why, where it does not stand. */
function worstAt(pose: Pose, measures: readonly Measure[]): Worst {
  if (pose.solution.status !== "solved")
    return { use: FAR, what: "no equilibrium", subject: "set", source: "the statics of the pose" };
  let worst: Worst = { use: 0, what: "", subject: "", source: "" };
  for (const m of measures) {
    const r = m.read(pose);
    const use = partOfLimit(m, r);
    if (use > worst.use)
      worst = { use: Math.min(use, FAR), what: m.check, subject: m.subject, source: r.source ?? m.source };
  }
  return worst;
}

/** Searches one step after another. */
function seekerOf(
  ctx: SetContext,
  checks: CheckList,
): (step: StepRun, progress: ArrayLike<number>) => StepWind {
  const { plan, set } = ctx;
  // The wind on the chart has no pose to be solved: it is told apart from the others.
  const all = checks.makers.flatMap((make) => make(ctx)).filter((m) => m.check !== "chart wind");
  const stops = all.filter((m) => m.level === "stop" && m.check !== PLUMB);
  const lines = all.filter((m) => m.check === PLUMB);
  const blower = blowerOf(ctx);
  const table = goTable(ctx);
  return (step, progress) => {
    const poses = Array.from(progress, (p) => poseAt(ctx, step, p));
    const between = (p: number) => poseAt(ctx, step, p);
    const first = lowest(ctx, blower, poses, between, stops);
    const out = lowest(ctx, blower, poses, between, lines);
    // Where nothing stands any more no line tells anything.
    const plumb = out?.what === PLUMB ? out : null;
    const charts = poses
      .map((pose) => chartAt(ctx, pose))
      .filter((one) => one !== null)
      .sort((a, b) => a.reading - b.reading);
    const rule: Allowed = {
      reading: table.stop.reading,
      what: "table",
      subject: "strong wind",
      toward: null,
      progress: 0,
      source: table.stop.limit.source,
    };
    const ways = [first, plumb, charts[0] ?? null, rule].filter((one) => one !== null);
    const governs = ways.reduce((a, b) => (b.reading < a.reading ? b : a));
    const stated = set.steps[step.index].windLimit_m_per_s ?? null;
    return {
      step: step.index,
      stated,
      force: forceOn(plan, set, stated ?? governs.reading),
      checks: first,
      plumb,
      chart: charts[0] ?? null,
      table: rule,
      governs,
    };
  };
}

/** The lowest speed at which one of some checks is at its limit at some pose; null when none is up to MOST_WIND. */
function lowest(
  ctx: SetContext,
  blower: Blower,
  poses: readonly Pose[],
  between: (progress: number) => Pose,
  measures: readonly Measure[],
): Allowed | null {
  if (measures.length === 0) return null;
  let best: Allowed | null = null;
  const look = (pose: Pose): void => {
    if (pose.solution.status !== "solved") return;
    for (const toward of WAYS) {
      const top = best === null ? MOST_WIND : best.reading;
      const at = (V: number) =>
        worstAt(V === 0 ? pose : blower.at(pose, pressureAt(ctx.plan, V), toward), measures);
      const there = at(top);
      if (there.use <= 1 + AT_LIMIT) continue;
      const reading = crossed(at, top, there);
      const { what, subject, source } = named(at, reading, there);
      best = { reading, what, subject, source, toward, progress: pose.progress };
    }
  };
  poses.forEach(look);
  for (let k = 1, gap = 0.5; k <= HALVINGS && best !== null; k++, gap /= 2) {
    const { progress }: Allowed = best;
    const before = poses.filter((p) => p.progress < progress).at(-1)?.progress;
    const after = poses.find((p) => p.progress > progress)?.progress;
    if (before !== undefined) look(between(progress - gap * (progress - before)));
    if (after !== undefined) look(between(progress + gap * (after - progress)));
  }
  return best;
}

/** The speed, m/s, at which the worst use passes 1, between the calm and a speed at which it is beyond; 0 when the calm is. */
function crossed(at: (V: number) => Worst, top: number, there: Worst): number {
  const calm = 1 - at(0).use;
  if (calm < -1e-9) return 0;
  // Over the pressure, in which forces are straight lines as long as no contact changes.
  const square = crossing(
    (q) => 1 - at(Math.sqrt(q)).use,
    0,
    top * top,
    Math.max(calm, 0),
    1 - there.use,
    CLOSE * top * top,
  );
  return Math.sqrt(square);
}

/** The check that is at its limit at a speed, or just beyond where it jumps there. */
function named(at: (V: number) => Worst, reading: number, there: Worst): Worst {
  const beyond = at(reading * (1 + 1e-4));
  return beyond.use > 1 ? beyond : there;
}

/** What the charts of the hooked cranes allow at a pose, as a reading of the instrument; null without any. */
function chartAt(ctx: SetContext, pose: Pose): Allowed | null {
  let best: Allowed | null = null;
  for (const { id, hooked } of pose.situation.cranes) {
    if (!hooked) continue;
    const crane = byId(ctx.plan.cranes, id);
    const allowed = chartSpeed(ctx, crane, pose);
    if (allowed === null) continue;
    const reading = allowed / gustAtTip(ctx.plan, 1, tipHeight(crane, pose));
    if (best === null || reading < best.reading)
      best = {
        reading,
        what: "chart wind",
        subject: hookName(crane),
        toward: null,
        progress: pose.progress,
        source: crane.wind?.source ?? "",
      };
  }
  return best;
}
