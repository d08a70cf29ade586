// Rules and standing limits on rigging.

import type { AreaLimits } from "../limitForm.ts";

export const riggingLimits: AreaLimits = {
  ready: {},
  standing: {
    "skew factor": {
      value: 1.25,
      source:
        "0027/ND Rev 11.2 (2016), 5.6.12: four matched slings laid single, 1.25 on each diagonal pair in turn",
    },
    "sling angle": {
      value: 30,
      source:
        "ASME B30.9 (from memory): no leg flatter than 30 degrees from the horizontal unless its maker allows it",
    },
    "proof test": {
      value: 125,
      source:
        "29 CFR 1926.251(a)(4): special custom gear is marked with its safe working load and proof-tested to 125 % of it before use",
    },
    "parts above rigging mass": {
      value: 5,
      source:
        "common practice, no source: percent by which the parts may weigh more or less than the assembly",
    },
    "out of grade": {
      value: 150,
      source:
        "common practice, no source: mm by which the seats of one end may be nearer than those of the other before one end is lowered to land; over 30 m that is the 5 mrad that AASHTO LRFD 14.4.2 (from memory) leaves a bearing for what is uncertain, so that it errs to the strict side over more and to the loose side over less",
    },
    "out of crossfall": {
      value: 25,
      source:
        "common practice, no source: mm by which one seat of a bearing line may be nearer than another just before landing",
    },
  },
};
