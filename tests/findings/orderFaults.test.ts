// The plan with faults of order shows just the stops that it is made to show, and each of them follows from hand statics
// with the plan's own numbers: lever rule, the spreader's formula, plane geometry. Common practice, no source.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { completeResult, type Finding, leanHeldBy, solvePlan } from "../../src/checks/index.ts";
import { byId, type Plan, readPlan, sentence, takeOff } from "../../src/plan/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import { near, within } from "../sequence/plans.ts";

const read = readPlan(readFileSync(new URL("../../scenarios/order-faults.json", import.meta.url), "utf8"));
if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
const plan: Plan = read.plan;
const [set] = plan.sets;
const result = solvePlan(plan);
const [run] = result.sets;
const ctx = prepareContext(plan, set.id);
const stepOf = (f: Finding) => (f.from ? set.steps[f.from.step].id : "");
const key = (check: string, subject: string, step: string) => `${check} | ${subject} | ${step}`;
const stopsOf = (findings: Finding[]) =>
  findings.filter((f) => f.level === "stop").map((f) => key(f.check, f.subject, stepOf(f)));
const expected = (plan.expected ?? []).map((e) => key(e.check, e.subject, e.step));
const stop = (check: string) => {
  const found = result.findings.find((f) => f.level === "stop" && f.check === check);
  if (!found) throw new Error(`no stop '${check}'`);
  return found;
};

test("the stops are those that the plan expects, no more and no fewer", () => {
  expect(expected.length).toBe(5);
  expect(stopsOf(result.findings).sort()).toEqual([...expected].sort());
  expect(result.complete).toBe(true);
});

test("losses and ways back add no stop: what is unbacked is accepted by name", () => {
  const complete = completeResult(plan, result);
  expect(stopsOf(complete?.findings ?? []).sort()).toEqual([...expected].sort());
});

const g = 9.80665;
const mass = takeOff(set);
const W = mass.mass * g;
const at = (id: string) =>
  byId(
    set.onTransporters.map((t) => ({ ...t, id: t.transporter })),
    id,
  ).deckAt_m;
const pick = set.picks.find((p) => p.crane === "far-crane");
const pickAt = pick?.at_m ?? Number.NaN;
/** Hook load when the front train carries nothing. */
const T = (W * (mass.cg[0] - at("rear"))) / (pickAt - at("rear"));
const runOf = (id: string) => {
  const found = run.steps.find((s) => s.step.id === id);
  if (!found) throw new Error(id);
  return found;
};

describe("ties left on while the hook takes load", () => {
  test("untied, the cap would not be reached; tied, the front train's weight hangs below the set too", () => {
    const cap = 580e3;
    expect(T).toBeLessThan(cap);
    const train = byId(plan.transporters, "front").mass_t * 1000 * g;
    // All of the front train on the hook, at its place between rear train and pick: more than the cap.
    const most = T + (train * (at("front") - at("rear"))) / (pickAt - at("rear"));
    expect(most).toBeGreaterThan(cap);
    within((stop("cap reached").value as number) * 1000, cap, 1e-6);
    const end = poseAt(ctx, runOf("far-takes"), 1);
    const ties = ctx.supports.flatMap((s, i) =>
      s.what === "lashing" && end.forces[i] > 0 ? [end.forces[i]] : [],
    );
    // By the lever about the rear train, both ties together make up what the hook has above T.
    const sum = ties.reduce((a, b) => a + b, 0);
    near(sum, ((cap - T) * (pickAt - at("rear"))) / (at("front") - at("rear")), 5e-3);
  });

  test("with the ties off before the hook takes load, neither stop is there", () => {
    const mended = structuredClone(plan);
    for (const s of mended.sets[0].steps)
      if (s.do === "unlash" && s.id === "untie") s.lashings = ["rear L", "rear R", "front L", "front R"];
    mended.sets[0].steps = mended.sets[0].steps.filter((s) => s.id !== "untie-front");
    const checks = solvePlan(mended)
      .findings.filter((f) => f.level === "stop")
      .map((f) => f.check);
    expect(checks).not.toContain("cap reached");
    expect(checks).not.toContain("out of order");
    expect(checks).toContain("lean restraint lost");
  });
});

