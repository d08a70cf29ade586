// The checks of cranes and their lines.

import type { CheckList } from "../measure.ts";
import { swingFindings, swingMeasures } from "../swing.ts";
import { boomAngles } from "./boom.ts";
import { capacitiesLeft } from "./capacityLeft.ts";
import { criticalUses, hooksSharing, sharedLifts } from "./critical.ts";
import { dynamicHookLoads } from "./dynamic.ts";
import { hookUnderTip, linePulls, wrapsLeft } from "./hoist.ts";
import { chartLeft, hookLoads } from "./hookLoad.ts";
import { readingMeasures, recordedReadings } from "./indicator.ts";
import { craneLevels } from "./level.ts";
import { boomSideLoads, lineLean } from "./line.ts";
import { speedFindings, speedMeasures } from "./motions.ts";
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
  onDemand: [boomAngles, hooksSharing, readingMeasures],
  onRun: [swingMeasures, speedMeasures],
  runChecks: [swingFindings, sharedLifts, speedFindings, walkFindings, recordedReadings],
  planChecks: [notReady, openCraneData],
};
