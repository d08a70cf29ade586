// Rules and standing limits on ground, mats and structures underfoot.

import type { AreaLimits } from "../limitForm.ts";

/** Rules that were compared for machines beside cuts differ; a plan chooses. */
const ruleOfThumb = "rule of thumb for machines beside a slope or cut; common practice, no source";
const queensland =
  "Queensland Mobile Crane Code of Practice 2006, 11.2: as far back as the cut is deep in compact ground, twice that in loose or filled ground (clause from a summary, ratios from memory)";

export const groundLimits: AreaLimits = {
  ready: {
    "setback-1": { limit: "set-back ratio", value: 1, source: ruleOfThumb },
    "setback-1-5": { limit: "set-back ratio", value: 1.5, source: ruleOfThumb },
    "setback-2": { limit: "set-back ratio", value: 2, source: ruleOfThumb },
    "setback-queensland-compact": { limit: "set-back ratio", value: 1, source: queensland },
    "setback-queensland-loose": { limit: "set-back ratio", value: 2, source: queensland },
  },
  standing: {
    "wall reach": {
      value: 1,
      source:
        "loads further behind a wall than it is high hardly press on it; common practice, no source (AASHTO LRFD 3.11.6.4 counts traffic within half the height: from memory)",
    },
  },
};
