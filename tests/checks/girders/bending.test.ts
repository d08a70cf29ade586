// Bending of the girders at real poses: the shape factor that the statics give against the published one, the stages in
// which the shape may not help, and the lowest of several rule sets.

import { describe, expect, test } from "vitest";
import { tracesIn } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { poseAt } from "../../../src/sequence/index.ts";
import { near, oneGirderAfter, ran, ranScenario, scenario } from "../../sequence/plans.ts";
import { measureOf, readingOf } from "../readings.ts";

/** The demo's set with uniform girders, weightless frames and splices, and frames at some stations. */
const uniform = (frames: number[]) => (plan: Plan) => {
  const [set] = plan.sets;
  set.attachments = [];
  set.splices = [];
  set.ledger = [];
  const [frame] = set.crossFrames;
  set.crossFrames = frames.map((at_m) => ({ ...frame, at_m, mass_t: 0 }));
  for (const girder of set.girders)
    girder.pieces = [{ ...girder.pieces[1], from_m: 0, to_m: 60, mark: `${girder.line}1` }];
  plan.limits.use = ["aisc360-lrfd"];
};

describe("C_b of the landed set, a simple span of 58.8 m under its own weight (AISC 360-22 F1-1)", () => {
  // 0.6 m of girder beyond each bearing change the factor by less than 0.5 %.
  test.each([
    ["braced at its ends", [0.6, 59.4], 1.136],
    ["braced in the middle too", [0.6, 30, 59.4], 1.299],
    ["braced at thirds: the middle one", [0.6, 20.2, 39.8, 59.4], 1.014],
  ])("%s: %j", (_, frames, expected) => {
    const r = ran(scenario("demo", uniform(frames)));
    const traced = measureOf(r.ctx, "girder bending", "girder L").trace?.(r.end("near-off"));
    const C_b = traced?.limit && tracesIn(traced.limit).find((t) => t.symbol === "C_b");
    expect(C_b?.clause).toBe("F1-1");
    near(C_b?.value ?? 0, expected, 5e-3);
  });
});

describe("where the shape may not help", () => {
  const demo = ranScenario("demo");

  test("an overhang with a free tip: 1 beyond the last support", () => {
    const { where } = readingOf(demo.ctx, demo.end("lash-down"), "girder bending", "girder L");
    expect(where).toBe(
      "38 to 43.5 m, bottom flange, C_b 1.00: beyond the last support: an overhang with a free tip",
    );
  });

  test("a girder alone on bunks or bearings: 1 over its whole length; hung from two hooks: by its shape", () => {
    const alone = oneGirderAfter("near-off");
    const landed = readingOf(alone.ctx, alone.end("near-off"), "girder bending", "girder G");
    expect(landed.where).toMatch(/^0 to 30 m, top flange, C_b 1\.00: a girder alone on supports/);
    const hung = readingOf(
      alone.ctx,
      poseAt(alone.ctx, alone.step("over"), 0.5),
      "girder bending",
      "girder G",
    );
    expect(hung.where).toMatch(/^0 to 30 m, top flange, C_b 1\.\d\d; hung, loads taken at mid-height$/);
    expect(hung.limit).toBeGreaterThan(landed.limit);
  });
});

test("of several rule sets the lowest governs and is named; a load factor divides what is allowed", () => {
  const limit = (...use: string[]) => {
    const r = ran(
      scenario("demo", (plan) => {
        plan.limits.use = use;
        plan.sets[0].steps = plan.sets[0].steps.slice(0, 1);
      }),
    );
    return readingOf(r.ctx, r.end("lash-down"), "girder bending", "girder L");
  };
  const ids = ["aisc360-asd", "aisc360-lrfd", "aashto-construction"];
  const each = ids.map((id) => limit(id));
  const all = limit(...ids);
  // The same length governs under each of them, so that the moments are the same.
  for (const one of each) expect(one.value).toBe(all.value);
  const lowest = Math.min(...each.map((one) => one.limit));
  expect(all.limit).toBe(lowest);
  expect(all.chosenBy).toBe(`rule ${ids[each.findIndex((one) => one.limit === lowest)]}`);
  // 1 / 1.67 against 0.90 / 1.4 of the same nominal moment.
  near(each[1].limit / each[0].limit, (0.9 / 1.4) * 1.67, 1e-12);
});
