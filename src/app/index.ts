/**
 * app: the state of the screen and the commands that change it. Knows the browser, but no React.
 *
 * ```ts
 * import { fromX, stepBeside, toX } from "./index.ts";
 * const axis = { width: "steps" as const, edges: Float64Array.of(0, 0.5, 1), unknown: [] };
 * toX(axis, { step: 1, progress: 0.5 }); // => 0.75
 * fromX(axis, 0.25); // => { step: 0, progress: 0.5 }
 * stepBeside(2, { step: 1, progress: 0.4 }, -1); // => { step: 1, progress: 0 }
 * ```
 */

export { type Answered, type Before, olderOf, planOfSet, setOfPose } from "./answered.ts";
export { type App, browserGround, createApp, csvName, type Ground } from "./app.ts";
export { tablesKey } from "./asked.ts";
export { type Axis, axisOf, fromX, type Place, toX, travelOf, type Width, widths } from "./axis.ts";
export { leastStage, stageAt } from "./buckled.ts";
export { type Completing, type Progress, type SolverClient, workerClient } from "./client.ts";
export { colourOf, kindColours } from "./colours.ts";
export { type Change, compareResults, type LoadChange } from "./compareResults.ts";
export { exposeHandle, type Handle } from "./debug.ts";
export { browserDesk, type Desk, type Notes, type PageLife } from "./desk.ts";
export type { Editing, KeptDocument } from "./editing.ts";
export type { BrowserFiles, FileHandle, FileToRead } from "./files.ts";
export { type Filing, fileName } from "./filing.ts";
export { type FindingNumbers, findingNumbers, inPlanUnits } from "./findingNumbers.ts";
export { changesUnsaved, type Entry, type History } from "./history.ts";
export type { Asked, KeepingWork } from "./keeping.ts";
export { beginProposal, type Proposing, proposalWords } from "./proposing.ts";
export { keepView, rememberedView } from "./remember.ts";
export type { Box, Put, Shelf } from "./shelf.ts";
export { allFindings, cornerWords, isOfSpread, nearestStored, storedAt, wider } from "./spreads.ts";
export {
  type AppState,
  type Buckling,
  type CornersAsked,
  type Cursor,
  type Document,
  emptyState,
  type Failure,
  type Filed,
  type HeldSpread,
  type HeldTables,
  type Keeping,
  movingViews,
  type Over,
  type Panel,
  type PlanPart,
  planParts,
  type RecentPlan,
  type Recovered,
  type SceneView,
  type Solving,
  type Spreading,
  sceneViews,
  type Tabling,
  type Theme,
  type View,
} from "./state.ts";
export { stepName, stepWords } from "./stepWords.ts";
export { eventWords, type Stop, stepBeside, stopBeside, stopsOf } from "./stops.ts";
export type { Tabs } from "./tabs.ts";
export type {
  Answer,
  BucklingStage,
  Finding,
  GirderEnvelope,
  Level,
  Plan,
  PlanError,
  PlanSet,
  Pose,
  Result,
  SetBuckling,
  SetContext,
  SetResult,
  SpreadResult,
  Step,
  StepRun,
  Support,
  SupportKind,
  System,
  Table,
  UnbackedStretch,
  UseStrip,
  WayBack,
  WayBackStep,
  WayBackTry,
  When,
  WorstAt,
} from "./types.ts";
