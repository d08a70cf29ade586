// The checks of ground, mats and structures underfoot.

import type { CheckList } from "../measure.ts";

export const groundChecks: Partial<CheckList> = {};
