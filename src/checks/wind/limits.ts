// Rules and standing limits on wind.

import type { AreaLimits } from "../limitForm.ts";

export const windLimits: AreaLimits = {
  ready: {},
  standing: {},
};
