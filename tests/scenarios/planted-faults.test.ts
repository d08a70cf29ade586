// The plan with planted faults shows just the stops that it is made to show, and each of them follows from hand statics
// with the plan's own numbers: lever rule, springs in series, plane geometry. Common practice, no source.

import { describe, expect, test } from "vitest";
import { type Finding, solvePlan } from "../../src/checks/index.ts";
import { byId, type Expectation, takeOff } from "../../src/plan/index.ts";
import { boomOf } from "../../src/sequence/index.ts";
import { ranScenario, scenario, within } from "../sequence/plans.ts";

const plan = scenario("planted-faults");
const [set] = plan.sets;
const expected: Expectation[] = plan.expected ?? [];
const result = solvePlan(plan);
const stops = result.findings.filter((f) => f.level === "stop");
const stepOf = (f: Finding) => (f.from ? set.steps[f.from.step].id : "");
const key = (check: string, subject: string, step: string) => `${check} | ${subject} | ${step}`;

test("the stops are those that the plan expects, no more and no fewer", () => {
  expect(expected.length).toBeGreaterThan(2);
  expect(stops.map((f) => key(f.check, f.subject, stepOf(f))).sort()).toEqual(
    expected.map((e) => key(e.check, e.subject, e.step)).sort(),
  );
});

test("each kind of expected finding is explained below", () => {
  const explained = ["group load", "side load", "meant to carry", "chart left"];
  expect(expected.filter((e) => !explained.includes(e.check))).toEqual([]);
  for (const e of expected) expect(e.why.length).toBeGreaterThan(20);
});

const g = 9.80665;
const mass = takeOff(set);
const W = mass.mass * g;
const CG = mass.cg[0];
const station = (kind: "far" | "near") =>
  set.picks.find((p) => byId(plan.cranes, p.crane).kind === kind)?.at_m ?? Number.NaN;
const deckAt = (id: string) => set.onTransporters.find((t) => t.transporter === id)?.deckAt_m ?? Number.NaN;
const finding = (check: string, subject: string): Finding => {
  const found = stops.find((f) => f.check === check && f.subject === subject);
  if (!found) throw new Error(`no ${check} of ${subject}`);
  return found;
};

describe("the rear train overloaded at the far hand-over", () => {
  const rear = byId(plan.transporters, "rear");
  // Once the front train is free: rear bunk and far hook, by the lever rule, and the train's own weight.
  const share = (W * (station("far") - CG)) / (station("far") - deckAt("rear"));
  const gross = share + rear.mass_t * 1000 * g;
  const wheels = 2 * rear.lines;
  const allowed = (rear.allowedSide_kN ?? Number.NaN) * 1000;
  const own = expected.filter((e) => e.check === "group load" || e.check === "side load");

  test("by the lever rule every one of its axle-line sides has more than it is allowed", () => {
    expect(own.length).toBeGreaterThan(0);
    expect(gross / wheels).toBeGreaterThan(allowed);
  });

  // The bunks lie on the deck centre line along, so aft and fore have half each; across, the CG lies off the middle and
  // the path falls: 10 % either way on left and right.
  test.each(own.filter((e) => e.check === "group load"))("group load of $subject", ({ subject }) => {
    const group = rear.groups.find((x) => x.name === subject);
    if (!group) throw new Error(subject);
    const hand = (gross * group.wheels.length) / wheels;
    const limit = allowed * group.wheels.length;
    expect(hand).toBeGreaterThan(limit);
    const found = finding("group load", subject);
    within((found.limit ?? 0) * 1000, limit, 1e-6 * limit);
    within((found.value ?? 0) * 1000, hand, 0.1 * hand);
  });

  test.each(own.filter((e) => e.check === "side load"))("side load of $subject", () => {
    const found = finding("side load", "rear");
    within((found.limit ?? 0) * 1000, allowed, 1e-6 * allowed);
    within((found.value ?? 0) * 1000, gross / wheels, 0.1 * (gross / wheels));
  });

  test("not before the crane takes load: then the front train carries its part by the lever rule", () => {
    const before = (W * (deckAt("front") - CG)) / (deckAt("front") - deckAt("rear"));
    expect((before + rear.mass_t * 1000 * g) / wheels).toBeLessThan(allowed);
    for (const f of stops.filter((x) => own.some((e) => e.check === x.check && e.subject === x.subject)))
      expect(set.steps[f.from?.step ?? 0].do).toBe("take load");
  });

  test("every kN on the far hook adds (far - front) / (front - rear) to the rear: the overload begins there", () => {
    // Where the sum over the rear groups passes what they are allowed together.
    const before = (W * (deckAt("front") - CG)) / (deckAt("front") - deckAt("rear"));
    const each = (station("far") - deckAt("front")) / (deckAt("front") - deckAt("rear"));
    const hook = (allowed * wheels - rear.mass_t * 1000 * g - before) / each;
    const step = set.steps.find((s) => s.id === own[0].step);
    if (step?.do !== "take load" || !("load_kN" in step.until)) throw new Error("not taking load");
    const at = hook / (step.until.load_kN * 1000);
    // First the left, last the right group: around the progress of their sum.
    const from = own
      .filter((e) => e.check === "group load")
      .map((e) => finding(e.check, e.subject).from?.progress ?? 0);
    expect(Math.min(...from)).toBeLessThan(at);
    expect(Math.max(...from)).toBeGreaterThan(at);
    within(from.reduce((a, b) => a + b, 0) / from.length, at, 0.05);
  });
});

