// Reading a load chart: the next larger listed radius, the worse neighbouring boom length, between rows only where the
// plan quotes the page that allows it, nothing beyond the rows. Common practice, no source; charts invented.

import { describe, expect, test } from "vitest";
import { ratedLoad } from "../../src/checks/index.ts";
import type { Chart } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { craneOf, near, ran, scenario, upTo, within } from "../sequence/plans.ts";
import { findingsOf, readingOf } from "./readings.ts";

const rows = [
  [20, 36, 50],
  [24, 36, 40],
  [30, 36, 30],
  [20, 42, 44],
  [24, 42, 42],
  [28, 42, 31],
].map(([radius_m, boom_m, rated_t]) => ({ radius_m, boom_m, rated_t }));
const chart = (change: Partial<Chart> = {}): Chart => ({
  invented: true,
  interpolation: false,
  rows,
  ...change,
});
const g = 10;

describe("rated load", () => {
  test.each([
    ["at a listed radius: its row", 24, 36, 40],
    ["between radii: the next larger", 20.1, 36, 40],
    ["a hair within rounding beyond a radius: still its row", 24 + 1e-10, 36, 40],
    ["of the longer boom", 21, 42, 42],
    ["between boom lengths: the worse of both neighbours", 22, 39, 40],
    ["and it may be the longer that is worse", 20, 39, 44],
  ])("%s", (_, radius, boom, rated_t) => {
    near(ratedLoad(chart(), radius, boom, g) ?? 0, rated_t * 1000 * g, 1e-12);
  });

  test.each([
    ["a radius beyond the last row", 30.01, 36],
    ["a radius before the first row", 19.9, 36],
    ["a radius that only one neighbouring boom length has", 29, 39],
    ["a shorter boom than listed", 24, 35],
    ["a longer boom than listed", 24, 43],
  ])("nothing for %s, with interpolation or without", (_, radius, boom) => {
    expect(ratedLoad(chart(), radius, boom, g)).toBeNull();
    expect(ratedLoad(chart({ interpolation: true, page: "p. 4" }), radius, boom, g)).toBeNull();
  });

  test("between rows only with the page that allows it", () => {
    const page = "p. 4";
    near(ratedLoad(chart({ interpolation: true, page }), 27, 36, g) ?? 0, 35e3 * g, 1e-12);
    near(ratedLoad(chart({ interpolation: true }), 27, 36, g) ?? 0, 30e3 * g, 1e-12);
    near(ratedLoad(chart({ interpolation: false, page }), 27, 36, g) ?? 0, 30e3 * g, 1e-12);
    // Interpolated along the radius, still the worse of both boom lengths: 45 t and 43 t.
    near(ratedLoad(chart({ interpolation: true, page }), 22, 39, g) ?? 0, 43e3 * g, 1e-12);
  });
});

/** The one-girder plan up to its far crane's work, with another chart for that crane. */
const charted = (change: (far: Chart) => void) =>
  scenario("one-girder", (plan) => {
    change(plan.cranes[0].chart);
    plan.sets[0].steps = upTo(plan, "roll-with-far");
  });
/** Level error of 0.2 % times the height of the boom tip: a boom of 40 m from 1.1 m ahead and 1.8 m up, m. */
const leaning = (radius: number): number => 0.002 * (1.8 + Math.sqrt(40 ** 2 - (radius - 1.1) ** 2));
const left = (plan: ReturnType<typeof charted>) =>
  findingsOf(plan, "stop").filter((f) => f.check === "chart left");

describe("leaving the chart is a stop", () => {
  test("not while the radius lies within the rows", () => {
    expect(left(charted(() => {}))).toEqual([]);
  });

  test("beyond the last row", () => {
    // Picks at 53 m, the crane at 86 m and 6 m aside: radius 33.5 m; it grows under load and by the crane's level error.
    const plan = charted((far) => {
      far.rows = far.rows.filter((r) => r.radius_m <= 30);
    });
    const [found, ...more] = left(plan);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      subject: "far crane",
      limit: 30,
      unit: "m",
      from: { step: 1, progress: 1 },
    });
    within(found.value as number, Math.hypot(33, 6) + 0.02 + leaning(Math.hypot(33, 6)), 0.02);
    expect(found.source).toContain("invented chart, page 1 (invented)");
  });

  test("nearer than the first row", () => {
    const plan = charted((far) => {
      far.rows = far.rows.filter((r) => r.radius_m >= 20);
    });
    const [found, ...more] = left(plan);
    expect(more).toEqual([]);
    // At the end the picks hang at 69 m: radius 18 m.
    expect(found.words).toContain("first row 20 m");
    expect(found.to).toEqual({ step: 5, progress: 1 });
    const radius = Math.hypot(17, 6) + leaning(Math.hypot(17, 6));
    within((found.value as number) - (found.limit as number), 20 - radius, 0.04);
  });

  test("with a boom that the chart does not list, in place of the silence of a chart that cannot be read", () => {
    for (const boom_m of [30, 50]) {
      const plan = charted((far) => {
        for (const r of far.rows) r.boom_m = boom_m;
      });
      const [found, ...more] = left(plan);
      expect(more).toEqual([]);
      expect(found).toMatchObject({ subject: "far crane", from: { step: 1, progress: 1 } });
      expect(found.words).toContain("no row for a boom of 40 m");
    }
  });

  test("where only one of the neighbouring boom lengths reaches", () => {
    const plan = charted((far) => {
      far.rows = [38, 42].flatMap((boom_m) =>
        far.rows.map((r) => ({ ...r, boom_m })).filter((r) => boom_m === 38 || r.radius_m <= 30),
      );
    });
    const [found] = left(plan);
    expect(found).toMatchObject({ subject: "far crane", limit: 30 });
  });
});

test("the radius counts from the centre of rotation to the boom tip, grows with the hook load and by the level error", () => {
  const { ctx, step, plan } = ran(charted(() => {}));
  const pose = poseAt(ctx, step("far-takes"), 1);
  const { tip } = craneOf(pose.situation, "far-crane");
  const reading = readingOf(ctx, pose, "chart left", "far crane");
  const hook = readingOf(ctx, pose, "hook load", "far crane");
  const growth = (plan.cranes[0].radiusGrowth_mm_per_kN.best / 1000) * (hook.value / 1000);
  expect(growth).toBeGreaterThan(0.02);
  const out = Math.hypot(tip[0] - 86, tip[1] - 6);
  within(reading.value, out + growth + leaning(out), 1e-9);
});
