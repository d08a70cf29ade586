// The checks of wind.

import type { CheckList } from "../measure.ts";

export const windChecks: Partial<CheckList> = {};
