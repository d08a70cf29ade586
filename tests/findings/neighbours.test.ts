// What neighbouring poses tell: the swing when the last support on the ground frees, and loads that change too fast.
// One girder: W 102.8 kN, hooks at 28 and 2 m, trains at 20 and 4 m; springs in series by hand. Limits: common practice.

import { describe, expect, test } from "vitest";
import { type Finding, solvePlan, traceOf } from "../../src/checks/index.ts";
import { byId, type Plan, takeOff } from "../../src/plan/index.ts";
import { expectTrue } from "../checks/girders/formulas.ts";
import { near, ran, scenario, step, upTo, within } from "../sequence/plans.ts";
import { lineStiffness, pickFlexibility } from "../sequence/stiffness.ts";

const found = (plan: Plan, check: string): Finding[] =>
  solvePlan(plan).findings.filter((f) => f.check === check);
const weight = (plan: Plan) => takeOff(plan.sets[0]).mass * 9.80665;

describe("the swing when the last support frees", () => {
  /** Both hooks carry, the far crane walks with its hook, then the rear train goes down. */
  const walked = (dx_m: number, dy_m = 0) =>
    scenario("one-girder", (plan) => {
      const crane = byId(plan.cranes, "far-crane");
      crane.travelWithLoad = true;
      crane.travelSource = "invented leave of the maker";
      const down = plan.sets[0].steps.find((s) => s.id === "rear-down");
      if (!down) throw new Error("no rear-down");
      const walk = step({ do: "walk", crane: "far-crane", dx_m, dy_m, hook: "goes along" });
      plan.sets[0].steps = upTo(plan, "near-takes", walk, structuredClone(down));
    });

  test("a line out of plumb lets the set swing by that much, at the moment the last bunk frees", () => {
    const [swing, ...more] = found(walked(-0.24, 0.07), "swing");
    expect(more).toEqual([]);
    expect(swing).toMatchObject({
      level: "stop",
      subject: "far crane",
      limit: 0.1,
      unit: "m",
      chosenBy: "default",
    });
    // 5 mm: the picks' own shift by the set's level, height 1.6 m.
    within(swing.value as number, Math.hypot(0.24, 0.07), 0.005);
    const r = ran(walked(-0.24, 0.07));
    const i = Array.from(r.run.step).findIndex(
      (s, k) => s === swing.from?.step && r.run.progress[k] === swing.from?.progress,
    );
    expect(r.run.events[i]).toMatch(/bunk rear G 1 comes free/);
  });

  test("within the limit, or while something on the ground still holds, there is none", () => {
    expect(found(walked(-0.08), "swing")).toEqual([]);
    const stays = walked(-0.24);
    stays.sets[0].steps.pop();
    expect(found(stays, "swing")).toEqual([]);
  });

  test("the plan's own limit governs", () => {
    const plan = walked(-0.08);
    plan.limits.overrides.push({ limit: "swing", value: 50, source: "test", chosenBy: "test" });
    expect(found(plan, "swing")).toMatchObject([{ limit: 0.05, chosenBy: "test" }]);
  });
});

