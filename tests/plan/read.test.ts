// Reading: a good plan comes through whole; every kind of bad input yields its place and its words, all at once.
import { describe, expect, test } from "vitest";
import {
  checkPlan,
  largestFile,
  type PlanError,
  readPlan,
  sentence,
  writePlan,
} from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

/** Data of unknown shape, for spoiling. */
type Loose = { [key: string]: Loose } & Loose[] & unknown;

/** Errors of the sample after `spoil` did its work on it. */
function errorsAfter(spoil: (plan: Loose) => void): PlanError[] {
  const plan = structuredClone(samplePlan()) as unknown as Loose;
  spoil(plan);
  const result = readPlan(JSON.stringify(plan));
  return result.ok ? [] : result.errors;
}

/** Sets the value at a path like `sets.0.girders.1.y_m`; undefined takes the field away. */
function put(plan: Loose, path: string, value: unknown): void {
  const parts = path.split(".");
  const last = parts.pop() ?? "";
  let at = plan as unknown as Record<string, unknown>;
  for (const part of parts) at = at[part] as Record<string, unknown>;
  if (value === undefined) delete at[last];
  else at[last] = value;
}

function errorsOf(text: string): PlanError[] {
  const result = readPlan(text);
  return result.ok ? [] : result.errors;
}

describe("a good plan", () => {
  test("is read", () => {
    const result = readPlan(JSON.stringify(samplePlan()));
    expect(result).toEqual({ ok: true, plan: samplePlan() });
  });

  test("keeps everything when written and read again, whatever the order of its fields", () => {
    const first = readPlan(JSON.stringify(samplePlan()));
    const written = first.ok ? writePlan(first.plan) : "";
    expect(JSON.parse(written)).toEqual(samplePlan());
    const turned = JSON.stringify(Object.fromEntries(Object.entries(samplePlan()).reverse()));
    const result = readPlan(turned);
    expect(result.ok && writePlan(result.plan)).toBe(written);
  });

  test("is written with its purpose first and short lists on one line", () => {
    const lines = writePlan(samplePlan()).split("\n");
    expect(lines[1]).toBe('  "shows": "every part of the format",');
    expect(lines.some((line) => line.includes('"topFlange_mm": [400, 25]'))).toBe(true);
  });

  test("may begin with a byte order mark", () => {
    expect(readPlan(`\ufeff${JSON.stringify(samplePlan())}`).ok).toBe(true);
  });
});

describe("a file that is no plan yields one error", () => {
  test.each([
    ["", '"', 1, 1, "the end of the file", "a value"],
    ['{ "a": 1\n  "b": 2 }', '"', 2, 3, '"\\""', "a comma or }"],
    ['{ "a": [1, 2,] }', "]", 1, 14, '"]"', "a value"],
    ["{ a: 1 }", "a", 1, 3, '"a"', 'a field name in " signs'],
    ['{ "a" 1 }', "1", 1, 7, '"1"', "a colon after the field name"],
    ['{ "a": 01 }', "1", 1, 9, '"1"', "a comma or }"],
    ['{ "a": NaN }', "N", 1, 8, '"N"', "a value"],
    ['{ "a": "b\nc" }', "\n", 1, 10, '"\\n"', 'the closing " of a text'],
    ['{ "a": "\\x" }', "\\", 1, 9, '"\\\\"', 'the closing " of a text'],
    ["{} {}", "{", 1, 4, '"{"', "the end of the file"],
    [`${"[".repeat(500)}`, "[", 1, 202, '"["', "no more than 200 brackets inside one another"],
  ])("not JSON: %s", (text, _sign, line, column, found, expected) => {
    expect(() => JSON.parse(text)).toThrow();
    expect(errorsOf(text)).toEqual([
      {
        path: "the file",
        found: `${found} in line ${line}, column ${column}, which is not JSON`,
        allowed: `${expected} there`,
        mend: "Correct that place, or save the file again from the program that wrote it.",
      },
    ]);
  });

  test("over 50 MB, counted in bytes of UTF-8", () => {
    const long = JSON.stringify("\u00e9".repeat(largestFile / 2));
    expect(errorsOf(long)).toEqual([
      {
        path: "the file",
        found: "50.0 MB",
        allowed: "at most 50 MB",
        mend: "Split the plan by sets, or take long records out.",
      },
    ]);
  });

  test("a newer version, a file of another kind, a list", () => {
    expect(errorsAfter((p) => put(p, "version", 2))).toEqual([
      {
        path: "version",
        found: "version 2, newer than this program knows",
        allowed: "versions up to 1",
        mend: "Open it with a newer version of this program; the file was not changed.",
      },
    ]);
    expect(errorsOf('{ "format": "handspan-state", "version": 1 }').map(sentence)).toEqual([
      'format: found "handspan-state"; allowed: "handspan-plan". This is a file of another kind: open a plan file.',
    ]);
    expect(errorsOf("[1]").map(sentence)).toEqual([
      "the file: found a list of 1; allowed: one object, the plan. Open a plan file.",
    ]);
  });

  test("a field given twice is told, since one of the two would be lost", () => {
    const text = writePlan(samplePlan()).replace('"skew_deg": 0', '"skew_deg": 0, "skew_deg": 0');
    expect(errorsOf(text)).toEqual([
      {
        path: "site.skew_deg",
        found: expect.stringMatching(/^the field a second time, in line \d+, column \d+$/),
        allowed: "every field once",
        mend: "Take one of the two out; only one of them could be kept.",
      },
    ]);
  });
});

