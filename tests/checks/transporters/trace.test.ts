// Traces of the checks of transporters: evaluated anew by mathjs they give the numbers that were judged.

import { expect, test } from "vitest";
import { type Measure, useOf as partOfLimit, traceOfUse } from "../../../src/checks/index.ts";
import { transporterChecks } from "../../../src/checks/transporters/list.ts";
import { type Pose, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { readScenario } from "../../coverage/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const plan = readScenario("demo", (p) => {
  // As far as the rear train is alone with the far crane, and with every kind of datum that a check reads.
  p.sets[0].steps = p.sets[0].steps.slice(0, 12);
  p.site.path.wheelFriction = 0.4;
  for (const t of p.transporters)
    Object.assign(t, { spineMoment_kNm: 2000, tyreSquash_mm: 12, driveLimit_kN: 70 });
  Object.assign(p.transporters[0].bunks[0], { kind: "fixed" });
  Object.assign(p.transporters[1].bunks[0], { rocks_pct: 3 });
  for (const [id, value, unit] of [
    ["set twist", 40, "mm"],
    ["change of slope along", 1, "pct"],
    ["change of slope across", 0.5, "pct"],
  ] as const)
    p.limits.rules.push({ id, value, unit, source: "invented for this test", chosenBy: "test" });
});
const ctx = prepareContext(plan, plan.sets[0].id);
const stored: Pose[] = [];
runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
const measures: Measure[] = [
  ...(transporterChecks.makers ?? []),
  ...(transporterChecks.onDemand ?? []),
].flatMap((make) => make(ctx));
const NEVER = ["tilting over", "released train"];

test.each(measures.map((m) => [m.check, m.subject, m] as const))("%s of %s", (_check, _subject, m) => {
  let seen = 0;
  for (let i = 0; i < stored.length; i += 9) {
    const reading = m.read(stored[i]);
    if (Number.isNaN(reading.value)) continue;
    const traced = m.trace?.(stored[i]);
    expect(traced, "a check writes a trace wherever it applies").toBeTruthy();
    if (!traced) continue;
    expect(traced.value.value).toBe(reading.value);
    expect(traced.limit?.value).toBe(reading.limit);
    const use = traceOfUse(m, traced);
    expect(use.value).toBe(partOfLimit(m, reading));
    expectTrue(use, plan);
    seen++;
  }
  // Every one of them applies somewhere on the way, but for what the plan has nothing of.
  expect(seen > 0).toBe(!NEVER.includes(m.check));
});
