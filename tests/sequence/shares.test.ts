// Shares of the weight: they sum to it at every stored pose, and follow hand statics when a hook is raised or held.
// Worked examples of three-support statics: common practice, no source.

import { describe, expect, test } from "vitest";
import { MOTIONS, type Pose, poseAt, runSet, tareOf } from "../../src/sequence/index.ts";
import {
  craneOf,
  force,
  frontGroups,
  near,
  oneGirderAfter,
  type Ran,
  ran,
  ranScenario,
  rearGroups,
  scenario,
  scenarioNames,
  shares,
  step,
  upTo,
  within,
} from "./plans.ts";
import { lineStiffness, pickFlexibility } from "./stiffness.ts";

describe.each(scenarioNames)("%s", (name) => {
  const { ctx, run } = ranScenario(name);
  const m = run.supports.length;

  test("is solved throughout", () => {
    expect(run.steps.filter((s) => !s.solved).map((s) => s.step.id)).toEqual([]);
    expect(run.count).toBeGreaterThan(200);
  });

  test("shares of all bands sum to the z part of the weight within 1e-9 of it, at every stored pose", () => {
    for (let i = 0; i < run.count; i++) {
      const motion = (what: (typeof MOTIONS)[number]) =>
        run.motions[i * MOTIONS.length + MOTIONS.indexOf(what)];
      // True up against the path's normal: 1 / sqrt(1 + grade^2 + crossfall^2).
      const up = 1 / Math.hypot(1, motion("grade"), motion("crossfall"));
      let sum = 0;
      run.supports.forEach((s, j) => {
        if (s.band) sum += run.shares[i * m + j];
        else expect(run.shares[i * m + j]).toBe(0);
      });
      within(sum, run.weight * up, 1e-9 * run.weight);
    }
  });

  test("the residual is below 1e-9 of W and of W L at every stored pose", () => {
    for (let i = 0; i < run.count; i++)
      for (const what of ["residualForce", "residualMoment"] as const) {
        const r = run.motions[i * MOTIONS.length + MOTIONS.indexOf(what)];
        expect(r).toBeLessThan(1e-9);
        expect(r).toBeGreaterThanOrEqual(0);
      }
  });

  test("no support pulls, and no train, hook or bearing has less than nothing of the set", () => {
    for (let i = 0; i < run.count; i++) {
      const whole = new Map<string, number>();
      run.supports.forEach((s, j) => {
        const F = run.forces[i * m + j];
        // The two lines of a spreader follow from its statics: to rounding.
        const least = s.what === "line" ? -1e-12 * run.weight : 0;
        if (!Number.isNaN(F)) expect(F, `${s.name} at pose ${i}`).toBeGreaterThanOrEqual(least);
        // A single group may: a set on one bunk alone takes load off the groups of the other side.
        const of = s.what === "bearing" ? s.name : s.of;
        if (s.band) whole.set(of, (whole.get(of) ?? 0) + run.shares[i * m + j]);
      });
      for (const [of, share] of whole) expect(share, of).toBeGreaterThanOrEqual(-1e-9 * run.weight);
    }
  });

  test("straight lines between stored poses err by no more than 0.5 % of the weight in the middle", () => {
    let checked = 0;
    for (let i = 1; i < run.count; i++) {
      if (run.step[i] !== run.step[i - 1] || run.progress[i] - run.progress[i - 1] < 1e-3) continue;
      if (run.steps[run.step[i]].count < 4) continue;
      const middle = poseAt(ctx, run.steps[run.step[i]], (run.progress[i] + run.progress[i - 1]) / 2);
      run.supports.forEach((s, j) => {
        if (!s.band) return;
        const straight = (run.shares[i * m + j] + run.shares[(i - 1) * m + j]) / 2;
        within(middle.shares[j], straight, 0.005 * run.weight);
      });
      checked++;
    }
    expect(checked).toBeGreaterThan(100);
  });
});

test("tare: a free train's groups carry half aft, a quarter each at left and right of the fore end", () => {
  const { ctx, step: of } = ranScenario("demo");
  const pose = poseAt(ctx, of("front-down"), 1);
  const tare = tareOf(pose);
  const names = pose.solution.layout.groups.map((g) => g.name);
  const W = 32800 * 9.80665;
  // On the path's slopes 1e-2 of it shifts by the CG's height over the gauge.
  within(tare[names.indexOf("front aft")], W / 2, 0.01 * W);
  within(tare[names.indexOf("front left")], W / 4, 0.01 * W);
  near(
    frontGroups.reduce((sum, name) => sum + tare[names.indexOf(name)], 0),
    W / Math.hypot(1, pose.situation.plane.grade, pose.situation.plane.crossfall),
    1e-9,
  );
  for (const name of frontGroups) within(force(ctx, pose, name), tare[names.indexOf(name)], 1e-6 * W);
});

