// The checks of ground, mats and structures underfoot.

import type { CheckList } from "../measure.ts";
import { axlePressures, tyrePressures, weakStretches } from "./axlePressure.ts";
import { craneGroundItems, pathGroundItems } from "./data.ts";
import { matFindings, matLoads } from "./mats.ts";
import { setbackFindings, setbackItems, setbacks } from "./setback.ts";
import { settlementFindings, settlementItems, settlements } from "./settlement.ts";
import { pressuresOverSwing, pressuresUnloaded, swingFindings } from "./swing.ts";
import { trackPressures } from "./trackPressure.ts";
import { loadsAbove, underfootFindings } from "./underfoot.ts";
import { wallFindings, wallItems } from "./walls.ts";

export const groundChecks: Partial<CheckList> = {
  makers: [trackPressures, axlePressures, tyrePressures],
  onDemand: [matLoads, pressuresOverSwing, pressuresUnloaded, loadsAbove, setbacks, settlements],
  runChecks: [
    matFindings,
    swingFindings,
    weakStretches,
    underfootFindings,
    wallFindings,
    setbackFindings,
    settlementFindings,
  ],
  planChecks: [craneGroundItems, pathGroundItems, wallItems, setbackItems, settlementItems],
};
