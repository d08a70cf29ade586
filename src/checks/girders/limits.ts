// Rules and standing limits on the strength and buckling of the girders.

import type { AreaLimits, ReadyRule } from "../limitForm.ts";

const ready: Record<string, ReadyRule> = {
  "aisc360-asd": {
    limit: "AISC ASD load factor",
    value: 1,
    source: "ANSI/AISC 360-22, allowable strength: loads as they are",
  },
  "aisc360-lrfd": {
    limit: "AISC LRFD load factor",
    value: 1.4,
    source: "ANSI/AISC 360-22 with ASCE 7 2.3.1 combination 1, dead load alone: 1.4 (from memory)",
  },
  "aashto-construction": {
    limit: "AASHTO load factor",
    value: 1.4,
    source: "AASHTO LRFD 3.4.2.1: 1.4 on dead load of primary steel during construction (from memory)",
  },
};

export const girderLimits: AreaLimits = {
  ready,
  standing: {
    "buckling factor": {
      value: 1 / 0.7,
      source:
        "AASHTO LRFD 6.10.3.4.2 (from memory): erection moments at most 0.70 of those at which the girders buckle; applied here to the factor on all loads",
    },
    "AISC ASD load factor": { value: 1, source: ready["aisc360-asd"].source },
    "AISC LRFD load factor": { value: 1.4, source: ready["aisc360-lrfd"].source },
    "AASHTO load factor": { value: 1.4, source: ready["aashto-construction"].source },
    "stiffener distance": {
      value: 150,
      source:
        "common practice, no source: mm from the middle of a point load within which a full-depth stiffener takes it",
    },
    "girder slenderness": {
      value: 80,
      source:
        "NCHRP Synthesis 345, chapter 7: unsupported length over flange width of 80 to 90 or less preferred",
    },
    "girder slenderness stop": {
      value: 90,
      source:
        "NCHRP Synthesis 345, chapter 7: unsupported length over flange width of 80 to 90 or less preferred",
    },
    "field piece slenderness": {
      value: 85,
      source: "AASHTO LRFD C6.10.2.2: flange at least 1/85 as wide as a field piece is long (from memory)",
    },
    "two-girder set": {
      value: 70,
      source:
        "AASHTO LRFD 6.10.3.4.2: moments of a two-girder set at most 70 % of those at which it buckles as one (from memory)",
    },
  },
};
