// Unbacked stretches of whole runs: which steps, how far and how long, who accepted them, what nobody may accept.

import { describe, expect, test } from "vitest";
import { BACKED, backedOf, lossesOf, UNBACKED } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { poseAt } from "../../src/sequence/index.ts";
import { step, upTo, within } from "../sequence/plans.ts";
import { type Solved, solved, whole } from "./solved.ts";

const one = solved("one-girder");
const oneWhole = whole(one, { waysBack: false });
const stretches = oneWhole.sets[0].backed?.stretches ?? [];

function stretch(id: string) {
  const found = stretches.find((s) => s.step === one.step(id));
  if (!found) throw new Error(`no stretch in '${id}'`);
  return found;
}

/** Findings of what a plan leaves open about its losses. */
function found(change: (plan: Plan) => void) {
  const s = solved("one-girder", change);
  return whole(s, { waysBack: false }).findings.filter((f) =>
    ["unbacked", "unbacked rest", "fall zone"].includes(f.check),
  );
}

describe("the one-girder plan", () => {
  test("is unbacked from the front train's way out until the seats are close below", () => {
    // Before that two trains hold each other's end; at its end the bearings are within 150 mm.
    const ids = stretches.map((s) => one.set.steps[s.step].step.id);
    const expected = [
      "front-out",
      "roll-with-far",
      "near-hook-up",
      "near-takes",
      "rear-down",
      "rear-out",
      "over",
      "lower",
    ];
    expect(ids).toEqual(expected);
  });

  test("names the far hook throughout, and the near hook from the rear train's way out on", () => {
    for (const s of stretches) {
      const lost = s.falls.map((f) => f.support);
      const both = ["rear-out", "over", "lower"].includes(one.set.steps[s.step].step.id);
      expect(lost).toEqual(both ? ["far crane", "near crane"] : ["far crane"]);
    }
  });

  test("lengths are those of the steps", () => {
    // 16 m rolled and 8.5 m brought over, as the steps say.
    within(stretch("roll-with-far").length, 16, 1e-6);
    expect(stretch("roll-with-far").motion).toBe("rolled");
    within(stretch("over").length, 8.5, 1e-6);
    expect(stretch("over").motion).toBe("brought over");
    // Lowered by 1 m in all; unbacked until the fall at the near pick is 150 mm.
    const { from, to, length, motion } = stretch("lower");
    expect([from, motion]).toEqual([0, "hoisted"]);
    within(length, to * 1, 1e-6);
  });

  test("the stretch of lowering ends where the fall comes to 150 mm", () => {
    // The fall shrinks by 26 / 27.5 of what is lowered; bound 1 mm for the edge found within 1/1000 of 1 m, and bending.
    const at = (progress: number) => {
      const pose = one.pose("lower", progress);
      return Math.max(...lossesOf(one.ctx, pose).map((l) => l.drop));
    };
    const end = stretch("lower").to;
    within(end, 0.5 + ((at(0.5) - 0.15) * 27.5) / 26, 0.002);
    expect(at(end)).toBeGreaterThan(0.15);
    expect(at(end + 0.0011)).toBeLessThanOrEqual(0.15);
  });

  test("minutes are those of the step, in proportion", () => {
    expect(stretch("roll-with-far").minutes).toBe(30);
    within(stretch("lower").minutes ?? 0, 6 * stretch("lower").to, 1e-9);
  });

  test("marks of all stored poses are those that losing every support there gives", () => {
    const marks = oneWhole.sets[0].backed?.marks ?? new Uint8Array();
    expect(marks.length).toBe(one.set.count);
    let [unbacked, wrong] = [0, 0];
    for (let i = 0; i < one.set.count; i++) {
      const pose = poseAt(one.ctx, one.set.steps[one.set.step[i]], one.set.progress[i]);
      const stands = lossesOf(one.ctx, pose).every((l) => l.stands);
      if (marks[i] !== (stands ? BACKED : UNBACKED)) wrong++;
      if (!stands) unbacked++;
    }
    expect(wrong).toBe(0);
    // Both kinds are there, so that the comparison says something.
    expect(unbacked).toBeGreaterThan(50);
    expect(unbacked).toBeLessThan(one.set.count - 50);
  });

  test("without minutes, the slowest machine's own speed tells", () => {
    const s = solved("one-girder", (plan) => {
      for (const x of plan.sets[0].steps) delete x.minutes;
    });
    const all = whole(s, { waysBack: false }).sets[0].backed?.stretches ?? [];
    const minutes = (id: string) => all.find((x) => x.step === s.step(id))?.minutes;
    // 16 m at 6 m/min, and up to 1 m of hoisting at 2 m/min; a hook-up has no speed and says so.
    within(minutes("roll-with-far") ?? 0, 16 / 6, 1e-6);
    within(minutes("lower") ?? 0, stretch("lower").length / 2, 1e-6);
    expect(minutes("near-hook-up")).toBeNull();
    // Brought over by 8.5 m: the far boom swings at 40 deg/min and booms at 6 deg/min; it takes minutes, not hours.
    expect(minutes("over")).toBeGreaterThan(1);
    expect(minutes("over")).toBeLessThan(30);
  });

  test("it can be broken off, and then there is no answer", () => {
    let calls = 0;
    expect(backedOf(one.ctx, one.set, () => ++calls < 3)).toBeNull();
    expect(calls).toBe(3);
  });
});

