// The one result of a plan: runs of its sets, what was found, and who chose each limit.

import type { SetRun } from "../sequence/index.ts";

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

export interface SetResult extends SetRun {
  name: string;
  strips: UseStrip[];
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
