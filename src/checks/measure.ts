// The form of a check: a quantity of a pose against a limit, with all that a finding must say.

import type { Plan } from "../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../sequence/index.ts";
import type { Limit } from "./limits.ts";
import type { Trace } from "./trace.ts";
import type { Finding, Level, SetBacked, SetResult, WayBack } from "./types.ts";
import type { StepWind } from "./wind/types.ts";

/** A value and its limit at one pose; NaN value where the check does not apply. */
export interface Reading {
  value: number;
  limit: number;
  /** What governs here, when it differs from pose to pose. */
  source?: string;
  chosenBy?: string;
  /** A word on where within the subject, such as the axle line. */
  where?: string;
  /** Why the check does not apply here, where that is worth telling. */
  why?: string;
}

/** A reading with how its value and its limit were worked out, in SI. */
export interface TracedReading {
  reading: Reading;
  value: Trace;
  limit: Trace;
}

/** One check of one subject. */
export interface Measure {
  check: string;
  subject: string;
  /** Kind of support, for its hue; '' for none. */
  kind: string;
  level: Level;
  /** A greatest value must not be passed, a least value must not be fallen below. */
  sense: "greatest" | "least";
  /** Unit of value and limit as a person reads them, and the factor from SI to it. */
  unit: string;
  factor: number;
  digits: number;
  source: string;
  chosenBy: string;
  cure: string;
  /** Drawn as a strip below who carries what. */
  strip: boolean;
  /** Where its limit is crossed is an event of the run; else it is read at stored poses only, and events pass it by. */
  watched: boolean;
  /** One finding for all of a step: for what comes and goes with every bite of it. */
  perStep?: boolean;
  read: (pose: Pose) => Reading;
  /** The reading with its trace; null where the check does not apply. Left out by checks that have none. */
  trace?: (pose: Pose) => TracedReading | null;
}

/** Makes the measures of a check for one set. */
export type MeasureMaker = (ctx: SetContext) => Measure[];

/**
 * Makes the measures of a check that compares poses of a run, for its trace: each applies at the pose where the check's
 * finding stands and nowhere else.
 */
export type RunMeasureMaker = (ctx: SetContext, run: SetRun) => Measure[];

/** A check over the whole run of a set, with its stored poses in order. */
export type RunCheck = (ctx: SetContext, run: SetRun, stored: readonly Pose[]) => Finding[];

/** A check of the data alone, before anything is solved. */
export type PlanCheck = (plan: Plan) => Finding[];

/** Checks by when they are made. */
export interface CheckList {
  /** Read at every stored pose, at every pose of a search (where watched) and at every corner of the spread: cheap ones. */
  makers: MeasureMaker[];
  /** Read where somebody asks, for one pose and its trace: too costly for every pose. */
  onDemand: MeasureMaker[];
  /** The same, of what compares poses of a run. */
  onRun: RunMeasureMaker[];
  /** Over the whole run of a set. */
  runChecks: RunCheck[];
  planChecks: PlanCheck[];
  /** Of what stands with one hook or group lost, and of the ways back, once they are worked out. */
  backedChecks: ((ctx: SetContext, set: SetResult, backed: SetBacked) => Finding[])[];
  wayBackChecks: ((ctx: SetContext, set: SetResult, ways: readonly WayBack[]) => Finding[])[];
  /** Of the highest winds of the steps of a set, once they are searched. */
  highestChecks: ((ctx: SetContext, winds: readonly StepWind[]) => Finding[])[];
}

/** Signed margin of a reading, positive inside the limit (decided tolerance 1e-9). */
export function marginOf(m: Measure, r: Reading): number {
  return m.sense === "greatest" ? r.limit * (1 + 1e-9) - r.value : r.value - r.limit * (1 - 1e-9);
}

/** Use of the limit: 1 at the limit. */
export function useOf(m: Measure, r: Reading): number {
  if (Number.isNaN(r.value)) return Number.NaN;
  if (m.sense === "greatest") return r.limit > 0 ? r.value / r.limit : r.value > r.limit ? 2 : 0;
  return r.value > 0 ? r.limit / r.value : Number.POSITIVE_INFINITY;
}

/** A measure with what most of them share. */
export function measure(
  part: Pick<Measure, "check" | "subject" | "kind" | "read" | "cure"> & Partial<Measure>,
  limit: Pick<Limit, "source" | "chosenBy"> = { source: "", chosenBy: "" },
): Measure {
  return {
    level: "stop",
    sense: "greatest",
    unit: "kN",
    factor: 1e-3,
    digits: 1,
    strip: false,
    watched: true,
    source: limit.source,
    chosenBy: limit.chosenBy,
    ...part,
  };
}

export const NOT_HERE: Reading = { value: Number.NaN, limit: Number.NaN };
