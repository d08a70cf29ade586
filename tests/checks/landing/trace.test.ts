// Traces of all checks of landing and fit, evaluated anew with an expression library.

import { expect, test } from "vitest";
import { checkList, dataMeasuresOf, traceOf } from "../../../src/checks/index.ts";
import { landingChecks } from "../../../src/checks/landing/list.ts";
import { poseAt } from "../../../src/sequence/index.ts";
import { expectTrue } from "../girders/formulas.ts";
import { findingsIn, landingPlan, landingRun, shortPlan, warpSeats } from "./hung.ts";

const ofLanding = ["seat level", "bearing plane", "packing", "sweep", "sweep and CG", "infill fit"];

test("every trace of a landed set gives the number of its check", () => {
  const plan = landingPlan((p) => {
    p.limits.rules.push({ id: "web plumb", value: 1, unit: "pct", source: "invented", chosenBy: "owner" });
    p.site.seats[0].shims_mm = 2;
    p.site.bearings[1].offset_mm = 4;
  });
  const { ctx, run } = landingRun(plan);
  const pose = poseAt(ctx, run.steps[0], 1);
  const atPose = (landingChecks.onDemand ?? []).flatMap((make) => make(ctx));
  const ofData = dataMeasuresOf(plan, ctx).filter((m) => ofLanding.includes(m.check));
  const all = [
    ...atPose.map((m) => ({ check: m.check, traced: m.trace?.(pose) ?? null, reading: m.read(pose) })),
    ...ofData.map((m) => ({ check: m.check, traced: m.trace(), reading: m.read() })),
  ];
  const seen = new Set<string>();
  for (const { check, traced, reading } of all) {
    if (!traced) continue;
    seen.add(check);
    expect(traced.value.value, check).toBe(traced.reading.value);
    expect(traced.limit?.value, check).toBe(traced.reading.limit);
    expect(reading.value, check).toBe(traced.reading.value);
    expectTrue(traced.value, plan);
    if (traced.limit !== null) expectTrue(traced.limit, plan);
  }
  expect([...seen].sort()).toEqual([
    "backwall gap",
    "bearing offset",
    "bearing plane",
    "bearing share",
    "bearing side force",
    "packing",
    "seat level",
    "sweep",
    "sweep and CG",
    "web plumb",
  ]);
  // They are in the list that a trace is asked from.
  expect(checkList.onDemand.length).toBeGreaterThanOrEqual((landingChecks.onDemand ?? []).length);
});

test.each([
  [
    "late contact",
    // A limit so high that every bearing but the first to touch is late.
    landingRun(
      shortPlan((plan) => {
        warpSeats(plan, { "near B": -0.001 });
        plan.limits.overrides.push({ limit: "late contact", value: 95, source: "test", chosenBy: "test" });
      }),
    ),
  ],
  [
    "bolted fraction",
    landingRun(
      landingPlan((plan) => {
        for (const s of plan.sets[0].splices) s.boltedFraction = 0.25;
      }),
    ),
  ],
  [
    "release condition",
    landingRun(
      landingPlan((plan) => {
        for (const step of plan.sets[0].steps)
          if (step.do === "hold") step.counted = [{ what: "bearing blocks", count: 2, of: 4 }];
      }),
    ),
  ],
])("the findings of %s are traced where they stand, and nothing is elsewhere", (check, landed) => {
  const { ctx, run } = landed;
  const judged = findingsIn(landed, checkList, check).filter((f) => f.value !== null && f.worst !== null);
  expect(judged.length).toBeGreaterThan(0);
  for (const f of judged) {
    const traced = traceOf(ctx.plan, run, f, ctx);
    if (!traced.found) throw new Error(traced.why);
    const { factor } = traced.measure;
    // A pose solved again agrees with the stored one as its iterations do, to 1e-9 or so.
    expect(Math.abs(traced.value.value * factor - (f.value as number))).toBeLessThan(1e-6);
    expect((traced.limit?.value ?? Number.NaN) * factor).toBeCloseTo(f.limit as number, 9);
    expectTrue(traced.trace, ctx.plan);
    const { check: name, subject, set } = f;
    const elsewhere = { check: name, subject, set, step: 0, progress: 0 };
    expect(traceOf(ctx.plan, run, elsewhere, ctx).found).toBe(false);
  }
});
