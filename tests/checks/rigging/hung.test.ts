// The hung set against its seats, and slings proposed for it: put into the plan they bring the soles into their plane.
// Statics of the linkage, small angles: a spreader whose slings differ by D leans the set by e D / (b (e + d)); from memory.

import { describe, expect, test } from "vitest";
import { proposeSlings } from "../../../src/checks/index.ts";
import { gapsOf, hungAttitude } from "../../../src/checks/rigging/attitude.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { type Pose, poseAt } from "../../../src/sequence/index.ts";
import { type Ran, ran, ranScenario, scenario, within } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const demo = ranScenario("demo");
const landing = (r: Ran): Pose => poseAt(r.ctx, r.step("landing"), 0);
const gap = (pose: Pose, bearing: string): number => {
  const one = gapsOf(pose)?.find((g) => g.bearing === bearing);
  if (one === undefined) throw new Error(`no gap at ${bearing}`);
  return one.gap;
};

/** A hook of the demonstration is `far-crane` or `near-crane`, in the order of its picks. */
const withLonger = (
  longer: readonly Record<string, number>[],
  change: (plan: Plan) => void = () => {},
): Ran =>
  ran(
    scenario("demo", (plan) => {
      plan.sets[0].picks.forEach((pick, i) => {
        pick.slingLonger_mm = Object.fromEntries(
          Object.entries(longer[i]).map(([girder, by]) => [girder, by * 1000]),
        );
      });
      change(plan);
    }),
  );

describe("gaps at the bearings of a hung set", () => {
  test("are what is left between soles and seats in the world", () => {
    const pose = landing(demo);
    const gaps = gapsOf(pose) ?? [];
    expect(gaps.map((g) => g.bearing).sort()).toEqual(["far L", "far R", "near L", "near R"]);
    // Lowered by 10 mm at both hooks every gap closes by 10 mm.
    const lower = poseAt(demo.ctx, demo.step("lower"), 1);
    for (const g of gaps) within(gap(lower, g.bearing), g.gap, 1e-9);
    const { hooks } = demo.plan.sets[0].steps.find((s) => s.id === "lower") as {
      hooks: { height_mm: number }[];
    };
    const start = poseAt(demo.ctx, demo.step("lower"), 0);
    for (const g of gaps) within(gap(start, g.bearing) - g.gap, hooks[0].height_mm / 1000, 1e-4);
  });

  test("are none while a train carries, before the set is over its seats, and once it stands on one", () => {
    expect(gapsOf(poseAt(demo.ctx, demo.step("near-takes"), 1))).toBe(null);
    expect(gapsOf(poseAt(demo.ctx, demo.step("lift"), 1))).toBe(null);
    expect(gapsOf(poseAt(demo.ctx, demo.step("landing"), 1))).toBe(null);
  });

  test("their differences are the readings, each with a true trace", () => {
    const pose = landing(demo);
    const [grade, near, far] = hungAttitude(demo.ctx);
    const mean = (line: string) => (gap(pose, `${line} L`) + gap(pose, `${line} R`)) / 2;
    within(grade.read(pose).value, mean("near") - mean("far"), 1e-12);
    within(near.read(pose).value, gap(pose, "near R") - gap(pose, "near L"), 1e-12);
    within(far.read(pose).value, gap(pose, "far R") - gap(pose, "far L"), 1e-12);
    for (const m of [grade, near, far]) {
      const whole = m.trace?.(pose);
      if (!whole?.limit) throw new Error("no trace");
      expectTrue(whole.value, demo.plan);
      expectTrue(whole.limit, demo.plan);
      expect(whole.value.value).toBe(m.read(pose).value);
    }
  });
});

describe("slings proposed", () => {
  const proposal = proposeSlings(demo.ctx, demo.run);
  if (typeof proposal === "string") throw new Error(proposal);

  test("put into the plan, with the hook at its height, bring all soles within 1 mm of one another", () => {
    const r = withLonger(
      proposal.picks.map((p) => p.longer),
      (plan) => {
        const lower = plan.sets[0].steps.find((s) => s.id === "lower");
        if (lower?.do !== "hoist down") throw new Error("no lowering");
        const hook = lower.hooks.find((h) => h.crane === "far-crane");
        if (hook) hook.height_mm -= proposal.raise * 1000;
      },
    );
    const gaps = (gapsOf(landing(r)) ?? []).map((g) => g.gap);
    expect(gaps.length).toBe(4);
    // Whole millimetres of sling on each side, of which a set leans by less than half.
    expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThan(1e-3);
    const before = proposal.before.map((g) => g.gap);
    expect(Math.max(...before) - Math.min(...before)).toBeGreaterThan(0.1);
    proposal.after.forEach((g) => {
      within(gap(landing(r), g.bearing), g.gap, 1e-4);
    });
  });

  test("are near what the linkage's formula gives for a stiff set: both hooks alike", () => {
    const pose = landing(demo);
    const lean = ["near", "far"].map((line) => (gap(pose, `${line} R`) - gap(pose, `${line} L`)) / 3.2);
    const wanted = (lean[0] + lean[1]) / 2;
    const cg = demo.ctx.model.cg[2];
    const e = demo.plan.rigging[0].hookPinHeight_m;
    const d = demo.plan.sets[0].picks[0].height_m - cg;
    // Left must come up by `wanted`, so its slings are shorter by D in all.
    const D = (wanted * 3.2 * (e + d)) / e;
    const found = proposal.picks.map((p) => p.longer.R - p.longer.L);
    within((found[0] + found[1]) / 2, D, 0.1 * D);
    // A set soft in twist asks for more at the end that is further out.
    expect(found[0]).toBeGreaterThan(found[1]);
    expect(lean[1]).toBeGreaterThan(lean[0]);
  });

  test("are on top of what the plan has", () => {
    const r = withLonger([
      { L: 0.02, R: -0.02 },
      { L: 0.02, R: -0.02 },
    ]);
    const again = proposeSlings(r.ctx, r.run);
    if (typeof again === "string") throw new Error(again);
    again.picks.forEach((p, i) => {
      expect(p.now).toEqual({ L: 0.02, R: -0.02 });
      within(p.longer.L, proposal.picks[i].longer.L, 1.5e-3);
      within(p.longer.R, proposal.picks[i].longer.R, 1.5e-3);
    });
  });

  test("of a single girder: the hook's height alone", () => {
    const r = ranScenario("one-girder");
    const one = proposeSlings(r.ctx, r.run);
    if (typeof one === "string") throw new Error(one);
    expect(one.picks.map((p) => p.longer)).toEqual([{}, {}]);
    // Gaps of 90.2 and 82.5 mm, picks at 28 and 2 m of 30, bearings beyond: 7.7 mm times 26 over their distance.
    within(one.raise, 0.007, 1.1e-3);
    within(one.after[0].gap, one.after[1].gap, 1e-3);
  });

  test("are none, with the reason, for a set that never hangs over its seats", () => {
    const r = ran(
      scenario("demo", (plan) => {
        plan.sets[0].steps = plan.sets[0].steps.slice(0, 3);
      }),
    );
    expect(proposeSlings(r.ctx, r.run)).toMatch(/no step begins with the set over its seats/);
  });
});
