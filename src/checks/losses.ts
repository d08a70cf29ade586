// What one loss does to a pose: a hook that carries nothing any more, a group whose oil is out; solved again each time.
//
// A lost group is an emptied one: its cylinders sink until they stand on their lower stops, each for itself, and there
// they only push. Equilibrium is that of rest after the loss: blows and swinging on the way there are not in it.

import {
  attitudeOf,
  contactWorkspace,
  droopAt,
  type Solution,
  type State,
  solveStatics,
  tippingOf,
  trueUp,
} from "../mechanics/index.ts";
import { byId } from "../plan/index.ts";
import type { Pose, SetContext, Support } from "../sequence/index.ts";
import { limitOf } from "./limits.ts";

/** One loss in one pose. */
export interface Loss {
  /** The hook or group that is lost, by its name as a support. */
  support: string;
  what: "hoist" | "group";
  /** Whether the set still stands. */
  stands: boolean;
  /** What happens, in words. */
  words: string;
  /** How far the picks of a lost hook fall, or the first cylinder of a lost group sinks, m; NaN without equilibrium. */
  drop: number;
  /** Stabilising over overturning moment after the loss, in the attitude found; null where nothing can tip. */
  tipping: number | null;
}

const workspace = contactWorkspace();

/** Lean or level of the set, rad, beyond which small angles no longer tell where it comes to rest. */
const MOST_TURN = 0.3;

/** Hooks that carry and groups whose transporter carries: the losses that can change anything in this pose. */
export function losable(ctx: SetContext, pose: Pose): Support[] {
  return ctx.supports.filter((s, i) => {
    if (s.what === "hoist") return pose.forces[i] > 0;
    return s.what === "group" && pose.forces[i] > 0 && carriesSet(ctx, pose, s.of);
  });
}

/** Whether a transporter holds up or ties down any part of the set. */
function carriesSet(ctx: SetContext, pose: Pose, transporter: string): boolean {
  return ctx.supports.some((s, i) => {
    if (!(pose.forces[i] > 0)) return false;
    if (s.what === "bunk") return s.of === transporter;
    return s.what === "lashing" && byId(ctx.plan.lashings, s.of).transporter === transporter;
  });
}

/** The pose's State without a hook, or with a group let down to its stops. */
export function stateWithout(state: State, lost: Support): State {
  if (lost.what === "hoist")
    return { ...state, hoists: (state.hoists ?? []).filter((h) => h.name !== lost.of) };
  const wheels = state.groups?.[lost.name] ?? [];
  const down = state.trains?.find((t) => t.name === lost.of)?.strokeDown;
  if (down !== undefined) return { ...state, groupLift: { ...state.groupLift, [lost.name]: -down } };
  // Without a stated travel there is no stop to stand on.
  const { [lost.name]: _, ...others } = state.groups ?? {};
  return wheels.length === 0 ? state : { ...state, groups: others };
}

/** Loses one support of a solved pose and solves again. */
export function lose(ctx: SetContext, pose: Pose, lost: Support): Loss {
  const state = stateWithout(pose.state, lost);
  const near = lost.what === "group" ? pose.solution : null;
  const after = solveStatics(state, { model: pose.solution.model, workspace, near });
  const told = (stands: boolean, words: string, drop: number, tipping: number | null): Loss => {
    const { name: support } = lost;
    return { support, what: lost.what as Loss["what"], stands, words, drop, tipping };
  };
  if (after.status === "mechanism") return told(false, after.motion, Number.NaN, null);
  if (after.status !== "solved")
    return told(false, "heights, tensions and sideways forces do not settle together", Number.NaN, null);
  const { lean, level } = attitudeOf(after);
  const turn = Math.max(Math.abs(lean), Math.abs(level));
  if (turn > MOST_TURN)
    return told(
      false,
      `the set turns by ${(turn * 100).toFixed(0)} %, further than can be told`,
      Number.NaN,
      null,
    );
  const tip = tippingAsItStands(after, lean, level);
  const drop = lost.what === "hoist" ? fallOf(pose, after, lost.of) : sinkOf(pose, after, lost.name);
  if (tip !== null && !(tip.ratio > 1)) {
    const words = `the set overturns about ${tip.axis}: its weight steadies it ${tip.ratio.toFixed(2)} times`;
    return told(false, words, drop, tip.ratio);
  }
  const allowed = limitOf(ctx.plan, "fall at loss");
  const mm = (m: number) => (m * 1000).toFixed(0);
  if (lost.what === "hoist" && allowed !== null && drop * 1000 > allowed.value)
    return told(
      false,
      `the set falls ${mm(drop)} mm there before it is caught, allowed ${allowed.value} mm`,
      drop,
      tip?.ratio ?? null,
    );
  const words = lost.what === "hoist" ? `falls ${mm(drop)} mm and stands` : `sinks ${mm(drop)} mm and stands`;
  return told(true, words, drop, tip?.ratio ?? null);
}

/** All losses of a pose that can change anything. */
export function lossesOf(ctx: SetContext, pose: Pose): Loss[] {
  return losable(ctx, pose).map((s) => lose(ctx, pose, s));
}

/**
 * The governing moment ratio in the attitude that the set has come to: in its own axes its lean and level turn gravity
 * as a crossfall and a grade would, so that the CG's shift over what it stands on counts.
 */
function tippingAsItStands(s: Solution, lean: number, level: number): { ratio: number; axis: string } | null {
  const up = trueUp((s.state.grade ?? 0) - level, (s.state.crossfall ?? 0) - lean);
  const t = tippingOf({ ...s, layout: { ...s.layout, up } });
  return t === null || t.momentRatio === null ? null : { ratio: t.momentRatio, axis: t.axis };
}

/** How far the soffit at the picks of a crane comes down, m, on the mean of its girders. */
function fallOf(pose: Pose, after: Solution, crane: string): number {
  const hoists = pose.solution.layout.hoists;
  const i = hoists.findIndex((h) => h.name === crane);
  const girders = pose.solution.layout.hoistGirders[i];
  let fall = 0;
  for (const g of girders)
    fall += (droopAt(pose.solution, g, hoists[i].at) - droopAt(after, g, hoists[i].at)) / girders.length;
  return Math.max(0, fall);
}

/** How far a group sinks, m: by how much the cylinder that gives most moves in. */
function sinkOf(pose: Pose, after: Solution, group: string): number {
  const before = pose.solution;
  const g = before.layout.groups.find((x) => x.name === group);
  return Math.max(0, ...(g?.cylinders ?? []).map((c) => before.stroke[c] - after.stroke[c]));
}
