// The demonstration day is a good one: no stop, complete, from tied down to unhooked, and its machines are used as a
// day's work uses them, between 60 and 90 % of every limit that carries it.

import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { scenario } from "../sequence/plans.ts";

const plan = scenario("demo");
const result = solvePlan(plan);
const [set] = result.sets;

test("complete, and nothing is a stop", () => {
  expect(result.complete).toBe(true);
  expect(result.findings.filter((f) => f.level === "stop").map((f) => f.words)).toEqual([]);
  expect(result.worst).not.toBe("stop");
});

test("a whole day: from tied down on both trains to both hooks off, the set on its four bearings", () => {
  const steps = set.steps;
  expect(steps.map((s) => s.step.do)).toEqual(plan.sets[0].steps.map((s) => s.do));
  expect(steps[0].step.do).toBe("lash");
  expect(steps[steps.length - 1].step.do).toBe("unhook");
  const m = set.supports.length;
  const band = (pose: number) =>
    set.supports.filter((s, j) => s.band && set.shares[pose * m + j] > 1e-4 * set.weight).map((s) => s.name);
  expect(band(0)).toEqual(["rear aft", "rear left", "rear right", "front aft", "front left", "front right"]);
  expect(band(set.count - 1).sort()).toEqual(["far L", "far R", "near L", "near R"]);
  const hooks = new Set(["far crane", "near crane"]);
  const carriedBy = [...Array(set.count).keys()].map((i) => band(i).filter((name) => hooks.has(name)).length);
  expect(Math.max(...carriedBy)).toBe(2);
  expect(carriedBy[set.count - 1]).toBe(0);
});

describe("worst use between 60 and 90 %", () => {
  const worst = (check: string) =>
    set.strips
      .filter((s) => s.check === check)
      .map((s): [string, number] => [s.subject, Math.max(...[...s.use].filter((u) => !Number.isNaN(u)))]);

  test.each(["hook load", "group load", "stroke"])("%s", (check) => {
    const found = worst(check);
    const expected = {
      "hook load": plan.cranes.length,
      "group load": plan.transporters.flatMap((t) => t.groups).length,
      stroke: plan.transporters.length,
    }[check];
    expect(found.length).toBe(expected);
    for (const [subject, use] of found) {
      expect(use, `${check} of ${subject}`).toBeGreaterThanOrEqual(0.6);
      expect(use, `${check} of ${subject}`).toBeLessThanOrEqual(0.9);
    }
  });
});

test("its weight is that of its kind: 1.5 to 3 t per metre, 100 to 125 t in all", () => {
  const tonnes = set.weight / 9806.65;
  expect(tonnes / set.length).toBeGreaterThan(1.5);
  expect(tonnes / set.length).toBeLessThan(3);
  expect(tonnes).toBeGreaterThan(100);
  expect(tonnes).toBeLessThan(125);
});

test("all of it is invented, and says so", () => {
  expect(plan.invented).toBe(true);
  for (const crane of plan.cranes) expect(crane.chart.invented).toBe(true);
  for (const machine of [...plan.cranes, ...plan.transporters]) expect(machine.source).toContain("invented");
});
