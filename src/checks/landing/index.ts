// What is told of a landing beside its findings: tables' data for a report.

export { backwallGaps, endReach, gapsBetweenSets } from "./gaps.ts";
export { type Misfit, misfitOf } from "./infill.ts";
export { type Landed, landedAsDesigned, landedOn, topsOf } from "./landed.ts";
export {
  type BearingNow,
  type Landing,
  type LandStage,
  landingsOf,
  type Touch,
  touchesOf,
} from "./order.ts";
export { type PackingRow, packingOf, packingOff } from "./packing.ts";
export { offPlane, seatOff } from "./seatLevels.ts";
export { proposeShims, type ShimChoice, type ShimProposal } from "./shims.ts";
export { sweptCg } from "./sweep.ts";
export { soleOffset } from "./temperature.ts";
