// What counts as load on a hook, and which rule limits it. US Army Corps of Engineers, Form 16-3 (critical lift plan)
// adds blocks, lifting beam, slings and shackles, hoist rope and an auxiliary block to the load; Queensland, Mobile crane
// Code of Practice 2006 (PN11180), 14.3.2, at least 20 % above the calculated share for two cranes, so 83.3 % of the
// rating; 75 % in tandem: common practice, no single source.

import { describe, expect, test } from "vitest";
import { hookLoadOf, ratedLoad } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { type Pose, poseAt, type SetContext } from "../../src/sequence/index.ts";
import { force, near, type Ran, ran, ranScenario, scenario, upTo, within } from "../sequence/plans.ts";
import { readingOf } from "./readings.ts";

const g = 9.80665;
const at = (r: Ran, id: string, p = 1): Pose => poseAt(r.ctx, r.step(id), p);

/** The pose of a step in the demo, read under a plan with other numbers in its far crane. */
function reread(r: Ran, change: (plan: Plan) => void): SetContext {
  const plan = structuredClone(r.plan);
  change(plan);
  return { ...r.ctx, plan };
}

describe("the load on the hook", () => {
  const demo = ranScenario("demo");
  const pose = at(demo, "far-takes");
  const [far] = demo.plan.cranes;
  const hoist = pose.state.hoists?.[0];
  const rope = 4.6 * ((hoist?.ropeLength ?? 0) - 5.5 - 1.1) * 8;

  test("is the set's part, rigging, block and the rope below the tip in all its parts", () => {
    const load = hookLoadOf(demo.ctx, pose, far);
    if (!load) throw new Error("no load");
    expect(load.net).toBe(force(demo.ctx, pose, "far crane"));
    near(load.rigging, 2.9e3 * g, 1e-12);
    near(load.block, 2.6e3 * g, 1e-12);
    near(load.rope, rope * g, 1e-12);
    expect(load.auxiliary).toBe(0);
    near(load.gross, load.net + (2.9e3 + 2.6e3 + rope) * g, 1e-12);
    // 50 to 80 m of eight parts: more than a tonne, so that it matters.
    expect(rope).toBeGreaterThan(1000);
  });

  test("slings that meet in one point hang below the pin by its height, and no more", () => {
    const r = ranScenario("one-girder");
    const p = at(r, "far-takes");
    const load = hookLoadOf(r.ctx, p, r.plan.cranes[0]);
    near(load?.rope ?? 0, 4.6 * ((p.state.hoists?.[0].ropeLength ?? 0) - 2.4) * 4 * g, 1e-12);
  });

  test.each<[string, (plan: Plan) => void, number]>([
    ["rigging", (p) => Object.assign(p.rigging[0], { mass_t: 0 }), -2.9e3],
    ["block", (p) => Object.assign(p.cranes[0].deductions, { block_t: 0 }), -2.6e3],
    ["rope", (p) => Object.assign(p.cranes[0].deductions, { rope_kg_per_m: 0 }), -rope],
    ["auxiliary block", (p) => Object.assign(p.cranes[0].deductions, { auxiliary_t: 1.2 }), 1.2e3],
  ])("leaving %s out changes the percentage of the rating by just its weight", (_, change, kg) => {
    const whole = readingOf(demo.ctx, pose, "hook load", "far crane");
    const other = readingOf(reread(demo, change), pose, "hook load", "far crane");
    expect(other.use).not.toBe(whole.use);
    within(other.use - whole.use, (kg * g) / whole.limit, 1e-9);
    expect(Math.abs(other.use - whole.use)).toBeGreaterThan(0.001);
  });

  test("is nothing while the hook is not on", () => {
    expect(hookLoadOf(demo.ctx, at(demo, "first-roll"), far)).toBeNull();
    expect(readingOf(demo.ctx, at(demo, "first-roll"), "hook load", "far crane").value).toBeNaN();
    expect(readingOf(demo.ctx, at(demo, "near-off"), "hook load", "far crane").value).toBeNaN();
  });

  test("hangs on the hook also while it carries nothing of the set", () => {
    const slack = readingOf(demo.ctx, at(demo, "far-hook-up"), "hook load", "far crane");
    expect(slack.value).toBeGreaterThan((2.9e3 + 2.6e3) * g);
    expect(slack.value).toBeLessThan((2.9e3 + 2.6e3 + 4e3) * g);
  });

  test("against the rigging's own rating the set's part counts alone", () => {
    const r = readingOf(demo.ctx, pose, "rigging load", "far crane");
    expect(r).toMatchObject({ value: force(demo.ctx, pose, "far crane"), limit: 820e3 });
  });
});

