// Buckling along a run: which poses are looked at, what is found, and how it can be broken off. The numbers themselves
// are held against published cases in tests/mechanics and tests/reference; no source here.

import { describe, expect, test } from "vitest";
import { bucklingOver, runBuckling, solvePlan, withBuckling } from "../../src/checks/index.ts";
import { bucklingOf } from "../../src/mechanics/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";

const plan = scenario("demo");
const result = solvePlan(plan);
const [set] = result.sets;
const ctx = prepareContext(plan, set.setId);
const whole = runBuckling(ctx, set, "stages");
if (whole === null) throw new Error("nothing broke it off");

describe("the demonstration plan", () => {
  test("every step is looked at where it ends, and each stage's factor is that of its pose", () => {
    const rests = whole.stages.filter((s) => s.why === "rest");
    expect(rests.map((s) => [s.step, s.progress])).toEqual([[0, 0], ...set.steps.map((s) => [s.index, 1])]);
    for (const stage of whole.stages.filter((_, i) => i % 5 === 0)) {
      const pose = poseAt(ctx, set.steps[stage.step], stage.progress);
      expect(stage.factor).toBe(bucklingOf(pose.solution)?.factor);
    }
  });

  test("the state of rest list is part of it", () => {
    const rests = runBuckling(ctx, set, "rests");
    expect(rests?.stages.map((s) => s.factor)).toEqual(
      whole.stages.filter((s) => s.why === "rest").map((s) => s.factor),
    );
  });

  test("hung from both hooks it is nearer to buckling than on its bearings or on its trains", () => {
    const at = (id: string) => {
      const index = set.steps.findIndex((s) => s.step.id === id);
      return whole.stages.findLast((s) => s.step === index)?.factor ?? Number.NaN;
    };
    expect(at("lift")).toBeLessThan(at("landing"));
    expect(at("landing")).toBeLessThan(at("brief"));
  });

  test("no finding while every factor is above the limit; a least factor above one is a stop over those stages", () => {
    expect(whole.findings).toEqual([]);
    const least = Math.min(...whole.stages.map((s) => s.factor ?? Number.POSITIVE_INFINITY));
    const strict = scenario("demo", (p) => {
      p.limits.rules.push({
        id: "buckling factor",
        value: least * 1.01,
        unit: "1",
        source: "this test",
        chosenBy: "this test",
      });
    });
    const found = runBuckling(prepareContext(strict, set.setId), set, "stages");
    const low = whole.stages.filter((s) => (s.factor ?? 0) < least * 1.01);
    expect(found?.findings).toHaveLength(1);
    const [finding] = found?.findings ?? [];
    expect(finding).toMatchObject({ level: "stop", check: "buckling", value: least, source: "this test" });
    expect(finding.from).toEqual({ step: low[0].step, progress: low[0].progress });
    expect(finding.to).toEqual({ step: low.at(-1)?.step, progress: low.at(-1)?.progress });
    const joined = withBuckling(result, set.setId, found as NonNullable<typeof found>);
    expect(joined.worst).toBe("stop");
    // Taken over again, it does not stand twice.
    const again = withBuckling(joined, set.setId, found as NonNullable<typeof found>);
    expect(again.findings.filter((f) => f.check === "buckling")).toHaveLength(1);
  });
});

test("it can be broken off after any pose, and goes one pose at a time", () => {
  let told = 0;
  expect(runBuckling(ctx, set, "rests", () => ++told < 3)).toBeNull();
  expect(told).toBe(3);
  const search = bucklingOver(ctx, set, "rests");
  expect(search.next()).toBe(true);
  expect(search.done()).toBe(1);
  expect(search.result()).toMatchObject({ of: search.of, stages: [whole.stages[0]] });
});
