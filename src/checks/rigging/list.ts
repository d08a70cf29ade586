// The checks of rigging.

import type { CheckList } from "../measure.ts";
import { riggingLoads } from "./ratedLoad.ts";

export const riggingChecks: Partial<CheckList> = {
  makers: [riggingLoads],
};
