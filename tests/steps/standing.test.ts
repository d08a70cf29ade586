// hold, rest, brace: oil that leaks, ground that sinks, temperature; what a rest must not stand on; counts.
// One girder (W 102.8 kN, E I of its three plates) on the far hook at 28 m and the rear train at 4 m, or on bearings.

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import {
  force,
  frontGroups,
  near,
  oneGirderAfter,
  type Ran,
  ran,
  ranScenario,
  rearGroups,
  scenario,
  shares,
  step,
  upTo,
  within,
} from "../sequence/plans.ts";
import { lineStiffness, pickFlexibility } from "../sequence/stiffness.ts";

const standing = { do: "hold", releasedBy: "lift director", evidence: "levels read" } as const;
const found = (r: Ran, id: string) =>
  r.step(id).happenings.map((h) => [h.kind, h.subject, h.level ?? "stop"]);

/** The one-girder plan after a step, then one that stands, with the plan changed. */
function stood(id: string, then: Parameters<typeof step>[0], change: (plan: Plan) => void = () => {}): Ran {
  return ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(plan, id, step(then));
      change(plan);
    }),
  );
}

const leaking = (transporter: string, mm: number) => (plan: Plan) => {
  for (const t of plan.transporters) if (t.id === transporter) t.leak_mm_per_h = mm;
};

describe("oil that leaks", () => {
  test("sinks every group of the train by rate times time, in proportion", () => {
    const r = stood("roll-out", { ...standing, minutes: 90 }, leaking("front", 4));
    for (const p of [0.25, 1]) {
      const { groupLift } = poseAt(r.ctx, r.step("hold"), p).situation;
      for (const g of frontGroups) within(groupLift[g], -0.006 * p, 1e-15);
      for (const g of rearGroups) expect(groupLift[g]).toBe(0);
    }
    expect(found(r, "hold")).toEqual([]);
  });

  test("with two supports no load changes by it; strokes go in by as much", () => {
    const r = stood("roll-out", { ...standing, minutes: 60 }, leaking("front", 5));
    const before = poseAt(r.ctx, r.step("hold"), 0);
    const after = r.end("hold");
    // The girder tilts by 5 mm in 16 m: 1e-6 of W for what second-order terms make of it.
    within(shares(r.ctx, after, frontGroups), shares(r.ctx, before, frontGroups), 1e-6 * r.run.weight);
    after.solution.layout.cylinders.forEach((c, i) => {
      const out = after.solution.stroke[i] - before.solution.stroke[i];
      within(out, c.id.startsWith("front") ? -0.005 : 0, 1e-7);
    });
  });

  test("with a hook on, it hands load over to the hook as springs do", () => {
    // As jacking down: the pick drops by z 24/16, the hook gains (24/16) z / (1/k + f).
    const r = stood("far-takes", { ...standing, minutes: 60 }, leaking("front", 5));
    const gain =
      ((24 / 16) * 0.005) / (1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8));
    // 1e-3 of the gain: beam formulas at whole metres, and second-order terms of 1e-4.
    near(force(r.ctx, r.end("hold"), "far crane") - 40e3, gain, 1e-3);
  });

  test("a step that does not say how long it stands cannot leak, and says so", () => {
    const r = stood("roll-out", standing, leaking("front", 5));
    expect(found(r, "hold")).toEqual([["missing data", "front", "caution"]]);
    expect(r.end("hold").situation).toEqual(r.step("hold").start);
  });

  test("the end of a hold stays: the next step begins there", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        leaking("front", 4)(plan);
        plan.sets[0].steps = upTo(
          plan,
          "roll-out",
          step({ ...standing, minutes: 90 }),
          step({ ...standing, id: "next" }),
        );
      }),
    );
    expect(r.step("next").start).toEqual(r.end("hold").situation);
  });
});

describe("ground that sinks", () => {
  const sinks = (settlement_mm: Record<string, number>) => ({ ...standing, settlement_mm });

  test("below all groups of a train the set comes down with the deck, and no stroke changes", () => {
    const r = stood("roll-out", sinks(Object.fromEntries(frontGroups.map((g) => [g, 6]))));
    const before = poseAt(r.ctx, r.step("hold"), 0);
    const after = r.end("hold");
    const { stroke, layout } = after.solution;
    stroke.forEach((s, i) => {
      within(s - before.solution.stroke[i], 0, 1e-7);
    });
    expect(layout.cylinders.some((c) => c.id === "front:1L")).toBe(true);
    // Level > 0 lowers the nose: 6 mm over the 16 m between the bunks.
    within(after.motions[6] - before.motions[6], 0.006 / 16, 1e-7);
  });

  test("below a crane its line slackens: the hook loses the depth over compliances", () => {
    const r = stood("far-takes", sinks({ "far crane": 4 }));
    // Picks stay but for what the girder on two trains gives: dF = d / (1/k + f).
    const loss = 0.004 / (1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8));
    // 1e-3: as above.
    near(40e3 - force(r.ctx, r.end("hold"), "far crane"), loss, 1e-3);
  });

  test("below a bearing, with both hooks off, two bearings keep W/2 each and the end sinks", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(plan, "near-off", step(sinks({ "near G": 10 })));
      }),
    );
    const before = poseAt(r.ctx, r.step("hold"), 0);
    for (const name of ["near G", "far G"]) {
      const change = force(r.ctx, r.end("hold"), name) - force(r.ctx, before, name);
      within(change, 0, 1e-6 * r.run.weight);
    }
    within(r.end("hold").motions[6] - before.motions[6], -0.01 / 29, 1e-7);
  });

  test("wheels roll out of their hollows within one pitch", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        const hollow = step(sinks({ "front left": 6 }));
        plan.sets[0].steps = [hollow, step({ do: "roll", distance_m: 2.8 })];
      }),
    );
    const sunk = (p: number) => poseAt(r.ctx, r.step("roll"), p).situation.sunk["front left"] ?? 0;
    within(sunk(0), 0.006, 1e-15);
    within(sunk(0.25), 0.003, 1e-12);
    expect(sunk(0.5)).toBe(0);
    expect(sunk(1)).toBe(0);
  });
});

