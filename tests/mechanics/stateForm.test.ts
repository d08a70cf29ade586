// Errors of form in a state file: each slip earns its place, what was found, what is allowed and how to mend it.

import { describe, expect, test } from "vitest";
import { readState } from "../../src/mechanics/index.ts";
import { errorsAfter, example, nothing } from "./stateFile.ts";

describe("form", () => {
  const cases: [string, Record<string, unknown>, string, string, string | RegExp, RegExp][] = [
    ["a field missing", { E: nothing }, "E", "nothing", "a number from 1e6 to 1e13 Pa", /Add the field "E"/],
    ["a version missing", { version: nothing }, "version", "nothing", "1", /Add the field/],
    ["version 0", { version: 0 }, "version", "0", "1", /Correct the number/],
    [
      "an unknown field",
      { "trains/0/stroke": 0.3 },
      "trains[0].stroke",
      'the unknown field "stroke"',
      /^here the fields name, at, lines/,
      /did you mean strokeUp or strokeDown\?/,
    ],
    [
      "a field of the wrong case",
      { "hoists/0/takeup": 1 },
      "hoists[0].takeup",
      'the unknown field "takeup"',
      /takeUp/,
      /did you mean takeUp\?/,
    ],
    ["a number in quotes", { gravity: "9.81" }, "gravity", '"9.81"', /^a number from/, /without quotes/],
    ["a list for a number", { gravity: [9.81] }, "gravity", "a list of 1", /^a number from/, /allowed kind/],
    ["null", { gravity: null }, "gravity", "null", /^a number from/, /allowed kind/],
    [
      "a half line",
      { "trains/0/lines": 3.5 },
      "trains[0].lines",
      "3.5",
      "a whole number from 1 to 200",
      /Correct/,
    ],
    ["no lines", { "trains/0/lines": 0 }, "trains[0].lines", "0", "a whole number from 1 to 200", /Correct/],
    [
      "1e308",
      { "girders/0/pieces/0/massPerMetre": 1e308 },
      "girders[0].pieces[0].massPerMetre",
      "1e+308",
      "a number from 0 to 100000 kg/m",
      /kg/,
    ],
    [
      "a stiffness of 0",
      { "bearings/0/stiffness": 0 },
      "bearings[0].stiffness",
      "0",
      "a number from 1 to 1e12 N/m",
      /N/,
    ],
    [
      "a negative stiffness",
      { "hoists/0/stiffness": -1 },
      "hoists[0].stiffness",
      "-1",
      "a number from 1 to 1e12 N/m",
      /N/,
    ],
    [
      "a negative mass",
      { "pointMasses/0/mass": -5 },
      "pointMasses[0].mass",
      "-5",
      "a number from 0 to 1e7 kg",
      /kg/,
    ],
    [
      "a cross-frame without stiffness",
      { "crossFrames/0/inPlaneInertia": 0 },
      "crossFrames[0].inPlaneInertia",
      "0",
      /1e-12/,
      /Correct/,
    ],
    ["no girders", { girders: [] }, "girders", "an empty list", "a list of 1 to 50 entries", /allowed kind/],
    [
      "no pieces",
      { "girders/1/pieces": [] },
      "girders[1].pieces",
      "an empty list",
      "a list of 1 to 500 entries",
      /allowed kind/,
    ],
    [
      "a blank name",
      { "bearings/0/name": "" },
      "bearings[0].name",
      '""',
      "a name of 1 to 80 signs",
      /allowed kind/,
    ],
    [
      "a plate with one size",
      { "girders/0/pieces/0/web": [1.6] },
      "girders[0].pieces[0].web",
      "a list of 1",
      /two lengths/,
      /allowed kind/,
    ],
    [
      "a word that is none of the allowed",
      { "hoists/0/rigging": "beam" },
      "hoists[0].rigging",
      '"beam"',
      'one of "spreader", "point", "separate"',
      /allowed kind/,
    ],
    ["a grade in per cent", { grade: 4 }, "grade", "4", "a number from -0.5 to 0.5", /Correct/],
    [
      "an unknown field at the top",
      { comment: "x" },
      "comment",
      'the unknown field "comment"',
      /^here the fields format/,
      /Take the field out/,
    ],
    [
      "a word for yes",
      { "trains/0/braked": "yes" },
      "trains[0].braked",
      '"yes"',
      "true or false",
      /allowed kind/,
    ],
    [
      "groups as a list",
      { groups: ["rear:1L"] },
      "groups",
      "a list of 1",
      "an object of names, each with a list of cylinder ids",
      /allowed kind/,
    ],
  ];
  test.each(cases)("%s", (_, change, path, found, allowed, mend) => {
    const errors = errorsAfter(change);
    expect(errors.map((e) => e.path)).toEqual([path]);
    expect(errors[0].found).toBe(found);
    if (typeof allowed === "string") expect(errors[0].allowed).toBe(allowed);
    else expect(errors[0].allowed).toMatch(allowed);
    expect(errors[0].mend).toMatch(mend);
  });
  test("a number beyond all numbers", () => {
    const result = readState(example.replace("9.80665", "1e999"));
    if (result.ok) throw new Error("must not read");
    expect(result.errors).toHaveLength(1);
    expect(result.errors[0]).toMatchObject({ path: "gravity", found: "Infinity" });
  });
});
