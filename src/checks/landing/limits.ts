// Rules and standing limits on landing and fit at the bearings.

import type { AreaLimits } from "../limitForm.ts";

export const landingLimits: AreaLimits = {
  ready: {
    "plumb-half-pct": {
      limit: "web plumb",
      value: 0.5,
      source: "common practice, no source: webs out of plumb by at most 1 in 200 before the hooks let go",
    },
  },
  standing: {
    "seat level": {
      value: 3,
      source: "common practice, no source: mm that a finished seat may be off its design level (1/8 in.)",
    },
    "bearing plane": {
      value: 0.2,
      source:
        "common practice, no source: % of lean or level that a landed set may be off the designed bearings",
    },
    "backwall gap": {
      value: 25,
      source: "common practice, no source: mm kept at a backwall for what a set on two hooks sways",
    },
    "gap between sets": {
      value: 25,
      source: "common practice, no source: mm kept from a set that stands for what a set on two hooks sways",
    },
    "bearing share": {
      value: 10,
      source:
        "common practice, no source: % by which a bearing's part of its line may be off that on the designed seats",
    },
    "bearing side use": {
      value: 90,
      source:
        "common practice, no source: % of a bearing's sideways limit; at the limit it slips and others must hold the set",
    },
    "late contact": {
      value: 10,
      source:
        "common practice, no source: % of the set's weight still on the hooks when the last bearing begins to carry",
    },
    "shim thickness": {
      value: 1,
      source: "common practice, no source: mm of the thinnest shim at hand",
    },
    packing: {
      value: 5,
      source:
        "common practice, no source: mm that the packing above a transporter's bunks may be off the levels of the final seats; that the levels of temporary supports match those of the bearings: FHWA-HIF-07-022, chapter 4.3",
    },
    sweep: {
      value: 1000 / 960,
      source:
        "Ohio DOT, field manual to item 513: sweep of straight members 1/8 in. for every 10 ft of length; in mm per m",
    },
    "bolted fraction": {
      value: 0.5,
      source:
        "common practice, no source: half of the holes of a splice filled with bolts and pins before the hooks let go",
    },
  },
};
