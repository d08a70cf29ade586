// Which rule of hook loads governs. Queensland, Mobile crane Code of Practice 2006 (PN11180), 14.3.2 (read); Norfolk
// Southern, Special Provisions for Protection of Railway Interests (2018, rev. 2021), E-9 (3) (read); 29 CFR 1926.751 (as
// quoted on published rigging-safety pages); British Columbia OHS Regulation 14.1; US Army Corps of Engineers, EM 385-1-1,
// section 16, Form 16-3 (read).

import { describe, expect, test } from "vitest";
import { hookRules } from "../../../src/checks/cranes/rules.ts";
import { minimumCapacityFactor } from "../../../src/mechanics/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { near, ran, scenario, upTo } from "../../sequence/plans.ts";
import { findingsOf, readingOf } from "../readings.ts";

const using = (use: string[], rules: Plan["limits"]["rules"] = []) =>
  scenario("one-girder", (plan) => {
    plan.limits = { use, rules, overrides: [] };
  });
const own = (id: string, value: number) =>
  ({ id, value, unit: "pct", source: "owner's letter 7", chosenBy: "owner" }) as const;

describe("capacity above the share (Queensland)", () => {
  test.each([
    [2, 100.8],
    [3, 111.72],
    [4, 126],
    [5, 126],
  ])("%i cranes with a share of 84 t each ask for %f t", (cranes, least) => {
    const { part, limit } = hookRules(using(["queensland-2006"]))(cranes);
    near(84 / part, least, 1e-12);
    near(1 / part, minimumCapacityFactor(cranes), 1e-12);
    expect(limit.chosenBy).toBe("rule queensland-2006");
    expect(limit.means).toContain("too small");
  });

  test("a crane alone has its whole chart", () => {
    expect(hookRules(using(["queensland-2006"]))(1).part).toBe(1);
  });

  test("a margin for two alone is asked of three as well", () => {
    near(hookRules(using(["share-plus-20"]))(3).part, 1 / 1.2, 1e-12);
  });
});

describe("the lowest governs and is named", () => {
  test("a railway's 150 % over 75 % in tandem, and with one crane too", () => {
    const rules = hookRules(using(["tandem-75", "railway-150", "queensland-2006"]));
    for (const cranes of [1, 2]) {
      near(rules(cranes).part, 1 / 1.5, 1e-12);
      expect(rules(cranes).limit.chosenBy).toBe("rule railway-150");
    }
  });

  test("the owner's own over all of them", () => {
    const rules = hookRules(using(["tandem-75", "railway-150"], [own("tandem use", 60)]));
    expect(rules(2)).toMatchObject({ part: 0.6, limit: { chosenBy: "owner" } });
    near(rules(1).part, 1 / 1.5, 1e-12);
  });

  test("a railway that asks for more than 150 % by the plan's own rule has it", () => {
    near(hookRules(using(["railway-150"], [own("capacity over pick", 200)]))(1).part, 0.5, 1e-12);
  });
});

/** The one-girder plan up to a step, cranes rated so that a hook is used to a given part of the chart. */
function used(id: string, use: string[], part: number, limits: Partial<Plan["limits"]> = {}): Plan {
  const steps = (plan: Plan) => {
    plan.limits = { use, rules: [], overrides: [], ...limits };
    plan.sets[0].steps = upTo(plan, id);
  };
  const r = ran(scenario("one-girder", steps));
  const pose = r.end(id);
  return scenario("one-girder", (plan) => {
    steps(plan);
    for (const crane of plan.cranes) {
      const { value } = readingOf(r.ctx, pose, "hook load", `${crane.kind} crane`);
      const rated_t = Number.isNaN(value) ? 100 : value / part / 9806.65;
      crane.chart.rows = [1, 60].map((radius_m) => ({ radius_m, boom_m: crane.boomLength_m, rated_t }));
    }
  });
}
const critical = (plan: Plan) => findingsOf(plan).filter((f) => f.check === "critical lift");

describe("what makes a lift critical", () => {
  test.each(["osha-1926-751", "em-385-1-1-16"])("%s: one crane at 0.74 no, at 0.76 yes", (id) => {
    expect(critical(used("far-takes", [id], 0.74))).toEqual([]);
    const [one, ...more] = critical(used("far-takes", [id], 0.76));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ level: "caution", subject: "far crane", chosenBy: `rule ${id}` });
    expect(one.words).toContain("76 % of the rated load: a critical lift");
  });

  test.each(["osha-1926-751", "em-385-1-1-16"])("%s: two cranes at 0.40 each yes", (id) => {
    const [one, ...more] = critical(used("rear-down", [id], 0.4));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ level: "note", subject: "set", value: 2 });
    expect(one.words).toContain("a critical lift");
  });

  test("British Columbia: one crane at 76 % no, two at 40 % no, two at 76 % yes", () => {
    expect(critical(used("far-takes", ["bc-14-1"], 0.76))).toEqual([]);
    expect(critical(used("rear-down", ["bc-14-1"], 0.4))).toEqual([]);
    const both = critical(used("rear-down", ["bc-14-1"], 0.76));
    expect(new Set(both.map((f) => f.subject))).toEqual(new Set(["far crane", "near crane"]));
    expect(both[0].words).toContain("14.42.1");
  });

  test("none unless a rule is chosen; the plan's own value counts", () => {
    expect(critical(used("rear-down", [], 0.95))).toEqual([]);
    const rules = [own("critical lift use", 50)];
    expect(critical(used("far-takes", [], 0.6, { rules })).map((f) => f.chosenBy)).toEqual(["owner"]);
  });
});

test("near the limit a caution says what a little more would make of it; at 100 % it is a stop as well", () => {
  const left = (part: number) =>
    findingsOf(used("far-takes", [], part)).filter((f) => f.check === "little capacity left");
  expect(left(0.89)).toEqual([]);
  const [one] = left(0.95);
  // A flat chart: radius changes nothing, 5 % of the girder's 40 of 52 kN makes 3.8 % of the whole.
  expect(one.words).toContain("use 95 %; with 1 m more radius 95 %, with 5 % more share 99 %");
  const over = findingsOf(used("far-takes", [], 1.01)).filter((f) => f.subject === "far crane");
  expect(over.map((f) => [f.check, f.level])).toEqual([
    ["hook load", "stop"],
    ["little capacity left", "caution"],
  ]);
});
