/**
 * mechanics: from the physical state of one pose to its forces. It knows nodes, members and devices, no plan.
 *
 * ```ts
 * import { solveState } from "./index.ts";
 * const beam = { from: 0, to: 30, topFlange: [0, 0], web: [1, 0.12], bottomFlange: [0, 0], massPerMetre: 500 };
 * const seat = (name, at) => ({ name, girder: "G", at, seat: 0, stiffness: 1e10 });
 * const state = { format: "handspan-state", version: 1, gravity: 10, E: 2.1e11, G: 8.1e10, shear: false,
 *   girders: [{ name: "G", y: 0, pieces: [beam] }], bearings: [seat("rear", 0), seat("front", 18)] };
 * const answer = solveState(state);
 * answer.status; // => "solved"
 * Math.round(answer.forces["bearing front"]); // => 125000
 * ```
 */
import { answerOf } from "./answer.ts";
import { type SolveOptions, solveStatics } from "./solve.ts";
import type { State, StateAnswer } from "./state/types.ts";

/** Solves a State and puts the answer into names. Throws RangeError when a support lies off the set. */
export function solveState(state: State, options: SolveOptions = {}): StateAnswer {
  return answerOf(solveStatics(state, options));
}

export {
  answerOf,
  attitudeOf,
  droopAt,
  leanOf,
  levelOf,
  lineForces,
  recoverField,
  rowDisplacement,
  sidewaysOf,
} from "./answer.ts";
export { type BuckledGirder, type Buckling, bucklingOf } from "./buckling/index.ts";
export { condense } from "./condense.ts";
export { type Condensed, type ContactResult, contactWorkspace, solveContact } from "./contact.ts";
export { type Device, devicesOf } from "./devices.ts";
export {
  type CrossFrameForces,
  crossFrameForces,
  diagramsOf,
  type Extremes,
  greatestIn,
  momentAt,
  pointForcesOn,
  type Side,
  shearAt,
  torsionAt,
} from "./diagram.ts";
export type { Diagrams, GirderDiagram, PointAction } from "./diagramData.ts";
export { displacementRow, shearRatio, verticalStiffness } from "./frame.ts";
export * from "./ground/index.ts";
export { solveHorizontal } from "./horizontal.ts";
export { type Layout, layoutOf, trueUp } from "./layout.ts";
export { windCase } from "./ownWeight.ts";
export { prepareSet } from "./prepare.ts";
export { flexibility, rowAt } from "./rows.ts";
export { leastShims, leastShimsInSteps, type ShimsAsked } from "./seats/shims.ts";
export { seatStiffness } from "./seats/stiffness.ts";
export { camberAt, type SetData, type SetModel } from "./setModel.ts";
export {
  type CraneLoad,
  craneLoad,
  dynamicFactorOnshore,
  type HookLoads,
  hookLoadChain,
  type LoadItem,
  leverRule,
  loadItems,
  minimumCapacityFactor,
  type SharedLift,
} from "./sharedLift.ts";
export * from "./slings/index.ts";
export type { Solution } from "./solution.ts";
export { type SolveOptions, solveStatics } from "./solve.ts";
export { findMechanism } from "./stability.ts";
export * from "./standing/index.ts";
export type { StateError } from "./state/errors.ts";
export { type ReadStateResult, readState } from "./state/read.ts";
export { stateFormat, stateJsonSchema, stateVersion } from "./state/schema.ts";
export type * from "./state/types.ts";
export { sideMoments, tippingOf } from "./tipping.ts";
export {
  AIR,
  aashtoPressure,
  BARE_GIRDERS,
  BLOCK,
  basicPressure,
  beaufortOf,
  beaufortSpeed,
  boomArea,
  constructionReduction,
  type Exposure,
  girdersDrag,
  gustOver,
  gustPressure,
  heightFactor,
  hourlyRatio,
  latticeDrag,
  type Members,
  type PeakPressure,
  peakPressure,
  ROPE,
  shieldingFactor,
  type Terrain,
} from "./wind/index.ts";
