// The checks of transporters, of what stands on them, and of tipping.

import type { CheckList } from "../measure.ts";
import { tilts } from "../tilt.ts";
import { brakes, bunkLoads, groupLoads, leftRight, lineLoads, sideLoads, slips, strokes } from "./loads.ts";

export const transporterChecks: Partial<CheckList> = {
  makers: [groupLoads, lineLoads, sideLoads, bunkLoads, strokes, leftRight, slips, brakes, tilts],
};
