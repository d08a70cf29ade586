// roll, roll together, drive out: what they do to the situation, where they end, what they find. Places by hand from
// the plan's own numbers; forces by statics. One girder: hooks 28 m and 2 m, trains 4 m and 20 m from its rear end.

import { describe, expect, test } from "vitest";
import { byId, type Plan } from "../../src/plan/index.ts";
import {
  biteAt,
  bunkGap,
  motionOf,
  type Pose,
  planeLevel,
  poseAt,
  type Situation,
  worldOf,
} from "../../src/sequence/index.ts";
import {
  craneOf,
  force,
  oneGirderAfter,
  oneGirderWith,
  ran,
  ranScenario,
  scenario,
  share,
  step,
  upTo,
  within,
} from "./plans.ts";

const trainOf = (s: Situation, id: string) => {
  const found = s.trains.find((t) => t.id === id);
  if (!found) throw new Error(`no train ${id}`);
  return found;
};

describe("roll", () => {
  test("moves the set and its trains by the distance, as far at every progress", () => {
    const { ctx, step: of } = ranScenario("one-girder");
    const run = of("roll-out");
    expect(run.happenings).toEqual([]);
    for (const p of [0.25, 0.5, 1]) {
      const { situation } = poseAt(ctx, run, p);
      within(situation.rearEnd, 15 + 10 * p, 1e-12);
      expect(trainOf(situation, "rear").deckAt).toBe(4);
      expect(trainOf(situation, "front").deckAt).toBe(20);
    }
  });

  test("rolls back as well", () => {
    const { end, step: of } = oneGirderWith({ do: "roll", distance_m: -6 });
    expect(of("roll").happenings).toEqual([]);
    within(end("roll").situation.rearEnd, 9, 1e-12);
  });

  test("ends with the front axle at the stop line", () => {
    // Front axle at 15 + 20 + 1.5 x 1.4 = 37.1 m, line at 48 m.
    const { end, step: of } = oneGirderWith({ do: "roll", distance_m: 12 });
    within(end("roll").situation.rearEnd, 15 + 10.9, 1e-9);
    const [found, ...more] = of("roll").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "not clear", subject: "front", value: 12, unit: "m" });
    within(found.limit as number, 10.9, 1e-9);
    expect(found.words).toContain("stop line front axle");
  });

  test("just up to the stop line is allowed", () => {
    const { end, step: of } = oneGirderWith({ do: "roll", distance_m: 10.9 });
    within(end("roll").situation.rearEnd, 25.9, 1e-9);
    expect(of("roll").happenings).toEqual([]);
  });

  test("with a hook on it is out of order", () => {
    const { step: of } = oneGirderAfter("far-hook-up", { do: "roll", distance_m: 0.5 });
    expect(of("roll").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "far-crane"]]);
  });
});

describe("an empty train ahead", () => {
  // Front train down and empty but still there; then the rear train rolls on with the far crane.
  const together = { do: "roll together", cranes: ["far-crane"], hold: "elevation", bite_m: 1 } as const;

  test("stays where it stands, and its decks end the travel", () => {
    // Decks 5.8 m long, 16 m apart: 10.2 m free.
    const { ctx, end, step: of } = oneGirderAfter("front-down", { ...together, distance_m: 12 });
    const { situation } = end("roll together");
    within(situation.rearEnd, 25 + 10.2, 1e-9);
    within(situation.rearEnd + trainOf(situation, "front").deckAt, 25 + 20, 1e-9);
    expect(trainOf(situation, "rear").deckAt).toBe(4);
    const [found, ...more] = of("roll together").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "not clear", value: 12 });
    expect(found.words).toContain("transporter front");
    within(found.limit as number, 10.2, 1e-9);
    expect(ctx.length).toBe(30);
  });

  test("carries nothing once the set has gone off it", () => {
    // Back by 12 m the front bunk would lie 32 m from the rear end of a set of 30 m.
    const { ctx, run, step: of } = oneGirderAfter("front-down", { ...together, distance_m: -12 });
    const back = of("roll together");
    expect(back.solved).toBe(true);
    expect(force(ctx, poseAt(ctx, back, 0.8), "bunk front G 1")).toBe(0);
    const end = poseAt(ctx, back, 1);
    expect(force(ctx, end, "bunk front G 1")).toBeNaN();
    within(share(ctx, end, "far crane"), (run.weight * 11) / 24, 1e-4 * run.weight);
  });

  test("is not in the way of less", () => {
    const { step: of } = oneGirderAfter("front-down", { ...together, distance_m: 10 });
    expect(of("roll together").happenings).toEqual([]);
  });
});

