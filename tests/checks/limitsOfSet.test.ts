// Tipping, weight per metre, lean, uplift, stroke, mechanism and open data, each against a hand value. Statics, common
// practice, no source, but where a line says otherwise.

import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { takeOff } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { force, near, ran, ranScenario, scenario, step, upTo, within } from "../sequence/plans.ts";
import { findingsOf, measureOf, readingOf } from "./readings.ts";

describe("tipping", () => {
  /** A girder of 40 m on trains at 3 m and further on, standing. */
  const standing = (front: number) =>
    scenario("one-girder", (plan) => {
      const [set] = plan.sets;
      set.length_m = 40;
      set.girders[0].pieces[0].to_m = 40;
      set.soleStations_m = undefined;
      set.ledger = [];
      set.start.rearEnd_m = 5;
      set.onTransporters[0].deckAt_m = 3;
      set.onTransporters[1].deckAt_m = front;
      set.picks[0].at_m = 38;
      set.steps = [
        step({
          do: "hold",
          releasedBy: "",
          evidence: "",
          carries: ["rear aft", "rear left", "rear right", "front aft", "front left", "front right"],
        }),
      ];
    });

  test("W8: supports 3 m and 24 m from the end of 40 m: stabilising over overturning moment 2.25", () => {
    const r = ran(standing(24));
    const reading = readingOf(r.ctx, r.end("hold"), "tipping", "set");
    // (24^2 / 2) / (16^2 / 2) about the front bunk: 1728 / 768 with 6 kN/m.
    near(reading.value, 24 ** 2 / 16 ** 2, 1e-9);
    within(reading.value, 2.25, 1e-9);
    expect(reading.where).toContain("front G 1");
    expect(reading.where).toContain("4.00 m inside");
    expect(reading.limit).toBe(1.5);
    near(reading.use, 1.5 / 2.25, 1e-9);
    // Rear reaction (40 x 20 - 16 ... ) by the lever rule: W (24 - 20) / 21.
    near(force(r.ctx, r.end("hold"), "bunk rear G 1"), (r.run.weight * 4) / 21, 1e-6);
  });

  test.each([
    // x^2 / (40 - x)^2 = 1.5 at x = 22.020 m.
    [22.03, 0],
    [22.01, 1],
  ])("front train at %d m: %d stop", (front, stops) => {
    const found = findingsOf(standing(front), "stop").filter((f) => f.check === "tipping");
    expect(found.map((f) => f.check)).toEqual(Array.from({ length: stops }, () => "tipping"));
    for (const f of found) within(f.value ?? 0, (front / (40 - front)) ** 2, 1e-6);
  });
});

describe("weight per metre of two-girder sets of 60 to 75 m", () => {
  // Bounds 1.5 and 3 t/m: common practice, no source.
  const weighing = (perMetre: number, change: (plan: Plan) => void = () => {}) =>
    scenario("demo", (plan) => {
      const [set] = plan.sets;
      set.ledger = [];
      // All of the difference by stiffeners and welds of lighter or heavier girders.
      const web = perMetre < 1.9 ? 8 : 18;
      const flange = perMetre > 2 ? 80 : 22;
      for (const girder of set.girders)
        for (const piece of girder.pieces)
          Object.assign(piece, {
            topFlange_mm: [600, flange],
            web_mm: [2400, web],
            bottomFlange_mm: [600, flange],
          });
      const plates = takeOff(set)
        .lines.filter((l) => l.item.endsWith("plates"))
        .reduce((sum, l) => sum + l.mass / 1000, 0);
      const rest = takeOff({ ...set, fabricationFactor_pct: 0 }).mass / 1000 - plates;
      set.fabricationFactor_pct = (100 * (perMetre * 60 - rest - plates)) / plates;
      set.steps = set.steps.slice(0, 1);
      change(plan);
    });
  const found = (plan: Plan) => findingsOf(plan).filter((f) => f.subject === "mass per metre");

  test.each([
    [1.49, 1.5],
    [3.01, 3],
  ])("%d t/m is a caution", (perMetre, limit) => {
    const [one, ...more] = found(weighing(perMetre));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ level: "caution", check: "weight check", set: "set-1", limit, unit: "t/m" });
    within(one.value ?? 0, perMetre, 1e-9);
    expect(one.chosenBy).toBe("default");
  });

  test.each([1.51, 1.93, 2.99])("%d t/m is not", (perMetre) => {
    expect(found(weighing(perMetre))).toEqual([]);
  });

  test("the demo weighs 1.97 t/m", () => {
    within(takeOff(scenario("demo").sets[0]).meanMassPerMetre, 1970, 10);
  });

  test("other limits may be chosen, and one girder alone is not judged", () => {
    const own = weighing(1.6, (plan) => {
      plan.limits.rules = [
        { id: "mass per metre low", value: 1.8, unit: "t", source: "own records", chosenBy: "engineer" },
      ];
    });
    expect(found(own)).toMatchObject([{ limit: 1.8, source: "own records", chosenBy: "engineer" }]);
    expect(found(scenario("one-girder"))).toEqual([]);
  });
});