describe("nothing left to hold lean", () => {
  test("only the far spreader does: T (pin above spreader + picks above CG), over the weight", () => {
    const rig = byId(plan.rigging, pick?.rigging ?? "");
    const arm = rig.hookPinHeight_m + (pick?.height_m ?? 0) - mass.cg[2];
    const found = stop("lean restraint lost");
    const held = leanHeldBy(poseAt(ctx, runOf("front-down"), 1));
    // 1e-3 of it: the tension of the solved pose against the lever rule.
    near(held.stiffness, T * arm, 1e-3);
    expect(held.parts.map((p) => p.what)).toEqual(["pendulum"]);
    near(found.value as number, (T * arm) / W, 2e-2);
    expect(found.limit).toBe(1.5);
    expect(found.words).toContain("held by far crane as a pendulum");
  });

  test("what stands on the rear train pulls over by more than that", () => {
    const rig = byId(plan.rigging, pick?.rigging ?? "");
    const held = T * (rig.hookPinHeight_m + (pick?.height_m ?? 0) - mass.cg[2]);
    const rear = byId(plan.transporters, "rear");
    const pull = (W - T) * (rear.bunkHeight_m + mass.cg[2]) + rear.mass_t * 1000 * g * rear.cgHeight_m;
    near(stop("tilting over").value as number, pull / held, 2e-2);
  });

  test("it begins when the second front bunk frees, and lasts to the end of the plan", () => {
    const found = stop("lean restraint lost");
    const i = Array.from(run.step).findIndex(
      (s, k) => s === found.from?.step && run.progress[k] === found.from?.progress,
    );
    expect(run.events[i]).toMatch(/bunk front . 1 comes free/);
    expect(found.to).toEqual({ step: set.steps.length - 1, progress: 1 });
  });

  test("with left and right groups on the rear train it is not there", () => {
    const mended = structuredClone(plan);
    const rear = byId(mended.transporters, "rear");
    rear.groups = [
      { name: "rear aft", wheels: ["1L", "1R", "2L", "2R", "3L", "3R"] },
      { name: "rear fore", wheels: ["4L", "5L", "6L"] },
      { name: "rear right", wheels: ["4R", "5R", "6R"] },
    ];
    const checks = solvePlan(mended).findings.map((f) => f.check);
    expect(checks).not.toContain("lean restraint lost");
  });
});

test("the front train meets the rear one: distance of their middles less half of both decks", () => {
  const decks = ["front", "rear"].map((id) => byId(plan.transporters, id).deckLength_m / 2);
  const free = at("front") - at("rear") - decks[0] - decks[1];
  const found = stop("not clear");
  within(found.limit as number, free, 1e-9);
  expect(found.value as number).toBeGreaterThan(free);
});

describe("its wind limits", () => {
  const inWind = (findings: readonly Finding[]) =>
    findings.filter((f) => f.level === "stop" && f.check.startsWith("in the wind: "));
  /** Limits of the demonstration day, whose rear train has groups left and right, where this plan has lower ones. */
  const ofTheDay: Record<string, number> = {
    "lash-down": 14,
    "first-roll": 11,
    "second-roll": 11,
    "far-hook-up": 11,
    "far-takes": 10,
    "far-takes-again": 10,
  };

  test("are no part of what it shows: with its faults as they are, no stop is one of the wind", () => {
    expect(inWind(result.findings)).toEqual([]);
  });

  test("are low because of its rear train, which gives nothing against lean: higher ones lay its deck over", () => {
    const higher = structuredClone(plan);
    for (const s of higher.sets[0].steps) s.windLimit_m_per_s = ofTheDay[s.id] ?? s.windLimit_m_per_s;
    const found = solvePlan(higher).findings;
    const stops = inWind(found);
    expect(new Set(stops.map((f) => `${f.check} | ${f.subject}`))).toEqual(
      new Set(["in the wind: crossfall | rear"]),
    );
    // What it shows of order stands as before.
    const others = found.filter((f) => f.level === "stop" && !stops.includes(f));
    expect(stopsOf(others).sort()).toEqual([...expected].sort());
    // With groups left and right it stands the same wind.
    byId(higher.transporters, "rear").groups = [
      { name: "rear aft", wheels: ["1L", "1R", "2L", "2R", "3L", "3R"] },
      { name: "rear fore", wheels: ["4L", "5L", "6L"] },
      { name: "rear right", wheels: ["4R", "5R", "6R"] },
    ];
    expect(inWind(solvePlan(higher).findings)).toEqual([]);
  });
});
