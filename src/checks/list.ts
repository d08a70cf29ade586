// The list of checks: a new check is a new maker and one line here.

import { chartLeft, hookLoads, lineLean, riggingLoads } from "./cranes.ts";
import type { MeasureMaker } from "./measure.ts";
import { bearingLoads, lashingLoads, outOfLevel, residuals, tipping, uplift } from "./set.ts";
import {
  brakes,
  bunkLoads,
  groupLoads,
  leftRight,
  lineLoads,
  sideLoads,
  slips,
  strokes,
} from "./transporters.ts";

export const makers: MeasureMaker[] = [
  hookLoads,
  chartLeft,
  riggingLoads,
  lineLean,
  groupLoads,
  lineLoads,
  sideLoads,
  bunkLoads,
  strokes,
  leftRight,
  slips,
  brakes,
  bearingLoads,
  lashingLoads,
  tipping,
  outOfLevel,
  uplift,
  residuals,
];
