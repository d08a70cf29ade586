// Poses made by hand for the checks of cranes: one hook with a tip, a pull and what it lifts, nothing of which was solved.

import type { Pose } from "../../../src/sequence/index.ts";

/** What a pose made by hand has of one crane. */
export interface MadeHook {
  crane: string;
  /** Boom tip in plan: chainage and y, m. */
  tip: [number, number];
  /** What the line lifts, N, and its pull on the set along and across, N. */
  lifts: number;
  pulls: [number, number];
  /** From boom tip to picks, m. */
  rope: number;
}

/** A pose with these hooks on, all at step 0. */
export function madePose(...hooks: MadeHook[]): Pose {
  const made = {
    step: 0,
    progress: 1,
    situation: {
      cranes: hooks.map((h) => ({
        id: h.crane,
        hooked: true,
        tautAt: 0,
        heldLoad: null,
        tip: h.tip,
        moved: [0, 0],
      })),
    },
    state: { hoists: hooks.map((h) => ({ name: h.crane, ropeLength: h.rope })) },
    solution: {
      layout: { hoists: hooks.map((h) => ({ name: h.crane })) },
      hoistForce: Float64Array.from(hooks, (h) => h.lifts),
      horizontal: { lines: Float64Array.from(hooks.flatMap((h) => h.pulls)) },
    },
    forces: Float64Array.from(hooks, (h) => h.lifts),
  };
  return made as unknown as Pose;
}
