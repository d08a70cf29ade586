// What each crane does in a step: how far its hook, boom, swing and tracks go, how fast that must be in the step's minutes,
// and how fast the crane is.

import { type Crane, hookName } from "../../plan/index.ts";
import {
  boomOf,
  type Pose,
  poseAt,
  type SetContext,
  type SetRun,
  type StepRun,
} from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { hookToTip } from "./hoist.ts";
import { cranesOf } from "./hookLoad.ts";
import { craneField } from "./reach.ts";

/** One motion of a crane in a step, up and down or to and fro added up. */
export interface Motion {
  what: "hoist" | "boom" | "swing" | "travel";
  way: number;
  /** m for hoist and travel, degrees for boom and swing. */
  unit: "m" | "deg";
  /** Way over the step's minutes; null where the step states none. */
  needed: number | null;
  /** At full speed, by the plan; null where it states none. */
  full: number | null;
  /** Field of the crane that states it. */
  field: string;
}

/** What a crane does in a step, in the order hoist, boom, swing, travel; motions of no length are left out. */
export interface CraneMotions {
  crane: Crane;
  step: number;
  motions: Motion[];
}

/** Ways below this, m or degrees, are rounding. */
const NOTHING = 1e-6;
const DEGREES = 180 / Math.PI;

/** Motions of every crane in a solved step, from its stored poses in order. */
export function motionsIn(ctx: SetContext, run: StepRun, poses: readonly Pose[]): CraneMotions[] {
  return cranesOf(ctx).flatMap((crane) => {
    const below = hookToTip(ctx, crane);
    let [hoist, boom, swing, travel] = [0, 0, 0, 0];
    for (let i = 1; i < poses.length; i++) {
      const [a, b] = [poses[i - 1], poses[i]].map((p) => p.situation.cranes.find((c) => c.id === crane.id));
      if (a === undefined || b === undefined) continue;
      travel += Math.hypot(b.moved[0] - a.moved[0], b.moved[1] - a.moved[1]);
      // A hook that goes on or off is another one: its way is not counted.
      if (!a.hooked || !b.hooked) continue;
      hoist += Math.abs(below(poses[i]) - below(poses[i - 1])) || 0;
      const [from, to] = [boomOf(crane, a.tip, a.moved), boomOf(crane, b.tip, b.moved)];
      boom += Math.abs(to.angle - from.angle) * DEGREES;
      const turn = heading(to) - heading(from);
      swing += Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * DEGREES;
    }
    const { minutes } = run.step;
    const one = (
      what: Motion["what"],
      way: number,
      field: keyof Crane,
      full: number | undefined,
    ): Motion[] =>
      way > NOTHING
        ? [
            {
              what,
              way,
              unit: what === "boom" || what === "swing" ? "deg" : "m",
              needed: minutes === undefined || minutes === 0 ? null : way / minutes,
              full: full ?? null,
              field,
            },
          ]
        : [];
    const motions = [
      ...one("hoist", hoist, "hoistSpeed_m_per_min", crane.hoistSpeed_m_per_min),
      ...one("boom", boom, "boomSpeed_deg_per_min", crane.boomSpeed_deg_per_min),
      ...one("swing", swing, "swingSpeed_deg_per_min", crane.swingSpeed_deg_per_min),
      ...one("travel", travel, "travelSpeed_m_per_min", crane.travelSpeed_m_per_min),
    ];
    return motions.length === 0 ? [] : [{ crane, step: run.index, motions }];
  });
}

/** A motion whose needed and full speed are both known. */
type Judged = Motion & { needed: number; full: number };

/** Motions that can be judged, the one that uses most of its full speed first. */
function judged(motions: readonly Motion[]): Judged[] {
  const known = motions.filter((m): m is Judged => m.needed !== null && m.full !== null);
  return known.sort((a, b) => b.needed / b.full - a.needed / a.full);
}

const heading = ({ foot, centre }: ReturnType<typeof boomOf>): number =>
  Math.atan2(foot[1] - centre[1], foot[0] - centre[0]);

