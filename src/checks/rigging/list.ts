// The checks of rigging.

import type { CheckList } from "../measure.ts";

export const riggingChecks: Partial<CheckList> = {};
