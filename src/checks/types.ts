// The one result of a plan: runs of its sets, what was found, and who chose each limit.

import type { BuckledGirder } from "../mechanics/index.ts";
import type { Acceptance, WayBackStep } from "../plan/index.ts";
import type { SetRun } from "../sequence/index.ts";
import type { SetClearances } from "./clearance/types.ts";
import type { Extent } from "./extent.ts";
import type { CheckName } from "./names.ts";
import type { Corner } from "./spread/corner.ts";
import type { StepWind } from "./wind/types.ts";

export type Level = "note" | "caution" | "stop";

/** A place in the operation: step index (from 0) and progress 0..1. */
export interface When {
  step: number;
  progress: number;
}

/** One finding = check + subject + one unbroken stretch of progress, joined across steps; its worst pose is kept. */
export interface Finding {
  id: string;
  level: Level;
  /** Name of its check. */
  check: CheckName;
  /** Set id; '' for the plan as a whole. */
  set: string;
  /** Support, crane, transporter or field that it is about. */
  subject: string;
  from: When | null;
  to: When | null;
  worst: When | null;
  /** Value and limit in `unit`; null where there is no number. */
  value: number | null;
  limit: number | null;
  unit: string;
  /** value / limit (or limit / value for least values) where it means something. */
  use: number | null;
  source: string;
  chosenBy: string;
  /** What is wrong, in one sentence with its numbers. */
  words: string;
  /** What would cure it. */
  cure: string;
}

/** Use of a limit by a subject at every stored pose, for the strips below who carries what. */
export interface UseStrip {
  check: string;
  subject: string;
  /** Kind of support for its hue; '' when none. */
  kind: string;
  limitWords: string;
  /** Use 0..1.. per stored pose of the set; NaN where it does not apply. */
  use: Float64Array;
}

/** A support whose loss brings the set down, in one unbroken part of a step. */
export interface Fall {
  support: string;
  /** Progress of the step. */
  from: number;
  to: number;
  /** Where `words` were found: what falls, and how. */
  at: number;
  words: string;
  /** Who accepted it by name; null when nobody did. */
  accepted: Acceptance | null;
}

/** A part of a step in which some single loss brings the set down: how far it moves in it, and for how long. */
export interface UnbackedStretch extends Extent {
  step: number;
  from: number;
  to: number;
  falls: Fall[];
  /** True when every loss in it is accepted by name. */
  accepted: boolean;
}

/** Which poses of a set are backed. */
export interface SetBacked {
  /** Per stored pose: 0 backed, 1 unbacked, 255 without numbers. */
  marks: Uint8Array;
  stretches: UnbackedStretch[];
}

/** The way back tried from one situation of a step. */
export interface WayBackTry {
  /** Progress of the step at which the crew turns back: 0, 0.5 or 1. */
  progress: number;
  ok: boolean;
  /** The commands that were run; none where nothing had been done yet, or where there is no way back. */
  steps: WayBackStep[];
  /** How it ends, or why it does not. */
  words: string;
  /** What its checks stopped at and the step itself does not; placed at the step and progress it begins from. */
  findings: Finding[];
}

/** The way back of one step. With the source `none` the step is past the point of no return. */
export interface WayBack {
  step: number;
  source: "plan" | "proposed" | "none";
  from: WayBackTry[];
}

/** The worst of one measure or support: its value, and the corner and stored pose that gave it. */
export interface WorstAt {
  value: number;
  /** Index into the corners; `bestRun` for the best run. */
  corner: number;
  /** Index of the stored pose. */
  pose: number;
}

export interface SpreadWorst extends WorstAt {
  check: string;
  subject: string;
  kind: string;
  /** Use of the limit, 1 at the limit; value and limit in `unit`. */
  use: number;
  limit: number;
  unit: string;
  where: string;
}

/** Highest and least use at every stored pose of a check that is drawn as a strip. */
export interface SpreadStrip {
  check: string;
  subject: string;
  low: Float64Array;
  high: Float64Array;
  /** The corner that gave the highest: index into the corners, `bestRun` for the best run. */
  highCorner: Uint16Array;
}

