// The sections that can be asked for beside the findings: a new one is one line here.

import { clearanceSection } from "./clearance.ts";
import { coverageSection } from "./coverage.ts";
import type { Section } from "./form.ts";
import { groundSection } from "./ground.ts";
import { landingSection } from "./landing.ts";
import { riggingSection } from "./rigging.ts";
import { windSection } from "./wind.ts";

export const sections: readonly Section[] = [
  clearanceSection,
  groundSection,
  landingSection,
  riggingSection,
  windSection,
  coverageSection,
];
