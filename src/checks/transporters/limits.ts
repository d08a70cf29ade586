// Rules and standing limits on transporters and on tipping.

import type { AreaLimits } from "../limitForm.ts";

export const transporterLimits: AreaLimits = {
  ready: {},
  standing: {
    "tipping ratio": { value: 1.5, source: "common practice, no source" },
    "stroke use": { value: 95, source: "common practice, no source: 5 % of the stroke kept in hand" },
    "left-right": { value: 25, source: "common practice, no source" },
    "tilt growth": {
      value: 1.2,
      source:
        "common practice, no source: beyond it the loads from side to side, which are shown for the first tilt, are a fifth short",
    },
  },
};
