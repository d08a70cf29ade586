// Every check has a witness: a plan in which it finds what is known from outside it; and without the check it is not found.

import { describe, expect, test } from "vitest";
import {
  type CheckList,
  checkList,
  checksWithout,
  inSpread,
  type Result,
  solvePlan,
} from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { witnesses } from "./witnesses.ts";

function solver(checks: CheckList): (plan: Plan) => Result {
  const known = new WeakMap<Plan, Result>();
  return (plan) => {
    const result = known.get(plan) ?? solvePlan(plan, { checks });
    known.set(plan, result);
    return result;
  };
}

const whole = solver(checkList);

describe.each(witnesses)("$check: $title", ({ check, sees }) => {
  test("is seen", () => sees(whole, checkList));

  test("is not seen when the check is taken out", () => {
    // What only a corner of the spread finds is read by the check itself.
    const left = checksWithout(check.replace(inSpread, ""));
    expect(() => sees(solver(left), left)).toThrow();
  });
});
