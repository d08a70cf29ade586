// The checks of ground, mats and structures underfoot.

import type { Plan } from "../../plan/index.ts";
import { dataFindings } from "../dataMeasure.ts";
import type { CheckList } from "../measure.ts";
import { axlePressures, tyrePressures, weakStretches } from "./axlePressure.ts";
import { craneGroundItems, pathGroundItems, wayGroundItems } from "./data.ts";
import { matFindings, matLoads } from "./mats.ts";
import { presumedMeasures } from "./presumed.ts";
import { setbackFindings, setbackItems, setbacks } from "./setback.ts";
import { actionLevels, settlementFindings, settlementItems, settlements } from "./settlement.ts";
import { pressuresOverSwing, pressuresUnloaded, swingFindings } from "./swing.ts";
import { trackPressures } from "./trackPressure.ts";
import { loadsAbove, underfootFindings } from "./underfoot.ts";
import { behindWalls, wallFindings, wallItems } from "./walls.ts";
import { bareWays, softStretches } from "./wayFindings.ts";

export const groundChecks: Partial<CheckList> = {
  makers: [trackPressures, axlePressures, tyrePressures],
  onDemand: [matLoads, pressuresOverSwing, pressuresUnloaded, loadsAbove, setbacks, settlements, behindWalls],
  onPlan: [presumedMeasures, actionLevels],
  runChecks: [
    matFindings,
    swingFindings,
    weakStretches,
    softStretches,
    bareWays,
    underfootFindings,
    wallFindings,
    setbackFindings,
    settlementFindings,
  ],
  planChecks: [
    craneGroundItems,
    wayGroundItems,
    pathGroundItems,
    (plan: Plan) => dataFindings(presumedMeasures(plan)),
    wallItems,
    setbackItems,
    settlementItems,
  ],
};
