// walk: a crane travels, with or without load. Radius and boom by Pythagoras, loads by statics.

import { describe, expect, test } from "vitest";
import { radiusOf } from "../../src/checks/index.ts";
import { byId, type Plan } from "../../src/plan/index.ts";
import { boomOf, poseAt, worldOf } from "../../src/sequence/index.ts";
import { craneOf, force, type Ran, ran, scenario, step, upTo, within } from "../sequence/plans.ts";

const walk = { do: "walk", crane: "far-crane", dx_m: 3, dy_m: -1 } as const;

/** The one-girder plan up to a step, then the far crane walks. */
function walked(id: string, then: { [field: string]: unknown } = {}, allowed = true): Ran {
  return ran(
    scenario("one-girder", (plan: Plan) => {
      const crane = byId(plan.cranes, "far-crane");
      crane.travelWithLoad = allowed;
      crane.travelSource = "invented leave of the maker";
      plan.sets[0].steps = upTo(plan, id, step({ ...walk, ...then }));
    }),
  );
}

const found = (r: Ran) => r.step("walk").happenings.map((h) => [h.kind, h.subject, h.level ?? "stop"]);

describe("with its hook over the picks", () => {
  test("the crane moves, the tip stays, and no load changes", () => {
    const r = walked("far-takes");
    expect(found(r)).toEqual([]);
    const before = poseAt(r.ctx, r.step("walk"), 0);
    for (const p of [0.5, 1]) {
      const c = craneOf(poseAt(r.ctx, r.step("walk"), p).situation, "far-crane");
      within(c.moved[0], 3 * p, 1e-12);
      within(c.moved[1], -p, 1e-12);
      expect(c.tip).toEqual(craneOf(before.situation, "far-crane").tip);
    }
    within(force(r.ctx, r.end("walk"), "far crane"), force(r.ctx, before, "far crane"), 1e-6 * r.run.weight);
  });

  test("radius, boom foot and the world follow the crane", () => {
    const r = walked("far-takes");
    const machine = byId(r.plan.cranes, "far-crane");
    const end = r.end("walk");
    const c = craneOf(end.situation, "far-crane");
    const centre = [machine.position.chainage_m + 3, machine.position.y_m - 1];
    const radius = Math.hypot(c.tip[0] - centre[0], c.tip[1] - centre[1]);
    within(boomOf(machine, c.tip, c.moved).radius, radius, 1e-12);
    const world = worldOf(r.ctx, end).cranes["far-crane"];
    within(world.centre[0], centre[0], 1e-12);
    within(world.centre[1], centre[1], 1e-12);
    within(
      Math.hypot(world.foot[0] - centre[0], world.foot[1] - centre[1]),
      machine.boomFootForward_m,
      1e-12,
    );
    // Checks see the new radius: it differs from the old one by the walk and by the level error of 0.2 % of the tip's
    // change of height; growth under the rope's own change of weight is under 1 mm.
    const start = poseAt(r.ctx, r.step("walk"), 0);
    const old = boomOf(machine, craneOf(start.situation, "far-crane").tip);
    const rise = boomOf(machine, c.tip, c.moved).tip[2] - old.tip[2];
    const grown = radiusOf(r.ctx, end, machine) - radiusOf(r.ctx, start, machine);
    within(grown, radius - old.radius + 0.002 * rise, 1e-3);
    expect(Math.abs(radius - old.radius)).toBeGreaterThan(1);
  });

  test("beyond the reach of its boom it stops, and says where", () => {
    const r = walked("far-takes", { dx_m: 60, dy_m: 0 });
    expect(found(r)).toEqual([["end not reached", "far-crane", "stop"]]);
    const machine = byId(r.plan.cranes, "far-crane");
    const c = craneOf(r.end("walk").situation, "far-crane");
    within(boomOf(machine, c.tip, c.moved).radius, machine.boomLength_m + machine.boomFootForward_m, 1e-6);
    within(c.moved[0], r.step("walk").happenings[0].limit as number, 1e-9);
  });
});

test("a hook that goes along leans its line by the walk over the rope", () => {
  const r = walked("far-takes", { hook: "goes along", dx_m: -0.4, dy_m: 0 });
  const end = r.end("walk");
  const hoist = (end.state.hoists ?? []).find((h) => h.name === "far-crane");
  within((hoist?.offset ?? [0, 0])[0], -0.4, 1e-9);
  // The set is held by bunks and brakes: the line carries H = T offset / rope length.
  const { horizontal, layout, hoistForce } = end.solution;
  const i = layout.hoists.findIndex((h) => h.name === "far-crane");
  const H = (hoistForce[i] * -0.4) / (hoist?.ropeLength ?? 1);
  // 5 % of it: the bunks give a little sideways.
  within(horizontal?.lines[2 * i] ?? Number.NaN, H, 0.05 * Math.abs(H));
});

describe("by the maker's leave only", () => {
  test("with load and no leave it is out of order", () => {
    const r = walked("far-takes", {}, false);
    expect(found(r)).toEqual([["out of order", "far-crane", "stop"]]);
    within(r.step("walk").happenings[0].value as number, 40e3, 1);
  });

  test("without load it needs none, hooked up or not; an idle boom goes along", () => {
    expect(found(walked("far-hook-up", {}, false))).toEqual([]);
    const idle = walked("roll-out", {}, false);
    expect(found(idle)).toEqual([]);
    const [before, after] = [idle.step("walk").start, idle.end("walk").situation].map((s) =>
      craneOf(s, "far-crane"),
    );
    within(after.tip[0] - before.tip[0], 3, 1e-12);
    within(after.tip[1] - before.tip[1], -1, 1e-12);
  });

  test("a leave without a source is missing data", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        byId(plan.cranes, "far-crane").travelWithLoad = true;
        plan.sets[0].steps = upTo(plan, "far-takes", step(walk));
      }),
    );
    expect(found(r)).toEqual([["missing data", "far-crane", "caution"]]);
  });
});