/** Where a value is put, and the one error that it yields: path, found, allowed, how to mend. */
const oneByOne: [what: string, at: string, value: unknown, error: [string, string, string, string]][] = [
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
    ["sets[0].picks[0].rigging", '"bean"', "the name of a rigging: beam", 'Did you mean "beam"?'],
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

describe("one slip yields one error with its place and its words", () => {
  test.each(oneByOne)("%s", (_what, at, value, [path, found, allowed, mend]) => {
    expect(errorsAfter((plan) => put(plan, at, value))).toEqual([{ path, found, allowed, mend }]);
  });
});

describe("slips that concern two places", () => {
  test("an unknown field names its nearest neighbour, and the field that is missing in its stead", () => {
    const errors = errorsAfter((plan) => {
      put(plan, "transporters.0.gauge", 1.8);
      put(plan, "transporters.0.gauge_m", undefined);
    });
    expect(errors).toEqual([
      {
        path: "transporters[0].gauge_m",
        found: "nothing",
        allowed: "a number from 0.3 to 10",
        mend: 'Add the field "gauge_m".',
      },
      {
        path: "transporters[0].gauge",
        found: 'the unknown field "gauge"',
        allowed:
          "here the fields id, name, kind, lines, pitch_m, gauge_m, mass_t, cgHeight_m, bunkHeight_m, allowedLine_kN, allowedSide_kN, allowedGroundPressure_kPa and 23 more",
        mend: 'Did you mean "gauge_m"?',
      },
    ]);
  });

  test("an unknown field in a step is compared with the fields of that kind of step", () => {
    const [error] = errorsAfter((plan) => put(plan, "sets.0.steps.1.distanc_m", 3));
    expect(error.path).toBe("sets[0].steps[1].distanc_m");
    expect(error.mend).toBe("Take the field out, or correct its name.");
    const [second] = errorsAfter((plan) => put(plan, "sets.0.steps.1.minuts", 3));
    expect(second.mend).toBe('Did you mean "minutes"?');
  });

  test("a wheel in two groups is missing in neither; a wheel beyond the last line leaves its group short", () => {
    expect(errorsAfter((plan) => put(plan, "transporters.0.groups.1.wheels.4", "1L")).map(sentence)).toEqual([
      'transporters[0].groups[1].wheels[4]: found wheel 1L, which is in group "rear left" already; allowed: every wheel in exactly one group. Take it out of one of the two.',
    ]);
    expect(errorsAfter((plan) => put(plan, "transporters.0.groups.1.wheels.3", "5R")).map(sentence)).toEqual([
      "transporters[0].groups[1].wheels[3]: found wheel 5R; allowed: wheels 1L to 4R: this transporter has 4 lines. Correct the wheel, or the number of lines.",
      "transporters[0].groups: found wheel 4R in no group; allowed: every wheel in exactly one group. Add each to a group.",
    ]);
  });

  test.each(["transporters", "cranes", "rigging", "lashings", "sets"])("the same id twice in %s", (field) => {
    const errors = errorsAfter((plan) => {
      const copy = structuredClone(plan[field][0]);
      (plan[field] as unknown as unknown[]).push(copy);
    });
    const last = field === "rigging" || field === "sets" ? 1 : 2;
    const kind = field === "rigging" ? "rigging" : field.slice(0, -1);
    expect(errors[0]).toEqual({
      path: `${field}[${last}].id`,
      found: JSON.stringify((samplePlan() as unknown as Loose)[field][0].id),
      allowed: `an id that no other ${kind} has`,
      mend: "Give it another one.",
    });
  });

  test("a group that bears another's name, or a hook's", () => {
    for (const name of ["rear left", "far crane", "near L"]) {
      const errors = errorsAfter((plan) => put(plan, "transporters.1.groups.1.name", name));
      expect(errors).toContainEqual({
        path: "transporters[1].groups[1].name",
        found: JSON.stringify(name),
        allowed: "a name that no other support of the plan has, and that does not begin with near or far",
        mend: "Give the group another name.",
      });
    }
  });

  test("a crane in the plan that has no pick on the set", () => {
    const errors = errorsAfter((plan) =>
      put(plan, "sets.0.picks.1", { crane: "far-1", rigging: "beam", at_m: 3, height_m: 1 }),
    );
    expect(errors).toContainEqual({
      path: "sets[0].steps[12].crane",
      found: "crane near-1, which has no pick on this set",
      allowed: "a crane with a pick on this set: far-1 or far-1",
      mend: "Add its pick to the set's picks.",
    });
    expect(errors[0].path).toBe("sets[0].picks[1].crane");
  });

  test("many errors come at once, each once", () => {
    const errors = errorsAfter((plan) => {
      put(plan, "site.skew_deg", 5);
      put(plan, "transporters.0.pitch_m", "1.4");
      put(plan, "cranes.1.chart.rows", []);
      put(plan, "sets.0.girders.0.pieces.1.from_m", 20);
      put(plan, "sets.0.picks.0.at_m", 300);
      put(plan, "sets.0.steps.1.distnce_m", 1);
      put(plan, "sets.0.steps.2.crane", "far-2");
      put(plan, "sets.0.steps.6.until", { gap_mm: -5 });
      put(plan, "limits.rules.0.chosenBy", "");
    });
    expect(errors.map((error) => error.path).sort()).toEqual([
      "cranes[1].chart.rows",
      "limits.rules[0].chosenBy",
      "sets[0].girders[0].pieces[1].from_m",
      "sets[0].picks[0].at_m",
      "sets[0].steps[1].distnce_m",
      "sets[0].steps[2].crane",
      "sets[0].steps[6].until.gap_mm",
      "site.skew_deg",
      "transporters[0].pitch_m",
    ]);
  });

  test("numbers that JSON cannot hold are refused in data as well", () => {
    const plan = samplePlan();
    plan.transporters[0].mass_t = Number.NaN;
    plan.transporters[1].mass_t = Number.POSITIVE_INFINITY;
    const result = checkPlan(plan);
    expect(result.ok ? [] : result.errors.map((e) => [e.path, e.found])).toEqual([
      ["transporters[0].mass_t", "NaN"],
      ["transporters[1].mass_t", "Infinity"],
    ]);
  });

  test("an empty plan lists every missing part", () => {
    const result = readPlan("{}");
    const paths = result.ok ? [] : result.errors.map((error) => error.path);
    expect(paths).toEqual([
      "shows",
      "format",
      "version",
      "invented",
      "header",
      "site",
      "transporters",
      "cranes",
      "rigging",
      "lashings",
      "sets",
      "limits",
      "spread",
      "accept",
    ]);
  });
});
