// Checks read at single poses, for the tests of what they compare.

import {
  checkList,
  type Finding,
  type Measure,
  useOf as partOfLimit,
  type Reading,
  solvePlan,
} from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import type { Pose, SetContext } from "../../src/sequence/index.ts";

/** The measure of a check for a subject; throws when the list of checks has none. */
export function measureOf(ctx: SetContext, check: string, subject: string): Measure {
  const all = checkList.makers.flatMap((make) => make(ctx));
  const found = all.find((m) => m.check === check && m.subject === subject);
  if (!found) throw new Error(`no check '${check}' of '${subject}'`);
  return found;
}

/** What a check reads at a pose, with its use of the limit. */
export function readingOf(
  ctx: SetContext,
  pose: Pose,
  check: string,
  subject: string,
): Reading & { use: number } {
  const m = measureOf(ctx, check, subject);
  const r = m.read(pose);
  return { ...r, use: partOfLimit(m, r) };
}

/** Findings of a plan, by level if given. */
export function findingsOf(plan: Plan, level?: Finding["level"]): Finding[] {
  return solvePlan(plan).findings.filter((f) => level === undefined || f.level === level);
}
