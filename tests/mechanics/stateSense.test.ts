// Errors of sense in a state file: names that do not exist, pieces that do not join, supports off the set.

import { describe, expect, test } from "vitest";
import { readState, type StatePiece } from "../../src/mechanics/index.ts";
import { errorsAfter, example, nothing } from "./stateFile.ts";

const piece: StatePiece = {
  from: 0,
  to: 24,
  topFlange: [0.4, 0.025],
  web: [1.6, 0.014],
  bottomFlange: [0.45, 0.03],
  massPerMetre: 400,
};

describe("sense", () => {
  const cases: [string, Record<string, unknown>, [string, RegExp, RegExp][]][] = [
    [
      "two girders of one name",
      {
        "girders/1/name": "L",
        "trains/0/bunkGirders": ["L"],
        "trains/0/packing": {},
        "hoists/0/girders": ["L"],
      },
      [["girders[1].name", /"L"/, /no other girder/]],
    ],
    [
      "two girders at one place",
      { "girders/1/y": 1.5 },
      [["girders[1].y", /where girder L stands/, /0\.01 m apart/]],
    ],
    [
      "pieces that do not join",
      {
        "girders/0/pieces": [
          { ...piece, to: 12 },
          { ...piece, from: 12.5 },
        ],
      },
      [["girders[0].pieces[1].from", /12\.5 m/, /end of the piece before, 12 m/]],
    ],
    [
      "a piece from front to rear",
      { "girders/0/pieces": [{ ...piece, from: 24, to: 24 }], "girders/1/pieces": [piece] },
      [
        ["girders[0].pieces[0].to", /24 m after 24 m/, /0\.02 m more/],
        ["crossFrames[0].at", /off girder L/, /from 24 to 24/],
        ["crossFrames[1].at", /off girder L/, /from 24 to 24/],
        ["pointMasses[0].at", /the mass at 12 m/, /from 24 to 24/],
        ["trains[0].bunks[0]", /station 4 m under girder L/, /from 24 to 24/],
        ["trains[0].bunks[1]", /station 6 m under girder L/, /from 24 to 24/],
        ["hoists[0].at", /the pick at 23 m/, /from 24 to 24/],
        ["lashings[0].at", /the lashing at 5 m/, /from 24 to 24/],
        ["bearings[0].at", /the bearing at 0\.4 m/, /from 24 to 24/],
      ],
    ],
    [
      "plates without area",
      { "girders/0/pieces/0": { ...piece, topFlange: [0, 0.02], web: [0, 0], bottomFlange: [0.3, 0] } },
      [["girders[0].pieces[0]", /without area/, /at least one plate/]],
    ],
    [
      "camber out of order",
      {
        "girders/0/camber": [
          [0, 0],
          [12, 0.03],
          [12, 0],
        ],
      },
      [["girders[0].camber[2]", /12 m after 12 m/, /rising/]],
    ],
    [
      "a frame off the set",
      { "crossFrames/1/at": 24.5 },
      [
        ["crossFrames[1].at", /off girder L/, /from 0 to 24/],
        ["crossFrames[1].at", /off girder R/, /from 0 to 24/],
      ],
    ],
    [
      "a mass on no girder",
      { "pointMasses/0/girder": "M" },
      [["pointMasses[0].girder", /"M"/, /name of a girder: L or R/]],
    ],
    [
      "a set without mass",
      {
        "girders/0/pieces/0/massPerMetre": 0,
        "girders/1/pieces/0/massPerMetre": 0,
        crossFrames: [],
        pointMasses: [],
      },
      [["girders", /without mass/, /above 0 kg/]],
    ],
    [
      "a bunk under an unknown girder",
      { "trains/0/bunkGirders": ["L", "r"], "trains/0/packing": {} },
      [["trains[0].bunkGirders[1]", /"r"/, /L or R/]],
    ],
    [
      "a bunk off the set",
      { "trains/0/bunks": [-6, 1] },
      [
        ["trains[0].bunks[0]", /station -1 m under girder L/, /from 0 to 24/],
        ["trains[0].bunks[0]", /station -1 m under girder R/, /from 0 to 24/],
      ],
    ],
    ["a bunk row twice", { "trains/0/bunks": [1, 1] }, [["trains[0].bunks[1]", /1 a second time/, /once/]]],
    [
      "packing where no bunk is",
      { "trains/0/packing": { M: 0.01 } },
      [["trains[0].packing.M", /"M"/, /girder on this transporter: L or R/]],
    ],
    [
      "a cylinder that does not exist",
      { "groups/rear left/3": "rear:5L" },
      [['groups["rear left"][3]', /"rear:5L"/, /rear:1L to rear:4R/]],
    ],
    [
      "a cylinder in two groups",
      { "groups/rear right/0": "rear:1L" },
      [['groups["rear right"][0]', /which stands in group rear left/, /one group, once/]],
    ],
    [
      "a lift of no group",
      { groupLift: { "rear midle": 0.01 } },
      [['groupLift["rear midle"]', /rear midle/, /rear left or rear right/]],
    ],
    [
      "ground under no wheel",
      { ground: { "rear:4X": 0.01 } },
      [['ground["rear:4X"]', /rear:4X/, /a cylinder/]],
    ],
    [
      "a take-up without its number",
      { "hoists/0/takeUp": null },
      [["hoists[0].takeUp", /null/, /since the mode is "takeUp"/]],
    ],
    [
      "a load without its number",
      { "hoists/0/mode": "load" },
      [["hoists[0].load", /null/, /since the mode is "load"/]],
    ],
    [
      "a load left out",
      { "hoists/0/mode": "load", "hoists/0/load": nothing },
      [["hoists[0].load", /nothing/, /since the mode is "load"/]],
    ],
    [
      "a pick off the set",
      { "hoists/0/at": -0.5 },
      [
        ["hoists[0].at", /the pick at -0\.5 m/, /girder L, from 0 to 24/],
        ["hoists[0].at", /the pick at -0\.5 m/, /girder R, from 0 to 24/],
      ],
    ],
    [
      "one girder picked twice",
      { "hoists/0/girders": ["L", "L"] },
      [["hoists[0].girders[1]", /"L" a second time/, /once/]],
    ],
    [
      "a lashing to no transporter",
      { "lashings/0/train": "front" },
      [["lashings[0].train", /"front"/, /name of a transporter: rear/]],
    ],
    [
      "a bearing off its girder",
      { "bearings/0/at": 24.001 },
      [["bearings[0].at", /the bearing at 24\.001 m/, /girder L, from 0 to 24/]],
    ],
    ["a droop asked off the set", { "ask/droopAt": [0, 25] }, [["ask.droopAt[1]", /25 m/, /from 0 to 24/]]],
  ];
  test.each(cases)("%s", (_, change, expected) => {
    const errors = errorsAfter(change);
    expect(errors.map((e) => e.path)).toEqual(expected.map(([path]) => path));
    expected.forEach(([, found, allowed], i) => {
      expect(errors[i].found).toMatch(found);
      expect(errors[i].allowed).toMatch(allowed);
      expect(errors[i].mend).toMatch(/^[A-Z].*\.$/);
    });
  });
  test("names twice in every list", () => {
    const data = JSON.parse(example);
    for (const list of ["trains", "hoists", "bearings"]) {
      const errors = errorsAfter({
        [list]: [data[list][0], data[list][0]],
        groups: {},
        groupLift: {},
        ground: {},
      });
      expect(errors.map((e) => e.path)).toEqual([`${list}[1].name`]);
    }
  });
  test("two supports that the answer would call by one name", () => {
    const data = JSON.parse(example);
    const [lashing] = data.lashings;
    const errors = errorsAfter({ lashings: [lashing, lashing] });
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({ path: "lashings[1]", allowed: "a name of its own for every force" });
    expect(errors[0].found).toBe('"lashing L 5", the answer\'s name for this and for lashings[0]');
  });
  test("a name under which JavaScript keeps nothing", () => {
    const spoiled = readState(example.replace('"groupLift": {', '"groupLift": { "__proto__": 0.1,'));
    if (spoiled.ok) throw new Error("must not read");
    expect(spoiled.errors.map((e) => e.path)).toContain("groupLift.__proto__");
    const named = errorsAfter({ "bearings/0/name": "__proto__" });
    expect(named.map((e) => e.path)).toEqual(["bearings[0].name"]);
  });
});
