// A pose solved again with the wind on it.

import type { State } from "../../mechanics/index.ts";
import { type Pose, type SetContext, solvePose } from "../../sequence/index.ts";
import { type Toward, windOf } from "./air.ts";

/**
 * Where a bunk is just about to slip, side forces may go to and fro without settling, in a band about 3 % of the pressure
 * wide. The next greater pressure that settles then stands for it, up to 6 % more: a stronger wind, not a guess.
 */
const STRONGER = [1, 1.03, 1.06];

/** Solves poses again in the wind; what a corner changes in a State stays changed. */
export interface Blower {
  /** The pose with a wind of this pressure at the set, Pa. Its status tells whether it stands. */
  at: (pose: Pose, pressure: number, toward: Toward) => Pose;
}

/**
 * The set in the wind. The situation stays that of the calm: a crew reads its loads and heights in the calm, and the gust
 * comes upon what they left. Nothing is superposed: contacts, tensions and side loads are found anew.
 */
export function blowerOf(ctx: SetContext): Blower {
  const blows = { pressure: 0, wind: { "+y": windOf(ctx, 1, "+y"), "-y": windOf(ctx, 1, "-y") } };
  let toward: Toward = "+y";
  const change = (state: State, step: number): State => {
    const changed = ctx.change ? ctx.change(state, step) : state;
    return { ...changed, wind: { ...blows.wind[toward], pressure: blows.pressure } };
  };
  const windy: SetContext = { ...ctx, change };
  // The pose solved last either way: one like it is not solved again, and others begin from its contacts.
  const last: Record<Toward, Pose | null> = { "+y": null, "-y": null };
  return {
    at: (pose, pressure, way) => {
      toward = way;
      const { situation, step, progress } = pose;
      let gust = pose;
      for (const part of STRONGER) {
        blows.pressure = pressure * part;
        gust = solvePose(windy, situation, step, progress, last[way] ?? pose);
        if (gust.solution.status !== "unsettled") break;
      }
      last[way] = gust.solution.status === "solved" ? gust : null;
      return gust;
    },
  };
}