describe("load per 10 mm", () => {
  /** The far hook takes load on a line made stiffer; the step's minutes as given. */
  const taken = (stiffer: number, minutes: number | null = 30) =>
    scenario("one-girder", (plan) => {
      const s = byId(plan.cranes, "far-crane").stiffness;
      for (const band of [s.rope_kN_per_mm, s.boom_kN_per_mm, s.ground_kN_per_mm])
        for (const k of ["low", "best", "high"] as const) band[k] *= stiffer;
      plan.sets[0].steps = upTo(plan, "far-takes");
      const last = plan.sets[0].steps[plan.sets[0].steps.length - 1];
      if (minutes === null) delete last.minutes;
      else last.minutes = minutes;
    });
  const perMetre = (plan: Plan) => 1 / (1 / lineStiffness(plan, "far-crane") + pickFlexibility(plan, 16, 8));

  test("springs in series: the demo's softness stays below a tenth of the weight, ten times the stiffness does not", () => {
    const soft = taken(1);
    expect(perMetre(soft) * 0.01).toBeLessThan(0.1 * weight(soft));
    expect(found(soft, "change per 10 mm")).toEqual([]);
    const stiff = taken(10);
    expect(perMetre(stiff) * 0.01).toBeGreaterThan(0.1 * weight(stiff));
    const [f, ...more] = found(stiff, "change per 10 mm");
    expect(more).toEqual([]);
    expect(f).toMatchObject({ level: "caution", subject: "far crane", unit: "kN" });
    // 1 %: straight between stored poses, windows of at least 10 mm.
    near(f.value as number, (perMetre(stiff) * 0.01) / 1000, 0.01);
    near(f.limit as number, (0.1 * weight(stiff)) / 1000, 1e-9);
  });

  test("per minute at the pace of the step's minutes: travel over time, times the stiffness", () => {
    const plan = taken(1, 1);
    const [f] = found(plan, "change per minute");
    expect(f).toMatchObject({ level: "caution", subject: "far crane", unit: "kN/min" });
    // 50 mm of slack and 40 kN over the stiffness, in one minute.
    const pace = 0.05 + 40e3 / perMetre(plan);
    near(f.value as number, (perMetre(plan) * pace) / 1000, 0.02);
    expect(f.cure).toMatch(/go no faster than \d+ mm\/min here, or give the step more minutes/);
    expect(found(taken(1, 30), "change per minute")).toEqual([]);
  });

  test("without minutes, the machine's full speed makes a note with the speed that can be followed", () => {
    const plan = taken(1, null);
    const [f] = found(plan, "change per minute");
    expect(f.level).toBe("note");
    const speed = byId(plan.cranes, "far-crane").hoistSpeed_m_per_min;
    near(f.value as number, (perMetre(plan) * speed) / 1000, 0.01);
    const slow = Math.round(((0.25 * weight(plan)) / perMetre(plan)) * 1000);
    const told = Number(/no faster than (\d+) mm/.exec(f.cure)?.[1]);
    within(told, slow, 0.01 * slow + 1);
  });

  test("jacking hands load over too: here all that the front train still has, within 10 mm of oil", () => {
    const plan = scenario("one-girder", (p) => {
      const jack = step({ do: "jack down", transporter: "front", until: { height_mm: 20 } });
      p.sets[0].steps = upTo(p, "far-takes", jack);
      p.limits.overrides.push({ limit: "change per 10 mm", value: 5, source: "test", chosenBy: "test" });
    });
    const last = plan.sets[0].steps.length - 1;
    const [f] = found(plan, "change per 10 mm").filter((x) => x.from?.step === last);
    expect(f.subject).toBe("far crane");
    expect(f.words).toContain("within 10 mm jacked");
    // Front free: the hook has W (15 - 4) / 24 by the lever rule. Lowering by z hands over (24/16) z times the stiffness.
    const whole = (weight(plan) * 11) / 24 - 40e3;
    const byOil = perMetre(plan) * (24 / 16) * 0.01;
    expect(byOil).toBeGreaterThan(whole);
    near(f.value as number, whole / 1000, 0.01);
  });
});

describe("load per metre rolled", () => {
  test("a rope locked while the boom goes out lifts the set off a train; a hook held level hands nothing over", () => {
    const rolled = (hold: "rope" | "elevation") =>
      scenario("one-girder", (plan) => {
        const roll = step({
          do: "roll together",
          distance_m: 0.5,
          cranes: ["far-crane"],
          hold,
          bite_m: 0.25,
        });
        plan.sets[0].steps = upTo(plan, "far-takes", roll);
        plan.limits.overrides.push({ limit: "change per metre", value: 2, source: "test", chosenBy: "test" });
      });
    const plan = rolled("rope");
    const [f] = found(plan, "change per metre");
    expect(f).toMatchObject({ level: "caution", subject: "far crane", unit: "kN" });
    expect(f.words).toContain("within a metre rolled");
    // The tip rises by more than the hook needs to free the front train: from 40 kN to W 11/24.
    near(f.value as number, ((weight(plan) * 11) / 24 - 40e3) / 1000, 0.02);
    const traced = traceOf(plan, solvePlan(plan), f);
    if (!traced.found) throw new Error(traced.why);
    // The same stored shares and situations, so the same number but for the change of unit.
    within(traced.value.value / 1000, f.value as number, 1e-9);
    expectTrue(traced.trace, plan);
    expect(found(rolled("elevation"), "change per metre")).toEqual([]);
  });
});
