// Rules and standing limits on clearances.

import type { AreaLimits } from "../limitForm.ts";

export const clearanceLimits: AreaLimits = {
  ready: {},
  standing: {},
};
