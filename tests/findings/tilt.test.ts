// Tilt on soft trains, by hand and by the buckling of the same pose: a rigid set leans over at k / sum(W h) of its loads.
// Source: second-order theory of a rigid body on springs; no published numbers.

import { describe, expect, test } from "vitest";
import { leanHeldBy, overturningOf, solvePlan } from "../../src/checks/index.ts";
import { bucklingOf, solveStatics } from "../../src/mechanics/index.ts";
import { byId, takeOff } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { near, ranScenario, scenario } from "../sequence/plans.ts";

const g = 9.80665;
const r = ranScenario("demo");
const at = (id: string, p = 1) => poseAt(r.ctx, r.step(id), p);
const pull = (id: string, p = 1) => overturningOf(at(id, p).solution) ?? Number.NaN;

describe("the demo's set", () => {
  test("on two trains: every weight by its height above what it stands on", () => {
    const { mass, cg } = takeOff(r.plan.sets[0]);
    const trains = ["front", "rear"].map((id) => byId(r.plan.transporters, id));
    const decks = trains.reduce((sum, t) => sum + t.mass_t * 1000 * g * t.cgHeight_m, 0);
    // Both decks stand equally high here, so that how they share the set does not matter.
    expect(trains[0].bunkHeight_m).toBe(trains[1].bunkHeight_m);
    const byHand = mass * g * (cg[2] + trains[0].bunkHeight_m) + decks;
    // The path falls by under 1 %, which takes 2e-5 off what acts square to it.
    near(pull("lash-down", 0), byHand, 5e-5);
  });

  test("nothing pulls over once no bunk carries", () => {
    expect(overturningOf(at("lift").solution)).toBeNull();
    expect(overturningOf(at("landing").solution)).toBeNull();
  });

  test.each([
    ["lash-down", 0],
    ["second-roll", 1],
  ] as const)("%s: a set made rigid buckles at the same factor, within 2 %%", (id, p) => {
    const pose = at(id, p);
    const rigid = { ...pose.state, E: pose.state.E * 1e3, G: pose.state.G * 1e3 };
    const factor = bucklingOf(solveStatics(rigid))?.factor ?? Number.NaN;
    const byHand = leanHeldBy(pose).stiffness / pull(id, p);
    // Sideways give of bunks and of the thousandfold set lowers it a little.
    expect(factor / byHand).toBeGreaterThan(0.98);
    expect(factor / byHand).toBeLessThan(1.005);
  });
});

test("trains so soft that the weights pull over by more than they hold: a stop; a little stiffer: a caution that says by how much", () => {
  const soft = (by: number) =>
    solvePlan(
      scenario("demo", (plan) => {
        plan.sets[0].steps = plan.sets[0].steps.slice(0, 2);
        for (const t of plan.transporters) t.cylinderStiffness_kN_per_mm *= by;
      }),
    ).findings.filter((f) => f.check.startsWith("tilt"));
  const used = pull("lash-down", 0) / leanHeldBy(at("lash-down", 0)).stiffness;
  expect(soft(1)).toEqual([]);
  const [over] = soft(used / 1.2);
  expect(over).toMatchObject({ check: "tilting over", level: "stop", subject: "set" });
  expect(over.value).toBeGreaterThan(1);
  const [grown] = soft(used / 0.5);
  expect(grown).toMatchObject({ check: "tilt growth", level: "caution" });
  // Bunks in series with the groups keep their stiffness: a little above 1 / (1 - 0.5).
  expect(grown.value).toBeGreaterThan(1.9);
  expect(grown.value).toBeLessThan(2.1);
});
