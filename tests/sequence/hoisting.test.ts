// take load, trial lift, hoist up, hoist down, bring over, land: what the hooks are told and where they end. Hand
// statics of one girder: W = 102.77 kN, CG 15 m, trains at 4 m and 20 m, hooks at 28 m and 2 m from its rear end.

import { describe, expect, test } from "vitest";
import { girderShape, motionOf, poseAt, type Situation } from "../../src/sequence/index.ts";
import {
  craneOf,
  force,
  frontGroups,
  near,
  oneGirderAfter,
  oneGirderWith,
  type Ran,
  ran,
  ranScenario,
  rearGroups,
  scenario,
  share,
  shares,
  step,
  upTo,
  within,
} from "./plans.ts";
import { lineStiffness, pickFlexibility } from "./stiffness.ts";

/**
 * Second order: the far hook pulls above the CG on a set whose pick has turned, T x (pick - CG height) x slope there,
 * N m, > 0 nose up. The slope is read from the solved shape.
 */
function turned(r: Ran, id: string, T: number): number {
  const shape = girderShape(r.ctx, r.end(id))[0];
  const i = shape.stations.findIndex((s) => s >= 28 - 1e-9);
  const slope = (shape.droop[i + 1] - shape.droop[i - 1]) / (shape.stations[i + 1] - shape.stations[i - 1]);
  return T * (1.555 - r.ctx.model.cg[2]) * slope;
}

const take = { do: "take load", crane: "far-crane", loadCap_kN: 50, heightCap_mm: 300 } as const;
const taking = (change: object) => oneGirderAfter("far-hook-up", { ...take, ...change });
const raisedBy = (r: Ran, id: string, p = 1) => {
  const run = r.step(id);
  const at = (s: Situation) => craneOf(s, "far-crane").tautAt;
  return at(poseAt(r.ctx, run, p).situation) - at(run.start);
};

