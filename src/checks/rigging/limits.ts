// Rules and standing limits on rigging.

import type { AreaLimits } from "../limitForm.ts";

export const riggingLimits: AreaLimits = {
  ready: {},
  standing: {},
};
