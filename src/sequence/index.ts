/**
 * sequence: from a plan to the poses of its operation, step by step, with the history that each step leaves.
 *
 * ```ts
 * import { biteAt, crossing } from "./index.ts";
 * biteAt(10, 2.5, 1); // => { rolled: 10, tip: 10 }
 * biteAt(10, 2.5, 0.2).rolled; // => 2.5
 * biteAt(10, 2.5, 0.2).tip; // => 0
 * Math.round(crossing((x) => x * x - 2, 0, 2, -2, 2, 1e-12) * 1e6); // => 1414214
 * ```
 */
export { prepareContext, startSituation } from "./context.ts";
export { expansion } from "./heat.ts";
export { idealise, setData } from "./idealise.ts";
export { hookStiffness } from "./machinery.ts";
export { boomOf, datumPoint, hookAbovePicks, pathLevel, planeLevel, plumbOf, wheelsOf } from "./place.ts";
export { solvePose, tareOf } from "./pose.ts";
export {
  poseAt,
  type RunOptions,
  runOf,
  runSet,
  runSteps,
  type SolvedStep,
  STRAIGHT,
  situationAt,
  solveStep,
  withBrakes,
} from "./run.ts";
export { crossing, peak } from "./search.ts";
export { type Station, sectionReader } from "./sections.ts";
export { landStages } from "./steps/hoisting.ts";
export { biteAt, motionOf, oneMotion, stepKinds } from "./steps/index.ts";
export { bunkGap } from "./steps/kind.ts";
export { ledgerMass } from "./steps/reading.ts";
export * from "./types.ts";
export { girderShape, worldOf } from "./world.ts";