describe("take load", () => {
  test("to a load: the stated one; what the hook takes leaves front and rear by the lever rule", () => {
    const r = taking({ until: { load_kN: 40 } });
    const { ctx, run, end } = r;
    expect(r.step("take load").happenings).toEqual([]);
    // The height is found to 1e-9 of the cap, 0.3 m x 0.6 MN/m: 2e-4 N.
    within(force(ctx, end("take load"), "far crane"), 40e3, 1e-2);
    const W = run.weight;
    const moment = turned(r, "take load", 40e3);
    within(shares(ctx, end("take load"), frontGroups), (W * 11 - 40e3 * 24 + moment) / 16, 1e-6 * W);
    within(shares(ctx, end("take load"), rearGroups), (W * 5 + 40e3 * 8 - moment) / 16, 1e-6 * W);
  });

  test("the line is just taut at once, and then takes h / (1/k + f) of every height (W2's form)", () => {
    const r = taking({ until: { load_kN: 40 } });
    const run = r.step("take load");
    expect(force(r.ctx, poseAt(r.ctx, run, 0), "far crane")).toBe(0);
    within(force(r.ctx, poseAt(r.ctx, run, 1e-12), "far crane"), 0, 1e-3);
    within(raisedBy(r, "take load", 1e-12), 0.05, 1e-9);
    const perMetre = 1 / (1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8));
    // 1e-4: the beam formulas know the elements' ends only every metre, and half a millimetre of lean along the path.
    near(run.ends[1], 40e3 / perMetre, 1e-4);
    for (const p of [0.25, 0.5, 0.75])
      within(force(r.ctx, poseAt(r.ctx, run, p), "far crane"), p * 40e3, 1e-5 * 40e3);
  });

  test("to a height", () => {
    const r = taking({ until: { height_mm: 45 } });
    within(r.step("take load").ends[1], 0.045, 1e-12);
    within(raisedBy(r, "take load"), 0.05 + 0.045, 1e-9);
  });

  test("until a support is free: the hook then has what statics give it with that support gone", () => {
    const r = taking({ until: { frees: "front aft" } });
    expect(r.step("take load").happenings).toEqual([]);
    const T = force(r.ctx, r.end("take load"), "far crane");
    near(T, (r.run.weight * 11 + turned(r, "take load", T)) / 24, 1e-6);
    within(shares(r.ctx, r.end("take load"), frontGroups), 0, 1e-6 * r.run.weight);
  });

  test("the load cap ends it: a stop, at the cap", () => {
    const r = taking({ until: { load_kN: 40 }, loadCap_kN: 30 });
    const [found, ...more] = r.step("take load").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      kind: "cap reached",
      subject: "far-crane",
      value: 30e3,
      limit: 30e3,
      unit: "N",
      progress: 1,
    });
    expect(found.words).toContain("load cap of 30 kN");
    within(force(r.ctx, r.end("take load"), "far crane"), 30e3, 1e-2);
  });

  test("the height cap ends it: a stop, at the cap", () => {
    const r = taking({ until: { load_kN: 40 }, heightCap_mm: 20 });
    const [found, ...more] = r.step("take load").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "cap reached", value: 0.02, limit: 0.02, unit: "m", progress: 1 });
    expect(found.words).toContain("height cap of 20 mm");
    within(r.step("take load").ends[1], 0.02, 1e-12);
  });

  test("both caps are told when both come before the end", () => {
    const r = taking({ until: { load_kN: 40 }, loadCap_kN: 5, heightCap_mm: 20 });
    expect(r.step("take load").happenings.map((h) => h.unit)).toEqual(["m", "N"]);
    within(force(r.ctx, r.end("take load"), "far crane"), 5e3, 1e-2);
  });

  test("a load and a height just at their caps are within them", () => {
    expect(taking({ until: { load_kN: 40 }, loadCap_kN: 40 }).step("take load").happenings).toEqual([]);
    expect(taking({ until: { height_mm: 45 }, heightCap_mm: 45 }).step("take load").happenings).toEqual([]);
  });

  test("in stages: the second goes on from what the first left, without a jump", () => {
    const r = oneGirderAfter(
      "far-hook-up",
      { ...take, id: "one", until: { load_kN: 15 } },
      { ...take, id: "two", until: { load_kN: 40 } },
    );
    expect(r.step("two").happenings).toEqual([]);
    for (const [p, kN] of [
      [0, 15],
      [1e-9, 15],
      [1, 40],
    ])
      within(force(r.ctx, poseAt(r.ctx, r.step("two"), p), "far crane"), kN * 1e3, 1e-2);
    // By springs in series: as much again as 25 kN more need.
    near(r.step("two").ends[1] / r.step("one").ends[1], 25 / 15, 1e-4);
  });

  test("with no hook on it is out of order and moves nothing", () => {
    const { step: of, end } = oneGirderWith({ ...take, until: { load_kN: 40 } });
    expect(of("take load").happenings.map((h) => [h.kind, h.subject])).toEqual([
      ["out of order", "far-crane"],
    ]);
    expect(end("take load").situation).toEqual(of("take load").start);
  });

  test("with lashings on it is out of order, and says which", () => {
    const { step: of } = ran(
      scenario("demo", (plan) => {
        const { steps } = plan.sets[0];
        plan.sets[0].steps = steps.filter((s) => s.id !== "untie").slice(0, 6);
      }),
    );
    const [found] = of("far-takes").happenings;
    expect(found).toMatchObject({ kind: "out of order", subject: "far-crane" });
    expect(found.words).toContain("rear L, rear R, front L, front R");
  });
});

describe("trial lift", () => {
  const lift = { do: "trial lift", crane: "far-crane", height_mm: 15 } as const;

  test("raises the hook by its height", () => {
    const r = oneGirderAfter("far-takes", lift);
    expect(r.step("trial lift").happenings).toEqual([]);
    for (const p of [0.5, 1]) within(raisedBy(r, "trial lift", p), 0.015 * p, 1e-12);
  });

  test("stops at its load cap", () => {
    const r = oneGirderAfter("far-takes", { ...lift, loadCap_kN: 42 });
    const [found, ...more] = r.step("trial lift").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "cap reached", value: 42e3, limit: 42e3, unit: "N" });
    within(force(r.ctx, r.end("trial lift"), "far crane"), 42e3, 1e-2);
    expect(raisedBy(r, "trial lift")).toBeLessThan(0.015);
  });
});

