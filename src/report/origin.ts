// What every sheet says of itself, so that a lone row or page still tells which plan it belongs to, and its caution.

import type { Result } from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";

/** The caution that goes with every number that leaves the program. */
export const caution =
  "Planning aid only: not a substitute for a licensed engineer, the maker's charts and manuals, " +
  "the crane's own limiter, or a competent person on site.";

/** Where numbers come from: the plan, its hash, the rules in force and the solver. */
export interface Origin {
  title: string;
  revision: string;
  planHash: string;
  ruleSet: string;
  solverVersion: string;
  /** True when the plan says that its data are invented. */
  invented: boolean;
  caution: string;
}

/** The origin of a result. Text is as the user typed it; `harmless` is applied where it goes into a table file. */
export function originOf(result: Result, plan: Plan): Origin {
  return {
    title: plan.header.title,
    revision: plan.header.revision,
    planHash: result.planHash,
    ruleSet: result.ruleSet,
    solverVersion: result.solverVersion,
    invented: plan.invented,
    caution: plan.invented ? `Invented data. ${caution}` : caution,
  };
}
