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
import { errorsAfter, type Loose, put } from "./slip.ts";

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
        allowed: expect.stringMatching(
          /^here the fields id, name, kind, lines, pitch_m, gauge_m, .*, allowedGroundPressure_kPa and \d+ more$/,
        ),
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
    const kind = field === "rigging" ? "rigging assembly" : field.slice(0, -1);
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
      allowed: "a crane with a pick on this set: far-1",
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
