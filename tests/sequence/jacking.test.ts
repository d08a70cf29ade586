// jack up, jack down: groups lifted or lowered by oil while everything stands. One girder, hand statics: the front
// train under 20 m, the rear one under 4 m; before a hook is on the front carries W 11/16 and its own 7 t.

import { describe, expect, test } from "vitest";
import { bunkGap, poseAt } from "../../src/sequence/index.ts";
import {
  force,
  frontGroups,
  near,
  oneGirderAfter,
  oneGirderWith,
  type Ran,
  ranScenario,
  rearGroups,
  shares,
  within,
} from "./plans.ts";
import { girderStiffness, lineStiffness, pickFlexibility, trainStiffness } from "./stiffness.ts";

const lifts = (r: Ran, id: string, p = 1) => poseAt(r.ctx, r.step(id), p).situation.groupLift;
const gross = (r: Ran, id: string, names: readonly string[]) =>
  names.reduce((sum, name) => sum + force(r.ctx, r.end(id), name), 0);

describe("to a height", () => {
  test.each([
    ["jack up", 1],
    ["jack down", -1],
  ] as const)("%s moves the lift of the named groups, in proportion, and of no other", (kind, sign) => {
    const r = oneGirderWith({ do: kind, groups: ["front left", "front right"], until: { height_mm: 40 } });
    expect(r.step(kind).happenings).toEqual([]);
    for (const p of [0, 0.5, 1]) {
      const lift = lifts(r, kind, p);
      for (const name of ["front left", "front right"]) within(lift[name], sign * 0.04 * p, 1e-12);
      for (const name of ["front aft", ...rearGroups]) expect(lift[name]).toBe(0);
    }
  });

  test("a whole train jacked up under a set without a hook changes no load, and strokes by the height", () => {
    const r = oneGirderWith({ do: "jack up", transporter: "front", until: { height_mm: 40 } });
    const before = poseAt(r.ctx, r.step("jack up"), 0);
    const after = r.end("jack up");
    near(shares(r.ctx, after, frontGroups), (r.run.weight * 11) / 16, 1e-6);
    after.solution.layout.cylinders.forEach((c, i) => {
      const out = after.solution.stroke[i] - before.solution.stroke[i];
      within(out, c.id.startsWith("front") ? 0.04 : 0, 1e-6);
    });
  });

  test("with a hook on, lowering a train hands load over as springs do", () => {
    // Lowering the front train by z drops the pick by z 24/16: the hook gains (24/16) z / (1/k + f).
    const r = oneGirderAfter("far-takes", { do: "jack down", transporter: "front", until: { height_mm: 5 } });
    const gain =
      ((24 / 16) * 0.005) / (1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8));
    // 1e-3 of the gain: beam formulas at whole metres, and second-order terms of 1e-4.
    near(force(r.ctx, r.end("jack down"), "far crane") - 40e3, gain, 1e-3);
  });
});

describe("to a load", () => {
  test("jack up until the groups carry so much together", () => {
    const r = oneGirderAfter("far-takes", { do: "jack up", transporter: "front", until: { load_kN: 100 } });
    expect(r.step("jack up").happenings).toEqual([]);
    within(gross(r, "jack up", frontGroups), 100e3, 1);
  });

  test("jack down until the groups carry no more than so much", () => {
    const r = oneGirderAfter("far-takes", { do: "jack down", transporter: "front", until: { load_kN: 75 } });
    expect(r.step("jack down").happenings).toEqual([]);
    within(gross(r, "jack down", frontGroups), 75e3, 1);
  });

  test("there already, it moves nothing", () => {
    const r = oneGirderAfter("far-takes", { do: "jack down", transporter: "front", until: { load_kN: 500 } });
    expect(r.step("jack down").ends).toEqual([0]);
  });

  test("a load that can never come is told, and the step ends at its stroke", () => {
    const r = oneGirderWith({ do: "jack up", transporter: "front", until: { load_kN: 5000 } });
    const run = r.step("jack up");
    expect(run.happenings.map((h) => [h.kind, h.subject, h.progress])).toEqual([
      ["end not reached", "front aft", 1],
    ]);
    within(run.ends[0], 0.2, 1e-12);
  });
});

describe("to a gap", () => {
  test("the last bunk stands clear by it", () => {
    for (const [name, id, train, gap] of [
      ["one-girder", "front-down", "front", 0.08],
      ["one-girder", "rear-down", "rear", 0.08],
      ["demo", "front-down", "front", 0.15],
      ["demo", "rear-down", "rear", 0.15],
    ] as const) {
      const r = ranScenario(name);
      expect(r.step(id).happenings).toEqual([]);
      within(bunkGap(r.end(id), train), gap, 1e-8);
      expect(bunkGap(poseAt(r.ctx, r.step(id), 0), train)).toBe(0);
    }
  });

  test("the travel is what the train springs back, what the set comes down, and the gap", () => {
    const r = ranScenario("one-girder");
    const { ctx } = r;
    const before = poseAt(ctx, r.step("front-down"), 0);
    const freed = shares(ctx, before, frontGroups);
    // The front reaction F leaves a set held by the rear train and the hook: by that point's own flexibility on them.
    const rear = (8 / 24) ** 2 / trainStiffness(r.plan, "rear");
    const hook = (16 / 24) ** 2 / lineStiffness(r.plan, "far-crane");
    const { EI, GA } = girderStiffness(r.plan);
    const bending = (16 ** 2 * 8 ** 2) / (3 * EI * 24) + (16 * 8) / (24 * GA);
    const down = freed * (rear + hook + bending + 1 / trainStiffness(r.plan, "front")) + 0.08;
    // 1e-3: beam formulas at whole metres and second-order terms.
    near(r.step("front-down").ends[0], down, 1e-3);
  });

  test("out of stroke before the set is free is told", () => {
    // 200 mm of stroke in hand from mid-stroke, less what the set follows: a gap of 300 mm never comes.
    const r = oneGirderAfter("far-takes", { do: "jack down", transporter: "front", until: { gap_mm: 300 } });
    expect(r.step("jack down").happenings.map((h) => [h.kind, h.subject])).toEqual([
      ["end not reached", "front aft"],
    ]);
    within(r.step("jack down").ends[0], 0.2, 1e-12);
  });
});

test("a train that has gone cannot jack", () => {
  const r = oneGirderAfter("front-out", { do: "jack up", transporter: "front", until: { height_mm: 10 } });
  expect(r.step("jack up").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "front"]]);
  expect(r.step("jack up").ends).toEqual([0]);
});
