// Rules and standing limits on transporters and on tipping.

import type { AreaLimits } from "../limitForm.ts";

/** The owner's tolerances for a set under way (percent, and mm for the twist). */
export const ownersLimits = ["set twist", "change of slope along", "change of slope across"] as const;

export const transporterLimits: AreaLimits = {
  ready: {},
  open: ownersLimits,
  standing: {
    "tipping ratio": { value: 1.5, source: "common practice, no source" },
    "stroke use": { value: 95, source: "common practice, no source: 5 % of the stroke kept in hand" },
    "left-right": { value: 25, source: "common practice, no source" },
    "tilt growth": {
      value: 1.2,
      source:
        "common practice, no source: beyond it the loads from side to side, which are shown for the first tilt, are a fifth short",
    },
    "tip angle": {
      value: 5,
      source:
        "common practice, no source: degrees of further tilt after lean, wind and motion; 7 is usual for the load at rest on level ground",
    },
    "tip load": {
      value: 10,
      source:
        "common practice, no source: % of an equal share by wheels that must be left in the group furthest from the line of tipping",
    },
    "acceleration along": {
      value: 5,
      source: "common practice, no source: % of gravity at a start or stop, as from 6 m/min within 0.2 s",
    },
    "acceleration across": {
      value: 2,
      source: "common practice, no source: % of gravity in turns and on uneven ground at walking pace",
    },
    "rolling resistance": {
      value: 2,
      source: "common practice, no source: % of the load, solid or foam-filled tyres on a prepared path",
    },
  },
};
