// One slip of place or order - a gap, a thing off the set - yields one error with its place and words.
import { describe, expect, test } from "vitest";
import { samplePlan } from "./sample.ts";
import { errorsAfter, put, type Slip } from "./slip.ts";

const slips: Slip[] = [
  [
    "skew",
    "site.skew_deg",
    12,
    [
      "site.skew_deg",
      "a skew of 12 deg",
      "0: skewed bearing lines are not solved by this version",
      "Work with square bearing lines, or leave this bridge to another method.",
    ],
  ],
  [
    "curved path",
    "site.path.curved",
    true,
    [
      "site.path.curved",
      "a path curved in plan",
      "false: a path curved in plan is not solved by this version",
      "Plan a straight path, or leave this move to another method.",
    ],
  ],
  [
    "faces in wrong order",
    "site.farFace_m",
    40.6,
    [
      "site.farFace_m",
      "40.6 m",
      "more than nearFace_m (40.6 m): chainage runs from the near side to the far side",
      "Correct one of the two chainages.",
    ],
  ],
  [
    "path point that does not rise",
    "site.path.points.1.chainage_m",
    50,
    [
      "site.path.points[2].chainage_m",
      "chainage 40.6 m after 50 m",
      "rising values, here more than 50 m",
      "Put the points in order, and give each place once.",
    ],
  ],
  [
    "camber point that does not rise",
    "sets.0.girders.0.camber_mm.1.0",
    0,
    [
      "sets[0].girders[0].camber_mm[1][0]",
      "a camber point at 0 m after 0 m",
      "rising values, here more than 0 m",
      "Put the points in order, and give each place once.",
    ],
  ],
  [
    "gap between pieces",
    "sets.0.girders.0.pieces.1.from_m",
    18.5,
    [
      "sets[0].girders[0].pieces[1].from_m",
      "a gap of 0.5 m before a piece from 18.5 m",
      "18, the end of the piece before",
      "Let every piece begin where the one before ends.",
    ],
  ],
  [
    "crossing pieces",
    "sets.0.girders.0.pieces.1.from_m",
    17,
    [
      "sets[0].girders[0].pieces[1].from_m",
      "a piece from 17 m, crossing the one before by 1 m",
      "18, the end of the piece before",
      "Let every piece begin where the one before ends.",
    ],
  ],
  [
    "girders of unequal ends",
    "sets.0.girders.1.pieces.1.to_m",
    36.4,
    [
      "sets[0].girders[1].pieces[1].to_m",
      "girder R ending at 36.4 m",
      "the end of the set's first girder, 36 m",
      "Make the girders of a set end at the same station.",
    ],
  ],
  [
    "stated length",
    "sets.0.length_m",
    35,
    ["sets[0].length_m", "35 m", "the length of the girders, 36 m", "Correct the length or the pieces."],
  ],
  [
    "girders in one place",
    "sets.0.girders.1.y_m",
    1.5,
    [
      "sets[0].girders[1].y_m",
      "1.5 m, where girder L stands",
      "girders at least 0.05 m apart",
      "Correct one of the two places.",
    ],
  ],
  [
    "pick off the set",
    "sets.0.picks.0.at_m",
    37,
    [
      "sets[0].picks[0].at_m",
      "a pick at 37 m",
      "a station on the set, from 0 to 36 m",
      "Move it on to the set.",
    ],
  ],
  [
    "bunk off the set",
    "sets.0.onTransporters.0.deckAt_m",
    0.4,
    [
      "sets[0].onTransporters[0].deckAt_m",
      "a bunk of rear at -0.6 m",
      "a station on the set, from 0 to 36 m",
      "Move it on to the set.",
    ],
  ],
  [
    "bunk off the deck",
    "transporters.0.bunks.1.at_m",
    3,
    [
      "transporters[0].bunks[1].at_m",
      "a bunk 3 m from the deck's centre",
      "at most half the deck's length, 2.8 m, either way",
      "Move the bunk on to the deck.",
    ],
  ],
  [
    "fixed bunk that rocks",
    "transporters.0.bunks.1",
    { at_m: 1, kind: "fixed", length_mm: 300, rocks_pct: 3 },
    [
      "transporters[0].bunks[1].rocks_pct",
      "3 % for a fixed bunk",
      "a slope that a rocking or turning bunk follows",
      "Take it out, or name the bunk's kind.",
    ],
  ],
  [
    "lashing off the set",
    "lashings.1.at_m",
    40,
    [
      "lashings[1].at_m",
      "a lashing on set S1 at 40 m",
      "a station on the set, from 0 to 36 m",
      "Move it on to the set.",
    ],
  ],
  [
    "low above best",
    "cranes.0.stiffness.boom_kN_per_mm.low",
    9,
    [
      "cranes[0].stiffness.boom_kN_per_mm",
      "low 9, best 8, high 9.6",
      "low not above best, best not above high",
      "Put the three in order.",
    ],
  ],
  [
    "spread upside down",
    "spread.weight_pct",
    [5, -3],
    ["spread.weight_pct", "low 5 above high -3", "low not above high", "Exchange the two values."],
  ],
  [
    "a band upside down",
    "sets.0.steps.4.see.low",
    110,
    [
      "sets[0].steps[4].see",
      "a low end of 110 above the high end, 100",
      "low not above high",
      "Exchange the two.",
    ],
  ],
  [
    "rebunk off the set",
    "sets.0.steps.11.deckAt_m",
    35.5,
    [
      "sets[0].steps[11].deckAt_m",
      "a bunk of front at 36.5 m",
      "a station on the set, from 0 to 36 m",
      "Move it on to the set.",
    ],
  ],
  [
    "cross-frames out of order",
    "sets.0.crossFrames.2.at_m",
    9,
    [
      "sets[0].crossFrames[2].at_m",
      "a cross-frame at 9 m after 9 m",
      "rising values, here more than 9 m",
      "Put the points in order, and give each place once.",
    ],
  ],
  [
    "sole plates out of order",
    "sets.0.soleStations_m.far",
    0.2,
    [
      "sets[0].soleStations_m.far",
      "a far sole plate at 0.2 m after 0.5 m",
      "rising values, here more than 0.5 m",
      "Put the points in order, and give each place once.",
    ],
  ],
  [
    "a slab from far to near",
    "site.underfoot.0.to_m",
    30,
    ["site.underfoot[0].to_m", "an end at 30 m", "more than its start, 34 m", "Exchange start and end."],
  ],
  [
    "a piece of no length",
    "sets.0.girders.0.pieces",
    [
      { ...samplePlan().sets[0].girders[0].pieces[0], to_m: 36 },
      { ...samplePlan().sets[0].girders[0].pieces[1], from_m: 36 },
    ],
    [
      "sets[0].girders[0].pieces[1].to_m",
      "a piece ending at 36 m",
      "more than its start, 36 m",
      "Exchange start and end, or take the piece out.",
    ],
  ],
];

describe("a slip of place yields one error", () => {
  test.each(slips)("%s", (_what, at, value, [path, found, allowed, mend]) => {
    expect(errorsAfter((plan) => put(plan, at, value))).toEqual([{ path, found, allowed, mend }]);
  });
});
