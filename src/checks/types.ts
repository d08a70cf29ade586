// The one result of a plan: runs of its sets, what was found, and who chose each limit.

import type { Acceptance, WayBackStep } from "../plan/index.ts";
import type { SetRun } from "../sequence/index.ts";
import type { Extent } from "./extent.ts";

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
  /** Check id, such as 'hook-load' or 'tipping'. */
  check: string;
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

export interface SetResult extends SetRun {
  name: string;
  strips: UseStrip[];
  /** Which poses stand with one hook or group lost; absent until it is worked out. */
  backed?: SetBacked;
  /** The way back of every step; absent until it is worked out. */
  waysBack?: WayBack[];
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
