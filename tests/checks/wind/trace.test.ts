// Traces of the checks of wind, evaluated anew by a library that shares no code with them.

import { describe, expect, test } from "vitest";
import { solvePlan, traceOf, tracesIn } from "../../../src/checks/index.ts";
import { prepareContext } from "../../../src/sequence/index.ts";
import { scenario } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const plan = scenario("demo");
const [{ id }] = plan.sets;
const ctx = prepareContext(plan, id);
const result = solvePlan(plan, { contexts: new Map([[id, ctx]]) });
const stepOf = (name: string) => plan.sets[0].steps.findIndex((s) => s.id === name);

const cases: [check: string, subject: string, step: string, progress: number][] = [
  ["chart wind", "far crane", "far-takes", 0.7],
  ["chart wind", "near crane", "lift", 1],
  ["in the wind: group load", "front left", "first-roll", 0.4],
  ["in the wind: hook load", "far crane", "lift", 0.5],
  ["in the wind: tipping", "set", "roll-with-far", 0.5],
  ["in the wind: set lean", "set", "lower", 0.98],
  ["in the wind: set level", "set", "over", 0.5],
  ["overnight: set lean", "set", "near-off", 1],
  ["wind limit", "lift", "lift", 0],
  ["highest wind", "lift", "lift", 0.5],
  ["forecast", "landing", "landing", 0],
];

describe("give their numbers", () => {
  test.each(cases)("%s of %s in %s at %f", (check, subject, step, progress) => {
    const traced = traceOf(plan, result, { check, subject, set: id, step: stepOf(step), progress }, ctx);
    if (!traced.found) throw new Error(traced.why);
    expect(traced.value.value).toBe(traced.reading.value);
    expect(traced.limit?.value).toBe(traced.reading.limit);
    expectTrue(traced.trace, plan);
  });

  test("what the statics gave in the wind says so", () => {
    const asked = {
      check: "in the wind: group load",
      subject: "front left",
      set: id,
      step: stepOf("first-roll"),
    };
    const traced = traceOf(plan, result, { ...asked, progress: 0 }, ctx);
    if (!traced.found) throw new Error(traced.why);
    const words = tracesIn(traced.trace).flatMap((t) =>
      t.leaf && "solved" in t.leaf ? [t.leaf.solved] : [],
    );
    expect(words.some((w) => w.includes("in the wind limit of the step blowing"))).toBe(true);
  });

  test("a step without a wind limit has none", () => {
    const asked = { check: "in the wind: group load", subject: "rear left", set: id, step: stepOf("brief") };
    expect(traceOf(plan, result, { ...asked, progress: 0 }, ctx).found).toBe(false);
  });
});
