// Traces of the checks of wind, evaluated anew by a library that shares no code with them.

import { describe, expect, test } from "vitest";
import { solvePlan, traceOf, tracesIn } from "../../../src/checks/index.ts";
import { prepareContext } from "../../../src/sequence/index.ts";
import { cutAfter, readScenario } from "../../coverage/plans.ts";
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

describe("a set that is left on its trains in a gust that brings bunks to the limit of their friction", () => {
  const left = readScenario("demo", (p) => {
    cutAfter(p, "first-roll");
    for (const t of p.transporters) t.bunkFriction = 0.3;
    const design = { gust_m_per_s: 39, factor: 1, factorSource: "test", source: "test" };
    p.site.wind = { ...p.site.wind, design };
  });
  const solved = solvePlan(left);
  const many = solved.findings.find((f) => f.check === "overnight: contacts at their limit");

  test("how many there are is one check, how much of what holds is used another, each with its trace", () => {
    if (many?.worst == null) throw new Error("no bunk is at its limit");
    expect(many.unit).toBe("contacts");
    // Every one that is named counts, and nothing else does.
    const [, names] = /^overnight: (.*) at the limit of what holds/.exec(many.words) ?? [];
    expect(many.value).toBe(names.split(", ").length);
    const traced = traceOf(left, solved, many);
    if (!traced.found) throw new Error(traced.why);
    expect(traced.value.value).toBe(many.value);
    expectTrue(traced.trace, left);
    const { set, worst } = many;
    const used = traceOf(left, solved, { check: "overnight: slip", subject: "set", set, ...worst });
    if (!used.found) throw new Error(used.why);
    expect(used.measure.unit).toBe("% of what holds");
    expect(used.value.value).toBeGreaterThan(0.5);
    expectTrue(used.trace, left);
    expect(solved.findings.filter((f) => f.check === "overnight: slip" && f.value === null)).toEqual([]);
  });
});
