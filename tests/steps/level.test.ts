// level: hydraulic groups corrected while everything stands. Slopes by the plan's own numbers, loads by statics.

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/index.ts";
import { type Pose, poseAt } from "../../src/sequence/index.ts";
import {
  frontGroups,
  near,
  oneGirderAfter,
  type Ran,
  ran,
  rearGroups,
  scenario,
  share,
  shares,
  step,
  within,
} from "../sequence/plans.ts";

/** The demo's set on its two trains, then levelled. */
function levelled(then: { [field: string]: unknown } = {}, change: (plan: Plan) => void = () => {}): Ran {
  return ran(
    scenario("demo", (plan) => {
      plan.sets[0].steps = [step({ do: "level", ...then })];
      change(plan);
    }),
  );
}

/** Lean and level of the set against the true horizontal, tangents. */
const lean = (p: Pose) => p.motions[5] - p.situation.plane.crossfall;
const level = (p: Pose) => p.motions[6] - p.situation.plane.grade;
/** The bunks: girders' distance across, trains' distance along, m. */
const spans = (plan: Plan) => {
  const [set] = plan.sets;
  const ys = set.girders.map((g) => g.y_m);
  const xs = set.onTransporters.map((t) => t.deckAt_m);
  return { across: Math.max(...ys) - Math.min(...ys), along: Math.max(...xs) - Math.min(...xs) };
};
const found = (r: Ran) => r.step("level").happenings.map((h) => [h.kind, h.subject]);
const all = [...rearGroups, ...frontGroups];

describe("to true level", () => {
  test("lean and level end within the tolerance over the bunks, from well outside it", () => {
    const r = levelled({ tolerance_mm: 2 });
    const { across, along } = spans(r.plan);
    const before = poseAt(r.ctx, r.step("level"), 0);
    expect(Math.abs(lean(before)) * across).toBeGreaterThan(0.01);
    expect(Math.abs(level(before)) * along).toBeGreaterThan(0.05);
    const after = r.end("level");
    expect(Math.abs(lean(after)) * across).toBeLessThan(0.002);
    expect(Math.abs(level(after)) * along).toBeLessThan(0.002);
    expect(found(r)).toEqual([]);
  });

  test("oil moves as a plane turned about the middle of the load, and no share changes but by the turn", () => {
    const r = levelled();
    const lifts = r.end("level").situation.groupLift;
    // Left against right by the lean over the distance of their centroids (gauge 2.1 m), alike on both trains.
    near(lifts["rear left"] - lifts["rear right"], lifts["front left"] - lifts["front right"], 1e-9);
    const before = poseAt(r.ctx, r.step("level"), 0);
    near(lifts["rear left"] - lifts["rear right"], -lean(before) * 2.1, 0.02);
    // Turned about the load: lifts weighted by the shares come to nothing.
    const sum = all.reduce((a, g) => a + lifts[g] * share(r.ctx, before, g), 0);
    within(sum / r.run.weight, 0, 1e-9);
    // Whole trains: the set stands on two supports, so only the tilt of its weight moves anything: 2e-3 of W.
    for (const groups of [rearGroups, frontGroups])
      within(shares(r.ctx, r.end("level"), groups), shares(r.ctx, before, groups), 2e-3 * r.run.weight);
  });

  test("lifts grow in proportion to progress, and the end stays for the next step", () => {
    const r = levelled({}, (plan) => {
      plan.sets[0].steps.push(step({ do: "roll", distance_m: 2 }));
    });
    const end = r.end("level").situation.groupLift;
    const half = poseAt(r.ctx, r.step("level"), 0.5).situation.groupLift;
    for (const g of all) within(half[g], end[g] / 2, 1e-15);
    expect(r.step("roll").start.groupLift).toEqual(end);
  });

  test("a set that lies within the tolerance is left alone", () => {
    const r = levelled({ tolerance_mm: 400 });
    expect(r.step("level").ends.every((lift) => lift === 0)).toBe(true);
    expect(found(r)).toEqual([]);
  });
});

describe("to a stated slope", () => {
  test("the one stated is reached, in percent with the plan's signs, and the other is left as it was", () => {
    const r = levelled({ lean_pct: 0.4, tolerance_mm: 1 });
    const { across, along } = spans(r.plan);
    const before = poseAt(r.ctx, r.step("level"), 0);
    within(lean(r.end("level")) * across, 0.004 * across, 0.001);
    // Turning the set in lean alone changes its level by twist of the deck groups at most: 1 mm over the bunks.
    within(level(r.end("level")) * along, level(before) * along, 0.001);
  });

  test("level_pct > 0 lowers the nose", () => {
    const r = levelled({ level_pct: 0.3, lean_pct: 0, tolerance_mm: 1 });
    const { along } = spans(r.plan);
    within(level(r.end("level")) * along, 0.003 * along, 0.001);
  });
});

describe("with some of the groups", () => {
  test("one train turns the set about the other, whose oil stays shut", () => {
    const r = levelled({ groups: [...frontGroups], level_pct: 0, tolerance_mm: 1 });
    const lifts = r.end("level").situation.groupLift;
    for (const g of rearGroups) expect(lifts[g]).toBe(0);
    const before = poseAt(r.ctx, r.step("level"), 0);
    const { along } = spans(r.plan);
    // The front goes down or up by the slope over the distance of the trains; groups lie within 2.8 m of their deck's
    // middle, so that their mean is within 10 % of it.
    const mean = frontGroups.reduce((a, g) => a + lifts[g] / 3, 0);
    near(mean, level(before) * along, 0.1);
    expect(Math.abs(level(r.end("level"))) * along).toBeLessThan(0.001);
  });

  test("out of stroke, it ends where it can and says how far off that is", () => {
    const r = levelled({}, (plan) => {
      for (const t of plan.transporters) {
        t.strokeUp_mm = 30;
        t.strokeDown_mm = 30;
      }
    });
    expect(found(r)).toEqual([["end not reached", "set"]]);
    const [h] = r.step("level").happenings;
    expect(h.value as number).toBeGreaterThan(h.limit as number);
  });
});

describe("out of order", () => {
  test("with no train under load there is nothing to level with", () => {
    const r = oneGirderAfter("rear-down", { do: "level" });
    expect(found(r)).toEqual([["out of order", "set"]]);
    expect(r.end("level").situation).toEqual(r.step("level").start);
  });

  test("a group of an empty train cannot level the set", () => {
    const r = oneGirderAfter("front-down", { do: "level", groups: ["front left"] });
    expect(found(r)).toEqual([["out of order", "front left"]]);
  });
});
