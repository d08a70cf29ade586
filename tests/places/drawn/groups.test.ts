// Hydraulic groups as they are drawn and changed: every wheel once, names followed everywhere, the base below a set.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  assigned,
  centroidOf,
  groupProblems,
  newGroupName,
  standingUnder,
  wheelsOf,
} from "../../../src/places/plan/data/drawn/groups.ts";
import { letterOf } from "../../../src/places/plan/data/drawn/patterns.tsx";
import { wheelBeside } from "../../../src/places/plan/data/drawn/WheelPlan.tsx";
import { checkPlan, type Plan, readPlan, takeOff } from "../../../src/plan/index.ts";
import { wheelsOf as solvedWheels } from "../../../src/sequence/index.ts";

function demo(): Plan {
  const read = readPlan(readFileSync("scenarios/demo.json", "utf8"));
  if (!read.ok) throw new Error("the demonstration is no plan");
  return read.plan;
}

const problemsOf = (plan: Plan) => {
  const got = checkPlan(plan);
  return got.ok ? [] : got.errors;
};

test("wheels are drawn where the solver has them", () => {
  const plan = demo();
  for (const one of plan.transporters)
    expect(wheelsOf(one).map(({ name: id, x, y }) => ({ id, x, y }))).toEqual(solvedWheels(plan, one.id));
});

describe("assigning", () => {
  test("takes wheels out of their group into another; the plan stays sound", () => {
    const plan = assigned(demo(), 0, ["3L", "3R"], "rear left");
    const [rear] = plan.transporters;
    expect(rear.groups.map(({ wheels }) => wheels.join(" "))).toEqual([
      "1L 1R 2L 2R",
      "3L 3R 4L 5L 6L",
      "4R 5R 6R",
    ]);
    expect(groupProblems(rear)).toEqual([]);
    expect(problemsOf(plan)).toEqual([]);
  });

  test("a new group has a name that nothing has", () => {
    const plan = demo();
    const name = newGroupName(plan, 0);
    const next = assigned(plan, 0, ["6L"], name);
    expect(next.transporters[0].groups[3]).toEqual({ name, wheels: ["6L"] });
    expect(problemsOf(next)).toEqual([]);
    expect(newGroupName(next, 0)).not.toBe(name);
  });

  test("a group that gives all its wheels is merged: steps refer to the other, once", () => {
    const plan = demo();
    const { wheels } = plan.transporters[0].groups[1];
    const next = assigned(plan, 0, wheels, "rear right");
    expect(next.transporters[0].groups.map(({ name }) => name)).toEqual(["rear aft", "rear right"]);
    expect(JSON.stringify(next)).not.toContain('"rear left"');
    expect(problemsOf(next)).toEqual([]);
    const lists = next.sets.flatMap((set) => set.steps.map((step) => step.carries ?? []));
    for (const list of lists) expect(new Set(list).size).toBe(list.length);
    expect(lists.flat()).toContain("rear right");
  });
});

test("wheels in none, in two and beyond the lines are named", () => {
  const [rear] = demo().transporters;
  const [aft, left, right] = rear.groups;
  const broken = {
    ...rear,
    groups: [{ ...aft, wheels: ["1L", "1R", "2L", "2R", "3L", "4L", "9R"] }, left, right],
  };
  expect(groupProblems(broken)).toEqual([
    "Wheel 3R is in no group: pick and assign.",
    "Wheel 4L is in rear aft and in rear left: assign it to one of them.",
    "Wheel 9R is not there: this transporter has 6 lines.",
  ]);
});

describe("the base", () => {
  test("a centroid is the mean of its wheels, by hand", () => {
    const [rear] = demo().transporters;
    const wheels = wheelsOf(rear);
    // Six lines 1.4 m apart: lines 1 to 3 lie at -3.5, -2.1, -0.7; both sides of them cancel across.
    const aft = centroidOf(rear.groups[0], wheels);
    expect(aft?.x).toBeCloseTo(-2.1, 12);
    expect(aft?.y).toBeCloseTo(0, 12);
    const left = centroidOf(rear.groups[1], wheels);
    expect(left?.x).toBeCloseTo(2.1, 12);
    expect(left?.y).toBeCloseTo(1.05, 12);
  });

  test("under the demonstration's set: hull of both trains, the CG inside by the hand-made distance", () => {
    const plan = demo();
    const [set] = plan.sets;
    const { cg } = takeOff(set);
    const it = standingUnder(plan, set, cg);
    // Rear deck at 8.5, front at 36: aft centroid at 6.4, the fronts' left and right at 36 + 2.8 and 1.05 either side.
    expect(it.corners.map(({ x }) => Math.round(x * 10) / 10).sort((a, b) => a - b)).toEqual([
      6.4, 10.6, 10.6, 38.8, 38.8,
    ]);
    // The nearest line is a side between the trains, 1.05 m from the axis.
    expect(it.inside).toBeCloseTo(1.05 - Math.abs(cg[1]), 9);
  });
});

test("arrows lead along the lines and across, and stay at the ends", () => {
  const wheels = wheelsOf(demo().transporters[0]);
  const go = (from: string, key: string) =>
    wheels[
      wheelBeside(
        wheels,
        wheels.findIndex(({ name }) => name === from),
        key,
      )
    ].name;
  expect(go("1L", "ArrowRight")).toBe("2L");
  expect(go("6L", "ArrowRight")).toBe("6L");
  expect(go("3L", "ArrowDown")).toBe("3R");
  expect(go("3R", "ArrowDown")).toBe("3R");
  expect(go("3R", "ArrowUp")).toBe("3L");
  expect(go("4R", "Home")).toBe("1R");
});

test("letters go on behind Z", () => {
  expect([0, 25, 26].map(letterOf)).toEqual(["A", "Z", "A2"]);
});
