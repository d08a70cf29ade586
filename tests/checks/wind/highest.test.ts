// The highest wind of a step: put in, it uses what governs by 100 %; a little above it is a stop, a little below is none.

import { describe, expect, test } from "vitest";
import { runWind, type StepWind, solvePlan, windOver, withWind } from "../../../src/checks/index.ts";
import { checkList } from "../../../src/checks/list.ts";
import { useOf as partOfLimit } from "../../../src/checks/measure.ts";
import { dragArea, pressureAt } from "../../../src/checks/wind/air.ts";
import { blowerOf } from "../../../src/checks/wind/blow.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { poseAt, prepareContext } from "../../../src/sequence/index.ts";
import { within } from "../../reference/close.ts";
import { scenario } from "../../sequence/plans.ts";

/** The demonstration day, its steps from one on that keep their ids, searched. */
function searched(steps: readonly string[], change: (plan: Plan) => void = () => {}) {
  const plan = scenario("demo", change);
  const [{ id }] = plan.sets;
  const ctx = prepareContext(plan, id);
  const result = solvePlan(plan, { contexts: new Map([[id, ctx]]) });
  const [set] = result.sets;
  const part = { steps: set.steps.filter((s) => steps.includes(s.step.id)), progress: set.progress };
  return { plan, ctx, set, result, found: runWind(ctx, part)?.steps ?? [], part };
}

const day = searched(["first-roll", "far-takes", "lift", "landing"]);
const [roll, takes, lift, landing] = day.found;

/** Worst use of some checks at the pose that governs, solved in a wind. */
function useAt(one: StepWind, of: "checks" | "plumb", V: number): number {
  const { ctx, set } = day;
  const at = one[of];
  if (at === null || at.toward === null) throw new Error("nothing governs");
  const pose = poseAt(ctx, set.steps[one.step], at.progress);
  const gust = blowerOf(ctx).at(pose, pressureAt(ctx.plan, V), at.toward);
  const uses = checkList.makers
    .flatMap((make) => make(ctx))
    .filter((m) => m.check === at.what && m.subject === at.subject)
    .map((m) => partOfLimit(m, m.read(gust)));
  return Math.max(...uses);
}

describe("put in again", () => {
  test.each([
    ["first-roll, a group", roll, "checks"],
    ["far-takes, a line", takes, "plumb"],
    ["lift, a line", lift, "plumb"],
    ["landing, a line", landing, "plumb"],
  ] as const)("%s: a use of 100 % (0.1 %)", (_, one, of) => {
    const V = one[of]?.reading ?? Number.NaN;
    within(useAt(one, of, V), 1, 1e-3);
    expect(useAt(one, of, V * 1.01)).toBeGreaterThan(1);
    expect(useAt(one, of, V * 0.99)).toBeLessThan(1);
  });

  test("and no other pose of its step, between stored ones too, has more (0.1 %): seed-free grid of 40", () => {
    const V = lift.plumb?.reading ?? Number.NaN;
    const lines = checkList.makers.flatMap((m) => m(day.ctx)).filter((m) => m.check === "line lean");
    const blower = blowerOf(day.ctx);
    for (let k = 0; k <= 40; k++) {
      const pose = poseAt(day.ctx, day.set.steps[lift.step], k / 40);
      for (const toward of ["+y", "-y"] as const) {
        const gust = blower.at(pose, pressureAt(day.plan, V), toward);
        for (const m of lines) {
          const use = partOfLimit(m, m.read(gust));
          if (!Number.isNaN(use)) expect(use).toBeLessThan(1.001);
        }
      }
    }
  });
});

test("a hanging set's lines lean 3 % where the wind is 3 % of its weight: by hand within 3 %", () => {
  // Two hooks take it like their loads; in the calm the lines of the lift lean by nothing that counts.
  const W = day.ctx.model.mass * day.ctx.gravity;
  const q = (0.03 * W) / dragArea(day.plan, day.ctx.set, "+y");
  within(lift.plumb?.reading ?? Number.NaN, Math.sqrt(q / 0.613), 0.03);
});

test("the lowest of checks, plumb, chart and table governs, and is named", () => {
  for (const one of day.found) {
    const all = [one.checks, one.plumb, one.chart, one.table].flatMap((x) => (x === null ? [] : [x.reading]));
    expect(one.governs.reading).toBe(Math.min(...all));
    expect(one.governs.source).not.toBe("");
  }
  expect(roll.governs.what).toBe("table");
  expect(lift.governs.what).toBe("chart wind");
  expect(roll.chart).toBeNull();
});

describe("findings", () => {
  test("a limit below the highest wind found is none, one above it is a stop", () => {
    const low = searched(["lift"]);
    expect(runWind(low.ctx, low.part)?.findings).toEqual([]);
    const high = searched(["lift"], (plan) => {
      const step = plan.sets[0].steps.find((s) => s.id === "lift");
      if (step) step.windLimit_m_per_s = (lift.governs.reading + 14) / 2;
    });
    const wind = runWind(high.ctx, high.part);
    expect(wind?.findings.map((f) => [f.level, f.check, f.subject])).toEqual([
      ["stop", "highest wind", "lift"],
    ]);
    within(wind?.findings[0].limit ?? 0, lift.governs.reading, 1e-9);
    if (wind === null) throw new Error("broken off");
    const joined = withWind(high.result, high.set.setId, wind);
    expect(joined.findings[0].level).toBe("stop");
    expect(joined.sets[0].wind).toBe(wind);
    // Joined twice, it is there once.
    const twice = withWind(joined, high.set.setId, wind);
    expect(twice.findings.filter((f) => f.check === "highest wind")).toHaveLength(1);
  });
});

test("it can be broken off, and says how far it is", () => {
  const told: number[] = [];
  const found = runWind(day.ctx, day.part, (done, of) => {
    told.push(done);
    expect(of).toBe(4);
    return done < 2;
  });
  expect(found).toBeNull();
  expect(told).toEqual([1, 2]);
  const search = windOver(day.ctx, day.part);
  search.next();
  expect(search.result().steps).toHaveLength(1);
  expect(search.result().of).toBe(4);
});
