// What holds lean, by hand: springs left and right of the axis in series and side by side, T (e + d) of a spreader.

import { describe, expect, test } from "vitest";
import { leanHeldBy, leanWords, solvePlan } from "../../src/checks/index.ts";
import { byId, type Plan, takeOff } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { force, near, type Ran, ran, ranScenario, scenario, upTo } from "../sequence/plans.ts";

const held = (r: Ran, id: string, p = 1) => leanHeldBy(poseAt(r.ctx, r.step(id), p));
const part = (h: ReturnType<typeof leanHeldBy>, start: string) => {
  const found = h.parts.find((p) => p.name.startsWith(start));
  if (!found) throw new Error(`${start} is not among ${h.parts.map((p) => p.name).join(", ")}`);
  return found;
};

/** A train with groups left and right: its cylinders of those groups and its bunks, in series. */
function trainBySprings(plan: Plan, id: string): number {
  const t = byId(plan.transporters, id);
  const ys = plan.sets[0].girders.map((x) => x.y_m);
  const wheels = t.groups.filter((x) => !x.name.endsWith("aft")).reduce((n, x) => n + x.wheels.length, 0);
  const groups = wheels * t.cylinderStiffness_kN_per_mm * 1e6 * (t.gauge_m / 2) ** 2;
  const bunks = t.bunks.length * t.bunkStiffness_kN_per_mm * 1e6 * ys.reduce((a, y) => a + y * y, 0);
  return 1 / (1 / groups + 1 / bunks);
}

/** T (hook pin above the spreader's lower pins + picks above the CG), with the tension that was solved. */
function pendulum(r: Ran, id: string, crane: string, p = 1): number {
  const pick = r.plan.sets[0].picks.find((x) => x.crane === crane);
  if (!pick) throw new Error(crane);
  const T = force(r.ctx, poseAt(r.ctx, r.step(id), p), `${byId(r.plan.cranes, crane).kind} crane`);
  const arm =
    byId(r.plan.rigging, pick.rigging).hookPinHeight_m + pick.height_m - takeOff(r.plan.sets[0]).cg[2];
  return T * arm;
}

describe("the demo's set", () => {
  const r = ranScenario("demo");

  test("on two trains: groups left and right of both, and nothing else", () => {
    const h = held(r, "lash-down", 0);
    expect(h.parts.map((p) => [p.what, p.name])).toEqual([
      ["groups", "front (front left, front right)"],
      ["groups", "rear (rear left, rear right)"],
    ]);
    // Groups reaching from side to side give a little by the deck's level: 1e-3.
    near(part(h, "front").stiffness, trainBySprings(r.plan, "front"), 1e-3);
    near(part(h, "rear").stiffness, trainBySprings(r.plan, "rear"), 1e-3);
    expect(h).toMatchObject({ onGround: true, assumed: false });
  });

  test("on the rear train and the far hook: the rear groups and the far spreader as a pendulum", () => {
    const h = held(r, "roll-with-far");
    expect(h.parts.map((p) => p.what)).toEqual(["groups", "pendulum"]);
    near(part(h, "rear").stiffness, trainBySprings(r.plan, "rear"), 1e-3);
    near(part(h, "far-crane").stiffness, pendulum(r, "roll-with-far", "far-crane"), 1e-9);
  });

  test("hung on both hooks: two pendulums, nothing on the ground", () => {
    const h = held(r, "lift");
    expect(h.onGround).toBe(false);
    near(h.stiffness, pendulum(r, "lift", "far-crane") + pendulum(r, "lift", "near-crane"), 1e-9);
    near(h.perWeight, h.stiffness / r.run.weight, 1e-12);
  });

  test("landed: two bearings a line, 2 k y^2 each", () => {
    const h = held(r, "near-off");
    const k = r.plan.site.bearings[0].stiffness_kN_per_mm * 1e6;
    const y = r.plan.sets[0].girders[0].y_m;
    for (const line of ["far bearings", "near bearings"]) near(part(h, line).stiffness, 2 * k * y * y, 1e-6);
    expect(part(h, "far bearings").name).toBe("far bearings (far L, far R)");
  });

  test("parts add up to the whole at every stored step end", () => {
    for (const s of r.run.steps) {
      const h = held(r, s.step.id);
      near(
        h.parts.reduce((a, p) => a + p.stiffness, 0),
        h.stiffness,
        1e-5,
      );
    }
  });

  test("in words, greatest first, kNm per percent", () => {
    const words = leanWords(r.ctx, held(r, "roll-with-far"));
    expect(words).toMatch(
      /^held by rear \(rear left, rear right\) 277, far crane as a pendulum 1\d kNm per % of lean$/,
    );
  });

  test("is never lost", () => {
    expect(solvePlan(r.plan).findings.map((f) => f.check)).not.toContain("lean restraint lost");
  });
});

test("two separate lines hold lean by their stretch, k y^2, beside T times the picks' height above the CG", () => {
  const r = ran(
    scenario("demo", (plan) => {
      for (const rig of plan.rigging) rig.kind = "separate";
      plan.sets[0].steps = upTo(plan, "lift");
    }),
  );
  const h = held(r, "lift");
  const stiffness = (id: string) => {
    const { rope_kN_per_mm, boom_kN_per_mm, ground_kN_per_mm } = byId(r.plan.cranes, id).stiffness;
    const slings = r.plan.rigging[0].slingStiffness_kN_per_mm;
    return 1e6 / (1 / rope_kN_per_mm.best + 1 / boom_kN_per_mm.best + 1 / ground_kN_per_mm.best + 1 / slings);
  };
  const y = r.plan.sets[0].girders[0].y_m;
  for (const id of ["far-crane", "near-crane"]) {
    const line = h.parts.find((p) => p.what === "lines" && p.name === id);
    // 1e-4: lines pull along the true vertical, and the datum plane slopes by under 1 %.
    near(line?.stiffness ?? Number.NaN, stiffness(id) * y * y, 1e-4);
  }
});

test("the lean of a single girder is taken as held, and not judged", () => {
  const r = ranScenario("one-girder");
  const h = held(r, "lower");
  expect(h).toMatchObject({ assumed: true, parts: [] });
  expect(leanWords(r.ctx, h)).toContain("taken as held");
});

describe("the limit", () => {
  const plan = (value?: number) =>
    scenario("demo", (p) => {
      p.sets[0].steps = upTo(p, "front-down");
      const rear = byId(p.transporters, "rear");
      // All wheels of the rear train in two groups, one behind the other, as wide as the deck.
      rear.groups = [
        { name: "rear aft", wheels: ["1L", "1R", "2L", "2R", "3L", "3R"] },
        { name: "rear left", wheels: ["4L", "4R", "5L"] },
        { name: "rear right", wheels: ["5R", "6L", "6R"] },
      ];
      if (value !== undefined)
        p.limits.overrides.push({ limit: "lean stiffness", value, source: "test", chosenBy: "test" });
    });
  const lost = (p: Plan) => solvePlan(p).findings.filter((f) => f.check === "lean restraint lost");

  test("a little from side to side still counts; a limit above it does not let it pass", () => {
    expect(lost(plan()).length).toBe(0);
    const [found] = lost(plan(30));
    expect(found).toMatchObject({ level: "stop", subject: "set", limit: 30, chosenBy: "test" });
  });
});
