// What stands on transporters: hulls of group centroids, tipping, spine moments, twist, an axle line lost.
export { slopeAcross, slopeAlong, twistOf } from "./corners.ts";
export { hullOf, type PlanPoint } from "./hull.ts";
export { type LineGroups, type LineLost, worstLineLost } from "./lineLost.ts";
export { type SpineForce, type SpineMoment, spineMoment } from "./spine.ts";
export {
  type Base,
  baseOf,
  type Edge,
  type EdgeMargin,
  leastMargin,
  loadToReach,
  marginAbout,
  type OnBase,
} from "./standing.ts";
