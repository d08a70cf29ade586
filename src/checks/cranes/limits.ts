// Rules and standing limits on cranes and their lines.

import type { AreaLimits } from "../limitForm.ts";

export const craneLimits: AreaLimits = {
  ready: {
    "tandem-75": {
      limit: "tandem use",
      value: 75,
      source:
        "75 % of rated capacity while more than one crane carries: owners' common practice, no single source; 29 CFR 1926.751 calls a lift above 75 % or by more than one crane critical (as quoted on published rigging-safety pages)",
    },
    "share-plus-20": {
      limit: "capacity above share",
      value: 20,
      source:
        "Queensland Mobile crane Code of Practice 2006 (PN11180), 14.3.2: at least 20 % above the calculated share for two cranes",
    },
  },
  standing: {
    "chart use": { value: 100, source: "maker's load chart: never above the rated load" },
    "line lean": { value: 3, source: "common practice, no source" },
    swing: {
      value: 100,
      source: "common practice, no source: mm that a set may swing when its last support on the ground frees",
    },
  },
};