describe("bunks free where they were meant to carry", () => {
  const own = expected.filter((e) => e.check === "meant to carry");
  const crane = plan.cranes.find((c) => c.kind === "near");
  const pick = set.picks.find((p) => p.crane === crane?.id);
  if (!crane || !pick) throw new Error("no near crane");

  test("the near hook is raised further than its line stretches under all that it can get", () => {
    expect(own.length).toBeGreaterThan(0);
    const step = set.steps.find((s) => s.id === own[0].step);
    if (step?.do !== "take load" || !("height_mm" in step.until)) throw new Error("not to a height");
    const all = (W * (station("far") - CG)) / (station("far") - station("near"));
    const s = crane.stiffness;
    const slings = byId(plan.rigging, pick.rigging).slingStiffness_kN_per_mm;
    const perN =
      (1 / s.rope_kN_per_mm.best + 1 / s.boom_kN_per_mm.best + 1 / s.ground_kN_per_mm.best + 1 / slings) /
      1e6;
    const stretch = all * perN;
    // Its picks also come up with what the rear train springs back and the set bends: some tenths of that.
    expect(step.until.height_mm / 1000).toBeGreaterThan(stretch);
    expect(step.until.height_mm / 1000).toBeLessThan(1.5 * stretch);
    expect(all).toBeLessThan(step.loadCap_kN * 1000);
    expect(step.until.height_mm).toBeLessThan(step.heightCap_mm);
  });

  test.each(own)("$subject", ({ subject, step }) => {
    const rear = byId(plan.transporters, "rear");
    expect(rear.groups.map((x) => x.name)).toContain(subject);
    expect(set.steps.find((s) => s.id === step)?.carries).toContain(subject);
    within(finding("meant to carry", subject).value ?? Number.NaN, 0, 1e-3);
  });

  test("all groups of the train are free together, since all its bunks are", () => {
    expect(own.map((e) => e.subject).sort()).toEqual(
      byId(plan.transporters, "rear")
        .groups.map((x) => x.name)
        .sort(),
    );
  });
});

describe("a crane taken out of its chart", () => {
  const own = expected.filter((e) => e.check === "chart left");

  test.each(own)("$subject", ({ subject, step }) => {
    const crane = plan.cranes.find((c) => `${c.kind} crane` === subject);
    const pick = set.picks.find((p) => p.crane === crane?.id);
    if (!crane || !pick || !set.soleStations_m) throw new Error(subject);
    // Over its seats the rear end stands at the near bearing less the sole's station, the axis where it began and shifted.
    const rearEnd = plan.site.nearBearing_m - set.soleStations_m.near;
    const over = set.steps.find((s) => s.id === step);
    if (over?.do !== "bring over") throw new Error("not brought over");
    const across = (set.start.y_m ?? 0) + over.dy_m;
    const radius = Math.hypot(rearEnd + pick.at_m - crane.position.chainage_m, across - crane.position.y_m);
    const last = Math.max(...crane.chart.rows.map((row) => row.radius_m));
    expect(radius).toBeGreaterThan(last);
    const found = finding("chart left", subject);
    expect(found.limit).toBe(last);
    // Growth under load, and the picks' lean along the path: less than 0.3 m.
    expect((found.value ?? 0) - radius).toBeGreaterThan(0);
    expect((found.value ?? 0) - radius).toBeLessThan(0.3);
    // Before it is brought over the radius is inside.
    const r = ranScenario("planted-faults");
    const { start } = r.step(step);
    const tip = start.cranes.find((c) => c.id === crane.id)?.tip ?? [0, 0];
    expect(boomOf(crane, tip).radius).toBeLessThan(last);
  });
});

test("without its planted faults nothing is a stop: the demo differs in just the planted places", () => {
  const demo = scenario("demo");
  const faulty = structuredClone(plan);
  faulty.transporters[0].allowedSide_kN = demo.transporters[0].allowedSide_kN;
  const healed = { ...faulty.sets[0].steps.find((s) => s.id === "near-takes") };
  const good = demo.sets[0].steps.find((s) => s.id === "near-takes");
  expect(healed).not.toEqual(good);
  faulty.sets[0].steps = faulty.sets[0].steps.map((s) => (s.id === "near-takes" && good ? good : s));
  for (const crane of faulty.cranes) crane.chart = byId(demo.cranes, crane.id).chart;
  expect(solvePlan(faulty).findings.filter((f) => f.level === "stop")).toEqual([]);
});
