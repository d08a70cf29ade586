// Rules and standing limits on ground, mats and structures underfoot.

import type { AreaLimits } from "../limitForm.ts";

export const groundLimits: AreaLimits = {
  ready: {},
  standing: {},
};