describe("rules for two cranes carrying together", () => {
  const steps = (use: string[], change: (plan: Plan) => void = () => {}) =>
    ran(
      scenario("one-girder", (plan) => {
        plan.limits.use = use;
        change(plan);
        plan.sets[0].steps = upTo(plan, "rear-down");
      }),
    );
  const rating = (r: Ran, pose: Pose) => {
    const reading = readingOf(r.ctx, pose, "chart left", "far crane");
    return ratedLoad(r.plan.cranes[0].chart, reading.value, 40, g) ?? Number.NaN;
  };
  const read = (r: Ran, id: string, p = 1) => {
    const pose = at(r, id, p);
    return { ...readingOf(r.ctx, pose, "hook load", "far crane"), rated: rating(r, pose) };
  };

  test("while one hook carries the chart alone limits", () => {
    const r = steps(["tandem-75", "share-plus-20"]);
    for (const id of ["far-takes", "roll-with-far", "near-hook-up"]) {
      const reading = read(r, id);
      near(reading.limit, reading.rated, 1e-12);
      expect(reading.source).toContain("maker's load chart");
      expect(reading.chosenBy).toBe("default");
    }
  });

  test("75 % governs as the lowest when two carry, and is named", () => {
    const reading = read(steps(["share-plus-20", "tandem-75"]), "rear-down");
    near(reading.limit, 0.75 * reading.rated, 1e-12);
    expect(reading.chosenBy).toBe("rule tandem-75");
    expect(reading.source).toContain("75 % of rated capacity");
  });

  test("alone, 20 % above the share is 83.3 % of the rating", () => {
    const reading = read(steps(["share-plus-20"]), "rear-down");
    near(reading.limit, reading.rated / 1.2, 1e-12);
    within((100 * reading.limit) / reading.rated, 83.3, 0.05);
    expect(reading.chosenBy).toBe("rule share-plus-20");
    expect(reading.source).toContain("14.3.2");
  });

  test("with neither, the chart stays", () => {
    const reading = read(steps([]), "rear-down");
    near(reading.limit, reading.rated, 1e-12);
  });

  test("a chart use set lower than either governs over both", () => {
    const own = { id: "chart use", value: 70, unit: "pct", source: "owner's letter", chosenBy: "engineer" };
    const r = steps(["tandem-75", "share-plus-20"], (plan) => {
      plan.limits.rules = [own as Plan["limits"]["rules"][number]];
    });
    const both = read(r, "rear-down");
    near(both.limit, 0.7 * both.rated, 1e-12);
    expect(both).toMatchObject({ chosenBy: "engineer" });
    expect(both.source).toContain("owner's letter");
    near(read(r, "far-takes").limit, 0.7 * read(r, "far-takes").rated, 1e-12);
  });

  test("they begin and end with the second hook's load, not with its being hooked up", () => {
    const r = steps(["tandem-75"]);
    near(read(r, "near-takes", 0).limit, read(r, "near-takes", 0).rated, 1e-12);
    near(read(r, "near-takes", 0.01).limit, 0.75 * read(r, "near-takes", 0.01).rated, 1e-12);
  });
});
