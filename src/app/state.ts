// What the screen knows: the plan, its result, the cursor with the pose solved for it, and how things are viewed.
import { type Answered, type Before, notAnswered } from "./answered.ts";
import type { Place, Width } from "./axis.ts";
import type { History } from "./history.ts";
import type {
  Finding,
  Plan,
  PlanError,
  Pose,
  Result,
  SetBuckling,
  SetContext,
  SpreadResult,
  System,
  Table,
} from "./types.ts";

/** The open document. While its draft has no error, the draft is the plan. */
export interface Document {
  /** The last good plan: the one that is solved. null while a file that was opened to be mended never had one. */
  plan: Plan | null;
  /** What is being edited, as the forms and the file have it. */
  draft: Plan;
  /** What is wrong with the draft; then the plan, and all that is on screen of it, is older than the draft. */
  errors: PlanError[];
  /** The draft is only being tried out, as while dragging: no entry of the history holds it. */
  trying: boolean;
  /** Name of the file or of the example it came from. */
  name: string;
  /** Counts the good plans, so that a late result is known to be late. */
  number: number;
  /** Counts the documents opened. */
  opened: number;
}

/** Whether changes are kept in this browser, and since when (ms since 1970); or why they are not. */
export type Keeping = { is: "idle" } | { is: "kept"; at: number } | { is: "failed"; words: string };

/** Work that was kept of a page that is gone. */
export interface Recovered {
  /** Its key in this browser. */
  key: string;
  name: string;
  title: string;
  /** Its last change, ms since 1970. */
  at: number;
  /** Changes that no file holds. */
  changes: number;
  /** Labels of the last of them, oldest first. */
  labels: readonly string[];
}

/** A plan that was open lately. */
export interface RecentPlan {
  key: string;
  name: string;
  title: string;
  at: number;
  /** 0 for a plan that a file holds; else kept work that was put away, with so many changes that no file holds. */
  changes: number;
}

/** The file of the open document: what became of it last, and when (ms since 1970). */
export interface Filed {
  name: string;
  is: "opened" | "saved" | "downloaded";
  at: number;
  /** Errors that the draft had when it was written. */
  errors: number;
}

/** A file that could not be opened, with every error in it; the last good plan stays. */
export interface Failure {
  name: string;
  errors: PlanError[];
  /** What can be opened of it to be mended; or why it cannot, '' where that goes without saying. */
  draft?: Plan | null;
  beyond?: string;
}

/** How far the solver is. */
export type Solving =
  | { is: "idle" }
  | { is: "running"; words: string; done: number; of: number }
  | { is: "done" }
  | { is: "failed"; words: string };

/** Which corners of what is uncertain are run: those that govern, or every combination. */
export type CornersAsked = "chosen" | "all";

/** How far low and high are. Told to stop, they keep what they have. */
export type Spreading =
  | { is: "idle" }
  | { is: "running"; asked: CornersAsked; set: string; done: number; of: number; stopping: boolean }
  | { is: "done" }
  | { is: "failed"; words: string };

/** How far the search for buckling is. Told to stop, it keeps what it has. */
export type Buckling =
  | { is: "idle" }
  | { is: "running"; set: string; done: number; of: number; stopping: boolean }
  | { is: "done" }
  | { is: "failed"; words: string };

/** How far tables that were asked for are; `key` names set and section. Told to stop, they keep what they have. */
export type Tabling =
  | { is: "idle" }
  | { is: "running"; key: string; done: number; of: number; stopping: boolean }
  | { is: "failed"; key: string; words: string };

/** Tables on one matter of a set, as far as they are worked out, and what they found beyond the run. */
export interface HeldTables {
  tables: Table[];
  findings: Finding[];
  done: number;
  of: number;
}

/** Low and high of one set, and over which corners. */
export interface HeldSpread {
  spread: SpreadResult;
  asked: CornersAsked;
  /** Corners asked for, of which `spread.done` were run, and how many every combination makes. */
  of: number;
  all: number;
}

/** A place in the operation of one set. */
export interface Cursor extends Place {
  /** Index of the set in the plan. */
  set: number;
}

export type SceneView = "elevation" | "plan" | "end" | "free" | "cranes";
/** What stands below the table of reactions: the list of findings, what is to be known of the
 * cursor's step, what the girders feel, tables that were asked for, or the history of the plan. */
export type Panel = "findings" | "step" | "girders" | "tables" | "history";
export type Theme = "light" | "dark";

/** Parts of the sheet of plan data, in the order of their list. */
export const planParts = [
  "header",
  "site",
  "path",
  "seats",
  "bearings",
  "surroundings",
  "wind",
  "transporters",
  "cranes",
  "rigging",
  "lashings",
  "sets",
  "girders",
  "splices",
  "frames",
  "attachments",
  "ledger",
  "onTransporters",
  "picks",
  "steps",
  "limits",
  "spread",
  "people",
  "accepted",
] as const;
export type PlanPart = (typeof planParts)[number];

