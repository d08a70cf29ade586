// Findings: one per unbroken stretch beyond a limit, joined across steps, with its worst pose; what was meant to carry
// or to be free; caps; motions out of order. No source needed.

import { describe, expect, test } from "vitest";
import { marginOf, useOf as partOfLimit, solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { near, ran, rearGroups, scenario, step, upTo, within } from "../sequence/plans.ts";
import { findingsOf, measureOf } from "./readings.ts";

/** The one-girder plan to its first hand-over, with a limit on the front train's axle lines. */
const limited = (kN: number, id = "front-down") =>
  scenario("one-girder", (plan) => {
    plan.transporters[1].allowedLine_kN = kN;
    plan.transporters[1].allowedSide_kN = 1000;
    plan.sets[0].steps = upTo(plan, id);
  });
const lineLoads = (plan: Plan) => findingsOf(plan).filter((f) => f.check === "line load");

describe("a stretch beyond a limit", () => {
  // Front train: (70.66 + 68.65) / 4 = 34.83 kN a line until the crane takes load, then by the lever rule down to
  // (10.66 + 68.65) / 4 = 19.83 kN, and 17.16 kN when it is free.
  test("is one finding, joined across the steps that it lasts, from its start to where it comes back", () => {
    const plan = limited(30);
    const [found, ...more] = lineLoads(plan);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      level: "stop",
      subject: "front",
      limit: 30,
      unit: "kN",
      from: { step: 0, progress: 0 },
      source: "maker's limit of transporter front: invented for this demonstration",
      chosenBy: "plan",
    });
    // Steps roll-out, far-hook-up, then far-takes until (34.83 - 30) x 4 / 1.5 = 12.9 of its 40 kN are on the hook.
    const r = ran(plan);
    const W = r.run.weight / 1000;
    const tare = 7 * 9.80665;
    const back = ((W * 11) / 16 + tare - 4 * 30) / 1.5 / 40;
    expect(found.to?.step).toBe(2);
    expect(found.to?.progress).toBeLessThanOrEqual(back + 1e-4);
    // The next stored pose is the event itself, where it is within the limit again.
    const event = r.run.progress.findIndex((p, i) => r.run.step[i] === 2 && p > (found.to?.progress ?? 1));
    expect(event).toBeGreaterThan(0);
    near(found.value ?? 0, ((W * 11) / 16 + tare) / 4, 1e-6);
    near(found.use ?? 0, (found.value ?? 0) / 30, 1e-12);
    expect(found.words).toMatch(/^line load of front: 34\.8 is above 30\.0 kN \(axle line [1-4]\)$/);
  });

  test("keeps the place of its worst pose", () => {
    // On the rear train the worst is where the front train comes free: 55.67 + 68.65 kN on four lines.
    const plan = scenario("one-girder", (p) => {
      p.transporters[0].allowedLine_kN = 28;
      p.transporters[0].allowedSide_kN = 1000;
      p.sets[0].steps = upTo(p, "front-down");
    });
    const [found, ...more] = lineLoads(plan);
    expect(more).toEqual([]);
    expect(found.from?.step).toBe(2);
    expect(found.worst?.step).toBe(3);
    near(found.value ?? 0, ((102.771 * 13) / 24 + 68.647) / 4, 1e-4);
    const r = ran(plan);
    const worst = poseAt(r.ctx, r.run.steps[3], found.worst?.progress ?? 0);
    const m = measureOf(r.ctx, "line load", "rear");
    near(m.read(worst).value / 1000, found.value ?? 0, 1e-12);
  });

  test("that is interrupted is two findings", () => {
    // Rolled together and held at its load the far crane leaves the rear at rest; then the hook is let down again.
    const plan = scenario("one-girder", (p) => {
      p.transporters[1].allowedLine_kN = 30;
      p.transporters[1].allowedSide_kN = 1000;
      p.sets[0].steps = upTo(
        p,
        "far-takes",
        step({ do: "hoist down", hooks: [{ crane: "far-crane", height_mm: 250 }] }),
      );
    });
    const found = lineLoads(plan);
    expect(found.length).toBe(2);
    expect(found.map((f) => f.from?.step)).toEqual([0, 3]);
    expect(found[1].to).toEqual({ step: 3, progress: 1 });
    expect(new Set(found.map((f) => f.id)).size).toBe(2);
  });

  test("does not exist at the limit itself", () => {
    const r = ran(limited(75, "roll-out"));
    const m = measureOf(r.ctx, "line load", "front");
    const { value } = m.read(poseAt(r.ctx, r.run.steps[0], 0));
    expect(marginOf(m, { value, limit: value })).toBeGreaterThan(0);
    expect(marginOf(m, { value, limit: value * (1 - 2e-9) })).toBeLessThan(0);
    const least = { ...m, sense: "least" as const };
    expect(marginOf(least, { value, limit: value })).toBeGreaterThan(0);
    expect(marginOf(least, { value, limit: value * (1 + 2e-9) })).toBeLessThan(0);
    near(partOfLimit(m, { value: 3, limit: 4 }), 0.75, 1e-12);
    near(partOfLimit(least, { value: 4, limit: 3 }), 0.75, 1e-12);
  });

  test("crosses its limit in an event of the run", () => {
    const { sets } = solvePlan(limited(30));
    const told = sets[0].events
      .map((w, i) => [w, sets[0].step[i]] as const)
      .filter(([w]) => w.includes("line load"));
    expect(told.map(([w]) => w)).toEqual(["line load of front comes back within its limit"]);
    expect(told[0][1]).toBe(2);
  });
});

