// The checks of ground, mats and structures underfoot.

import type { CheckList } from "../measure.ts";
import { pressuresOverSwing, pressuresUnloaded, swingFindings } from "./swing.ts";
import { trackPressures } from "./trackPressure.ts";

export const groundChecks: Partial<CheckList> = {
  makers: [trackPressures],
  onDemand: [pressuresOverSwing, pressuresUnloaded],
  runChecks: [swingFindings],
};
