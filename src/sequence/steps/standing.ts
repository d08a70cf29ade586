// hold, brace, rest: nothing is commanded to move. And the kinds that are not solved yet, which say so.

import { happening, type StepMotion } from "./kind.ts";

/** Nothing moves; loads stay as they are. */
export const standing: StepMotion = {
  find: () => ({ ends: [], happenings: [] }),
  at: (_ctx, _step, start) => start,
};

/** A kind of step whose motion is not solved yet: it is refused by name, and nothing after it is trusted. */
export const notSolvedYet: StepMotion = {
  find: (_ctx, step) => ({
    ends: [],
    happenings: [
      happening(
        "no equilibrium",
        step.id,
        `the motion of '${step.do}' is not solved yet: take it out or split it up`,
      ),
    ],
  }),
  at: (_ctx, _step, start) => start,
};
