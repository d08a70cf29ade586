// The list of checks: a new check is a new maker and one line here.

import { chartLeft, hookLoads, lineLean, riggingLoads } from "./cranes.ts";
import { girderBending } from "./girders/bending.ts";
import { girderFindings } from "./girders/findings.ts";
import { girderSlenderness } from "./girders/slenderness.ts";
import { splices } from "./girders/splices.ts";
import { stiffenerLoads } from "./girders/stiffeners.ts";
import { twoGirderSet } from "./girders/twoGirders.ts";
import { webAtPointLoads } from "./girders/web.ts";
import { leanRestraint } from "./lean.ts";
import { leftOnFindings } from "./leftOn.ts";
import type { MeasureMaker, RunCheck } from "./measure.ts";
import { rateFindings } from "./rates.ts";
import { bearingLoads, lashingLoads, outOfLevel, residuals, tipping, uplift } from "./set.ts";
import { swingFindings } from "./swing.ts";
import { tilts } from "./tilt.ts";
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
  leanRestraint,
  tilts,
  uplift,
  girderBending,
  girderSlenderness,
  twoGirderSet,
  webAtPointLoads,
  stiffenerLoads,
  splices,
  residuals,
];

/** Checks that look at a whole run: at neighbouring poses, or at how it ends. */
export const runChecks: RunCheck[] = [swingFindings, rateFindings, leftOnFindings, girderFindings];
