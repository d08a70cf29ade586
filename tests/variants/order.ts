// What a change of the order of the day must bring up, and a day compared with it.

import { expect } from "vitest";
import { type Finding, type Result, solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import type { Span } from "./hand/span.ts";
import { day } from "./variants.ts";

/** A finding that must come up: its check and subject, the step it begins in, and its value by hand where there is one. */
export interface Wanted {
  check: string;
  subject: string;
  in: string;
  value?: Span;
}

export const whole: Plan = day();
export const steps = whole.sets[0].steps;

let kept: Result | null = null;
/** The whole day, solved once. */
export function wholeDay(): Result {
  kept ??= solvePlan(whole);
  return kept;
}

const key = (plan: Plan, f: Finding): string =>
  [f.level, f.check, f.subject, f.from ? plan.sets[0].steps[f.from.step].id : ""].join("|");

/** Stops and cautions of a plan that the whole day does not have. */
export function added(plan: Plan, result: Result): Finding[] {
  const had = new Set(wholeDay().findings.map((f) => key(whole, f)));
  return result.findings.filter((f) => f.level !== "note" && f.from !== null && !had.has(key(plan, f)));
}

/** All that is wanted is among what was added; each says what is wrong and how to mend it. */
export function comesUp(plan: Plan, found: readonly Finding[], wanted: readonly Wanted[]): void {
  const list = found.map((f) => key(plan, f));
  for (const w of wanted) {
    const one = found.find(
      (f) =>
        f.check === w.check &&
        f.subject === w.subject &&
        f.from !== null &&
        plan.sets[0].steps[f.from.step].id === w.in,
    );
    expect(one, `${w.check} of ${w.subject} in ${w.in}, among\n${list.join("\n")}`).toBeDefined();
    expect(one?.words.length).toBeGreaterThan(20);
    expect(one?.cure.length).toBeGreaterThan(10);
    if (w.value) {
      expect(one?.value).toBeGreaterThanOrEqual(w.value.low);
      expect(one?.value).toBeLessThanOrEqual(w.value.high);
    }
  }
}
