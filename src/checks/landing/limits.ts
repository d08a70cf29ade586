// Rules and standing limits on landing and fit at the bearings.

import type { AreaLimits } from "../limitForm.ts";

export const landingLimits: AreaLimits = {
  ready: {},
  standing: {},
};
