// What a plan says of its cranes: readings of the indicator, speeds, travel with load, who plans and directs. 29 CFR
// 1926.1432 (read): a lift by several cranes is planned by a qualified person, directed by a lift director, and reviewed in
// a meeting; the rest arithmetic.

import { describe, expect, test } from "vitest";
import { boomOver } from "../../../src/checks/cranes/walk.ts";
import { hookLoadOf, indicatorReading, motionsIn } from "../../../src/checks/index.ts";
import { byId, type Crane, type Plan } from "../../../src/plan/index.ts";
import { poseAt } from "../../../src/sequence/index.ts";
import { near, oneGirderWith, ranScenario, scenario, step, upTo, within } from "../../sequence/plans.ts";
import { findingsOf } from "../readings.ts";

describe("what the indicator should show", () => {
  const { ctx, step: of, plan } = ranScenario("one-girder");
  const pose = poseAt(ctx, of("far-takes"), 1);
  const crane = byId(plan.cranes, "far-crane");
  const reading = (indicator: Crane["indicator"]) => indicatorReading(ctx, pose, { ...crane, indicator });

  test("is the sum of what it counts, give or take its accuracy", () => {
    const load = hookLoadOf(ctx, pose, crane);
    if (load === null) throw new Error("no load");
    const all = reading({ counts: ["set", "rigging", "block", "rope", "auxiliary"], accuracy_pct: 3 });
    near(all?.expected ?? 0, load.gross, 1e-12);
    near(all?.low ?? 0, 0.97 * load.gross, 1e-12);
    near(all?.high ?? 0, 1.03 * load.gross, 1e-12);
    const net = reading({ counts: ["set", "set"], accuracy_pct: 0 });
    expect(net).toEqual({ expected: load.net, low: load.net, high: load.net });
  });

  test("is nothing while the hook is not on", () => {
    expect(indicatorReading(ctx, poseAt(ctx, of("roll-out"), 1), crane)).toBeNull();
  });

  const recorded = (load_kN: number) =>
    findingsOf(
      scenario("one-girder", (p) => {
        p.sets[0].steps = upTo(p, "far-takes");
        p.spread.weight_pct = [-5, 5];
        const readings = [{ what: "far crane", load_kN }];
        p.record = [{ set: p.sets[0].id, step: "far-takes", at: "07:40", by: "crew", readings }];
      }),
    ).filter((f) => f.check === "indicated load");

  test("a recorded reading inside it is nothing, beyond it a caution, beyond the spread of the weight a stop", () => {
    // 40 kN of the girder in 52.3 kN: 3 % of the whole is 1.6 kN, 5 % of the girder another 2 kN.
    const expected = (reading(crane.indicator)?.expected ?? 0) / 1000;
    expect(recorded(1.029 * expected)).toEqual([]);
    expect(recorded(1.031 * expected).map((f) => f.level)).toEqual(["caution"]);
    expect(recorded(0.969 * expected).map((f) => f.level)).toEqual(["caution"]);
    expect(recorded(1.031 * (expected + 2)).map((f) => f.level)).toEqual(["stop"]);
    expect(recorded(0.969 * (expected - 2)).map((f) => f.level)).toEqual(["stop"]);
  });
});

describe("motions and speeds", () => {
  test("a metre down in 6 minutes is 0.17 m/min of the hoist's 2", () => {
    const { ctx, run, step: of } = ranScenario("one-girder");
    const lower = of("lower");
    const poses = Array.from({ length: lower.count }, (_, i) =>
      poseAt(ctx, lower, run.progress[lower.first + i]),
    );
    const far = motionsIn(ctx, lower, poses).find((m) => m.crane.kind === "far");
    expect(far?.motions.map((m) => m.what)).toEqual(["hoist"]);
    near(far?.motions[0].way ?? 0, 1, 1e-9);
    near(far?.motions[0].needed ?? 0, 1 / 6, 1e-9);
    expect(far?.motions[0].full).toBe(2);
  });

  const hurried = (minutes: number | undefined, change: (plan: Plan) => void = () => {}) =>
    findingsOf(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(plan, "lower");
        const last = plan.sets[0].steps[plan.sets[0].steps.length - 1];
        if (minutes === undefined) delete last.minutes;
        else last.minutes = minutes;
        change(plan);
      }),
    );

  test("a metre in 0.4 minutes is faster than both hoists; in 0.51 it is not; without minutes nothing is said", () => {
    const fast = hurried(0.4).filter((f) => f.check === "crane speed");
    expect(fast.map((f) => f.subject)).toEqual(["far crane", "near crane"]);
    within(fast[0].value as number, 2.5, 1e-6);
    expect(fast[0].cure).toContain("0.5 minutes");
    expect(hurried(0.51).filter((f) => f.check === "crane speed")).toEqual([]);
    expect(hurried(undefined).filter((f) => f.check === "crane speed")).toEqual([]);
  });

  test("a speed that the plan does not state is missing data, not passed", () => {
    const found = hurried(6, (plan) => {
      delete plan.cranes[0].boomSpeed_deg_per_min;
    }).filter((f) => f.check === "missing data" && f.subject.includes("boomSpeed"));
    expect(found.map((f) => f.subject)).toEqual(["cranes[0].boomSpeed_deg_per_min"]);
  });
});

