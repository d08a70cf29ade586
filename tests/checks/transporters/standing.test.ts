// Standing on groups, over the demonstration day: against statics by hand that share nothing with the checks.

import { describe, expect, test } from "vitest";
import { bodiesOf, motionOf, standingOf } from "../../../src/checks/transporters/standing.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { type Pose, prepareContext, runSet, type SetContext } from "../../../src/sequence/index.ts";
import { readScenario } from "../../coverage/plans.ts";
import { within } from "../../reference/close.ts";

function poses(change: (plan: Plan) => void, steps: number): { ctx: SetContext; stored: Pose[] } {
  const plan = readScenario("demo", (p) => {
    p.sets[0].steps = p.sets[0].steps.slice(0, steps);
    change(p);
  });
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  return { ctx, stored };
}

function standing(ctx: SetContext, pose: Pose, name: string) {
  const body = bodiesOf(ctx).get(name);
  const motion = motionOf(ctx);
  if (!body || !motion) throw new Error(`no body ${name}`);
  return standingOf(ctx, pose, body, motion);
}

/** A path without any slope, no wind limit. */
const flat = (plan: Plan) => {
  for (const p of plan.site.path.points) Object.assign(p, { elevation_m: 30.5, crossfall_pct: 0 });
  for (const s of plan.sets[0].steps) s.windLimit_m_per_s = undefined;
};

describe("the set on both trains, a level path, no wind", () => {
  const { ctx, stored } = poses(flat, 1);
  const [pose] = stored;
  const W = ctx.model.mass * ctx.gravity;
  const [rear, front] = [24.6e3 * ctx.gravity, 32.8e3 * ctx.gravity];

  test("the distance to the side is half the gauge less the CG's, on the whole force", () => {
    const s = standing(ctx, pose, "set");
    if (!s) throw new Error("it stands on both trains");
    const R = W + rear + front;
    within(s.onBase.force, R, 1e-9);
    // Left and right groups lie half the gauge from the axis, so that the sides of the hull do.
    within(s.plain, 1.05 - (Math.abs(ctx.model.cg[1]) * W) / R, 1e-6);
    // Lean by hand: what the first tilt carries aside is (sum W h) times it, grown on the suspension.
    expect(Math.abs(s.asides.leaned)).toBeLessThan(0.03);
    expect(s.asides.wind).toBe(0);
    expect(s.asides.stated).toBe(false);
    expect(s.asides.along + s.asides.across).toBe(0);
    const heights = W * (1.62 + ctx.model.cg[2]) + (rear + front) * 0.9;
    within(s.onBase.heightAcross / s.asides.growth, heights / R, 1e-6);
    within(s.margin.angle, Math.atan(s.margin.distance / s.margin.height), 1e-12);
  });

  test("one train alone: its load acts midway between its groups, half-way up the triangle", () => {
    const s = standing(ctx, pose, "front");
    if (!s) throw new Error("it carries");
    const N = (W * (ctx.model.cg[0] - 8.5)) / 27.5;
    within(s.onBase.force, N + front, 1e-6);
    // The slanted side from (-2.8, 0) to (2.8, 1.05): its distance from the middle, less the CG's part aside.
    const slant = Math.hypot(5.6, 1.05);
    // Twist of the set shares the CG's moment across between the trains: within what all of it would be on this one.
    const most = ((Math.abs(ctx.model.cg[1]) * W) / (N + front)) * (5.6 / slant);
    const middle = (1.05 * 2.8) / slant;
    expect(s.plain).toBeLessThan(middle + 1e-9);
    // A twentieth more, for what the set's twist sends from one train to the other.
    expect(s.plain).toBeGreaterThan(middle - 1.05 * most);
    within(s.onBase.heightAlong, (N * 1.62 + front * 0.9) / (N + front), 1e-6);
  });

  test("the load left is the force of the group opposite, when nothing takes of it", () => {
    for (const name of ["rear", "front"]) {
      const s = standing(ctx, pose, name);
      if (!s) throw new Error("it carries");
      const group = pose.forces[ctx.supportIndex.get(`group ${s.opposite}`) ?? -1];
      within((s.margin.load * s.plain) / s.margin.distance, group, 1e-9);
    }
  });
});