describe("the ledger", () => {
  test.each([
    [10.2, 10.4, 1],
    [10.5, 10.9, 1],
    [10.2, 10.8, 0],
  ])("from %d t to %d t: %d caution", (low, high, count) => {
    // Take-off 0.0445 m2 x 30 m x 7850 kg/m3 = 10.480 t.
    const plan = scenario("one-girder", (p) => {
      p.sets[0].ledger[0].mass_t = { low, best: (low + high) / 2, high };
      p.sets[0].steps = upTo(p, "roll-out");
    });
    const found = findingsOf(plan, "caution").filter((f) => f.check === "weight check");
    expect(found.length).toBe(count);
    for (const f of found) {
      near(f.value ?? 0, 0.0445 * 30 * 7.85, 1e-9);
      expect([low, high]).toContain(f.limit);
    }
  });
});

describe("stroke", () => {
  test("is the cylinder furthest out of mid-stroke, against 95 % of its travel", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = [
          step({ do: "jack up", groups: ["front left", "front right"], until: { height_mm: 150 } }),
        ];
      }),
    );
    const reading = readingOf(r.ctx, r.end("jack up"), "stroke", "front");
    const furthest = Math.max(
      ...r
        .end("jack up")
        .solution.layout.cylinders.map((c, i) =>
          c.id.startsWith("front") ? Math.abs(r.end("jack up").solution.stroke[i]) : 0,
        ),
    );
    near(reading.value, furthest / 0.2, 1e-12);
    // Deck lifted 150 mm at its fore centroid and none aft, 2.8 m apart: the outer axle line 0.7 m further goes by 187.5 mm.
    within(reading.value, 0.1875 / 0.2, 0.01);
    expect(reading.limit).toBe(0.95);
    expect(reading.where).toMatch(/^front:4[LR] out 18\d mm/);
  });

  test("out of stroke is a stop", () => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = [
        step({
          do: "jack down",
          transporter: "front",
          until: { height_mm: 195 },
          carries: p.sets[0].steps[0].carries,
        }),
      ];
    });
    const found = findingsOf(plan, "stop");
    expect(found.map((f) => [f.check, f.subject])).toEqual([["stroke", "front"]]);
    within(found[0].value ?? 0, 97.5, 0.5);
    expect(found[0].unit).toBe("% of stroke");
    expect(found[0].words).toContain("in 19");
  });
});

describe("uplift", () => {
  const r = ranScenario("demo");

  test("one bunk free while its neighbour carries, until both are free", () => {
    const found = findingsOf(scenario("demo"), "caution").filter((f) => f.check === "uplift");
    expect(found.map((f) => [f.subject, f.from?.step, f.to?.step, f.value])).toEqual([
      ["front", 7, 7, 1],
      ["rear", 12, 12, 1],
    ]);
    expect(found[0].words).toContain("bunk front R 1");
    const free = (p: number) =>
      ["L", "R"].filter((g) => force(r.ctx, poseAt(r.ctx, r.run.steps[7], p), `bunk front ${g} 1`) === 0);
    const { from, to } = found[0];
    expect(free((from?.progress ?? 0) - 1e-6)).toEqual([]);
    expect(free(from?.progress ?? 0)).toEqual(["R"]);
    expect(free(to?.progress ?? 0)).toEqual(["R"]);
    expect(free((to?.progress ?? 0) + 1e-6)).toEqual(["L", "R"]);
  });

  test("a bearing free is a stop with no hook on, and no matter while a hook is on", () => {
    const without = (id: string) => {
      const pose = poseAt(r.ctx, r.step(id), 1);
      const forces = pose.forces.slice();
      forces[r.ctx.supports.findIndex((s) => s.name === "far R")] = 0;
      return readingOf(r.ctx, { ...pose, forces }, "uplift", "bearings");
    };
    expect(readingOf(r.ctx, poseAt(r.ctx, r.step("near-off"), 1), "uplift", "bearings")).toMatchObject({
      value: 0,
      limit: 0,
    });
    expect(without("near-off")).toMatchObject({ value: 1, where: "far R" });
    expect(without("landing").value).toBeNaN();
    expect(measureOf(r.ctx, "uplift", "bearings").level).toBe("stop");
  });
});

