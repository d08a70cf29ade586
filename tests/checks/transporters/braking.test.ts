// Stops under way: one finding for a step of bites, and a train that carries little.

import { expect, test } from "vitest";
import { solvePlan } from "../../../src/checks/index.ts";
import { type Pose, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { readScenario } from "../../coverage/plans.ts";
import { within } from "../../reference/close.ts";
import { measureOf } from "../readings.ts";

test("a limit that is passed in every bite, and not between them, is one finding of the step", () => {
  const plan = readScenario("demo", (p) => {
    p.sets[0].steps = p.sets[0].steps.slice(0, 10);
    // 28 kN for each of three lines: 84 kN, a little less than a stop of the set asks for.
    Object.assign(p.transporters[0], { brakedLines: 3, brakeLimit_kN: 84 });
  });
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  const m = measureOf(ctx, "braking", "rear");
  const readings = stored.filter((pose) => pose.step === 9).map((pose) => m.read(pose));
  const beyond = readings.map((r) => r.value > r.limit);
  const turns = beyond.filter((b, i) => i > 0 && b !== beyond[i - 1]).length;
  expect(turns).toBeGreaterThan(4);
  const found = solvePlan(plan).findings.filter((f) => f.check === "braking" && f.subject === "rear");
  expect(found.map((f) => f.worst?.step)).toEqual([9]);
  expect(found[0].value).toBe(Math.max(...readings.map((r) => r.value)) / 1000);
});

test("brakes share by lines, grip by load: the train that carries little locks while both together hold", () => {
  const plan = readScenario("demo", (p) => {
    p.sets[0].steps = p.sets[0].steps.slice(0, 4);
    p.site.path.wheelFriction = 0.0755;
    for (const t of p.transporters) t.brakeLimit_kN = undefined;
    // As many of the rear train's lines brake as of the front's, which carries twice as much.
    p.transporters[0].brakedLines = 6;
    p.transporters[1].brakedLines = 6;
  });
  const result = solvePlan(plan);
  const subjects = result.findings.filter((f) => f.check === "braking").map((f) => f.subject);
  expect(subjects).toEqual(["rear"]);
  const [set] = result.sets;
  const g = 9.80665;
  const all = set.weight + (24.6 + 32.8) * 1000 * g;
  const [found] = result.findings.filter((f) => f.check === "braking");
  // Half of a stop at the standing 5 % of gravity, and of the grade of 0.63 to 0.69 %.
  within(found.value ?? 0, (0.5 * (0.05 + 0.0066) * all) / 1000, 0.01);
});
