// What is kept of solved plans, so that an edit solves only the steps that it can have changed.
//
// A step of a run follows from the set with its machines and ground, from the step itself, from the situation in which it
// begins, and from the margins that are watched. All four are compared, to the last bit, before a kept step is used again.

import { type Plan, type PlanSet, type Step, same } from "../plan/index.ts";
import type { SetContext, Situation, SolvedStep } from "../sequence/index.ts";

/** Parts of a plan that no motion and no statics read. */
export const unread: readonly (keyof Plan)[] = [
  "shows",
  "format",
  "version",
  "invented",
  "header",
  "limits",
  "spread",
  "people",
  "accept",
  "expected",
  "record",
  "unconfirmed",
];
/** Parts of a step that none reads: words, who does it, what is meant to carry at its end, its way back. */
export const unreadInStep: readonly string[] = [
  "title",
  "notes",
  "who",
  "voice",
  "channel",
  "see",
  "exclusion",
  "carries",
  "wayBack",
];

/** Parts of a set that none reads. */
export const unreadInSet: readonly string[] = ["name", "forwardMark", "times", "unconfirmed"];

function without(record: object, names: readonly string[]): object {
  return Object.fromEntries(Object.entries(record).filter(([name]) => !names.includes(name)));
}

/** All that the run of a set reads beside its steps: the plan without what is unread, of the sets this one alone. */
export function groundsOf(plan: Plan, set: PlanSet): object {
  return { ...without(plan, unread), sets: [without(set, ["steps", ...unreadInSet])] };
}

/** What the run reads of a step. */
const motionPart = (step: Step): object => without(step, unreadInStep);

/** A solved step with what it followed from. */
export interface KeptStep {
  solved: SolvedStep;
  from: Situation;
  /** Check and subject of every watched measure, and value and limit of each at every stored pose. */
  watched: string;
  readings: Float64Array;
}

/** The last steps of one set, by their indices, that were solved on the same grounds. */
export interface KeptSet {
  grounds: object;
  ctx: SetContext;
  steps: KeptStep[];
}

/** How many sets with different grounds are kept: what an undo or the end of a drag goes back to is among them. */
const MOST_KEPT = 6;

/** What is kept from solve to solve; newest first. */
export interface KeptRuns {
  sets: KeptSet[];
}

/** Nothing kept yet. */
export const noRuns = (): KeptRuns => ({ sets: [] });

/** The kept steps of a set on the grounds that a plan gives it; begun anew where those have changed. */
export function keptSetOf(runs: KeptRuns, plan: Plan, set: PlanSet, prepare: PrepareWith): KeptSet {
  const grounds = groundsOf(plan, set);
  const own = runs.sets.filter(({ ctx }) => ctx.set.id === set.id);
  const known = own.find((kept) => same(kept.grounds, grounds));
  const ctx = prepare(plan, set.id, (known ?? own[0])?.ctx);
  const kept: KeptSet = { grounds, ctx, steps: known?.steps ?? [] };
  const others = runs.sets.filter((one) => one !== known);
  const most = MOST_KEPT * plan.sets.length;
  runs.sets = [kept, ...others].slice(0, most);
  return kept;
}

export type PrepareWith = (plan: Plan, setId: string, before?: SetContext) => SetContext;

/** The kept step as the next one after those solved, when it moves as it did; null when it must be solved. */
export function stepAgain(
  kept: KeptStep | undefined,
  list: readonly Step[],
  before: readonly SolvedStep[],
  start: Situation,
): SolvedStep | null {
  const index = before.length;
  const last = before[index - 1];
  if (kept === undefined || (last !== undefined && !last.run.solved)) return null;
  const from = last?.end ?? start;
  if (!same(motionPart(kept.solved.run.step), motionPart(list[index])) || !same(kept.from, from)) return null;
  const first = last === undefined ? 0 : last.run.first + last.run.count;
  return { ...kept.solved, run: { ...kept.solved.run, step: list[index], first } };
}
