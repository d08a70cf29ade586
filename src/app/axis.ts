// The operation as a horizontal axis: which part of the width each step takes, and from places on it to poses and back.
import { MOTIONS } from "../sequence/index.ts";
import type { SetResult } from "./types.ts";

/** What makes a step wide: the way the set travels in it, nothing (all equal), or its planned minutes. */
export type Width = "travel" | "steps" | "time";

/** The ways of choosing the width, with their words. */
export const widths: Readonly<Record<Width, string>> = {
  steps: "equal widths",
  travel: "width by travel",
  time: "width by minutes",
};

/** A place in the operation of one set: step index and progress 0..1. */
export interface Place {
  step: number;
  progress: number;
}

/** The axis of one set; all places on it run from 0 to 1. */
export interface Axis {
  width: Width;
  /** Where each step begins; one entry more than steps, the last is 1. */
  edges: Float64Array;
  /** Steps whose minutes are not given while the width is by minutes: they are drawn narrow. */
  unknown: number[];
}

/** What the axis needs of a solved set. */
export type Run = Pick<SetResult, "steps" | "motions">;

/** A step without a measure of its own (no travel, no minutes) is drawn with this part of an equal step's width. */
const narrow = 0.6;

/** The way (m) that the set travels in a step, along and across, summed over its stored poses. */
export function travelOf(run: Run, step: number): number {
  const { first, count } = run.steps[step];
  const [along, across] = [MOTIONS.indexOf("rearEnd"), MOTIONS.indexOf("across")];
  const moved = (pose: number, column: number) =>
    run.motions[pose * MOTIONS.length + column] - run.motions[(pose - 1) * MOTIONS.length + column];
  let way = 0;
  for (let i = first + 1; i < first + count; i++) {
    const part = Math.hypot(moved(i, along), moved(i, across));
    if (Number.isFinite(part)) way += part;
  }
  return way;
}

/** Divides the width 0..1 among the steps, in proportion to their measure; none is drawn narrower than legible. */
export function axisOf(run: Run, width: Width): Axis {
  const n = run.steps.length;
  const measure = run.steps.map(({ step }, i) => {
    if (width === "travel") return travelOf(run, i);
    return width === "time" ? (step.minutes ?? 0) : 1;
  });
  const has = measure.map((value) => value > 1e-9);
  const total = measure.reduce((sum, value, i) => sum + (has[i] ? value : 0), 0);
  const least = total > 0 ? narrow / n : 1 / n;
  const left = 1 - least * has.filter((one) => !one).length;
  const parts = measure.map((value, i) => (has[i] ? Math.max((value / total) * left, least) : least));
  const sum = parts.reduce((all, part) => all + part, 0);
  const edges = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) edges[i + 1] = i === n - 1 ? 1 : edges[i] + parts[i] / sum;
  return { width, edges, unknown: width === "time" ? has.flatMap((one, i) => (one ? [] : [i])) : [] };
}

/** From a place in the operation to 0..1. */
export function toX(axis: Axis, place: Place): number {
  const from = axis.edges[place.step];
  return from + (axis.edges[place.step + 1] - from) * place.progress;
}

/** From 0..1 to a place in the operation; on the edge between two steps, the start of the later one. */
export function fromX(axis: Axis, x: number): Place {
  const n = axis.edges.length - 1;
  if (n <= 0 || !(x > 0)) return { step: 0, progress: 0 };
  if (x >= 1) return { step: n - 1, progress: 1 };
  let step = 0;
  while (step < n - 1 && axis.edges[step + 1] <= x) step++;
  const from = axis.edges[step];
  return { step, progress: Math.min(1, Math.max(0, (x - from) / (axis.edges[step + 1] - from))) };
}