describe("three supports: front and rear train and the far hook", () => {
  test("a rope locked while the boom comes in lifts the front by dF = dz / (1/k + f)", () => {
    // The far crane at 86 m, its picks at 53 m: 0.5 m nearer, its boom foot 1.1 m before its axis.
    const r = oneGirderAfter("far-takes", {
      do: "roll together",
      cranes: ["far-crane"],
      hold: "rope",
      bite_m: 0.5,
      distance_m: 0.5,
    });
    const run = r.step("roll together");
    expect(run.happenings).toEqual([]);
    const start = craneOf(run.start, "far-crane");
    const reach = (tipX: number) => Math.hypot(86 - tipX, 6 - start.tip[1]) - 1.1;
    const rise =
      Math.sqrt(40 ** 2 - reach(start.tip[0] + 0.5) ** 2) - Math.sqrt(40 ** 2 - reach(start.tip[0]) ** 2);
    expect(rise).toBeGreaterThan(0.3);
    const end = r.end("roll together");
    within(craneOf(end.situation, "far-crane").tautAt - start.tautAt, rise, 1e-9);
    // So much would lift the front off its train; a twentieth of the travel stays below that.
    const k = lineStiffness(r.plan, "far-crane");
    const perMetre = 1 / (1 / k + pickFlexibility(r.plan, 16, 8));
    const small = oneGirderAfter("far-takes", {
      do: "roll together",
      cranes: ["far-crane"],
      hold: "rope",
      bite_m: 0.01,
      distance_m: 0.01,
    });
    const dz =
      Math.sqrt(40 ** 2 - reach(start.tip[0] + 0.01) ** 2) - Math.sqrt(40 ** 2 - reach(start.tip[0]) ** 2);
    const pose = small.end("roll together");
    // 1e-3 of dF: beam formulas at whole metres, second order.
    near(force(small.ctx, pose, "far crane") - 40e3, dz * perMetre, 1e-3);
    const lever = 24 / 16;
    const front = (p: Pose) => shares(small.ctx, p, frontGroups);
    near(
      front(pose) - front(poseAt(small.ctx, small.step("roll together"), 0)),
      -lever * dz * perMetre,
      2e-3,
    );
  });

  test("held at its elevation nothing changes on a level path", () => {
    const r = oneGirderAfter("far-takes", {
      do: "roll together",
      cranes: ["far-crane"],
      hold: "elevation",
      bite_m: 0.5,
      distance_m: 0.5,
    });
    // 0.1 % of 40 kN: what the line's lean takes with it.
    near(force(r.ctx, r.end("roll together"), "far crane"), 40e3, 1e-3);
  });

  /** A girder of 62 m on groups at 6 m and 40 m with a hook at 61 m. */
  function long(E_GPa: number): Ran {
    return ran(
      scenario("one-girder", (plan) => {
        const [set] = plan.sets;
        set.length_m = 62;
        set.E_GPa = E_GPa;
        Object.assign(set.girders[0].pieces[0], {
          to_m: 62,
          topFlange_mm: [500, 40],
          bottomFlange_mm: [550, 45],
          web_mm: [2200, 16],
        });
        set.start.rearEnd_m = -20;
        set.ledger = [];
        set.soleStations_m = undefined;
        set.onTransporters[0].deckAt_m = 6;
        set.onTransporters[1].deckAt_m = 40;
        set.picks[0].at_m = 61;
        set.picks[0].height_m = 0.9;
        plan.site.path.points[0].chainage_m = -60;
        plan.cranes[0].position.chainage_m = 60;
        for (const t of plan.transporters) Object.assign(t, { mass_t: 30, cylinderStiffness_kN_per_mm: 10 });
        set.steps = [
          step({ do: "hook up", crane: "far-crane" }),
          step({
            do: "take load",
            crane: "far-crane",
            until: { load_kN: 60 },
            loadCap_kN: 100,
            heightCap_mm: 1500,
          }),
        ];
      }),
    );
  }

  test.each([50, 400])(
    "each tonne on a hook at 61 m takes 1.62 t off the front at 40 m, adds 0.62 t to the rear at 6 m (E = %d GPa)",
    (E_GPa) => {
      const r = long(E_GPa);
      const take = r.step("take load");
      expect(take.happenings).toEqual([]);
      const at = (p: number) => poseAt(r.ctx, take, p);
      const change = (names: readonly string[]) => shares(r.ctx, at(1), names) - shares(r.ctx, at(0), names);
      const hook = force(r.ctx, at(1), "far crane");
      within(hook, 60e3, 1);
      // 2e-3: the pick lies 0.2 m from the CG's height, and the girder's slope there is under 1 %.
      near(change(frontGroups) / hook, -(61 - 6) / 34, 2e-3);
      near(change(rearGroups) / hook, (61 - 40) / 34, 5e-3);
      within(change(frontGroups) / hook, -1.62, 0.005);
      within(change(rearGroups) / hook, 0.62, 0.005);
    },
  );
});

test("the run can be watched and ended before it is done", () => {
  const { ctx, run } = ranScenario("one-girder");
  const seen: number[] = [];
  const poses: Pose[] = [];
  const short = runSet(ctx, [], {
    onStep: (i, of) => {
      expect(of).toBe(run.steps.length);
      seen.push(i);
      return i < 2;
    },
    onPose: (p) => poses.push(p),
  });
  expect(seen).toEqual([0, 1, 2]);
  expect(short.steps.length).toBe(2);
  expect(poses.length).toBe(short.count);
  expect([...short.forces]).toEqual([...run.forces.slice(0, short.forces.length)]);
});

test("steps after one without equilibrium are not solved and have no numbers", () => {
  const { run } = ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(
        plan,
        "roll-out",
        step({ id: "fall", do: "drive out", transporter: "front", toward: "right", distance_m: 8 }),
        step({ do: "roll", distance_m: 1 }),
      );
    }),
  );
  expect(run.steps.map((s) => s.solved)).toEqual([true, false, false]);
  expect(run.steps[1].motion).not.toBe("");
  expect(run.steps[2]).toMatchObject({ count: 0, motion: run.steps[1].motion });
  expect([...run.step].every((k) => k <= 1)).toBe(true);
  expect([...run.motions].some(Number.isNaN)).toBe(false);
});