describe("acceptances", () => {
  test("as shipped, every stretch is accepted by name and no stop is left", () => {
    for (const name of ["one-girder", "demo"] as const) {
      const s: Solved = name === "one-girder" ? one : solved(name);
      const r = whole(s, { waysBack: false });
      expect(r.worst).not.toBe("stop");
      const { stretches: all } = r.sets[0].backed ?? { stretches: [] };
      expect(all.length).toBeGreaterThan(5);
      for (const x of all) {
        expect(x.accepted).toBe(true);
        for (const f of x.falls) expect(f.accepted?.reason).toMatch(/fall zone empty/);
      }
      for (const f of r.findings.filter((x) => x.check === "unbacked")) expect(f.level).toBe("note");
    }
  });

  test("with none, one stop for each hook, joined over its steps", () => {
    const stops = found((plan) => {
      plan.accept = [];
    });
    expect(stops.map((f) => [f.level, f.subject])).toEqual([
      ["stop", "far crane"],
      ["stop", "near crane"],
    ]);
    const [far] = stops;
    expect(far.from?.step).toBe(one.step("front-out"));
    expect(far.to?.step).toBe(one.step("lower"));
    expect(far.words).toMatch(/with far crane lost, .*tips end up/);
  });

  test("one step left out is one stop, placed at that step", () => {
    const stops = found((plan) => {
      plan.accept = plan.accept.filter((a) => a.step !== "near-takes");
    }).filter((f) => f.level === "stop");
    expect(stops.map((f) => [f.subject, f.from?.step, f.to?.step])).toEqual([
      ["far crane", one.step("near-takes"), one.step("near-takes")],
    ]);
  });

  test.each([
    ["another hook", { subject: "near crane" }],
    ["another check", { check: "tipping" }],
    ["no reason", { reason: " " }],
  ])("%s covers nothing", (_, change) => {
    const stops = found((plan) => {
      for (const a of plan.accept) if (a.step === "near-takes") Object.assign(a, change);
    }).filter((f) => f.level === "stop");
    expect(stops.map((f) => f.subject)).toEqual(["far crane"]);
  });

  test("no acceptance covers a rest", () => {
    const rest = step({ do: "rest", id: "night", on: ["stops"], exclusion: "below the set" });
    const findings = found((plan) => {
      plan.sets[0].steps = upTo(plan, "roll-with-far", rest);
      plan.accept = plan.accept.filter((a) => plan.sets[0].steps.some((s) => s.id === a.step));
      plan.accept.push({ check: "unbacked", subject: "set", step: "night", by: "somebody", reason: "tired" });
    });
    const stops = findings.filter((f) => f.level === "stop");
    expect(stops.map((f) => [f.check, f.subject])).toEqual([["unbacked rest", "night"]]);
  });

  test("a rest in a backed pose is none of this check's business", () => {
    const rest = step({ do: "rest", id: "night", on: ["stops"] });
    const findings = found((plan) => {
      plan.sets[0].steps = upTo(plan, "roll-out", rest);
      plan.accept = [];
    });
    expect(findings).toEqual([]);
  });

  test("an unbacked step that names no exclusion zone is a caution, accepted or not", () => {
    const zone = found((plan) => {
      for (const s of plan.sets[0].steps) if (s.id === "over" || s.id === "lower") delete s.exclusion;
    }).filter((f) => f.check === "fall zone");
    expect(zone.map((f) => [f.level, f.subject])).toEqual([["caution", "over, lower"]]);
  });
});

test("time of the demo's whole analysis, printed and not judged", () => {
  const s = solved("demo");
  backedOf(s.ctx, s.set);
  const start = performance.now();
  backedOf(s.ctx, s.set);
  console.log(`losing every hook and group of the demo: ${(performance.now() - start).toFixed(0)} ms`);
});
