// A witness of a check: a plan in which it finds something that is known from outside it. Taken out of the list, the check
// finds nothing, and its witness fails; `witnesses.test.ts` tries both.

import type { CheckList, Result } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";

export interface Witness {
  /** Name of the check, as in its findings. */
  check: string;
  /** Requirements that it answers, as `TR-4`. */
  ids: string[];
  /** What is seen, in one sentence. */
  title: string;
  /**
   * Asks for what the check says, with the checks handed in, and throws (by `expect`) when it is not said. `solve` runs a
   * plan with them; one and the same plan object is solved once.
   */
  sees: (solve: (plan: Plan) => Result, checks: CheckList) => void;
}
