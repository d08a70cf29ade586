// The checks of cranes and their lines.

import type { CheckList } from "../measure.ts";
import { swingFindings } from "../swing.ts";
import { boomAngles } from "./boom.ts";
import { capacitiesLeft } from "./capacityLeft.ts";
import { criticalUses, sharedLifts } from "./critical.ts";
import { dynamicHookLoads } from "./dynamic.ts";
import { hookUnderTip, linePulls, wrapsLeft } from "./hoist.ts";
import { chartLeft, hookLoads } from "./hookLoad.ts";
import { recordedReadings } from "./indicator.ts";
import { craneLevels } from "./level.ts";
import { boomSideLoads, lineLean } from "./line.ts";
import { speedFindings } from "./motions.ts";
import { notReady, openCraneData } from "./readiness.ts";
import { walkFindings } from "./walk.ts";

export const craneChecks: Partial<CheckList> = {
  makers: [
    hookLoads,
    capacitiesLeft,
    criticalUses,
    dynamicHookLoads,
    chartLeft,
    lineLean,
    boomSideLoads,
    craneLevels,
    linePulls,
    wrapsLeft,
    hookUnderTip,
  ],
  onDemand: [boomAngles],
  runChecks: [swingFindings, sharedLifts, speedFindings, walkFindings, recordedReadings],
  planChecks: [notReady, openCraneData],
};
