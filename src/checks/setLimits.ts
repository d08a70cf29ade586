// Standing limits on the set as a whole: lean, level, losses, rates of change, usual weights.

import type { AreaLimits } from "./limitForm.ts";

export const setLimits: AreaLimits = {
  ready: {},
  standing: {
    "set lean": { value: 2, source: "common practice, no source" },
    "set level": { value: 2, source: "common practice, no source" },
    "fall at loss": {
      value: 150,
      source:
        "common practice, no source: mm that a set may fall when a hook is lost before something catches it",
    },
    "lean stiffness": {
      value: 1.5,
      source:
        "common practice, no source: kNm per radian of lean and kN of the set's weight; a centre of gravity 30 mm off then leans the set by 2 %",
    },
    "change per metre": { value: 10, source: "common practice, no source" },
    "change per 10 mm": { value: 10, source: "common practice, no source" },
    "change per minute": { value: 25, source: "common practice, no source" },
    "mass per metre low": {
      value: 1.5,
      source:
        "common practice, no source: two-girder sets of 60 to 75 m weigh 1.5 to 3 t/m, about 2.4 with everything on",
    },
    "mass per metre high": {
      value: 3,
      source:
        "common practice, no source: two-girder sets of 60 to 75 m weigh 1.5 to 3 t/m, about 2.4 with everything on",
    },
  },
};
