// One slip of form - a missing field, a wrong kind, a value out of range - yields one error with its place and words.
import { describe, expect, test } from "vitest";
import { errorsAfter, put, type Slip } from "./slip.ts";

const slips: Slip[] = [
  [
    "missing field",
    "sets.0.girders.1.y_m",
    undefined,
    ["sets[0].girders[1].y_m", "nothing", "a number from -50 to 50", 'Add the field "y_m".'],
  ],
  [
    "wrong kind",
    "sets.0.girders.1.y_m",
    "1.5 m",
    [
      "sets[0].girders[1].y_m",
      '"1.5 m"',
      "a number from -50 to 50",
      "Write a number, without quotes or unit.",
    ],
  ],
  [
    "null for a number",
    "transporters.0.mass_t",
    null,
    [
      "transporters[0].mass_t",
      "null",
      "a number from 0.1 to 1000",
      "Correct the number; its unit is t, as the field's name says.",
    ],
  ],
  [
    "absurd thickness",
    "sets.0.girders.0.pieces.1.web_mm.1",
    2000,
    [
      "sets[0].girders[0].pieces[1].web_mm[1]",
      "2000",
      "a number from 3 to 250",
      "Correct the number; its unit is mm, as the field's name says.",
    ],
  ],
  [
    "negative length",
    "cranes.0.boomLength_m",
    -36,
    [
      "cranes[0].boomLength_m",
      "-36",
      "a number from 2 to 250",
      "Correct the number; its unit is m, as the field's name says.",
    ],
  ],
  [
    "1e308",
    "cranes.0.stiffness.rope_kN_per_mm.high",
    1e308,
    [
      "cranes[0].stiffness.rope_kN_per_mm.high",
      "1e+308",
      "a number from 0.0001 to 1000000",
      "Correct the number.",
    ],
  ],
  [
    "part of a wheel line",
    "transporters.0.lines",
    4.5,
    ["transporters[0].lines", "4.5", "a whole number from 1 to 100", "Write what is allowed there."],
  ],
  [
    "wrong word",
    "transporters.0.kind",
    "rear train",
    ["transporters[0].kind", '"rear train"', 'one of "front" or "rear"', "Choose an allowed value."],
  ],
  [
    "wrong letter in a word",
    "site.bearings.0.holds",
    "fixd",
    ["site.bearings[0].holds", '"fixd"', 'one of "fixed", "guided" or "free"', 'Did you mean "fixed"?'],
  ],
  [
    "unknown kind of step",
    "sets.0.steps.1.do",
    "rol",
    [
      "sets[0].steps[1].do",
      '"rol"',
      'one of "hook up", "unhook", "lash", "unlash", "take load", "trial lift", "roll", "roll together", "jack up", "jack down", "level", "drive out", "rebunk", "walk", "hoist up", "hoist down", "bring over", "land", "brace", "hold", "rest"',
      'Did you mean "roll"?',
    ],
  ],
  [
    "aim without a quantity",
    "sets.0.steps.4.until",
    {},
    [
      "sets[0].steps[4].until",
      "an empty object",
      "one of: an object with load_kN; an object with height_mm; an object with frees",
      "Give exactly one of these.",
    ],
  ],
  [
    "two aims",
    "sets.0.steps.4.until",
    { load_kN: 90, height_mm: 20 },
    [
      "sets[0].steps[4].until",
      "an object with load_kN and height_mm",
      "one of: an object with load_kN; an object with height_mm; an object with frees",
      "Give exactly one of these.",
    ],
  ],
  [
    "aim out of range",
    "sets.0.steps.4.until",
    { load_kN: -1 },
    [
      "sets[0].steps[4].until.load_kN",
      "-1",
      "a number from 0.001 to 100000",
      "Correct the number; its unit is kN, as the field's name says.",
    ],
  ],
  [
    "blank name",
    "rigging.0.parts.0.name",
    "",
    ["rigging[0].parts[0].name", '""', "a text of 1 to 80 signs", "Write a name there."],
  ],
  [
    "wheel of odd form",
    "transporters.0.groups.0.wheels.0",
    "L1",
    [
      "transporters[0].groups[0].wheels[0]",
      '"L1"',
      'a wheel such as "1L": number of the line from the rear, then L or R',
      "Write what is allowed there.",
    ],
  ],
  [
    "chart without rows",
    "cranes.1.chart.rows",
    [],
    ["cranes[1].chart.rows", "an empty list", "at least 1 entries", "Add what is missing."],
  ],
];

describe("a slip of form yields one error", () => {
  test.each(slips)("%s", (_what, at, value, [path, found, allowed, mend]) => {
    expect(errorsAfter((plan) => put(plan, at, value))).toEqual([{ path, found, allowed, mend }]);
  });
});