describe("hoist up and hoist down", () => {
  test.each(["hoist up", "hoist down"] as const)(
    "%s: each hook at its own speed until the last is there",
    (kind) => {
      const hooks = [
        { crane: "far-crane", height_mm: 300 },
        { crane: "near-crane", height_mm: 200, speed_factor: 0.5 },
      ];
      const { ctx, step: of } = oneGirderAfter("rear-out", { do: kind, hooks });
      const run = of(kind);
      expect(run.happenings).toEqual([]);
      const sign = kind === "hoist up" ? 1 : -1;
      // The near hook needs 400 mm of the far hook's time.
      for (const [p, far, slow] of [
        [0.25, 0.1, 0.05],
        [0.75, 0.3, 0.15],
        [0.9, 0.3, 0.18],
        [1, 0.3, 0.2],
      ]) {
        const { situation } = poseAt(ctx, run, p);
        const moved = (id: string) => craneOf(situation, id).tautAt - craneOf(run.start, id).tautAt;
        within(moved("far-crane"), sign * far, 1e-12);
        within(moved("near-crane"), sign * slow, 1e-12);
      }
      expect(motionOf(kind).marks?.(run.step, [])).toEqual([0.75]);
    },
  );

  test("two hooks alone are statically determinate: a mismatch hardly changes their loads", () => {
    const {
      ctx,
      run,
      step: of,
      end,
    } = oneGirderAfter("rear-out", {
      do: "hoist up",
      hooks: [{ crane: "far-crane", height_mm: 200 }],
    });
    expect(of("hoist up").solved).toBe(true);
    // Picks 1.555 m above the soffit, so d below the picks: W d tan(theta) / L, 0.2 / 26 x 0.8 / 26 of W, 2.4e-4.
    near(force(ctx, end("hoist up"), "far crane"), run.weight / 2, 5e-4);
  });

  test("with a hook that is not on it is out of order", () => {
    const { step: of } = oneGirderAfter("front-out", {
      do: "hoist down",
      hooks: [
        { crane: "far-crane", height_mm: 10 },
        { crane: "near-crane", height_mm: 10 },
      ],
    });
    expect(of("hoist down").happenings.map((h) => [h.kind, h.subject])).toEqual([
      ["out of order", "near-crane"],
    ]);
  });
});

describe("bring over", () => {
  test("carries the set, its datum and both boom tips, and reaches the seats only at its end", () => {
    const { ctx, step: of } = ranScenario("demo");
    const run = of("over");
    expect(run.happenings).toEqual([]);
    for (const p of [0.3, 1]) {
      const { situation } = poseAt(ctx, run, p);
      within(situation.rearEnd - run.start.rearEnd, 14.8 * p, 1e-9);
      within(situation.across - run.start.across, 0.2 * p, 1e-12);
      within(situation.plane.chainage - run.start.plane.chainage, 14.8 * p, 1e-9);
      expect(situation.plane.elevation).toBe(run.start.plane.elevation);
      for (const c of situation.cranes) {
        const before = craneOf(run.start, c.id);
        within(c.tip[0] - before.tip[0], 14.8 * p, 1e-9);
        within(c.tip[1] - before.tip[1], 0.2 * p, 1e-12);
        expect(c.tautAt).toBe(before.tautAt);
      }
      expect(situation.overSeats).toBe(p === 1);
    }
  });

  test.each([
    [8.5, true],
    [8.529, true],
    [8.531, false],
    [8.46, false],
  ])("soles within 30 mm of the bearings are over their seats: %d m", (dx_m, over) => {
    // Rear end at 41 m, soles 0.5 m and 29.5 m from it, bearings at 50 m and 79 m.
    const { end } = oneGirderAfter("rear-out", { do: "bring over", dx_m, dy_m: 0, tolerance_mm: 30 });
    expect(end("bring over").situation.overSeats).toBe(over);
  });

  test("while bunks still carry it is out of order; a bunk that the set leaves behind carries nothing", () => {
    const { ctx, run, step: of } = oneGirderAfter("near-takes", { do: "bring over", dx_m: 8.5, dy_m: 0 });
    const [found] = of("bring over").happenings;
    expect(found).toMatchObject({ kind: "out of order", subject: "rear" });
    expect(found.words).toContain("bunk rear G 1 still carries");
    // The rear bunk stands 4 m from the rear end: after 8.5 m it is behind the set, and both hooks have it alone.
    const end = poseAt(ctx, of("bring over"), 1);
    expect(force(ctx, poseAt(ctx, of("bring over"), 0.4), "bunk rear G 1")).not.toBeNaN();
    expect(force(ctx, end, "bunk rear G 1")).toBeNaN();
    near(share(ctx, end, "far crane") + share(ctx, end, "near crane"), run.weight, 1e-9);
  });
});

