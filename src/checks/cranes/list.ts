// The checks of cranes and their lines.

import type { CheckList } from "../measure.ts";
import { swingFindings } from "../swing.ts";
import { dynamicHookLoads } from "./dynamic.ts";
import { hookUnderTip, linePulls, wrapsLeft } from "./hoist.ts";
import { chartLeft, hookLoads } from "./hookLoad.ts";
import { craneLevels } from "./level.ts";
import { boomSideLoads, lineLean } from "./line.ts";

export const craneChecks: Partial<CheckList> = {
  makers: [
    hookLoads,
    dynamicHookLoads,
    chartLeft,
    lineLean,
    boomSideLoads,
    craneLevels,
    linePulls,
    wrapsLeft,
    hookUnderTip,
  ],
  runChecks: [swingFindings],
};