describe("meant to carry, meant to be free", () => {
  const carrying = (id: string, change: (carries: string[]) => string[]) =>
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(plan, id);
      const last = plan.sets[0].steps[plan.sets[0].steps.length - 1];
      last.carries = change(last.carries);
    });
  const meant = (plan: Plan) =>
    findingsOf(plan, "stop").map((f) => [f.check, f.subject, f.from?.step, f.from?.progress]);

  test("nothing is found where all is as the steps say", () => {
    expect(meant(carrying("front-down", (c) => c))).toEqual([]);
  });

  test("a support that is meant to carry and does not", () => {
    expect(meant(carrying("front-down", (c) => [...c, "front aft", "near crane"]))).toEqual([
      ["meant to carry", "near crane", 3, 1],
      ["meant to carry", "front aft", 3, 1],
    ]);
  });

  test("a support that carries and is not meant to, with what it carries", () => {
    const plan = carrying("far-takes", (c) => c.filter((name) => name !== "far crane"));
    expect(meant(plan)).toEqual([["meant to be free", "far crane", 2, 1]]);
    const [found] = findingsOf(plan, "stop");
    near(found.value ?? 0, 40, 1e-5);
    expect(found.words).toContain("carries 40.0 kN");
  });
});

describe("what a motion finds is a stop", () => {
  test("cap reached, with value and limit in kN under the hook's name", () => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = upTo(p, "far-takes");
      Object.assign(p.sets[0].steps[2], { loadCap_kN: 25 });
    });
    const found = findingsOf(plan, "stop").filter((f) => f.check === "cap reached");
    expect(found.length).toBe(1);
    expect(found[0]).toMatchObject({
      subject: "far crane",
      value: 25,
      limit: 25,
      unit: "kN",
      from: { step: 2, progress: 1 },
    });
    expect(found[0].cure).toContain("cap");
  });

  test("out of order, not clear, end not reached", () => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = [
        step({
          do: "take load",
          crane: "far-crane",
          until: { load_kN: 10 },
          loadCap_kN: 20,
          heightCap_mm: 300,
        }),
        step({ do: "roll", distance_m: 20 }),
        step({ do: "jack up", transporter: "rear", until: { load_kN: 5000 } }),
      ];
      for (const s of p.sets[0].steps) s.carries = [...rearGroups, "front aft", "front left", "front right"];
    });
    const found = findingsOf(plan, "stop")
      .filter((f) => f.source === "the plan's own steps and the statics of this pose")
      .map((f) => [f.check, f.subject]);
    expect(found).toEqual([
      ["out of order", "far crane"],
      ["not clear", "front"],
      ["end not reached", "rear aft"],
    ]);
  });
});

test("stops come first, then by when they begin", () => {
  const { findings, worst } = solvePlan(limited(30));
  const rank = { stop: 0, caution: 1, note: 2 };
  expect(worst).toBe("stop");
  for (let i = 1; i < findings.length; i++) {
    const [a, b] = [findings[i - 1], findings[i]];
    expect(rank[a.level]).toBeLessThanOrEqual(rank[b.level]);
    if (a.level === b.level && a.from && b.from) expect(a.from.step).toBeLessThanOrEqual(b.from.step);
  }
  expect(new Set(findings.map((f) => f.id)).size).toBe(findings.length);
});

test("every stop and caution says what, by what, from where and what would cure it", () => {
  for (const f of findingsOf(scenario("planted-faults")).filter((x) => x.level !== "note")) {
    for (const text of [f.check, f.subject, f.words, f.source, f.cure, f.chosenBy])
      expect(text.length, f.id).toBeGreaterThan(0);
    if (f.value !== null && f.use !== null) within(f.use, f.use, 0);
  }
});

test("the same plan gives the same result, and its strips have one value a pose", () => {
  const [a, b] = [solvePlan(scenario("one-girder")), solvePlan(scenario("one-girder"))];
  expect(b).toEqual(a);
  for (const s of a.sets[0].strips) expect(s.use.length).toBe(a.sets[0].count);
});

test("only the sets asked for are solved, and work can be ended", () => {
  const plan = scenario("one-girder");
  expect(solvePlan(plan, { sets: [] }).sets).toEqual([]);
  const seen: string[] = [];
  const cut = solvePlan(plan, {
    onStep: (set, i) => {
      seen.push(`${set} ${i}`);
      return i < 1;
    },
  });
  expect(seen).toEqual(["girder 0", "girder 1"]);
  expect(cut.sets[0].steps.length).toBe(1);
});
