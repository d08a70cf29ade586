/**
 * checks: every quantity against its limit, and the one Result that screen, CSV and report read.
 *
 * ```ts
 * import { ratedLoad } from "./index.ts";
 * const rows = [{ radius_m: 20, boom_m: 42, rated_t: 50 }, { radius_m: 24, boom_m: 42, rated_t: 40 }];
 * const chart = { invented: true, interpolation: false, rows };
 * ratedLoad(chart, 21, 42, 10); // => 400000
 * ratedLoad(chart, 24.5, 42, 10); // => null
 * ```
 */
export { BACKED, backedOf, NO_NUMBERS, type Progress, UNBACKED } from "./backed.ts";
export {
  type Buckling,
  bucklingOver,
  runBuckling,
  withBuckling,
} from "./buckling/stages.ts";
export { type Completed, type CompleteOptions, completeInTurn, completeResult } from "./complete.ts";
export type { Requirement, Way } from "./coverage/form.ts";
export { requirements } from "./coverage/requirements.ts";
export { type Sensitivity, sensitivityAt, sensitivityWords } from "./cranes/capacityLeft.ts";
export { type HookLoad, hookLoadOf, radiusOf, ratedLoad } from "./cranes/hookLoad.ts";
export { type IndicatorReading, indicatorReading } from "./cranes/indicator.ts";
export { type CraneMotions, type Motion, motionsIn } from "./cranes/motions.ts";
export { hookLoadWith } from "./cranes/onHook.ts";
export { type Reach, reachAt } from "./cranes/reach.ts";
export { envelopesOf } from "./envelope.ts";
export { type Extent, extentOf } from "./extent.ts";
export { type GroundDistance, type GroundUse, groundUse } from "./ground/used.ts";
export { type Answer, type InTurnOptions, solveInTurn, solverVersion } from "./inTurn.ts";
export { type KeptRuns, noRuns } from "./keptRuns.ts";
export * from "./landing/index.ts";
export { type LeanHold, type LeanPart, leanHeldBy, leanWords } from "./lean.ts";
export type { ReadyRule } from "./limitForm.ts";
export {
  isLooser,
  type Limit,
  type LimitState,
  limitNames,
  limitOf,
  limitStates,
  readyRules,
  ruleSetWords,
} from "./limits.ts";
export { type LimitForm, limitTable } from "./limitTable.ts";
export { checkList, checksWithout } from "./list.ts";
export { type Loss, lossesOf } from "./losses.ts";
export {
  type CheckList,
  type DataMeasure,
  type Measure,
  marginOf,
  type Reading,
  type TracedReading,
  useOf,
} from "./measure.ts";
export { inOrder } from "./measureFindings.ts";
export { type CheckName, checkNames, nameForms } from "./names.ts";
export type { Governing } from "./propose/evaluate.ts";
export { type Proposal, proposeSequence, type RunnerUp } from "./propose/propose.ts";
export { type PickSlings, proposeSlings, type SlingProposal } from "./rigging/proposeSlings.ts";
export { type LegUse, type PartUse, riggingUse } from "./rigging/used.ts";
export {
  type AnswerError,
  type Answers,
  answerErrors,
  type CraneAnswer,
  linesOf,
  type SteelAnswer,
  type TransporterAnswer,
} from "./setUp/answers.ts";
export { type FirstPlan, firstPlan } from "./setUp/firstPlan.ts";
export {
  type ProposalProgress,
  type ProposedSets,
  proposedSets,
  type SetProposal,
} from "./setUp/proposedSets.ts";
export { type SolveOptions, solvePlan } from "./solvePlan.ts";
export { allCorners, chosenCorners } from "./spread/choose.ts";
export { bestName, type Corner, type CornerPart, cornerOf } from "./spread/corner.ts";
export { inSpread } from "./spread/findings.ts";
export { bestRun } from "./spread/gather.ts";
export {
  cornerName,
  runSpread,
  type SolvedSet,
  type Spreading,
  spreadOver,
  withSpread,
} from "./spread/run.ts";
export { stripMeasures } from "./strips.ts";
export { overturningOf } from "./tilt.ts";
export { type Leaf, type Place, type Trace, tracesIn } from "./trace.ts";
export { traceOfUse } from "./traced.ts";
export { type Asked, type AskedData, askedOf, dataMeasuresOf, type Traced, traceOf } from "./traceOf.ts";
export type * from "./types.ts";
export { waysBackOf } from "./wayBack.ts";
export { type BoomWind, windForces } from "./wind/forces.ts";
export { runWind, type WindSearch, windOver, withWind } from "./wind/highest.ts";
export { MOST_WIND } from "./wind/seek.ts";
export type * from "./wind/types.ts";
