// Thermal movement of steel girders. AASHTO LRFD 6.4.1: 6.5e-6 per degree Fahrenheit, 11.7e-6 per degree Celsius (from
// memory). 60 m and 30 C: 21.06 mm, within 0.1 %: the coefficient has three digits.

import { expect, test } from "vitest";
import { checkList, soleOffset } from "../../src/checks/index.ts";
import { type Pose, prepareContext } from "../../src/sequence/index.ts";
import { findingsIn, landingPlan, landingRun } from "../checks/landing/hung.ts";
import { within } from "./close.ts";

/** The demonstration with soles at both ends of its 60 m, drawn for 10 C. */
const warm = (set_C: number, hold_C: number) =>
  landingPlan((plan) => {
    const [set] = plan.sets;
    set.soleStations_m = { near: 0, far: 60 };
    plan.site.farBearing_m = plan.site.nearBearing_m + 60;
    plan.site.farBackwall_m = plan.site.farBearing_m + 0.5;
    plan.site.temperature_C = 10;
    set.temperature_C = set_C;
    for (const b of plan.site.bearings) b.play_mm = 21;
    const hold = set.steps.find((s) => s.do === "hold");
    if (hold?.do === "hold") hold.temperature_C = hold_C;
  });

test.each([
  [40, 0],
  [10, 30],
])("60 m warmed by 30 C move the far soles by 21.06 mm: set at %d C, hold adds %d C", (set_C, hold_C) => {
  const run = landingRun(warm(set_C, hold_C));
  const last = run.stored.at(-1) as Pose;
  for (const b of run.ctx.plan.site.bearings)
    within(soleOffset(null, run.ctx, last, b) as number, b.line === "far" ? 0.02106 : 0, 1e-3);
  // With 21 mm of play either way both far soles are out of it; the near ones stand in their middle.
  const out = findingsIn(run, checkList, "bearing offset");
  expect(out.map((f) => f.subject).sort()).toEqual(["far L", "far R"]);
  for (const f of out) within(f.value as number, 21.06, 1e-3);
});

test("a bearing set off for it has its play again", () => {
  const plan = warm(40, 0);
  for (const b of plan.site.bearings) if (b.line === "far") b.offset_mm = 20;
  const run = landingRun(plan);
  expect(findingsIn(run, checkList, "bearing offset")).toEqual([]);
  const last = run.stored.at(-1) as Pose;
  const far = plan.site.bearings.find((b) => b.line === "far");
  if (far)
    within(soleOffset(null, prepareContext(plan, plan.sets[0].id), last, far) as number, 0.00106, 1e-3);
});
