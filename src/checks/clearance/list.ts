// The checks of clearances.

import type { CheckList } from "../measure.ts";
import { clearanceFindings, openClearances } from "./findings.ts";
import { clearances } from "./measures.ts";

export const clearanceChecks: Partial<CheckList> = {
  onDemand: [clearances],
  runChecks: [clearanceFindings],
  planChecks: [openClearances],
};
