// The list of step kinds: a new kind is a new file and one line here.

import type { StepKind } from "../../plan/index.ts";
import { bringOver, hoistDown, hoistUp, land, takeLoad, trialLift } from "./hoisting.ts";
import { hookUp, lash, unhook, unlash } from "./hooking.ts";
import { jackDown, jackUp } from "./jacking.ts";
import type { StepMotion } from "./kind.ts";
import { level } from "./levelling.ts";
import { rebunk } from "./rebunk.ts";
import { brace, hold, rest } from "./standing.ts";
import { driveOut, roll, rollTogether } from "./travel.ts";
import { walk } from "./walk.ts";

const kinds: { [K in StepKind]: unknown } = {
  "hook up": hookUp,
  unhook,
  lash,
  unlash,
  "take load": takeLoad,
  "trial lift": trialLift,
  roll,
  "roll together": rollTogether,
  "jack up": jackUp,
  "jack down": jackDown,
  level,
  "drive out": driveOut,
  rebunk,
  walk,
  "hoist up": hoistUp,
  "hoist down": hoistDown,
  "bring over": bringOver,
  land,
  brace,
  hold,
  rest,
};

/**
 * Commands that begin with the same word because they are one motion, its direction or its company said last. No other
 * two kinds may begin alike: a crew that hears half a command must not move the wrong thing.
 */
export const oneMotion: readonly (readonly StepKind[])[] = [
  ["hoist up", "hoist down"],
  ["jack up", "jack down"],
  ["roll", "roll together"],
];

/** Every kind of step, as crews hear it. */
export const stepKinds = Object.keys(kinds) as StepKind[];

/** The motion of a kind of step. */
export function motionOf(kind: StepKind): StepMotion {
  return kinds[kind] as StepMotion;
}

export { biteAt } from "./travel.ts";