describe("a set that nothing holds", () => {
  // The rear train's oil linked across, and the far hook on one girder: with the front train gone the set can roll.
  const linked = () =>
    scenario("demo", (plan) => {
      plan.transporters[0].groups = [
        { name: "rear aft", wheels: ["1L", "1R", "2L", "2R", "3L", "3R"] },
        { name: "rear fore", wheels: ["4L", "4R", "5L", "5R", "6L", "6R"] },
      ];
      plan.sets[0].picks[0].girders = ["L"];
      for (const s of plan.sets[0].steps)
        s.carries = s.carries
          .filter((name) => name !== "rear right")
          .map((name) => (name === "rear left" ? "rear fore" : name));
      for (const s of plan.sets[0].steps)
        if (s.wayBack)
          for (const back of s.wayBack)
            back.carries = back.carries
              .filter((name) => name !== "rear right")
              .map((name) => (name === "rear left" ? "rear fore" : name));
    });

  test("has no numbers from where it is free: the result is not complete, and no step after it is solved", () => {
    const plan = linked();
    const result = solvePlan(plan);
    expect(result.complete).toBe(false);
    const [set] = result.sets;
    const failed = set.steps.findIndex((s) => !s.solved);
    expect(set.steps[failed].step.id).toBe("front-out");
    for (const s of set.steps.slice(failed + 1)) {
      expect(s).toMatchObject({ solved: false, count: 0 });
      expect(s.motion).toBe(set.steps[failed].motion);
    }
    const stops = result.findings.filter((f) => f.check === "no equilibrium");
    expect(stops.length).toBe(1);
    const [found] = stops;
    expect(found).toMatchObject({ level: "stop", value: null, limit: null, use: null });
    expect(found.from?.step).toBe(failed);
    expect(found.words).toContain("roll");
    expect(found.cure).toContain("support");
    // Stored poses stop short of it, and all of them have numbers.
    const own = [...set.progress].filter((_, i) => set.step[i] === failed);
    expect(own.length).toBeGreaterThan(0);
    expect(Math.max(...own)).toBeLessThan(found.from?.progress ?? 0);
    const m = set.supports.length;
    for (let i = 0; i < set.count; i++) {
      expect(set.step[i]).toBeLessThanOrEqual(failed);
      set.supports.forEach((s, j) => {
        if (s.band) expect(set.shares[i * m + j]).not.toBeNaN();
      });
    }
    // It is the front train that held it: to the last pose there is, one of its bunks carries.
    const r = ran(plan);
    const last = poseAt(r.ctx, r.run.steps[failed], Math.max(...own));
    const held = ["L", "R"].map((g) => force(r.ctx, last, `bunk front ${g} 1`));
    expect(Math.max(...held)).toBeGreaterThan(0);
  });

  test("a plan whose every step has equilibrium is complete", () => {
    expect(solvePlan(scenario("one-girder")).complete).toBe(true);
  });
});

describe("open data", () => {
  const found = (change: (plan: Plan) => void) =>
    findingsOf(
      scenario("one-girder", (plan) => {
        plan.sets[0].steps = upTo(plan, "roll-out");
        change(plan);
      }),
    );

  test("missing data are notes, each with its place", () => {
    const notes = found((plan) => {
      plan.header.checkedBy = "";
      plan.site.seats[1].asBuilt_m = null;
      plan.sets[0].ledger = [];
      plan.sets[0].fabricationFactor_pct = undefined;
      plan.spread.hookMismatch_mm = undefined;
    }).filter((f) => f.check === "missing data");
    // What the plan lacks anyhow is told before and after.
    const before = new Set(found(() => {}).flatMap((f) => (f.check === "missing data" ? [f.subject] : [])));
    const more = notes.filter((f) => !before.has(f.subject));
    expect(more.map((f) => f.subject).sort()).toEqual([
      "header.checkedBy",
      "sets[0].fabricationFactor_pct",
      "sets[0].ledger",
      "site.seats[1].asBuilt_m",
      "spread.hookMismatch_mm",
    ]);
    expect(notes.every((f) => f.level === "note" && f.value === null)).toBe(true);
  });

  test("data copied from another set and not confirmed are cautions", () => {
    const cautions = found((plan) => {
      plan.sets[0].unconfirmed = ["camber", "ledger"];
    }).filter((f) => f.check === "unconfirmed data");
    expect(cautions.map((f) => [f.level, f.subject])).toEqual([
      ["caution", "sets[0].unconfirmed[0]"],
      ["caution", "sets[0].unconfirmed[1]"],
    ]);
    expect(cautions[0].words).toContain("camber");
  });
});
