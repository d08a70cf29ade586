// The highest wind at some poses: each solved again at rising speeds, either way, until a check is at its limit; beside it what
// the table, the charts and the lines allow. The lowest governs and is named.

import { byId, hookName } from "../../plan/index.ts";
import { crossing, type Pose, poseAt, type SetContext, type StepRun } from "../../sequence/index.ts";
import { type Measure, type MeasureMaker, useOf as partOfLimit } from "../measure.ts";
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

/** What allows how much wind at some poses; readings of the site's instrument. */
type Highest = Pick<StepWind, "checks" | "plumb" | "chart" | "table" | "governs">;

/** Looks for the highest wind of some poses of one step. */
export interface WindSeeker {
  /** At poses alone. */
  at: (poses: readonly Pose[]) => Highest;
  /** In a step, by its stored poses and those between them. */
  over: (step: StepRun, progress: ArrayLike<number>) => StepWind;
}

/** Searches one step after another. The wind on the chart has no pose to be solved: it is told apart from the others. */
export function seekerOf(ctx: SetContext, makers: readonly MeasureMaker[]): WindSeeker {
  const { plan, set } = ctx;
  const all = makers.flatMap((make) => make(ctx)).filter((m) => m.check !== "chart wind");
  const stops = all.filter((m) => m.level === "stop" && m.check !== PLUMB);
  const lines = all.filter((m) => m.check === PLUMB);
  const blower = blowerOf(ctx);
  const table = goTable(ctx);
  const highest = (poses: readonly Pose[], between: ((p: number) => Pose) | null): Highest => {
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
    return { checks: first, plumb, chart: charts[0] ?? null, table: rule, governs };
  };
  return {
    at: (poses) => highest(poses, null),
    over: (step, progress) => {
      const found = highest(
        Array.from(progress, (p) => poseAt(ctx, step, p)),
        (p) => poseAt(ctx, step, p),
      );
      const stated = set.steps[step.index].windLimit_m_per_s ?? null;
      const force = forceOn(plan, set, stated ?? found.governs.reading);
      return { step: step.index, stated, force, ...found };
    },
  };
}

/** The lowest speed at which one of some checks is at its limit at some pose; null when none is up to MOST_WIND. */
function lowest(
  ctx: SetContext,
  blower: Blower,
  poses: readonly Pose[],
  between: ((progress: number) => Pose) | null,
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
  for (let k = 1, gap = 0.5; between !== null && k <= HALVINGS && best !== null; k++, gap /= 2) {
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
