// Rules and standing limits on cranes and their lines.

import type { AreaLimits } from "../limitForm.ts";

/** What the rules that call a lift critical call so besides a part of the rated load. */
export const CRITICAL = "critical lift use";

export const craneLimits: AreaLimits = {
  ready: {
    "tandem-75": {
      limit: "tandem use",
      value: 75,
      source:
        "75 % of rated capacity while more than one crane carries: owners' common practice, no single source; 29 CFR 1926.751 calls a lift above 75 % or by more than one crane critical (as quoted on published rigging-safety pages)",
      means: "no crane of a shared lift may carry more",
    },
    "share-plus-20": {
      limit: "capacity above share",
      value: 20,
      source:
        "Queensland Mobile crane Code of Practice 2006 (PN11180), 14.3.2: at least 20 % above the calculated share for two cranes",
      means: "the crane is too small for its share",
    },
    "queensland-2006": {
      limit: "capacity above share",
      value: 20,
      also: [
        { limit: "capacity above share of three", value: 33 },
        { limit: "capacity above share of four", value: 50 },
      ],
      source:
        "Queensland Mobile crane Code of Practice 2006 (PN11180), 14.3.2: at least 20, 33, 50 % above the calculated share for two, three, four or more cranes",
      means: "the crane is too small for its share",
    },
    "railway-150": {
      limit: "capacity over pick",
      value: 150,
      source:
        "Norfolk Southern, Special Provisions for Protection of Railway Interests (2018, rev. 2021), E-9 (3): cranes and rigging good for 150 % of the actual pick, rigging included; margins within the load chart are not counted",
      means: "not allowed over or beside the railway",
    },
    "osha-1926-751": {
      limit: CRITICAL,
      value: 75,
      source:
        "29 CFR 1926.751, critical lift: above 75 % of the rated capacity, or more than one crane (as quoted on published rigging-safety pages)",
      means: "a critical lift: written down and planned before it is made",
    },
    "bc-14-1": {
      limit: CRITICAL,
      value: 75,
      source:
        "British Columbia, Occupational Health and Safety Regulation, 14.1: a lift by several cranes is critical when any of them is above 75 % of its rated capacity",
      means: "a critical lift: a written lift plan and a briefing of all by 14.42.1",
    },
    "em-385-1-1-16": {
      limit: CRITICAL,
      value: 75,
      source:
        "US Army Corps of Engineers, EM 385-1-1, section 16, Form 16-3: above 75 % of the rated capacity, or more than one crane",
      means: "a critical lift: a critical lift plan, signed by those who take part",
    },
    "marine-0027": {
      limit: "dynamic factor",
      value: 1.1,
      also: [{ limit: "weight contingency", value: 1.1 }],
      source:
        "Guidelines for Marine Lifting and Lowering Operations, 0027/ND Rev 11.2 (2016), table 5-1, onshore, and 6.2.2 to 6.2.4: factor by static hook load; weight that is only calculated times 1.10",
      means: "the crane has no capacity left for the load in motion",
    },
  },
  standing: {
    "chart use": { value: 100, source: "maker's load chart: never above the rated load" },
    "line lean": { value: 3, source: "common practice, no source" },
    "boom side load": {
      value: 2,
      source:
        "SAE J987 proves lattice booms with a side load of 2 % of the rated load (from memory): percent of the hook load",
    },
    "hook load caution": {
      value: 90,
      source: "common practice, no source: percent of the governing limit from which little is left",
    },
    "wraps left": {
      value: 2,
      source: "29 CFR 1926.1417(t): two full wraps of rope stay on the drum",
    },
    swing: {
      value: 100,
      source: "common practice, no source: mm that a set may swing when its last support on the ground frees",
    },
  },
};
