// jack up, jack down: hydraulic groups lifted or lowered by oil while everything stands.

import { jackedGroups } from "../../plan/index.ts";
import { crossing } from "../search.ts";
import type { Pose, SetContext, Situation } from "../types.ts";
import { bunkGap, type Found, happening, type MotionOf, type Probe } from "./kind.ts";

type Jack = Parameters<MotionOf<"jack up">["find"]>[1] | Parameters<MotionOf<"jack down">["find"]>[1];

/** Furthest that one step may jack, m: beyond any stroke. */
const FURTHEST = 2;

function moved(ctx: SetContext, step: Jack, start: Situation, by: number): Situation {
  const groupLift = { ...start.groupLift };
  for (const g of jackedGroups(ctx.plan, step)) groupLift[g] += by;
  return { ...start, groupLift };
}

function find(ctx: SetContext, step: Jack, start: Situation, probe: Probe, sign: 1 | -1): Found {
  const names = jackedGroups(ctx.plan, step);
  const trains = ctx.plan.transporters
    .filter((t) => t.groups.some((g) => names.includes(g.name)))
    .map((t) => t.id);
  const gone = trains.filter((id) => !start.trains.some((t) => t.id === id && t.under));
  if (gone.length > 0)
    return {
      ends: [0],
      happenings: [happening("out of order", gone[0], `${gone[0]} is not under the set: it cannot jack`)],
    };
  if ("height_mm" in step.until) return { ends: [step.until.height_mm / 1000], happenings: [] };
  const until = step.until;
  const load = (pose: Pose) => {
    let F = 0;
    ctx.supports.forEach((s, i) => {
      if (s.what === "group" && names.includes(s.name)) F += pose.forces[i];
    });
    return F;
  };
  // Negative until the end is reached.
  const goal = (h: number): number => {
    const pose = probe(moved(ctx, step, start, sign * h));
    if (pose.solution.status !== "solved") return Number.NaN;
    if ("gap_mm" in until) {
      // A gap counts from where the last bunk frees, and grows straight with the stroke from there on.
      const gap = Math.min(...trains.map((id) => bunkGap(pose, id)));
      return gap - until.gap_mm / 1000;
    }
    return sign * (load(pose) - until.load_kN * 1000);
  };
  let a = 0;
  let ga = goal(0);
  if (ga >= 0) return { ends: [0], happenings: [] };
  const stride = 0.01;
  for (let b = stride; b <= FURTHEST; b += stride) {
    const gb = goal(b);
    if (!(gb < 0)) return { ends: [crossing(goal, a, b, ga, gb, 1e-9)], happenings: [] };
    a = b;
    ga = gb;
  }
  return {
    ends: [strokeLeft(ctx, trains, sign)],
    happenings: [
      happening("end not reached", names[0], `jacking ${names.join(", ")} never reaches the stated end`, {
        progress: 1,
      }),
    ],
  };
}

function strokeLeft(ctx: SetContext, trains: string[], sign: number): number {
  const t = ctx.plan.transporters.find((x) => trains.includes(x.id));
  if (!t) return 0;
  return (sign > 0 ? t.strokeUp_mm : t.strokeDown_mm) / 1000;
}

export const jackUp: MotionOf<"jack up"> = {
  find: (ctx, step, start, probe) => find(ctx, step, start, probe, 1),
  at: (ctx, step, start, ends, progress) => moved(ctx, step, start, ends[0] * progress),
};

export const jackDown: MotionOf<"jack down"> = {
  find: (ctx, step, start, probe) => find(ctx, step, start, probe, -1),
  at: (ctx, step, start, ends, progress) => moved(ctx, step, start, -ends[0] * progress),
};