describe("a train that has left", () => {
  test("stays where it drove to while the set rolls on and is brought over", () => {
    const { ctx, run, end } = ranScenario("one-girder");
    const place = worldOf(ctx, end("front-out")).decks.front.centre;
    within(place[0], 45, 1e-12);
    within(place[1], -8, 1e-12);
    for (const s of run.steps.slice(run.steps.findIndex((x) => x.step.id === "roll-with-far"))) {
      const now = worldOf(ctx, poseAt(ctx, s, 1)).decks.front.centre;
      expect(Math.hypot(...now.map((v, i) => v - place[i])), s.step.id).toBeLessThanOrEqual(1e-9);
    }
  });

  test("also where the set is brought across", () => {
    const { ctx, end } = ranScenario("demo");
    const at = (id: string) => worldOf(ctx, end(id)).decks.rear.centre;
    const apart = at("over").map((v, i) => v - at("rear-out")[i]);
    expect(Math.hypot(...apart)).toBeLessThanOrEqual(1e-9);
  });
});

describe("roll together", () => {
  test("bites: trains first, then the boom; both at the full distance at the end", () => {
    // 10 m in bites of at most 3 m: four of 2.5 m, rolled in the first 0.8 of each.
    expect(biteAt(10, 3, 0)).toEqual({ rolled: 0, tip: 0 });
    const quarter = biteAt(10, 3, 0.25 - 1e-12);
    within(quarter.rolled, 2.5, 1e-12);
    within(quarter.tip, 2.5, 1e-9);
    const middle = biteAt(10, 3, 0.25 + 0.1);
    within(middle.rolled, 2.5 + 2.5 / 2, 1e-12);
    within(middle.tip, 2.5, 1e-12);
    const leaning = biteAt(10, 3, 0.5 + 0.2);
    within(leaning.rolled, 7.5, 1e-12);
    within(leaning.tip, 5, 1e-12);
    const closing = biteAt(10, 3, 0.5 + 0.225);
    within(closing.rolled, 7.5, 1e-12);
    within(closing.tip, 6.25, 1e-12);
    expect(biteAt(10, 3, 1)).toEqual({ rolled: 10, tip: 10 });
    expect(biteAt(-10, 3, 0.7).rolled).toBeCloseTo(-7.5, 12);
  });

  test("its marks are where a bite rolls out and where it ends", () => {
    const { step: of } = ranScenario("one-girder");
    const run = of("roll-with-far");
    const marks = motionOf("roll together").marks?.(run.step, run.ends) ?? [];
    expect(marks.length).toBe(32 + 31);
    for (const m of marks) {
      const { rolled, tip } = biteAt(16, 0.5, m);
      const behind = rolled - tip;
      expect(Math.min(Math.abs(behind), Math.abs(behind - 0.5)), `${m}`).toBeLessThanOrEqual(1e-9);
    }
  });

  test("held at its elevation the hook stays as high above the path, and the tip follows in bites", () => {
    const { ctx, step: of } = ranScenario("demo");
    const run = of("roll-with-far");
    const above = (s: Situation) => craneOf(s, "far-crane").tautAt - planeLevel(s, 55, 0);
    const tip = craneOf(run.start, "far-crane").tip;
    for (let i = 1; i <= 40; i++) {
      const { situation } = poseAt(ctx, run, i / 40);
      within(above(situation), above(run.start), 1e-12);
      within(craneOf(situation, "far-crane").tip[0] - tip[0], biteAt(28, 1, i / 40).tip, 1e-9);
      expect(craneOf(situation, "far-crane").tip[1]).toBe(tip[1]);
    }
  });

  /** Pull of the far line along the set, and T x offset / rope length as the state gives them. */
  function pull(pose: Pose): { H: number; hand: number; T: number } {
    const hoist = pose.state.hoists?.[0];
    if (!hoist?.offset || !hoist.ropeLength) throw new Error("no hoist with a rope");
    const T = pose.solution.hoistForce[0];
    const H = pose.solution.horizontal?.lines[0] ?? 0;
    return { H, hand: (T * hoist.offset[0]) / hoist.ropeLength, T };
  }

  test("line lean pulls with T x offset / rope length, less what bunks and rope give way", () => {
    const { ctx, step: of, plan } = ranScenario("one-girder");
    const run = of("roll-with-far");
    // One bunk of 40 kN/mm sideways against the pendulum T / rope length: the set gives way by H / 40 kN/mm.
    const bunk = byId(plan.transporters, "rear").bunkSideStiffness_kN_per_mm ?? 0;
    for (const bites of [0.4, 0.8, 10.5, 31.8]) {
      const { H, hand, T } = pull(poseAt(ctx, run, bites / 32));
      const rope = poseAt(ctx, run, bites / 32).state.hoists?.[0].ropeLength ?? 0;
      const soft = 1 + T / rope / (bunk * 1e6);
      within(H, hand / soft, 1e-6 * Math.abs(hand));
      // Behind the set the tip pulls it back: 0.25 to 0.5 m on some 35 m of rope, about 1 % of T.
      expect(H).toBeLessThan(-0.004 * T);
    }
    const plumb = pull(poseAt(ctx, run, 5 / 32));
    within(plumb.H, 0, 1e-6 * plumb.T);
  });

  test("held at a load the load stays, and is locked at its end without a jump", () => {
    // Back from the stop line while the front train still carries, so that statics leave the load open.
    const {
      ctx,
      step: of,
      run,
    } = oneGirderAfter(
      "far-takes",
      { do: "roll together", cranes: ["far-crane"], hold: "load", load_kN: 35, bite_m: 1, distance_m: -5 },
      { do: "hold", releasedBy: "", evidence: "" },
    );
    const rolled = of("roll together");
    for (let i = 1; i <= 20; i++) within(force(ctx, poseAt(ctx, rolled, i / 20), "far crane"), 35e3, 1e-6);
    expect(craneOf(of("hold").start, "far-crane").heldLoad).toBeNull();
    const locked = poseAt(ctx, of("hold"), 0);
    within(force(ctx, locked, "far crane"), 35e3, 1e-3);
    for (const name of ["rear aft", "front left"])
      within(share(ctx, locked, name), share(ctx, poseAt(ctx, rolled, 1), name), 1e-3);
    expect(run.steps.every((s) => s.solved)).toBe(true);
  });

  test("held at a load that statics do not allow there is no equilibrium", () => {
    // Rear bunk at 4 m and hook at 28 m, CG at 15 m: 47.1 kN and no other load.
    const { step: of } = oneGirderAfter("front-out", {
      do: "roll together",
      cranes: ["far-crane"],
      hold: "load",
      load_kN: 40,
      bite_m: 1,
      distance_m: 1,
    });
    const run = of("roll together");
    expect(run.solved).toBe(false);
    expect(run.happenings.map((h) => h.kind)).toEqual(["no equilibrium"]);
  });

  test("without a stated load it holds the one it began with", () => {
    const {
      ctx,
      step: of,
      end,
    } = oneGirderAfter("front-out", {
      do: "roll together",
      cranes: ["far-crane"],
      hold: "load",
      bite_m: 1,
      distance_m: 6,
    });
    const begun = force(ctx, poseAt(ctx, of("roll together"), 0), "far crane");
    expect(begun).toBeGreaterThan(40e3);
    within(force(ctx, end("roll together"), "far crane"), begun, 1e-6);
  });

  test("a hook that does not follow, and one that is to follow but is not on, are out of order", () => {
    const { step: of } = oneGirderAfter("front-out", {
      do: "roll together",
      cranes: ["near-crane"],
      hold: "elevation",
      bite_m: 1,
      distance_m: 1,
    });
    expect(of("roll together").happenings.map((h) => [h.kind, h.subject])).toEqual([
      ["out of order", "far-crane"],
      ["out of order", "near-crane"],
    ]);
  });
});