describe("travel with load", () => {
  const crane = scenario("one-girder").cranes[0];

  test.each([
    [0, "front"],
    [34, "front"],
    [36, "side"],
    [90, "side"],
    [-90, "side"],
    [146, "rear"],
    [180, "rear"],
    [-146, "rear"],
    [400, "side"],
  ])("a boom %f degrees off tracks of 6 by 4.2 m stands over the %s", (off, end) => {
    // The corners lie at atan(4.2 / 6) = 35 degrees.
    expect(boomOver(crane, 25, 25 + off)).toBe(end);
  });

  const walked = (walk: object, change: (crane: Crane) => void = () => {}) =>
    findingsOf(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(
          plan,
          "far-takes",
          step({ do: "walk", crane: "far-crane", dx_m: 1, dy_m: 0, ...walk }),
        );
        Object.assign(plan.cranes[0], { travelWithLoad: true, travelSource: "invented" });
        change(plan.cranes[0]);
      }),
    );

  test("what a walk leaves open is said, field by field", () => {
    const open = walked({}).filter((f) => f.check === "missing data" && f.from?.step === 3);
    expect(open.map((f) => f.subject)).toEqual([
      "cranes[0].travelChart",
      "sets[0].steps[3].outOfLevel_pct",
      "sets[0].steps[3].boomOver",
      "sets[0].steps[3].minutes",
    ]);
  });

  test("the maker's chart for travel limits the walk, and the walk alone", () => {
    const rows = [1, 60].map((radius_m) => ({ radius_m, boom_m: 40, rated_t: 3 }));
    const over = walked({ minutes: 5, boomOver: "front", outOfLevel_pct: 0.2 }, (c) => {
      c.travelChart = { invented: true, page: "travel page", interpolation: false, rows };
    }).filter((f) => f.check === "hook load" && f.level === "stop");
    expect(over.length).toBe(1);
    expect(over[0].from?.step).toBe(3);
    expect(over[0].source).toContain("travel page");
    within(over[0].limit as number, 3 * 9.80665, 1e-6);
  });

  test("an idle crane leaves nothing open", () => {
    const r = oneGirderWith({ do: "walk", crane: "far-crane", dx_m: 1, dy_m: 0 });
    expect(findingsOf(r.plan).filter((f) => f.subject.includes("travelChart"))).toEqual([]);
  });
});

describe("a lift by several cranes", () => {
  const marks = (change: (plan: Plan) => void) =>
    findingsOf(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(plan, "roll-out");
        change(plan);
      }),
    )
      .filter((f) => f.check === "not ready")
      .map((f) => f.subject);

  test("is ready with planner, lift director and meeting", () => expect(marks(() => {})).toEqual([]));

  test("is not ready without any of them", () => {
    expect(marks((plan) => Object.assign(plan.header, { preparedBy: "" }))).toEqual(["header.preparedBy"]);
    expect(marks((plan) => Object.assign(plan.people?.roles[0] ?? {}, { name: "" }))).toEqual([
      "people.roles",
    ]);
    expect(marks((plan) => Object.assign(plan.people ?? {}, { meeting: { date: "", by: "x" } }))).toEqual([
      "people.meeting",
    ]);
    expect(
      marks((plan) => {
        delete plan.people;
      }),
    ).toEqual(["people.roles", "people.meeting"]);
  });
});