describe("land", () => {
  const land = (change: object) =>
    oneGirderAfter("lower", { do: "land", order: ["far-crane", "near-crane"], until_kN: 0, ...change });

  test("to nothing: every hook just slack, the bearings carry the set by the lever rule", () => {
    const { ctx, run, step: of, end } = land({});
    expect(of("land").happenings).toEqual([]);
    for (const hook of ["far crane", "near crane"]) expect(force(ctx, end("land"), hook)).toBe(0);
    for (const bearing of ["near G", "far G"]) near(share(ctx, end("land"), bearing), run.weight / 2, 1e-6);
  });

  test("down to a stated load, in the stated order and stages", () => {
    const { ctx, run, step: of, end } = land({ stages_kN: [30], until_kN: 10 });
    const landed = of("land");
    expect(landed.happenings).toEqual([]);
    for (const hook of ["far crane", "near crane"]) within(force(ctx, end("land"), hook), 10e3, 1);
    // Picks 2 m and 28 m, bearings 0.5 m and 29.5 m: equal hooks, equal bearings.
    near(share(ctx, end("land"), "near G"), run.weight / 2 - 10e3, 1e-4);
    const marks = motionOf("land").marks?.(landed.step, landed.ends) ?? [];
    const total = landed.ends.reduce((a, b) => a + b, 0);
    // After the first stage the far hook is at 30 kN and the near hook still holds its end up.
    const first = poseAt(ctx, landed, landed.ends[0] / total);
    within(force(ctx, first, "far crane"), 30e3, 1);
    expect(craneOf(first.situation, "near-crane").tautAt).toBe(craneOf(landed.start, "near-crane").tautAt);
    expect(marks[0]).toBe(landed.ends[0] / total);
    const second = poseAt(ctx, landed, (landed.ends[0] + landed.ends[1]) / total);
    within(force(ctx, second, "near crane"), 30e3, 1);
    expect(landed.ends.every((e) => e >= 0)).toBe(true);
  });

  test("near end first when the order says so", () => {
    const { step: of, ctx } = land({ order: ["near-crane", "far-crane"] });
    const run = of("land");
    const early = poseAt(ctx, run, 1e-3).situation;
    expect(craneOf(early, "near-crane").tautAt).toBeLessThan(craneOf(run.start, "near-crane").tautAt);
    expect(craneOf(early, "far-crane").tautAt).toBe(craneOf(run.start, "far-crane").tautAt);
  });

  test("not over its seats: out of order, and its hooks never come down to the load", () => {
    const { step: of } = oneGirderAfter("rear-out", { do: "land", order: ["far-crane"], until_kN: 0 });
    expect(of("land").happenings.map((h) => [h.kind, h.subject])).toEqual([
      ["out of order", "set"],
      ["end not reached", "far-crane"],
    ]);
    const over = ran(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(
          plan,
          "rear-out",
          step({ do: "bring over", dx_m: 7, dy_m: 0 }),
          step({ do: "land", order: ["far-crane", "near-crane"], until_kN: 0 }),
        );
      }),
    );
    expect(over.step("land").happenings[0]).toMatchObject({ kind: "out of order", subject: "set" });
  });
});
