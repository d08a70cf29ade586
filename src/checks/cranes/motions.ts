// What each crane does in a step: how far its hook, boom, swing and tracks go, how fast that must be in the step's minutes,
// and how fast the crane is.

import { type Crane, hookName } from "../../plan/index.ts";
import { boomOf, type Pose, type SetContext, type SetRun, type StepRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";
import { hookToTip } from "./hoist.ts";
import { cranesOf } from "./hookLoad.ts";

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

const heading = ({ foot, centre }: ReturnType<typeof boomOf>): number =>
  Math.atan2(foot[1] - centre[1], foot[0] - centre[0]);

/** Steps whose minutes are too few for a crane, and speeds that the plan does not state. */
export function speedFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const missing = new Map<string, Finding>();
  const fast = run.steps.flatMap((step) => {
    const poses = stored.slice(step.first, step.first + step.count);
    return motionsIn(ctx, step, poses).flatMap(({ crane, motions }) =>
      motions.flatMap((m): Finding[] => {
        if (m.full === null) {
          const path = `cranes[${ctx.plan.cranes.indexOf(crane)}].${m.field}`;
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
          return [];
        }
        if (m.needed === null || !(m.needed > m.full * (1 + 1e-9))) return [];
        return [tooFast(ctx, step, crane, m, m.needed, m.full)];
      }),
    );
  });
  return [...fast, ...missing.values()];
}

function tooFast(
  ctx: SetContext,
  step: StepRun,
  crane: Crane,
  m: Motion,
  needed: number,
  full: number,
): Finding {
  const unit = `${m.unit}/min`;
  const name = hookName(crane);
  return finding({
    id: `crane speed:${ctx.set.id}:${crane.id}:${m.what}:${step.index}`,
    level: "caution",
    check: "crane speed",
    set: ctx.set.id,
    subject: name,
    from: { step: step.index, progress: 0 },
    to: { step: step.index, progress: 1 },
    worst: { step: step.index, progress: 1 },
    value: needed,
    limit: full,
    unit,
    use: needed / full,
    source: `full speed of ${crane.id}: ${crane.source}`,
    chosenBy: "plan",
    words: `${m.what} of ${name} goes ${m.way.toFixed(2)} ${m.unit} in ${step.step.minutes} minutes: ${needed.toFixed(2)} ${unit}; at full speed it makes ${full} ${unit}`,
    cure: `give the step ${(m.way / full).toFixed(1)} minutes or more`,
  });
}
