// Traces of all checks of landing and fit, evaluated anew with an expression library.

import { expect, test } from "vitest";
import { checkList } from "../../../src/checks/index.ts";
import { landingChecks } from "../../../src/checks/landing/list.ts";
import { poseAt } from "../../../src/sequence/index.ts";
import { expectTrue } from "../girders/formulas.ts";
import { landingPlan, landingRun } from "./hung.ts";

test("every trace of a landed set gives the number of its check", () => {
  const plan = landingPlan((p) => {
    p.limits.rules.push({ id: "web plumb", value: 1, unit: "pct", source: "invented", chosenBy: "owner" });
    p.site.seats[0].shims_mm = 2;
    p.site.bearings[1].offset_mm = 4;
  });
  const { ctx, run } = landingRun(plan);
  const pose = poseAt(ctx, run.steps[0], 1);
  const measures = (landingChecks.onDemand ?? []).flatMap((make) => make(ctx));
  const seen = new Set<string>();
  for (const m of measures) {
    const traced = m.trace?.(pose);
    if (!traced) continue;
    seen.add(m.check);
    expect(traced.value.value, m.check).toBe(traced.reading.value);
    expect(traced.limit.value, m.check).toBe(traced.reading.limit);
    expect(m.read(pose).value, m.check).toBe(traced.reading.value);
    expectTrue(traced.value, plan);
    expectTrue(traced.limit, plan);
  }
  expect([...seen].sort()).toEqual([
    "backwall gap",
    "bearing offset",
    "bearing share",
    "bearing side force",
    "seat level",
    "sweep",
    "sweep and CG",
    "web plumb",
  ]);
  // They are in the list that a trace is asked from.
  expect(checkList.onDemand.length).toBeGreaterThanOrEqual((landingChecks.onDemand ?? []).length);
});
