// The checks of transporters, of what stands on them, and of tipping.

import type { CheckList } from "../measure.ts";
import { tilts } from "../tilt.ts";
import { brakeGrips, brakes, braking, traction } from "./brakes.ts";
import { bunkSlopes, overRun } from "./bunks.ts";
import { transporterGaps } from "./gaps.ts";
import { linesLost } from "./lineLost.ts";
import { bunkLoads, groupLoads, leftRight, lineLoads, sideLoads } from "./loads.ts";
import { releasedTrains } from "./released.ts";
import { setShape } from "./shape.ts";
import { slips, slipsUnderWay } from "./slip.ts";
import { transporterSlopes, twists } from "./slopes.ts";
import { spineMoments } from "./spine.ts";
import { strokeBudgets, strokes } from "./stroke.ts";
import { tips } from "./tips.ts";

export const transporterChecks: Partial<CheckList> = {
  makers: [
    groupLoads,
    lineLoads,
    sideLoads,
    bunkLoads,
    strokes,
    leftRight,
    slips,
    brakes,
    tilts,
    tips,
    spineMoments,
    strokeBudgets,
    linesLost,
    twists,
    transporterSlopes,
    slipsUnderWay,
    brakeGrips,
    releasedTrains,
    braking,
    traction,
  ],
  onDemand: [bunkSlopes, setShape],
  runChecks: [overRun(bunkSlopes), overRun(setShape)],
  planChecks: [transporterGaps],
};
