// How much of what stands on the screen answers the open plan, and what of it is older: no number is shown without that.
import { inOrder } from "../checks/index.ts";
import type { Answer, Finding, Plan, Result, SetResult, SetRun } from "./types.ts";

/** What the screen holds of the open plan, and what from before it. */
export interface Answered {
  /** Number of the document that is being answered. */
  of: number;
  /** How much of it is there for the cursor's set, or for all sets from `checks` on. */
  has: "nothing" | "step" | "statics" | "checks" | "all";
  /** The first answer: one step of one set alone; null where the whole set is there. */
  step: { set: string; run: SetRun; findings: readonly Finding[] } | null;
  /** By set id: the plan that its statics on the screen are of. */
  plans: Readonly<Record<string, Plan>>;
  /** Ids of the sets whose statics are those of an earlier plan. */
  olderSets: readonly string[];
  /** Ids of the findings of an earlier plan: their checks are still to be made. */
  olderFindings: ReadonlySet<string>;
}

/** Before anything is answered. */
export const notAnswered: Answered = {
  of: 0,
  has: "nothing",
  step: null,
  plans: {},
  olderSets: [],
  olderFindings: new Set(),
};

/** What was there before an edit, or before the drag under way. */
export interface Before {
  plan: Plan;
  result: Result;
}

/** All sets and findings of a result are older, until they are answered. */
export function allOlder(result: Result | null, of: number, { plans }: Answered): Answered {
  if (result === null) return { ...notAnswered, of };
  return {
    ...notAnswered,
    of,
    plans,
    olderSets: result.sets.map(({ setId }) => setId),
    olderFindings: new Set(result.findings.map(({ id }) => id)),
  };
}

/** The result with the statics of one set in it. Findings whose checks are still to be made stay, marked as older. */
export function withStatics(
  result: Result,
  answered: Answered,
  plan: Plan,
  { set, findings, ofPlan, made }: Answer & { is: "statics" },
): { result: Result; answered: Answered } {
  const now = new Set([...findings, ...ofPlan].map(({ id }) => id));
  const gone = new Set(made);
  const left = result.findings.filter(
    (f) => !now.has(f.id) && f.set !== "" && (f.set !== set.setId || !gone.has(f.check)),
  );
  const sets = result.sets.map((one) => (one.setId === set.setId ? set : one));
  const all = inOrder([...ofPlan, ...findings, ...left]);
  return {
    result: { ...result, sets, findings: all, worst: all[0]?.level ?? null },
    answered: {
      ...answered,
      has: "statics",
      step: null,
      plans: { ...answered.plans, [set.setId]: plan },
      olderSets: answered.olderSets.filter((id) => id !== set.setId),
      olderFindings: new Set(left.map(({ id }) => id).filter((id) => answered.olderFindings.has(id))),
    },
  };
}

/** All of a result answers a plan. */
export function allAnswered(result: Result, of: number, has: "checks" | "all", plan: Plan): Answered {
  const plans = Object.fromEntries(result.sets.map(({ setId }) => [setId, plan]));
  return { ...notAnswered, of, has, plans };
}

/** A result with all checks made; findings that come only when it is completed stay from the one shown, marked as older. */
export function withLate(
  result: Result,
  of: number,
  plan: Plan,
  shown: Result | null,
  late: ReadonlySet<string>,
): { result: Result; answered: Answered } {
  const now = new Set(result.findings.map(({ id }) => id));
  const left = (shown?.findings ?? []).filter(({ id }) => late.has(id) && !now.has(id));
  return {
    result: left.length === 0 ? result : { ...result, findings: inOrder([...result.findings, ...left]) },
    answered: {
      ...allAnswered(result, of, "checks", plan),
      olderFindings: new Set(left.map(({ id }) => id)),
    },
  };
}

/** What of the state these questions read. */
interface Held {
  document: { plan: Plan | null } | null;
  result: Result | null;
  cursor: { set: number; step: number };
  answered: Answered;
}

/** The plan that the numbers of the cursor's set are of: the open one, or the one before while it is not answered. */
export function planOfSet({ document, result, cursor, answered }: Held): Plan | null {
  const own = result?.sets[cursor.set];
  return (own === undefined ? undefined : answered.plans[own.setId]) ?? document?.plan ?? null;
}

/** The first answer, where it is about the cursor's step. */
function aloneAt({ result, cursor, answered: { step } }: Omit<Held, "document">): SetRun | null {
  const own = result?.sets[cursor.set];
  return step !== null && step.set === own?.setId && step.run.steps[0]?.index === cursor.step
    ? step.run
    : null;
}

/**
 * The set that the pose at the cursor belongs to: that of the result, or while one step is answered before the others, one
 * that knows that step alone and no uses of limits.
 */
export function setOfPose(state: Omit<Held, "document">): SetResult | null {
  const own = state.result?.sets[state.cursor.set] ?? null;
  const alone = aloneAt(state);
  if (own === null || alone === null) return own;
  const steps = own.steps.map((step, i) => (i === state.cursor.step ? alone.steps[0] : step));
  return { ...alone, name: own.name, steps, strips: [] };
}

/** What of the cursor's place is older than the plan: the pose, the other numbers of its set, some findings. */
export function olderOf(state: Held): { pose: boolean; set: boolean; findings: boolean } {
  const { document, result, cursor, answered } = state;
  const own = result?.sets[cursor.set];
  if (document === null || own === undefined) return { pose: false, set: false, findings: false };
  const set = answered.olderSets.includes(own.setId);
  return {
    pose: set && aloneAt(state) === null,
    set,
    findings: answered.olderSets.length > 0 || answered.olderFindings.size > 0,
  };
}
