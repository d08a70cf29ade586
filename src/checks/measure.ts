// The form of a check: a quantity of a pose, or of the data alone, against a limit, with all that a finding must say.

import type { Plan } from "../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../sequence/index.ts";
import type { Limit } from "./limits.ts";
import type { CheckName } from "./names.ts";
import type { Trace } from "./trace.ts";
import type { Finding, Level, SetBacked, SetResult, WayBack } from "./types.ts";
import type { StepWind } from "./wind/types.ts";

/** A value and its limit; NaN value where the check does not apply, NaN limit where the value is told without one. */
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

/** A reading with how its value and its limit were worked out, in SI; null for a limit that there is not. */
export interface TracedReading {
  reading: Reading;
  value: Trace;
  limit: Trace | null;
}

/** What every check of one subject says, whatever it is read from. */
export interface Quantity {
  check: CheckName;
  subject: string;
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
}

/** One check of one subject, read at a pose. */
export interface Measure extends Quantity {
  /** Kind of support, for its hue; '' for none. */
  kind: string;
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

/** One check of one subject, read from the data alone: it needs no pose, and no step is run for it. */
export interface DataMeasure extends Quantity {
  /** Set id; '' for the plan as a whole. */
  set: string;
  read: () => Reading;
  /** The reading with its trace; null where the check does not apply. */
  trace: () => TracedReading | null;
  /** What is wrong, in one sentence with its numbers. */
  words: (reading: Reading) => string;
}

/** Makes the measures of a check for one set. */
export type MeasureMaker = (ctx: SetContext) => Measure[];

/**
 * Makes the measures of a check that compares poses of a run, for its trace: each applies at the pose where the check's
 * finding stands and nowhere else.
 */
export type RunMeasureMaker = (ctx: SetContext, run: SetRun) => Measure[];

/** Makes the measures that the data of a plan alone give; and those that want a set prepared, such as its stiffness. */
export type PlanMeasureMaker = (plan: Plan) => DataMeasure[];
export type SetMeasureMaker = (ctx: SetContext) => DataMeasure[];

/** Over the whole run of a set, with its stored poses in order. */
type OverRun<T> = (ctx: SetContext, run: SetRun, stored: readonly Pose[]) => T;

/** A check over a run, and the same in pieces where it takes long: it rests after each, and its caller may give it up. */
export interface RunCheck extends OverRun<Finding[]> {
  readonly inPieces?: OverRun<Generator<null, Finding[]>>;
}

/** The check that such pieces make, done to the end when it is called. */
export function ofPieces(inPieces: OverRun<Generator<null, Finding[]>>): RunCheck {
  const check: OverRun<Finding[]> = (...asked) => allOf(inPieces(...asked));
  Object.defineProperty(check, "name", { value: inPieces.name });
  return Object.assign(check, { inPieces });
}

/** What work returns that only rests on its way. */
function allOf<T>(work: Generator<null, T>): T {
  for (let next = work.next(); ; next = work.next()) if (next.done) return next.value;
}

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
  /** The same, of data alone: their findings are made of them by `dataFindings`, among `planChecks` and `runChecks`. */
  onPlan: PlanMeasureMaker[];
  onSet: SetMeasureMaker[];
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
export function marginOf(m: Pick<Quantity, "sense">, r: Reading): number {
  return m.sense === "greatest" ? r.limit * (1 + 1e-9) - r.value : r.value - r.limit * (1 - 1e-9);
}

/** Use of the limit: 1 at the limit. */
export function useOf(m: Pick<Quantity, "sense">, r: Reading): number {
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
