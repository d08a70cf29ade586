// Steps added, copied and split: names that are free, motions that add up, and a plan that stays sound.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { freeName, withTyped } from "../../src/places/plan/data/changes.ts";
import {
  splitLength,
  stepAdded,
  stepCopied,
  stepKinds,
  stepSplit,
} from "../../src/places/plan/data/stepEdits.ts";
import { checkPlan, type Plan, renamed, type StepOf } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

const plan = samplePlan();
const steps = ["sets", 0, "steps"];
const list = plan.sets[0].steps;
const errorsOf = (of: Plan) => {
  const read = checkPlan(of);
  return read.ok ? [] : read.errors.map((error) => error.path);
};

test("a copy of any step has names of its own and leaves the plan sound", () => {
  for (const index of list.keys()) {
    const after = stepCopied(plan, steps, index).change(plan);
    expect(errorsOf(after)).toEqual([]);
    expect(after.sets[0].steps).toHaveLength(list.length + 1);
    expect(after.sets[0].steps[index]).toBe(list[index]);
  }
});

test("a new step of any kind lacks only what a person must say", () => {
  for (const kind of stepKinds(plan)) {
    const after = stepAdded(plan, steps, 3, kind).change(plan);
    const own = errorsOf(after).filter((path) => !path.startsWith("sets[0].steps[3]"));
    expect(own).toEqual([]);
    expect(after.sets[0].steps[3].do).toBe(kind);
  }
});

describe("splitting", () => {
  const roll = list.findIndex((step) => step.do === "roll");
  test("the two parts of a roll add up to it, wherever it is split", () => {
    const length = (list[roll] as StepOf<"roll">).distance_m;
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: length - 0.001, noNaN: true }), (at) => {
        const edit = stepSplit(plan, steps, roll, at);
        if (typeof edit === "string") throw new Error(edit);
        const after = edit.change(plan);
        const [a, b] = after.sets[0].steps.slice(roll, roll + 2) as StepOf<"roll">[];
        // Both are kept to 12 digits.
        expect(a.distance_m + b.distance_m).toBeCloseTo(length, 9);
        expect(a.distance_m).toBeCloseTo(at, 9);
        expect(a.id).toBe(list[roll].id);
        expect(b.id).toBe(`${list[roll].id}-2`);
        expect(errorsOf(after)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
  test("a hoist is split for all its hooks in the same share", () => {
    const index = list.findIndex((step) => step.do === "hoist up");
    const edit = stepSplit(plan, steps, index, 200);
    if (typeof edit === "string") throw new Error(edit);
    const [a, b] = edit.change(plan).sets[0].steps.slice(index, index + 2) as StepOf<"hoist up">[];
    expect(a.hooks.map((hook) => hook.height_mm)).toEqual([200, 200]);
    expect(b.hooks.map((hook) => hook.height_mm)).toEqual([300, 300]);
  });
  test("what cannot be split says why", () => {
    expect(stepSplit(plan, steps, roll, 0)).toMatch(/0 m is not inside of 12 m/);
    expect(stepSplit(plan, steps, roll, 12)).toMatch(/not inside/);
    const land = list.findIndex((step) => step.do === "land");
    expect(splitLength(list[land])).toBeNull();
    expect(stepSplit(plan, steps, land, 1)).toMatch(/cannot be split/);
  });
});

describe("names that are typed", () => {
  test("change every reference with them", () => {
    const after = withTyped(plan, ["cranes", 0, "id"], "big");
    expect(after).toEqual(renamed(plan, "crane", "far-1", "big"));
    expect(errorsOf(after)).toEqual([]);
  });
  test("a blank name, and a name that two things have, are changed alone", () => {
    const blank = withTyped(plan, ["cranes", 0, "id"], "");
    expect(blank.cranes[0].id).toBe("");
    expect(withTyped(blank, ["cranes", 0, "id"], "far-1")).toEqual(plan);
  });
  test("a free name counts on", () => {
    expect(freeName("a", ["a", "a-2"])).toBe("a-3");
    expect(freeName("a-2", ["a", "a-2"])).toBe("a-3");
    expect(freeName("b", ["a"])).toBe("b");
  });
});
