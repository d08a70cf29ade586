// What the mechanics know of wind: pressures, speeds and force coefficients.
export {
  BARE_GIRDERS,
  BLOCK,
  boomArea,
  girdersDrag,
  latticeDrag,
  type Members,
  ROPE,
  shieldingFactor,
} from "./drag.ts";
export {
  AIR,
  aashtoPressure,
  basicPressure,
  beaufortOf,
  beaufortSpeed,
  constructionReduction,
  type Exposure,
  gustOver,
  gustPressure,
  heightFactor,
  hourlyRatio,
  type PeakPressure,
  peakPressure,
  type Terrain,
} from "./pressure.ts";
