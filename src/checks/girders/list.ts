// The checks of the set's steel.

import { bucklingMeasures } from "../buckling/measure.ts";
import type { CheckList } from "../measure.ts";
import { girderBending } from "./bending.ts";
import { girderFindings } from "./findings.ts";
import { fieldPieces, girderSlenderness } from "./slenderness.ts";
import { splices } from "./splices.ts";
import { stiffenerLoads } from "./stiffeners.ts";
import { twoGirderSet } from "./twoGirders.ts";
import { webAtPointLoads } from "./web.ts";

export const girderChecks: Partial<CheckList> = {
  makers: [girderBending, girderSlenderness, twoGirderSet, webAtPointLoads, stiffenerLoads, splices],
  onDemand: [bucklingMeasures],
  onSet: [fieldPieces],
  runChecks: [girderFindings],
};
