// Steps added, copied and split, each as one edit. A split part has its own name; what is to be seen at the end stays at the end.
import {
  blankAt,
  fieldOf,
  type Plan,
  type PlanPath,
  type Step,
  valueAt,
  withInserted,
  withValue,
} from "../../../plan/index.ts";
import { type DataEdit, freeName } from "./changes.ts";

/** Ids of all steps of a set, ways back included: a new step may have none of them. */
function idsIn(plan: Plan, steps: PlanPath): string[] {
  const list = (valueAt(plan, steps) ?? []) as Step[];
  return list.flatMap((step) => [step.id, ...(step.wayBack ?? []).map((back) => back.id)]);
}

/** Words for the kinds of steps, in the order of the format. */
export function stepKinds(plan: Plan): readonly string[] {
  return fieldOf(["sets", 0, "steps", 0], plan)?.choices ?? [];
}

/** A new step of a kind behind another; it carries what the one before it carries, and the rest is to be typed. */
export function stepAdded(plan: Plan, steps: PlanPath, index: number, kind: string): DataEdit {
  const before = valueAt(plan, [...steps, index - 1]) as Step | undefined;
  const blank = blankAt([...steps, 0], undefined, kind) as Step;
  const id = freeName(kind, idsIn(plan, steps));
  const step = { ...blank, id, carries: before?.carries ?? [] };
  return { label: `Add step ${id}`, change: (draft) => withInserted(draft, steps, index, step) };
}

/** A step with new names for itself and for the steps of its way back. */
function namedAnew<T extends Step>(step: T, base: string, taken: string[]): T {
  const id = freeName(base, taken);
  const used = [...taken, id];
  if (step.wayBack === undefined) return { ...step, id };
  const wayBack = step.wayBack.map((back) => {
    const own = freeName(back.id, used);
    used.push(own);
    return { ...back, id: own };
  });
  return { ...step, id, wayBack };
}

/** A step copied behind itself. */
export function stepCopied(plan: Plan, steps: PlanPath, index: number): DataEdit {
  const step = valueAt(plan, [...steps, index]) as Step;
  const copy = namedAnew(step, step.id, idsIn(plan, steps));
  return {
    label: `Copy step ${step.id} as ${copy.id}`,
    change: (draft) => withInserted(draft, steps, index + 1, copy),
  };
}

/** What a step moves that can be split, in the unit of the file: a distance (m), or the height of its first hook (mm). */
export function splitLength(step: Step): { value: number; unit: "m" | "mm" } | null {
  if (step.do === "roll" || step.do === "roll together") return { value: step.distance_m, unit: "m" };
  if (step.do !== "hoist up" && step.do !== "hoist down") return null;
  const height = step.hooks[0]?.height_mm;
  return typeof height === "number" ? { value: height, unit: "mm" } : null;
}

const tidy = (value: number): number => Number(value.toPrecision(12));

/** The part of a step from one share of its motion to another. */
function share(step: Step, part: number): Step {
  if (step.do === "roll" || step.do === "roll together")
    return { ...step, distance_m: tidy(step.distance_m * part) };
  if (step.do === "hoist up" || step.do === "hoist down")
    return {
      ...step,
      hooks: step.hooks.map((hook) => ({ ...hook, height_mm: tidy(hook.height_mm * part) })),
    };
  return step;
}

/**
 * A step split in two after `at` of its motion (unit of `splitLength`). The first part keeps the name, so that what refers to
 * the step still finds it; the second gets the next free one. Times are shared; the number to be seen and the way back of the
 * second part stay, the first part loses the number to be seen. Ways back are copied as they are and must be looked at.
 * @returns the edit, or a sentence that says why it cannot be split there
 */
export function stepSplit(plan: Plan, steps: PlanPath, index: number, at: number): DataEdit | string {
  const step = valueAt(plan, [...steps, index]) as Step;
  const length = splitLength(step);
  if (length === null) return `${step.do} cannot be split; a roll, a roll together or a hoist can.`;
  const part = at / length.value;
  if (!(part > 0 && part < 1)) {
    return `${at} ${length.unit} is not inside of ${length.value} ${length.unit}. Give a length between 0 and that.`;
  }
  const { see: _seen, ...bare } = share(step, part);
  const first = step.minutes === undefined ? bare : { ...bare, minutes: tidy(step.minutes * part) };
  const rest = share(step, 1 - part);
  const timed = step.minutes === undefined ? rest : { ...rest, minutes: tidy(step.minutes * (1 - part)) };
  const second = namedAnew(timed, `${step.id}-2`, idsIn(plan, steps));
  return {
    label: `Split step ${step.id} after ${at} ${length.unit}, the rest as ${second.id}`,
    change: (draft) => withInserted(withValue(draft, [...steps, index], first), steps, index + 1, second),
  };
}
