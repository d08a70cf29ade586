// Answers as JSON, every number in full precision and plain SI: of one State, and of a whole result pose by pose.

import {
  BACKED,
  type Corner,
  type Finding,
  NO_NUMBERS,
  type Result,
  type SetResult,
  type SpreadResult,
  type UnbackedStretch,
  type WayBack,
} from "../checks/index.ts";
import type { StateAnswer } from "../mechanics/index.ts";
import type { Plan } from "../plan/index.ts";
import { MOTIONS, type Pose, poseAt, type SetContext, type Vec3, worldOf } from "../sequence/index.ts";
import { type Contexts, contextsOf } from "./csv.ts";
import { caution, type Origin, originOf } from "./origin.ts";

/** The answer to one State. Without equilibrium: the motion in words, and no numbers. */
export function stateJson(answer: StateAnswer, solverVersion: string): string {
  const head = { format: "handspan-answer", version: 1, solverVersion, caution };
  const { status, motion, notes } = answer;
  const body = status === "solved" ? answer : { status, ...(motion === undefined ? {} : { motion }), notes };
  return `${JSON.stringify({ ...head, ...body }, null, 2)}\n`;
}

/** One stored pose in names. Forces in N: a hook's is the net load on its picks; null: no part of the pose. */
export interface PoseJson {
  step: string;
  number: number;
  progress: number;
  event: string;
  /** Whether the set stands with any one hook or group lost; null: not worked out, or without numbers. */
  backed: boolean | null;
  /** Other than `solved`: no numbers. */
  status: Pose["solution"]["status"];
  forces: Record<string, number | null>;
  shares: Record<string, number>;
  strokes: Record<string, number>;
  motions: Record<string, number>;
  residual: { force: number; moment: number };
  /** Points in the world, m: chainage, left, elevation. */
  world: {
    nose: Vec3;
    tail: Vec3;
    girders: Record<string, { tail: Vec3; nose: Vec3 }>;
    hooks: Record<string, Vec3 | null>;
    tips: Record<string, Vec3>;
    wheels: Record<string, Vec3>;
  };
}

/** A whole result in names. */
export interface ResultJson extends Origin {
  format: "handspan-result";
  version: 1;
  complete: boolean;
  worst: Result["worst"];
  findings: Finding[];
  sets: {
    id: string;
    name: string;
    weight: number;
    cg: [number, number, number];
    length: number;
    supports: SetResult["supports"];
    steps: {
      number: number;
      id: string;
      do: string;
      solved: boolean;
      motion: string;
      happenings: object[];
    }[];
    /** Parts of steps in which one loss brings the set down; null: not worked out. */
    unbacked: UnbackedStretch[] | null;
    /** The way back of every step, by its index; null: not worked out. */
    waysBack: WayBack[] | null;
    /** Low and high over the corners of what is uncertain, in N; null: not worked out. */
    spread: SpreadJson | null;
    /** Stages with their buckling factors and shapes; null: not worked out. */
    buckling: SetResult["buckling"] | null;
    /** Least distance of every pair in every step, m, with both points; null: not worked out. */
    clearances: SetResult["clearances"] | null;
    poses: PoseJson[];
  }[];
}

/** The result as one JSON text: findings, steps, and every stored pose with forces, strokes, motions and places. */
export function resultJson(
  result: Result,
  plan: Plan,
  contexts: Contexts = contextsOf(result, plan),
): string {
  const whole: ResultJson = {
    format: "handspan-result",
    version: 1,
    ...originOf(result, plan),
    complete: result.complete,
    worst: result.worst,
    findings: result.findings,
    sets: result.sets.map((set) => ({
      id: set.setId,
      name: set.name,
      weight: set.weight,
      cg: set.cg,
      length: set.length,
      supports: set.supports,
      steps: set.steps.map((s) => ({
        number: s.index + 1,
        id: s.step.id,
        do: s.step.do,
        solved: s.solved,
        motion: s.motion,
        happenings: s.happenings,
      })),
      unbacked: set.backed?.stretches ?? null,
      waysBack: set.waysBack ?? null,
      spread: set.spread === undefined ? null : spreadJson(set.spread),
      buckling: set.buckling ?? null,
      clearances: set.clearances ?? null,
      poses: posesOf(set, contexts),
    })),
  };
  return `${JSON.stringify(whole)}\n`;
}

/** The worst of a spread; corners and stored poses by their index, a corner beyond the list being the best values. */
export interface SpreadJson {
  corners: Corner[];
  assumed: string[];
  supports: SpreadResult["supports"];
  worst: SpreadResult["worst"];
}

function spreadJson({ corners, assumed, supports, worst }: SpreadResult): SpreadJson {
  return { corners, assumed, supports, worst };
}

function posesOf(set: SetResult, contexts: Contexts): PoseJson[] {
  const ctx = contexts.get(set.setId);
  if (ctx === undefined) throw new Error(`resultJson: found no prepared set "${set.setId}"; use contextsOf`);
  return Array.from({ length: set.count }, (_, p) => {
    const pose = poseAt(ctx, set.steps[set.step[p]], set.progress[p]);
    return poseJson(ctx, set, pose, p);
  });
}

/** A stored pose in names: forces, shares and motions as the result holds them, strokes and places solved anew. */
export function poseJson(ctx: SetContext, set: SetResult, pose: Pose, stored: number): PoseJson {
  const world = worldOf(ctx, pose);
  const n = set.supports.length;
  const forces: PoseJson["forces"] = {};
  const shares: PoseJson["shares"] = {};
  set.supports.forEach((support, j) => {
    const force = set.forces[stored * n + j];
    forces[support.name] = Number.isNaN(force) ? null : force;
    if (support.band) shares[support.name] = set.shares[stored * n + j];
  });
  const { residual, status } = pose.solution;
  const cranes = Object.entries(world.cranes);
  return {
    step: set.steps[pose.step].step.id,
    number: pose.step + 1,
    progress: pose.progress,
    event: set.events[stored],
    backed: backedAt(set, stored),
    status,
    forces,
    shares,
    strokes: world.strokes,
    motions: Object.fromEntries(MOTIONS.map((name, m) => [name, set.motions[stored * MOTIONS.length + m]])),
    residual: { force: residual.force, moment: residual.moment },
    world: {
      nose: world.nose,
      tail: world.tail,
      girders: world.girders,
      hooks: Object.fromEntries(cranes.map(([id, crane]) => [id, crane.hook])),
      tips: Object.fromEntries(cranes.map(([id, crane]) => [id, crane.tip])),
      wheels: world.wheels,
    },
  };
}

function backedAt(set: SetResult, stored: number): boolean | null {
  const mark = set.backed?.marks[stored];
  return mark === undefined || mark === NO_NUMBERS ? null : mark === BACKED;
}
