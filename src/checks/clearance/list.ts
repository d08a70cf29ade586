// The checks of clearances.

import type { CheckList } from "../measure.ts";

export const clearanceChecks: Partial<CheckList> = {};
