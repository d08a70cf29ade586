// The checks of landing and fit at the bearings.

import type { CheckList } from "../measure.ts";

export const landingChecks: Partial<CheckList> = {};