/** How things are shown; no part of the plan. */
export interface View {
  scene: SceneView;
  /** Factor by which the elastic shape is drawn. */
  exaggeration: number;
  units: System;
  theme: Theme;
  width: Width;
  /** Factor on the speed of running. */
  speed: number;
  panel: Panel;
  /** Which section the tables are of; '' for none yet. */
  section: string;
  /** Every strip of use, in the place of the scene; else those most used. */
  allStrips: boolean;
  /** Which action the girders' diagrams show. */
  action: "moment" | "shear" | "torsion";
  /** The buckled shape is drawn where the cursor stands at a stage that has one. */
  buckled: boolean;
  /** Which part of the sheet of plan data stands in the place of the scene; null for none. */
  data: PlanPart | null;
  /** The place of the draft to which the sheet leads, as of an error; '' for none. */
  dataAt: string;
  /** Handles stand at what can be moved, in the views of `movingViews`. */
  moving: boolean;
}

/** What stands over the Plan place: the start of a new plan, the sets side by side, plans that were open lately, the
 * finder of actions, the sheet of keys, or nothing. */
export type Over = "" | "start" | "sets" | "recent" | "find" | "keys";

export interface AppState {
  document: Document | null;
  over: Over;
  /** Every committed edit; without entries while nothing is open. */
  history: History;
  keeping: Keeping;
  /** What was recovered and is open now, until the user says what becomes of it; and other work left behind. */
  recovered: Recovered | null;
  leftBehind: readonly Recovered[];
  /** Plans to go back to, newest first; as they were when the list was last asked for. */
  recent: readonly RecentPlan[];
  /** null while the document has no file. */
  filed: Filed | null;
  /** Why a file could not be written; '' when it could. */
  notFiled: string;
  failure: Failure | null;
  result: Result | null;
  /** How much of the result answers the open plan, and what of it is older. */
  answered: Answered;
  /** What was there before the last edit or the drag under way, for old against new; null when it was put away. */
  before: Before | null;
  solving: Solving;
  /** How far what follows the first answer is: which poses are backed, and the ways back. */
  completing: Solving;
  /** Low and high of each set by its id, as they are worked out behind the result. */
  spreads: Readonly<Record<string, HeldSpread>>;
  spreading: Spreading;
  /** At how many times its loads each set buckles, by its id; asked for by the user. */
  bucklings: Readonly<Record<string, SetBuckling>>;
  buckling: Buckling;
  /** Tables that were asked for, by set and section. */
  tables: Readonly<Record<string, HeldTables>>;
  tabling: Tabling;
  cursor: Cursor;
  /** The set of the cursor, prepared for solving poses; null until it is. */
  context: SetContext | null;
  /** The pose at the cursor, solved anew for it; null while there is none. */
  pose: Pose | null;
  /** Why there is no pose although the plan was solved; '' when there is one. */
  noPose: string;
  /** Name of the support, crane, transporter or girder that is looked at; '' for none. */
  selected: string;
  /** Id of the finding that was chosen last; '' for none. */
  finding: string;
  playing: boolean;
  view: View;
}

/** Views of the scene, in the order of their keys 1 to 5. */
export const sceneViews: readonly SceneView[] = ["elevation", "plan", "end", "free", "cranes"];

/** Views in which things can be moved: those that look square at what moves. */
export const movingViews: readonly SceneView[] = ["elevation", "plan", "cranes"];

/** The state before anything was opened. */
export const emptyState: AppState = {
  document: null,
  over: "",
  history: { entries: [], index: 0, saved: { index: 0, away: 0 } },
  keeping: { is: "idle" },
  recovered: null,
  leftBehind: [],
  recent: [],
  filed: null,
  notFiled: "",
  failure: null,
  result: null,
  answered: notAnswered,
  before: null,
  solving: { is: "idle" },
  completing: { is: "idle" },
  spreads: {},
  spreading: { is: "idle" },
  bucklings: {},
  buckling: { is: "idle" },
  tables: {},
  tabling: { is: "idle" },
  cursor: { set: 0, step: 0, progress: 0 },
  context: null,
  pose: null,
  noPose: "",
  selected: "",
  finding: "",
  playing: false,
  view: {
    scene: "elevation",
    exaggeration: 1,
    units: "SI",
    theme: "light",
    width: "steps",
    speed: 1,
    panel: "findings",
    section: "",
    allStrips: false,
    action: "moment",
    buckled: false,
    data: null,
    dataAt: "",
    moving: false,
  },
};