describe("temperature", () => {
  // A girder free to bow on two supports: no load, its middle up by bow L^2 / 8. AASHTO LRFD 6.4.1, from memory.
  const topWarmer = { ...standing, topWarmer_C: 15 };

  test("a warmer top bows the set by alpha dT / depth, and two supports keep their loads", () => {
    const r = stood("roll-out", topWarmer);
    const before = poseAt(r.ctx, r.step("hold"), 0);
    const after = r.end("hold");
    const depth = (25 + 1500 + 30) / 1000;
    near(after.situation.heat.bow, (11.7e-6 * 15) / depth, 1e-12);
    within(shares(r.ctx, after, frontGroups), shares(r.ctx, before, frontGroups), 1e-6 * r.run.weight);
    const middle = (pose: typeof after) => {
      const camber = pose.solution.model.girders[0].camber;
      return (camber.find(([s]) => s === 15) ?? [15, 0])[1];
    };
    near(middle(after) - middle(before), ((11.7e-6 * 15) / depth) * (30 ** 2 / 8), 1e-9);
  });

  test("with three supports a bow hands load over: what the pick would rise by, over compliances", () => {
    // Free, the chord through 4 m and 20 m: the curve bow/2 s (30 - s) lies at 28 m above (< 0 below) it by -bow/2 24 8.
    const r = stood("far-takes", topWarmer);
    const { bow } = r.end("hold").situation.heat;
    const drop = (bow / 2) * 24 * 8;
    const give = 1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8);
    const gain = force(r.ctx, r.end("hold"), "far crane") - 40e3;
    // 2e-3 of the gain: the bow is written in straight pieces of a metre, and second-order terms of 1e-4.
    near(gain, drop / give, 2e-3);
    expect(gain).toBeGreaterThan(0);
  });

  test("an even change lengthens the set: no load, and a note with the millimetres", () => {
    const r = stood("roll-out", { ...standing, temperature_C: 20 });
    expect(found(r, "hold")).toEqual([["length change", "set", "note"]]);
    const [note] = r.step("hold").happenings;
    near(note.value as number, 11.7e-6 * 20 * 29, 1e-12);
    expect(note.words).toContain("grows by 6.8 mm over 29.0 m");
    expect([...r.end("hold").forces]).toEqual([...poseAt(r.ctx, r.step("hold"), 0).forces]);
  });
});

describe("rest", () => {
  const rest = { do: "rest", windLimit_m_per_s: 12 } as const;

  test("on hooks it is a stop, with what the hook carries", () => {
    const r = oneGirderAfter("far-takes", { ...rest, on: ["packing"] });
    expect(found(r, "rest")).toEqual([["rest", "far-crane", "stop"]]);
    within(r.step("rest").happenings[0].value as number, 40e3, 1);
  });

  test("on oil alone it is a stop; on packing, stops or stands it is not", () => {
    for (const on of [undefined, [], ["oil"], ["bearings"]]) {
      const r = oneGirderAfter("roll-out", { ...rest, ...(on ? { on } : {}) });
      expect(found(r, "rest")).toEqual([["rest", "set", "stop"]]);
      within(r.step("rest").happenings[0].value as number, r.run.weight, 1);
    }
    for (const on of [["packing"], ["cylinders down on their stops"], ["steel stands"]])
      expect(found(oneGirderAfter("roll-out", { ...rest, on }), "rest")).toEqual([]);
  });

  test("on bearings it needs no packing", () => {
    expect(found(oneGirderAfter("near-off", { ...rest, on: ["bearings"] }), "rest")).toEqual([]);
  });

  test("without a wind limit that is missing data", () => {
    const r = oneGirderAfter("near-off", { do: "rest", on: ["bearings"] });
    expect(found(r, "rest")).toEqual([["missing data", "set", "caution"]]);
  });
});

test("brace: every item that is short of its count is told, and no other", () => {
  const r = oneGirderAfter("near-off", {
    do: "brace",
    items: [
      { what: "bearing blocks", count: 2, of: 4 },
      { what: "end frames", count: 2, of: 2 },
    ],
  });
  expect(found(r, "brace")).toEqual([["count not met", "bearing blocks", "stop"]]);
  expect(r.step("brace").happenings[0]).toMatchObject({ value: 2, limit: 4 });
  expect(r.step("brace").solved).toBe(true);
});

test("the scenarios' own holds leave nothing behind", () => {
  const r = ranScenario("demo");
  const holds = r.run.steps.filter((s) => s.step.do === "hold");
  expect(holds.length).toBeGreaterThan(0);
  for (const s of holds) expect(s.ends).toEqual([]);
});
