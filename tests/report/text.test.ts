// Answers in words: a mechanism has a motion and no numbers, and text of a user cannot move a terminal's cursor.
import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { solveState } from "../../src/mechanics/index.ts";
import { contextsOf, oneLine, resultJson, solveText, stateJson, stateText } from "../../src/report/index.ts";
import { goodSteps, smallPlan, steps } from "./plans.ts";
import { beam } from "./states.ts";

describe("the answer to a state", () => {
  const solved = solveState(beam(18));
  const fallen = solveState(beam(12));

  test("names status, weight, forces and residual; the reactions by statics: 150 kN at 15 m on 0 and 18 m", () => {
    const text = stateText(solved);
    expect(text).toMatch(/^status: solved\n/);
    expect(text).toMatch(/bearing rear +25\.000/);
    expect(text).toMatch(/bearing front +125\.000/);
    expect(text).toMatch(/weight: 150\.000 kN/);
    expect(text).toMatch(/residual: force \d/);
  });

  test("with a mechanism: the motion in words, and no number at all", () => {
    expect(fallen.status).toBe("mechanism");
    const text = stateText(fallen);
    expect(text).toMatch(/^status: mechanism/);
    expect(text).toMatch(/motion: \S/);
    expect(text).not.toMatch(/kN|residual:/);
    const json = JSON.parse(stateJson(fallen, "1")) as Record<string, unknown>;
    expect(json.status).toBe("mechanism");
    expect(Object.keys(json)).not.toContain("forces");
    expect(Object.keys(json)).not.toContain("weight");
  });

  test("as JSON keeps every bit of every force", () => {
    const json = JSON.parse(stateJson(solved, "1")) as { forces: Record<string, number> };
    expect(json.forces).toEqual(solved.forces);
  });
});

describe("a solved plan", () => {
  const plan = smallPlan(goodSteps());
  const result = solvePlan(plan);
  const contexts = contextsOf(result, plan);

  test("prints every step with both its ends, and its findings", () => {
    const text = solveText(result, plan, contexts);
    for (const step of plan.sets[0].steps) expect(text).toContain(step.id);
    expect(text.match(/ start /g)?.length).toBe(plan.sets[0].steps.length);
    expect(text).toMatch(/findings: /);
    expect(text).toMatch(/not a substitute/);
  });

  test("as JSON has the result's own numbers at every pose, and its places in the world", () => {
    const json = JSON.parse(resultJson(result, plan, contexts));
    const [set] = result.sets;
    const { poses } = json.sets[0];
    expect(poses.length).toBe(set.count);
    for (let p = 0; p < set.count; p++)
      set.supports.forEach((support, j) => {
        const force = set.forces[p * set.supports.length + j];
        expect(poses[p].forces[support.name]).toBe(Number.isNaN(force) ? null : force + 0);
      });
    const last = poses.at(-1);
    // Tail and nose lie the set's length apart: the path's slopes shorten its plan by far less than 1 %.
    expect(last.world.nose[0] - last.world.tail[0]).toBeGreaterThan(35.9);
    expect(last.world.nose[0] - last.world.tail[0]).toBeLessThan(36.1);
    expect(Object.keys(last.world.wheels).length).toBe(16);
    expect(last.world.hooks["far-1"]).toHaveLength(3);
  });

  test("a step without equilibrium says so, and the steps after it are not solved", () => {
    const sunk = smallPlan([steps.tie, steps.roll, steps.untie, steps.fall, steps.far]);
    const fell = solvePlan(sunk);
    expect(fell.complete).toBe(false);
    const text = solveText(fell, sunk);
    expect(text).toMatch(/fall .*no equilibrium: /);
    expect(text.split("\n").find((line) => line.includes("far on"))).toMatch(/not solved|no equilibrium/);
  });
});

test("control signs in a name become blanks", () => {
  expect(oneLine("a\u001b[2Jb\nc")).toBe("a [2Jb c");
});
