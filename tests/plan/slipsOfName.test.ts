// One slip of name - something that does not exist, or twice - yields one error with its place and words.
import { describe, expect, test } from "vitest";
import { errorsAfter, put, type Slip } from "./slip.ts";

const slips: Slip[] = [
  [
    "seat of no girder",
    "site.seats.0.girder",
    "M",
    ["site.seats[0].girder", '"M"', "the name of a girder: L or R", 'Did you mean "L"?'],
  ],
  [
    "second bearing",
    "site.bearings.1.girder",
    "L",
    [
      "site.bearings[1]",
      "a second bearing for near L",
      "one bearing for each girder at each bearing line",
      "Take one of the two out.",
    ],
  ],
  [
    "wheel in no group",
    "transporters.0.groups.1.wheels",
    ["1R", "2R", "3R"],
    [
      "transporters[0].groups",
      "wheel 4R in no group",
      "every wheel in exactly one group",
      "Add each to a group.",
    ],
  ],
  [
    "more driven lines than lines",
    "transporters.1.drivenLines",
    5,
    ["transporters[1].drivenLines", "5", "at most the 4 lines of this transporter", "Correct the count."],
  ],
  [
    "interpolation without a page",
    "cranes.0.chart.page",
    " ",
    [
      "cranes[0].chart.page",
      "interpolation without a page",
      "the page of the chart on which the maker allows interpolation",
      "Name the page, or set interpolation to false.",
    ],
  ],
  [
    "chart row twice",
    "cranes.0.chart.rows.1.radius_m",
    8,
    [
      "cranes[0].chart.rows[1]",
      "8 m radius with 36 m boom a second time",
      "every radius and boom length once",
      "Take one row out.",
    ],
  ],
  [
    "lashing to no transporter",
    "lashings.0.transporter",
    "middle",
    [
      "lashings[0].transporter",
      '"middle"',
      "the name of a transporter: rear or front",
      "Correct the name, or add the transporter.",
    ],
  ],
  [
    "step with unknown lashing",
    "sets.0.steps.0.lashings.1",
    "tie X",
    [
      "sets[0].steps[0].lashings[1]",
      '"tie X"',
      "the name of a lashing: tie L or tie R",
      'Did you mean "tie L"?',
    ],
  ],
  [
    "step that carries on nothing",
    "sets.0.steps.1.carries.0",
    "middle left",
    [
      "sets[0].steps[1].carries[0]",
      '"middle left"',
      "the name of a support: far crane, near crane, rear left, rear right, front left, front right, near L, near R, far L or far R",
      "Correct the name, or add the support.",
    ],
  ],
  [
    "step that frees nothing",
    "sets.0.steps.13.until.frees",
    "rear lft",
    [
      "sets[0].steps[13].until.frees",
      '"rear lft"',
      "the name of a support: far crane, near crane, rear left, rear right, front left, front right, near L, near R, far L or far R",
      'Did you mean "rear left"?',
    ],
  ],
  [
    "step with unknown group",
    "sets.0.steps.6.groups.0",
    "mid left",
    [
      "sets[0].steps[6].groups[0]",
      '"mid left"',
      "the name of a group: rear left, rear right, front left or front right",
      "Correct the name, or add the group.",
    ],
  ],
  [
    "jacking of nothing",
    "sets.0.steps.6.groups",
    undefined,
    [
      "sets[0].steps[6]",
      "neither groups nor transporter",
      "exactly one of groups and transporter",
      "Say what is jacked.",
    ],
  ],
  [
    "way back with unknown crane",
    "sets.0.steps.4.wayBack.0.hooks.0.crane",
    "mid-9",
    [
      "sets[0].steps[4].wayBack[0].hooks[0].crane",
      '"mid-9"',
      "the name of a crane: far-1 or near-1",
      "Correct the name, or add the crane.",
    ],
  ],
  [
    "step id twice",
    "sets.0.steps.3.id",
    "05b",
    [
      "sets[0].steps[4].wayBack[0].id",
      '"05b"',
      "an id that no other step of this set has",
      "Give it another one.",
    ],
  ],
  [
    "pick with unknown rigging",
    "sets.0.picks.0.rigging",
    "bean",
    ["sets[0].picks[0].rigging", '"bean"', "the name of a rigging assembly: beam", 'Did you mean "beam"?'],
  ],
  [
    "channel that nobody has",
    "sets.0.steps.4.channel",
    "7",
    ["sets[0].steps[4].channel", '"7"', "the name of a channel: 1", 'Did you mean "1"?'],
  ],
  [
    "accepted step that is none",
    "accept.0.step",
    "99",
    [
      "accept[0].step",
      '"99"',
      expect.stringMatching(/^the name of a step: 01, 02, .* and 12 more$/) as string,
      expect.any(String) as string,
    ],
  ],
  [
    "the same crane twice in an order",
    "sets.0.steps.19.order",
    ["far-1", "far-1"],
    ["sets[0].steps[19].order[1]", '"far-1" a second time', "every name once", "Take one of the two out."],
  ],
  [
    "brakes on no transporter",
    "sets.0.steps.0.brakes.0",
    "reer",
    [
      "sets[0].steps[0].brakes[0]",
      '"reer"',
      "the name of a transporter: rear or front",
      'Did you mean "rear"?',
    ],
  ],
  [
    "more blocks than there are",
    "sets.0.steps.20.items.0.count",
    5,
    ["sets[0].steps[20].items[0].count", "5 of 4 bearing blocks", "at most 4", "Correct the count."],
  ],
  [
    "packing under no girder",
    "sets.0.onTransporters.0.packing_mm.M",
    5,
    [
      "sets[0].onTransporters[0].packing_mm.M",
      '"M"',
      "the name of a girder of this set: L or R",
      'Did you mean "L"?',
    ],
  ],
  [
    "two cranes for one end",
    "cranes.1.kind",
    "far",
    [
      "sets[0].picks[1].crane",
      "a second far crane, near-1 beside far-1",
      "one far crane for a set",
      "Make one of the two the crane of the other end.",
    ],
  ],
  [
    "limit without a source",
    "limits.rules.0.source",
    "",
    [
      "limits.rules[0].source",
      "a blank",
      "where the value is from",
      'Fill it in; "default" and "from memory" are honest answers.',
    ],
  ],
  [
    "half a sign",
    "header.title",
    "\ud800",
    ["header.title", "half of a two-part sign (lone surrogate)", "Unicode text", "Write the text again."],
  ],
];

describe("a slip of name yields one error", () => {
  test.each(slips)("%s", (_what, at, value, [path, found, allowed, mend]) => {
    expect(errorsAfter((plan) => put(plan, at, value))).toEqual([{ path, found, allowed, mend }]);
  });
});
