// Reading a state file: the documented example, what is no state file at all, and several errors at once.

import { describe, expect, test } from "vitest";
import { readState, type State, type StatePiece, solveState } from "../../src/mechanics/index.ts";
import { changed, errorsAfter, example, nothing } from "./stateFile.ts";

const piece: StatePiece = {
  from: 0,
  to: 24,
  topFlange: [0.4, 0.025],
  web: [1.6, 0.014],
  bottomFlange: [0.45, 0.03],
  massPerMetre: 400,
};

describe("the example of DEVELOPERS.md", () => {
  test("is read as it is written", () => {
    const result = readState(example);
    expect(result).toEqual({ ok: true, state: JSON.parse(example) });
  });
  test("stands, in balance, with every kind of answer", () => {
    const result = readState(`\ufeff${example}`);
    if (!result.ok) throw new Error("the example must read");
    const a = solveState(result.state);
    expect(a.status).toBe("solved");
    expect(a.residual.force).toBeLessThan(1e-9);
    expect(a.residual.moment).toBeLessThan(1e-9);
    for (const name of [
      "bunk rear L 1",
      "group rear left",
      "cylinder rear:1L",
      "hoist far",
      "line far L",
      "bearing near left",
      "lashing L 5",
    ])
      expect(Object.keys(a.forces)).toContain(name);
    expect(a.droop.L).toHaveLength(3);
  });
  test("what is left out means what the guide says", () => {
    const full = readState(changed({ "hoists/0/ropeLength": nothing, "hoists/0/offset": nothing }));
    const bare = readState(
      changed({
        shear: nothing,
        grade: nothing,
        crossfall: nothing,
        wind: nothing,
        "trains/0/braked": nothing,
        "hoists/0/load": nothing,
        "hoists/0/ropeLength": nothing,
        "hoists/0/offset": nothing,
        "lashings/0/pretension": nothing,
        "bearings/0/holds": nothing,
      }),
    );
    if (!full.ok || !bare.ok) throw new Error("both must read");
    expect(solveState(bare.state)).toEqual(solveState(full.state));
  });
  test("the least state: one girder on two seats", () => {
    const state: State = {
      format: "handspan-state",
      version: 1,
      gravity: 9.80665,
      E: 2.1e11,
      G: 8.1e10,
      girders: [{ name: "only", y: 0, pieces: [{ ...piece, topFlange: [0, 0], bottomFlange: [0, 0] }] }],
      bearings: [0, 24].map((at) => ({ name: `at ${at}`, girder: "only", at, seat: 0, stiffness: 1e9 })),
    };
    const result = readState(JSON.stringify(state));
    expect(result).toEqual({ ok: true, state });
  });
});

describe("what is no state file", () => {
  const one = (text: string) => {
    const result = readState(text);
    if (result.ok) throw new Error("must not read");
    expect(result.errors).toHaveLength(1);
    return result.errors[0];
  };
  test("a text that is no JSON gives that one error, with line and column", () => {
    for (const [text, found, allowed] of [
      ["", "the end of the file in line 1, column 1, which is not JSON", "a value there"],
      [
        '{\n  "format": "handspan-state",\n  "version": 1,\n}',
        '"}" in line 4, column 1, which is not JSON',
        'a field name in " signs there',
      ],
      ['{"gravity": NaN}', '"N" in line 1, column 13, which is not JSON', "a value there"],
      ['{"a": [1, 2', "the end of the file in line 1, column 12, which is not JSON", "a comma or ] there"],
      ['{"a": [1,]}', '"]" in line 1, column 10, which is not JSON', "a value there"],
      ['{"a" 1}', '"1" in line 1, column 6, which is not JSON', "a colon there"],
      [
        '{"a": "b\nc"}',
        '"\\"" in line 1, column 7, which is not JSON',
        'a text on one line with a " at its end there',
      ],
      ["{} {}", '"{" in line 1, column 4, which is not JSON', "the end of the file there"],
      ["[01]", '"1" in line 1, column 3, which is not JSON', "a comma or ] there"],
      ["{'a': 1}", '"\'" in line 1, column 2, which is not JSON', 'a field name in " signs, or } there'],
    ]) {
      const e = one(text);
      expect(e.path).toBe("the file");
      expect(e.found).toBe(found);
      expect(e.allowed).toBe(allowed);
      expect(e.mend).toMatch(/^Correct that place/);
      expect(() => JSON.parse(text)).toThrow(SyntaxError);
    }
  });
  test("brackets without end are refused, and do not exhaust the program", () => {
    expect(one("[".repeat(1e6)).allowed).toBe("at most 100 brackets inside one another there");
    expect(one(`"${"a".repeat(21e6)}"`).found).toBe("21.0 million signs");
  });
  test("another kind of file, another kind of value, a newer version", () => {
    expect(one("[]")).toMatchObject({
      path: "the file",
      found: "an empty list",
      allowed: "one object, the state",
    });
    expect(one("null").found).toBe("null");
    expect(one('{"format": "handspan-plan", "version": 9}')).toMatchObject({
      path: "format",
      found: '"handspan-plan"',
      allowed: '"handspan-state"',
    });
    expect(one(changed({ version: 2 }))).toEqual({
      path: "version",
      found: "version 2, newer than this program knows",
      allowed: "versions up to 1",
      mend: "Open it with a newer version of this program; the file was not changed.",
    });
  });
  test("a field given twice", () => {
    const twice = example.replace('"gravity": 9.80665', '"gravity": 9.80665, "gravity": 1.62');
    expect(one(twice)).toMatchObject({
      path: "gravity",
      found: "the field a second time, in line 3, column 23",
      allowed: "every field once",
    });
  });
});

describe("several errors", () => {
  test("all come at once, one slip once", () => {
    const errors = errorsAfter({
      E: "steel",
      "girders/0/y": nothing,
      "trains/0/gauge": -1,
      "hoists/0/girders": ["L", "Q"],
      "bearings/0/girder": "Z",
      "ask/droopAt": ["middle"],
    });
    expect(errors.map((e) => e.path).sort()).toEqual(
      [
        "E",
        "girders[0].y",
        "trains[0].gauge",
        "hoists[0].girders[1]",
        "bearings[0].girder",
        "ask.droopAt[0]",
      ].sort(),
    );
  });
  test("a faulty transporter does not make its cylinders unknown", () => {
    expect(errorsAfter({ "trains/0/mass": "16 t" }).map((e) => e.path)).toEqual(["trains[0].mass"]);
  });
  test("any value in any place is refused in words, or read and then solved: nothing throws", () => {
    const places: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (path !== "") places.push(path);
      if (typeof value === "object" && value !== null)
        for (const [key, inner] of Object.entries(value)) walk(inner, path === "" ? key : `${path}/${key}`);
    };
    walk(JSON.parse(example), "");
    expect(places.length).toBeGreaterThan(150);
    let solved = 0;
    for (const place of places)
      for (const value of [nothing, null, "", "L", 0, -1, 0.3, 1e308, true, [], {}, [null], { a: 1 }]) {
        const result = readState(changed({ [place]: value }));
        if (!result.ok) {
          for (const e of result.errors)
            for (const part of [e.path, e.found, e.allowed, e.mend]) expect(part).not.toBe("");
          continue;
        }
        const answer = solveState(result.state);
        if (answer.status !== "solved") continue;
        solved++;
        for (const [name, force] of Object.entries(answer.forces))
          expect(Number.isFinite(force), `${place} = ${String(value)}: ${name}`).toBe(true);
      }
    expect(solved).toBeGreaterThan(100);
  });
});
