// The checks of rigging.

import type { CheckList } from "../measure.ts";
import { attachmentLoads, spreaderThrust } from "./attachments.ts";
import { hungAttitude, hungFindings } from "./attitude.ts";
import { gearFindings } from "./gear.ts";
import { allGear } from "./gearMeasures.ts";
import { liftedFindings, liftedMeasures } from "./lifted.ts";
import { partLoads } from "./parts.ts";
import { riggingLoads } from "./ratedLoad.ts";

export const riggingChecks: Partial<CheckList> = {
  makers: [riggingLoads, partLoads, attachmentLoads, spreaderThrust],
  onDemand: [hungAttitude],
  onPlan: [allGear, liftedMeasures],
  runChecks: [hungFindings],
  planChecks: [gearFindings, liftedFindings],
};
