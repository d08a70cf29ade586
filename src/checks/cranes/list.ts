// The checks of cranes and their lines.

import type { CheckList } from "../measure.ts";
import { swingFindings } from "../swing.ts";
import { chartLeft, hookLoads, lineLean } from "./hookLoad.ts";

export const craneChecks: Partial<CheckList> = {
  makers: [hookLoads, chartLeft, lineLean],
  runChecks: [swingFindings],
};
