// The hoist line: pull, wraps on the drum, room below the tip. 29 CFR 1926.1417(t): two full wraps stay on the drum (read);
// the rest geometry and statics.

import { describe, expect, test } from "vitest";
import { byId, type Crane } from "../../../src/plan/index.ts";
import { worldOf } from "../../../src/sequence/index.ts";
import { near, type Ran, ranScenario, within } from "../../sequence/plans.ts";
import { readingOf } from "../readings.ts";

/** A reading of the far crane at the end of a step of the one-girder plan, with other numbers in that crane. */
function read(check: string, id: string, change: (crane: Crane) => void = () => {}) {
  const r: Ran = ranScenario("one-girder");
  const plan = structuredClone(r.plan);
  change(byId(plan.cranes, "far-crane"));
  return readingOf({ ...r.ctx, plan }, r.end(id), check, "far crane");
}

test("pull of the line: hook load over 4 parts at 93 %", () => {
  near(read("line pull", "far-takes").value, read("hook load", "far-takes").value / (4 * 0.93), 1e-12);
  expect(read("line pull", "far-takes").limit).toBe(36e3);
  const six = read("line pull", "far-takes", (crane) => {
    crane.partsOfLine = 6;
    // Rope of more parts weighs more: none here, so that only the parts differ.
    crane.deductions.rope_kg_per_m = 0;
  });
  const four = read("line pull", "far-takes", (crane) => {
    crane.deductions.rope_kg_per_m = 0;
  });
  near(six.value / four.value, 4 / 6, 1e-12);
});

describe("from hook to boom tip", () => {
  test("as far as in the world, but for the stretch of the line and the droop of the girder", () => {
    const r = ranScenario("one-girder");
    for (const id of ["far-hook-up", "far-takes", "over", "lower"]) {
      const { hook, tip } = worldOf(r.ctx, r.end(id)).cranes["far-crane"];
      if (hook === null) throw new Error("no hook");
      // 50 mm of slack at the hooking up; the line of some 1 kN/mm stretches by 50 mm under 50 kN.
      within(read("hook under tip", id).value, tip[2] - hook[2], 0.1);
    }
  });

  test("a metre hoisted down is a metre more", () => {
    within(read("hook under tip", "lower").value - read("hook under tip", "over").value, 1, 1e-9);
  });

  test("is held against the stated least distance, and not judged without one", () => {
    expect(read("hook under tip", "far-takes").limit).toBe(2.4);
    expect(() =>
      read("hook under tip", "far-takes", (crane) => {
        delete crane.leastHookToTip_m;
      }),
    ).toThrow("no check 'hook under tip'");
  });
});

describe("wraps on the drum", () => {
  const drum = { ratedPull_kN: 36, efficiency: 0.93, drumDiameter_mm: 500, source: "invented" };

  test("are what is left of the rope, over the drum's round", () => {
    const d = read("hook under tip", "lower").value;
    const r = read("wraps left", "lower", (crane) => {
      crane.hoistLine = { ...drum, rope_m: 200, lead_m: 30 };
    });
    near(r.value, (200 - 30 - 4 * d) / (Math.PI * 0.5), 1e-12);
    expect(r.limit).toBe(2);
    expect(r.use).toBe(2 / r.value);
  });

  test("without a stated lead the boom's length stands in", () => {
    const d = read("hook under tip", "lower").value;
    const r = read("wraps left", "lower", (crane) => {
      crane.hoistLine = { ...drum, rope_m: 200 };
    });
    near(r.value, (200 - 40 - 4 * d) / (Math.PI * 0.5), 1e-12);
  });

  test("none of a rope that is too short, and no use that could pass for one", () => {
    const r = read("wraps left", "lower", (crane) => {
      crane.hoistLine = { ...drum, rope_m: 60 };
    });
    expect(r.value).toBeLessThan(0);
    expect(r.use).toBe(Number.POSITIVE_INFINITY);
  });
});
