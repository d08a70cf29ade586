// Strokes over a path with a bump: by cause, and the worst that lies between stored poses.

import { describe, expect, test } from "vitest";
import { solvePlan } from "../../../src/checks/index.ts";
import { causeWords, strokeCauses } from "../../../src/checks/transporters/stroke.ts";
import { type Pose, poseAt, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { readScenario } from "../../coverage/plans.ts";
import { measureOf } from "../readings.ts";

/** A crest 60 mm high and 1 m long at 184 m, which the front train's axle lines pass one after the other. */
const bumpy = readScenario("demo", (plan) => {
  plan.sets[0].steps = plan.sets[0].steps.slice(2, 3);
  plan.site.path.points = [
    [120, 30.5],
    [183.5, 30.5],
    [184, 30.56],
    [184.5, 30.5],
    [210.5, 30.5],
  ].map(([chainage_m, elevation_m]) => ({ chainage_m, elevation_m, crossfall_pct: 0 }));
});

describe("a crest in the path", () => {
  const ctx = prepareContext(bumpy, bumpy.sets[0].id);
  const stored: Pose[] = [];
  const run = runSet(ctx, [], { onPose: (pose) => stored.push(pose) });

  test("at every pose the causes add up to the stroke, and the crest shows as one", () => {
    let most = 0;
    for (const pose of stored)
      for (let c = 0; c < pose.solution.stroke.length; c++) {
        const parts = strokeCauses(ctx, pose, c);
        const sum = parts.lift + parts.slope + parts.curve + parts.crossfall + parts.rest;
        expect(Math.abs(sum - pose.solution.stroke[c])).toBeLessThan(1e-15);
        // No cylinder is at its end: geometry explains all of it, to the roundings of levels of 30 m.
        expect(Math.abs(parts.rest)).toBeLessThan(1e-12);
        most = Math.max(most, Math.abs(parts.curve));
      }
    expect(most).toBeGreaterThan(0.03);
  });

  test("a limit a hundredth below the worst of 2000 poses is found as crossed, one as much above is not", () => {
    // 2000 poses of the step: what the front train uses at most.
    const m = measureOf(ctx, "stroke", "front");
    let most = 0;
    for (let i = 0; i <= 2000; i++) most = Math.max(most, m.read(poseAt(ctx, run.steps[0], i / 2000)).value);
    const found = (limit: number) => {
      const plan = structuredClone(bumpy);
      const rule = { id: "stroke use", value: limit, unit: "pct" as const };
      plan.limits.rules.push({ ...rule, source: "invented for this test", chosenBy: "test" });
      return solvePlan(plan).findings.filter((f) => f.check === "stroke" && f.subject === "front");
    };
    expect(found(100 * most * 0.99).length).toBeGreaterThan(0);
    expect(found(100 * most * 1.01)).toEqual([]);
  });
});

test("causes in words, greatest first, small ones left out", () => {
  const slopes = { deck: 0, path: 0, deckAcross: 0 };
  const words = causeWords({
    lift: -0.18,
    slope: 0.02,
    curve: 0.0001,
    crossfall: -0.03,
    rest: 0,
    slopes,
    off: [0, 0],
  });
  expect(words).toBe("lift of its group -180, crossfall -30, grade +20");
});
