// What every kind of step answers: how far its motion goes, and the situation at any progress of it.

import { camberAt, droopAt } from "../../mechanics/index.ts";
import type { Step, StepKind } from "../../plan/index.ts";
import type { Happening, Pose, SetContext, Situation } from "../types.ts";

/** Solves a situation while an end is searched; neighbours in the search quicken each other. */
export type Probe = (situation: Situation) => Pose;

/** The ends that a search found, and what it met on the way. */
export interface Found {
  /** Numbers that, with the step and its start, rebuild the motion (heights, distances); SI. */
  ends: number[];
  happenings: Happening[];
}

export interface StepMotion<S extends Step = Step> {
  find: (ctx: SetContext, step: S, start: Situation, probe: Probe) => Found;
  /** The situation at progress 0..1; at 0 it is `start`. */
  at: (ctx: SetContext, step: S, start: Situation, ends: number[], progress: number) => Situation;
  /** Progress at which the motion itself changes: bite ends, stages. */
  marks?: (step: S, ends: number[]) => number[];
  /** Progress at which what it goes over has a corner: a short dip lies between two of them. */
  looks?: (ctx: SetContext, step: S, start: Situation, ends: number[]) => number[];
  /** What the end leaves behind beyond `at(1)`, once its pose is solved. */
  settle?: (ctx: SetContext, end: Situation, pose: Pose) => Situation;
}

export type MotionOf<K extends StepKind> = StepMotion<Extract<Step, { do: K }>>;

/** Replaces one crane of a situation. */
export function withCrane(
  s: Situation,
  id: string,
  change: (c: Situation["cranes"][number]) => Partial<Situation["cranes"][number]>,
): Situation {
  return { ...s, cranes: s.cranes.map((c) => (c.id === id ? { ...c, ...change(c) } : c)) };
}

export function happening(
  kind: Happening["kind"],
  subject: string,
  words: string,
  numbers: Partial<Pick<Happening, "value" | "limit" | "unit" | "progress" | "level">> = {},
): Happening {
  return { kind, subject, progress: 0, value: null, limit: null, unit: "", words, ...numbers };
}

/** What is left of the settlement below some supports when they have left so much (0..1) of the hollows they stood in. */
export function sunkLess(
  sunk: Situation["sunk"],
  supports: readonly string[],
  left: number,
): Situation["sunk"] {
  if (!supports.some((name) => sunk[name])) return sunk;
  const kept = Object.entries(sunk).map(([name, by]): [string, number] =>
    supports.includes(name) ? [name, by * Math.max(0, 1 - left)] : [name, by],
  );
  return Object.fromEntries(kept.filter(([, by]) => by !== 0));
}

/** Force of the hoist of a crane in a solved pose, N; 0 when it is not on. */
export function hookForce(ctx: SetContext, pose: Pose, crane: string): number {
  const F = pose.forces[ctx.supportIndex.get(`hoist ${crane}`) ?? -1];
  return Math.max(0, F || 0);
}

/**
 * How far the line of a crane is from just taut, m: positive is slack to take in, negative is stretch.
 * For separate lines, the one that tautens first.
 */
export function slackOf(pose: Pose, crane: string): number {
  const { devices, contact, layout } = pose.solution;
  let slack = Number.POSITIVE_INFINITY;
  devices.forEach((d, j) => {
    if (d.kind === "hoist" && layout.hoists[d.of].name === crane)
      slack = Math.min(slack, contact.v[j] - d.datum);
  });
  return slack;
}

/** Smallest gap over all bunks of a transporter, m; 0 while any of them carries. */
export function bunkGap(pose: Pose, transporter: string): number {
  const { devices, contact, layout } = pose.solution;
  let gap = Number.POSITIVE_INFINITY;
  devices.forEach((d, j) => {
    if (d.kind !== "bunk" || layout.trains[d.of].name !== transporter) return;
    gap = Math.min(gap, contact.F[j] > 0 ? 0 : contact.v[j] - d.datum);
  });
  return gap;
}

/** Height of a girder's soffit above the datum plane at a station, camber and elastic shape included, m. */
export function soffitLevel(pose: Pose, girder: number, s: number): number {
  return droopAt(pose.solution, girder, s) + camberAt(pose.solution.model, girder, s);
}

/** Height of a deck's bunk level above the datum plane at a place of the deck (from its centre), m; NaN when it is gone. */
export function deckLevel(pose: Pose, transporter: string, x: number, y: number): number {
  const { contact, problem, layout } = pose.solution;
  const deck = layout.trains.findIndex((t) => t.name === transporter);
  if (deck < 0) return Number.NaN;
  const i = problem.N - 3 * layout.trains.length + 3 * deck;
  return contact.a[i] + contact.a[i + 1] * y - contact.a[i + 2] * x;
}
