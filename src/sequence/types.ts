// What a sequence is made of: the situation that history leaves behind, poses, events, and the run of one set.

import type { SetModel, Solution, State } from "../mechanics/index.ts";
import type { Plan, PlanSet, Step } from "../plan/index.ts";

/** The soffit datum of the set as a plane in the world: elevation at (chainage, y = 0), slopes as tangents. */
export interface DatumPlane {
  chainage: number;
  elevation: number;
  /** > 0 rises forward. */
  grade: number;
  /** > 0 falls to the left (+y). */
  crossfall: number;
}

export interface TrainSituation {
  /** Transporter id. */
  id: string;
  /** Still part of the statics: standing under the set, loaded or not. */
  under: boolean;
  /** Station of the deck centre on the set, m. While it leaves, where it left from. */
  deckAt: number;
  /** Travelled since it began to leave, m: along the path and across it. */
  gone: [number, number];
  braked: boolean;
  /** Packing above the bunks by girder, m. */
  packing: Record<string, number>;
}

export interface CraneSituation {
  /** Crane id. */
  id: string;
  hooked: boolean;
  /** Elevation of the soffit at the picks at which the line is just taut, m; meaningful while hooked. */
  tautAt: number;
  /** Load held by the operator, N, while a step asks for a load; null when the rope is locked. */
  heldLoad: number | null;
  /** Boom tip in plan: chainage and y, m. */
  tip: [number, number];
  /** Walked from where the plan puts it, m: along and across. */
  moved: [number, number];
}

/** Everything that history hands from one step to the next. Plain data; never changed in place. */
export interface Situation {
  /** Chainage of the set's rear end, m, and the y of its axis. */
  rearEnd: number;
  across: number;
  plane: DatumPlane;
  trains: TrainSituation[];
  /** Commanded mean lift of every hydraulic group, m from mid-stroke. */
  groupLift: Record<string, number>;
  cranes: CraneSituation[];
  /** Ids of the lashings that are on. */
  lashed: string[];
  /** Per lashing that is on: how far above the deck the soffit stood when it was tied, m. */
  tiedAt: Record<string, number>;
  /** By support name: how far the ground below it has sunk where it stands now, m. Absent: not at all. */
  sunk: Record<string, number>;
  /** What temperature made of the unstressed set: strain along it, and curvature in 1/m, > 0 with its middle up. */
  heat: { strain: number; bow: number };
  /** True once the set stands over its seats, so that it may touch them. */
  overSeats: boolean;
}

export type SupportKind =
  | "far crane"
  | "near crane"
  | "front train"
  | "rear train"
  | "far bearings"
  | "near bearings"
  | "lashing";

/** One column of the forces: its name is the one used on screens, in CSV and in `carries`. */
export interface Support {
  /** 'far', 'rear left', 'bunk rear L 1', 'rear:1L', 'near L', ... unique within a set. */
  name: string;
  /** Name of the same force in the answer of the statics, such as 'hoist far' or 'group rear left'. */
  force: string;
  what: "hoist" | "line" | "group" | "bunk" | "cylinder" | "bearing" | "lashing";
  kind: SupportKind;
  /** Crane, transporter or lashing id it belongs to; '' for bearings. */
  of: string;
  /** One of the bands that together carry the set (hoists, groups, bearings). */
  band: boolean;
}

/** Names of the motions kept with every pose, in order; SI. */
export const MOTIONS = [
  "rearEnd",
  "across",
  "elevation",
  "grade",
  "crossfall",
  "lean",
  "level",
  "noseDroop",
  "tailDroop",
  "residualForce",
  "residualMoment",
  "passes",
] as const;
export type MotionName = (typeof MOTIONS)[number];

/** What a context holds for one set of a plan: prepared once, used by every pose. */
export interface SetContext {
  plan: Plan;
  set: PlanSet;
  model: SetModel;
  supports: Support[];
  supportIndex: Map<string, number>;
  length: number;
  gravity: number;
  /** What a corner of the spread changes in the States; left out for the plan as it stands. */
  change?: StateChange;
}

/** Changes that the uncertainty of loads, levels and stiffnesses makes in the State of a pose of the step with this index. */
export type StateChange = (state: State, step: number) => State;

/** One solved pose. */
export interface Pose {
  readonly step: number;
  readonly progress: number;
  readonly situation: Situation;
  readonly state: State;
  readonly solution: Solution;
  /** Force per support, N; NaN where the support is not part of this pose. */
  readonly forces: Float64Array;
  /** Part of the set's weight on each band, N: group tare taken off; 0 for what is no band. */
  readonly shares: Float64Array;
  readonly motions: Float64Array;
}

/** A signed margin handed in by a check: its zero is an event. */
export interface Watch {
  /** Check id and subject, for the event's words. */
  check: string;
  subject: string;
  /** Positive while inside the limit; NaN where it does not apply. */
  margin: (pose: Pose) => number;
}

/** Something that the motion of a step itself found. */
export interface Happening {
  kind:
    | "cap reached"
    | "end not reached"
    | "out of order"
    | "not clear"
    | "not provable"
    | "no equilibrium"
    | "reading off"
    | "count not met"
    | "rest"
    | "length change"
    | "missing data";
  /** A stop where nothing is said. */
  level?: "caution" | "note";
  subject: string;
  progress: number;
  value: number | null;
  limit: number | null;
  unit: string;
  words: string;
}

export interface StepRun {
  index: number;
  step: Step;
  solved: boolean;
  /** Situation at its start, and the numbers that its search found (heights, distances), enough to rebuild it. */
  start: Situation;
  ends: number[];
  happenings: Happening[];
  /** First stored pose and how many. */
  first: number;
  count: number;
  /** With no equilibrium: what moves. */
  motion: string;
}

/** The run of one set: stored poses as typed arrays, one row each. */
export interface SetRun {
  setId: string;
  supports: Support[];
  /** Weight of the set, N; its CG [station, y, height above soffit], m. */
  weight: number;
  cg: [number, number, number];
  length: number;
  steps: StepRun[];
  count: number;
  step: Int32Array;
  progress: Float64Array;
  /** Words of the event at a pose, '' for none; several are joined with '; '. */
  events: string[];
  forces: Float64Array;
  shares: Float64Array;
  motions: Float64Array;
}

/** Where things are in the world (chainage, y left, elevation), m, elastic shape included. */
export interface World {
  /** Soffit at both ends of every girder. */
  girders: Record<string, { tail: Vec3; nose: Vec3 }>;
  /** Middle of both ends: mean of the girders. */
  tail: Vec3;
  nose: Vec3;
  /** Per crane: hook (the pin that the rigging hangs from) while hooked, boom tip, boom foot, centre of rotation. */
  cranes: Record<string, { hook: Vec3 | null; tip: Vec3; foot: Vec3; centre: Vec3; picks: Vec3[] }>;
  /** Ground contact of every wheel, id as `rear:1L`, and the stroke of its cylinder, m. */
  wheels: Record<string, Vec3>;
  strokes: Record<string, number>;
  /** Per transporter: deck centre at bunk height, its slopes, and the top of every bunk. */
  decks: Record<string, { centre: Vec3; lean: number; level: number; bunks: Vec3[] }>;
}
export type Vec3 = [number, number, number];