/** Steps whose minutes are too few for a crane, and speeds that the plan does not state. */
export function speedFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const missing = new Map<string, Finding>();
  const fast = run.steps.flatMap((step) => {
    const poses = stored.slice(step.first, step.first + step.count);
    return motionsIn(ctx, step, poses).flatMap(({ crane, motions }) => {
      for (const m of motions) {
        if (m.full !== null) continue;
        const path = `${craneField(ctx, crane)}.${m.field}`;
        missing.set(
          path,
          finding({
            level: "note",
            check: "missing data",
            set: ctx.set.id,
            subject: path,
            words: `${path}: blank: whether ${crane.id} is fast enough for its steps is not judged`,
            cure: "give the value with its source",
          }),
        );
      }
      const fast = judged(motions).filter((m) => m.needed > m.full * (1 + 1e-9));
      return fast.length === 0 ? [] : [tooFast(ctx, step, crane, fast)];
    });
  });
  return [...fast, ...missing.values()];
}

/** One finding for a crane in a step: its slowest motion governs, the others are told. */
function tooFast(ctx: SetContext, step: StepRun, crane: Crane, fast: readonly Judged[]): Finding {
  const [{ what, unit, needed, full, way }] = fast;
  const name = hookName(crane);
  const told = fast.map(
    (m) =>
      `${m.what} of ${name} goes ${m.way.toFixed(2)} ${m.unit} in ${step.step.minutes} minutes: ${m.needed.toFixed(2)} ${m.unit}/min; at full speed it makes ${m.full} ${m.unit}/min`,
  );
  return finding({
    id: `crane speed:${ctx.set.id}:${crane.id}:${what}:${step.index}`,
    level: "caution",
    check: "crane speed",
    set: ctx.set.id,
    subject: name,
    from: { step: step.index, progress: 0 },
    to: { step: step.index, progress: 1 },
    worst: { step: step.index, progress: 1 },
    value: needed,
    limit: full,
    unit: `${unit}/min`,
    use: needed / full,
    source: sourceOf(crane),
    chosenBy: "plan",
    words: told.join("; "),
    cure: cureFor(way / full),
  });
}

const sourceOf = (crane: Crane) => `full speed of ${crane.id}: ${crane.source}`;
const cureFor = (minutes: number) => `give the step ${minutes.toFixed(1)} minutes or more`;

/** The motion of every crane that uses most of its full speed, with its trace, at the end of a step. */
export function speedMeasures(ctx: SetContext, run: SetRun): Measure[] {
  const known = new Map<StepRun, CraneMotions[]>();
  const motionsOf = (step: StepRun): CraneMotions[] => {
    const found =
      known.get(step) ??
      motionsIn(
        ctx,
        step,
        Array.from({ length: step.count }, (_, i) => poseAt(ctx, step, run.progress[step.first + i])),
      );
    known.set(step, found);
    return found;
  };
  return cranesOf(ctx).flatMap((crane) =>
    (["m", "deg"] as const).map((unit) =>
      measure(
        {
          check: "crane speed",
          subject: hookName(crane),
          kind: `${crane.kind} crane`,
          level: "caution",
          unit: `${unit}/min`,
          factor: 1,
          digits: 2,
          watched: false,
          cure: "give the step more minutes",
          ...traced(ctx, (pose, rec): Reading => {
            const step = run.steps[pose.step];
            if (pose.progress !== 1)
              return { ...NOT_HERE, why: "speeds are told at the end of a step, progress 1" };
            const mine = motionsOf(step).find((one) => one.crane === crane);
            const [m] = judged(mine?.motions ?? []);
            if (m === undefined)
              return {
                ...NOT_HERE,
                why: "it does not move, or its speed or the step's minutes are not stated",
              };
            if (m.unit !== unit) return { ...NOT_HERE, why: `the motion that governs is in ${m.unit}` };
            solved(
              rec,
              "s",
              m.way,
              m.unit,
              `${m.what} of ${crane.id}: its way in the step, to and fro added up`,
            );
            const t = step.step.minutes ?? 0;
            const at = `sets[${ctx.plan.sets.indexOf(ctx.set)}].steps[${step.index}].minutes`;
            field(rec, "t", t, "minutes of the step", at, t, { unit: "min", si: "min", change: "" });
            trace(rec, "v", m.needed, "s/t", `${unit}/min`, "speed that this takes");
            const full = { unit: `${unit}/min`, si: `${unit}/min`, change: "" } as const;
            field(rec, "v_a", m.full, "full speed", `${craneField(ctx, crane)}.${m.field}`, m.full, full);
            rec?.ends("v", "v_a");
            return { value: m.needed, limit: m.full, where: m.what };
          }),
        },
        { source: sourceOf(crane), chosenBy: "plan" },
      ),
    ),
  );
}