describe("drive out", () => {
  const out = { do: "drive out", transporter: "front", toward: "right", distance_m: 8 } as const;

  test("takes the train out of the statics and changes no load", () => {
    const { ctx, run, step: of } = ranScenario("one-girder");
    const leave = of("front-out");
    const before = poseAt(ctx, leave, 0);
    for (const p of [1e-6, 0.5, 1]) {
      const pose = poseAt(ctx, leave, p);
      const front = trainOf(pose.situation, "front");
      expect(front.under).toBe(false);
      within(front.gone[0], 0, 0);
      within(front.gone[1], -8 * p, 1e-12);
      ctx.supports.forEach((s, i) => {
        if (s.band && s.of !== "front") within(pose.shares[i], before.shares[i], 1e-9 * run.weight);
      });
    }
    expect(leave.happenings).toEqual([]);
  });

  test.each([
    ["back", -8, 0],
    ["forward", 8, 0],
    ["left", 0, 8],
  ] as const)("toward %s", (toward, x, y) => {
    const { end } = oneGirderAfter("front-down", { ...out, toward });
    expect(trainOf(end("drive out").situation, "front").gone).toEqual([x, y]);
  });

  test("while it carries it is not clear", () => {
    const { step: of } = oneGirderAfter("far-takes", out);
    const [found] = of("drive out").happenings;
    expect(found).toMatchObject({ kind: "not clear", subject: "front", value: 0, unit: "m" });
    expect(found.words).toContain("still carries load");
  });

  test("with 5 mm above its bunks it is not clear, with 25 mm it is", () => {
    const down = (gap_mm: number) =>
      oneGirderAfter("far-takes", { do: "jack down", transporter: "front", until: { gap_mm } }, out).step(
        "drive out",
      );
    const [found, ...more] = down(5).happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "not clear", subject: "front", limit: 0.02 });
    within(found.value as number, 0.005, 1e-6);
    expect(down(25).happenings).toEqual([]);
  });

  test("out along the path it must pass under the set and not meet the other train", () => {
    const { step: of } = oneGirderAfter("front-down", { ...out, toward: "back", distance_m: 14 });
    // Decks 5.8 m long, 16 m from centre to centre: 10.2 m free.
    const found = of("drive out").happenings.find((h) => h.words.includes("stands in its way"));
    expect(found).toMatchObject({ kind: "not clear", subject: "front", value: 14 });
    within(found?.limit as number, 10.2, 1e-9);
    const shorter = (distance_m: number) =>
      oneGirderAfter("front-down", { ...out, toward: "back", distance_m }).step("drive out").happenings;
    expect(shorter(10.4).map((h) => h.kind)).toEqual(["not clear"]);
    expect(shorter(10)).toEqual([]);
  });

  test("a train that is not under the set cannot leave", () => {
    const { step: of } = oneGirderAfter("front-out", { ...out, id: "again" });
    expect(of("again").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "front"]]);
  });

  /** Ground for the front train to drive on to, ahead of where it stands. */
  const pathGoesOn = (plan: Plan) => {
    const { points } = plan.site.path;
    points[points.length - 1].chainage_m += 10;
    plan.site.stopLines = [];
  };

  test("on its way out under a lower part of the set it is not clear", () => {
    // Camber of 120 mm at the front bunk and none at the nose: 80 mm clear there, at the nose nothing.
    const { step: of } = ran(
      scenario("one-girder", (plan) => {
        plan.sets[0].girders[0].camber_mm = [
          [0, 120],
          [20, 120],
          [26, 0],
          [30, 0],
        ];
        plan.sets[0].steps = upTo(plan, "front-down", step({ ...out, toward: "forward", distance_m: 5 }));
        pathGoesOn(plan);
      }),
    );
    const [found, ...more] = of("drive out").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "not clear", subject: "front", limit: 0.02 });
    expect(found.words).toContain("on its way out");
    // 80 mm, less 100 mm of camber lost in 5 m, and what the set sags and tilts by there.
    within(found.value as number, 0.08 - 0.1, 0.03);
    const clear = ran(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(plan, "front-down", step({ ...out, toward: "forward", distance_m: 5 }));
        pathGoesOn(plan);
      }),
    );
    expect(clear.step("drive out").happenings).toEqual([]);
    within(bunkGap(poseAt(clear.ctx, clear.step("drive out"), 0), "front"), 0.08, 1e-6);
  });
});