describe("what takes of the distance", () => {
  test("wind at the step's limit: 0.613 V^2, 2.2 and the girder's depth, at the height over the ground", () => {
    const { ctx, stored } = poses((plan) => {
      flat(plan);
      plan.sets[0].steps[0].windLimit_m_per_s = 14;
    }, 1);
    const s = standing(ctx, stored[0], "set");
    if (!s) throw new Error("it stands");
    // Of two girders that differ a little, the one that catches more.
    const moments = ctx.set.girders.map(({ pieces }) => {
      let moment = 0;
      for (const p of pieces) {
        const depth = (p.topFlange_mm[1] + p.web_mm[0] + p.bottomFlange_mm[1]) / 1000;
        moment += depth * (p.to_m - p.from_m) * (1.62 + depth / 2);
      }
      return moment;
    });
    const moment = Math.max(...moments);
    expect(moment).toBeGreaterThan(300);
    const hand = (0.613 * 14 ** 2 * 2.2 * moment) / s.onBase.force;
    within(s.asides.wind / s.asides.growth, hand, 1e-6);
    expect(s.asides.speed).toBe(14);
  });

  test("a crossfall of 4 % falls to the left: the load goes 4 % of its height to the left", () => {
    const level = poses(flat, 1);
    const fallen = poses((plan) => {
      flat(plan);
      for (const p of plan.site.path.points) p.crossfall_pct = 4;
    }, 1);
    const y = ({ ctx, stored }: typeof level) => {
      const s = standing(ctx, stored[0], "set");
      if (!s) throw new Error("it stands");
      return { at: s.onBase.y - s.asides.leaned, height: s.onBase.heightAcross / s.asides.growth };
    };
    const moved = y(fallen).at - y(level).at;
    // Gravity is turned exactly, the heights of the deck's own parts enter alike: within 1 % of the small-angle product.
    within(moved, 0.04 * y(level).height, 0.01);
  });

  test("softer cylinders let every tilt across grow more", () => {
    const growth = (k: number) => {
      const { ctx, stored } = poses((plan) => {
        flat(plan);
        for (const t of plan.transporters) t.cylinderStiffness_kN_per_mm *= k;
      }, 1);
      return standing(ctx, stored[0], "set")?.asides.growth ?? Number.NaN;
    };
    const [soft, firm] = [growth(0.5), growth(1)];
    // 1 - 1/growth is sum(W h)/k, and bunks between are stiff: nearly twice at half the stiffness.
    within(1 - 1 / soft, 2 * (1 - 1 / firm), 0.05);
  });
});

test("a train with a group on either side only: it tips across, and along is held elsewhere", () => {
  const { ctx, stored } = poses((plan) => {
    flat(plan);
    for (const t of plan.transporters) {
      // Two rows of bunks hold the pitch of a deck whose groups do not.
      t.bunks = [-2, 2].map((at_m) => ({ ...t.bunks[0], at_m }));
      t.groups = (["L", "R"] as const).map((side) => ({
        name: `${t.id} ${side === "L" ? "left" : "right"}`,
        wheels: Array.from({ length: t.lines }, (_, i) => `${i + 1}${side}`),
      }));
    }
    plan.sets[0].steps[0].carries = [];
  }, 1);
  const [pose] = stored;
  expect(pose.solution.status).toBe("solved");
  const s = standing(ctx, pose, "front");
  if (!s) throw new Error("it carries");
  const at = (name: string) => pose.forces[ctx.supportIndex.get(`group ${name}`) ?? -1];
  const [left, right] = [at("front left"), at("front right")];
  within(s.plain, 1.05 - (1.05 * Math.abs(left - right)) / (left + right), 1e-9);
  // Four groups of two trains: a rectangle, 27.5 m long and as wide as the gauge.
  const set = standing(ctx, pose, "set");
  expect(set?.edge.split(" to ").sort()).toEqual(["front left", "rear left"]);
});
