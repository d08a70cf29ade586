// Rules and standing limits on wind. A plan tightens them by a rule of its own; only an override, which names who chose it,
// may be higher.

import type { AreaLimits } from "../limitForm.ts";

export const windLimits: AreaLimits = {
  ready: {},
  standing: {
    "strong wind": {
      value: 10,
      source:
        "m/s as a mean over 10 minutes: 'strong wind', in which such work stops, after the interpretation of Japan's Ordinance on Industrial Safety and Health by its ministry of labour",
    },
    "wind caution": {
      value: 8.94,
      source: "m/s in gusts, 20 mph: great caution from there on, US Army TM 5-3810-302-10",
    },
    "chart sail": {
      value: 1.2,
      source:
        "m2 of area times force coefficient per tonne of load, with which charts reckon that say nothing else: FEM 5.016 and EN 13000 (from memory)",
    },
  },
};
