// Pressure on the ground below stiff bodies, mats, and distances to edges: SI, no plan.
export { type EdgePressures, type LeverTrack, oneWay, tracksByLever, twoWay } from "./closed.ts";
export { areaToEdge, placed } from "./distance.ts";
export { effectiveLength, type MatActions, matActions, matArea, pressureAtDepth, spreads } from "./mat.ts";
export {
  type Area,
  type Footing,
  footingOf,
  insideHull,
  loadOn,
  type Pressing,
  pressing,
  pressUnder,
  rectangle,
} from "./noTension.ts";