/** Low and high of one set over its corners. Rows of the arrays are the stored poses of the best run, one to one. */
export interface SpreadResult {
  setId: string;
  /** Those asked for, and behind them some with less wind, where all of it left no equilibrium. */
  corners: Corner[];
  /** How many of those asked for were run: all, unless it was broken off. */
  done: number;
  /** Quantities whose spread the plan leaves blank, so that a starter value stood in. */
  assumed: string[];
  /**
   * Stored pose x support, N: share of the set's weight for a band, force for all others; NaN where the support is not
   * part of the pose. And the corner that gave it: index into `corners`, `bestRun` where none goes beyond the best run.
   */
  low: Float64Array;
  high: Float64Array;
  lowCorner: Uint16Array;
  highCorner: Uint16Array;
  /** Per support: the least and the greatest over all poses; null for one that is never there. */
  supports: { name: string; low: WorstAt | null; high: WorstAt | null }[];
  /** Per check and subject: the worst. */
  worst: SpreadWorst[];
  strips: SpreadStrip[];
  /** Stops and cautions that the best run does not have. */
  findings: Finding[];
}

/** Greatest and least value in every element over all poses, with the stored pose of each; NaN and -1 where none is known. */
export interface Band {
  most: Float64Array;
  least: Float64Array;
  mostPose: Int32Array;
  leastPose: Int32Array;
}

/** Envelope of one girder over a run; signs as in the diagrams of the mechanics, N and N m. */
export interface GirderEnvelope {
  girder: string;
  /** Ends of the elements, one more than there are. */
  x: Float64Array;
  moment: Band;
  shear: Band;
  torsion: Band;
}

/** The pose of a step that was looked at. */
export interface BucklingStage {
  step: number;
  progress: number;
  /** At rest between two steps, or bent most within its step. */
  why: "rest" | "bent most";
  /** All loads may grow by this before it buckles; Infinity: never; null: it has no numbers, or no stiffness. */
  factor: number | null;
  /** Greatest moment of any girder there, N m, sagging positive; null without numbers. */
  moment: number | null;
  /** The buckled shape; empty where there is none. */
  shape: BuckledGirder[];
  /** Height above the soffit at which its sideways displacement is measured, m. */
  reference: number;
}

/** Which poses are looked at: the states of rest alone, or also where each step bends the girders most. */
export type StagesAsked = "rests" | "stages";

/** What was found for one set. */
export interface SetBuckling {
  asked: StagesAsked;
  stages: BucklingStage[];
  /** How many there are; more than `stages` when it was broken off. */
  of: number;
  findings: Finding[];
}

export type { Clearance, SetClearances } from "./clearance/types.ts";

/** The highest winds of a set. */
export interface SetWindLimits {
  steps: StepWind[];
  /** How many steps there are; more than `steps` when it was broken off. */
  of: number;
  findings: Finding[];
}

export interface SetResult extends SetRun {
  name: string;
  strips: UseStrip[];
  /** Which poses stand with one hook or group lost; absent until it is worked out. */
  backed?: SetBacked;
  /** The way back of every step; absent until it is worked out. */
  waysBack?: WayBack[];
  /** Low and high over the corners of what is uncertain; absent until it is worked out. */
  spread?: SpreadResult;
  /** Greatest and least moment, shear and torsion of every girder; absent until they are worked out. */
  envelopes?: GirderEnvelope[];
  /** At how many times its loads the set buckles, stage by stage; absent until it is worked out. */
  buckling?: SetBuckling;
  /** The highest wind in which each step passes; absent until it is worked out. */
  wind?: SetWindLimits;
  /** The least distance of everything that must keep clear, step by step; absent where that check was left out. */
  clearances?: SetClearances;
}

/** The one result object: scene, load share, tables, CSV and report read this and nothing else. */
export interface Result {
  planHash: string;
  solverVersion: string;
  ruleSet: string;
  sets: SetResult[];
  findings: Finding[];
  /** Worst level, or null when nothing was found. */
  worst: Level | null;
  /** False when some step had no equilibrium. */
  complete: boolean;
}
