// What terminal and JSON say about unbacked steps and ways back, and how they follow a Result that has neither yet.

import { describe, expect, test } from "vitest";
import { completeResult, solvePlan } from "../../src/checks/index.ts";
import { resultJson, solveText } from "../../src/report/index.ts";
import { solved, whole } from "./solved.ts";

const one = solved("one-girder", (plan) => {
  plan.accept = plan.accept.filter((a) => a.step !== "near-takes");
  plan.accept[0].by = "A\u0007name";
});
const contexts = new Map([[one.ctx.set.id, one.ctx]]);
const result = whole(one);
const text = solveText(result, one.plan, contexts);

describe("text for a terminal", () => {
  test("a line for every unbacked stretch with length, minutes, loss and who accepted it", () => {
    expect(text).toMatch(/^unbacked steps, in which the set falls with one hook or group lost: 8$/m);
    expect(text).toMatch(/^ *6 +roll-with-far +0 % +100 % +16\.00 m rolled +30\.0 +far crane +Mara Vale/m);
    expect(text).toMatch(/^ *8 +near-takes .* far crane +nobody$/m);
    expect(text).toMatch(/^10 +rear-out .* far crane, near crane +Mara Vale/m);
  });

  test("control signs of a name reach no terminal", () => {
    expect(text).toContain("A name");
    expect(text).not.toContain("\u0007");
  });

  test("the steps past the point of no return, and why; and the stated ways back that fail", () => {
    const told = (source: "none" | "plan") => {
      const [set] = result.sets;
      const bad = { progress: 1, ok: false, steps: [], words: "the nose\nfalls", findings: [] };
      const ways = set.waysBack?.map((w) => (w.step === 4 ? { ...w, source, from: [bad] } : w)) ?? [];
      return solveText({ ...result, sets: [{ ...set, waysBack: ways }] }, one.plan, contexts);
    };
    const line = / {2}5 \(front-out\) from 100 % on: the nose falls\n/;
    expect(told("none")).toMatch(new RegExp(`steps past the point of no return: 1\n${line.source}`));
    expect(told("plan")).toMatch(new RegExp(`stated ways back that fail: 1\n${line.source}`));
    expect(text).toMatch(/^steps past the point of no return: none$/m);
    expect(text).not.toContain("stated ways back that fail");
  });

  test("before they are worked out it says so, and does not say none", () => {
    const early = solveText(one.result, one.plan, contexts);
    expect(early).toMatch(/^unbacked steps: not worked out$/m);
    expect(early).toMatch(/^steps past the point of no return: not worked out$/m);
  });

  test("none is said where there is none", () => {
    const s = solved("one-girder", (plan) => {
      plan.sets[0].steps = plan.sets[0].steps.slice(0, 3);
      plan.accept = [];
    });
    const calm = solveText(whole(s), s.plan, new Map([[s.ctx.set.id, s.ctx]]));
    expect(calm).toMatch(/^unbacked steps: none/m);
    expect(calm).toMatch(/^steps past the point of no return: none$/m);
  });
});

describe("JSON", () => {
  const json = JSON.parse(resultJson(result, one.plan, contexts));

  test("has the stretches, the ways back, and a word at every pose", () => {
    const [set] = json.sets;
    expect(set.unbacked).toHaveLength(8);
    expect(set.waysBack).toHaveLength(set.steps.length);
    const at = (step: string, progress: number) =>
      set.poses.find((p: { step: string; progress: number }) => p.step === step && p.progress === progress);
    expect(at("roll-out", 0.5).backed).toBe(true);
    expect(at("roll-with-far", 0.5).backed).toBe(false);
  });

  test("has null for all of it before it is worked out", () => {
    const [set] = JSON.parse(resultJson(one.result, one.plan, contexts)).sets;
    expect([set.unbacked, set.waysBack, set.poses[0].backed]).toEqual([null, null, null]);
  });
});

describe("completing a result", () => {
  test("solvePlan with both options gives what completing its first answer gives", () => {
    const at = JSON.stringify(solvePlan(one.plan, { backed: true, waysBack: true }).findings);
    expect(at).toBe(JSON.stringify(result.findings));
  });

  test("adds findings in order and changes nothing of the given result", () => {
    expect(one.result.sets[0].backed).toBeUndefined();
    expect(one.result.worst).toBe("caution");
    expect(result.worst).toBe("stop");
    const levels = result.findings.map((f) => ["stop", "caution", "note"].indexOf(f.level));
    expect(levels).toEqual([...levels].sort((a, b) => a - b));
  });

  test("in two parts is the same as at once, and what is there already is not added again", () => {
    const first = completeResult(one.plan, one.result, { waysBack: false, contexts });
    if (first === null) throw new Error("it was broken off");
    const both = completeResult(one.plan, first, { contexts });
    expect(both?.findings.map((f) => f.id).sort()).toEqual(result.findings.map((f) => f.id).sort());
    if (both !== null) expect(completeResult(one.plan, both, { contexts })?.findings).toEqual(both.findings);
  });

  test("can be broken off", () => {
    expect(completeResult(one.plan, one.result, { contexts, onStep: () => false })).toBeNull();
  });
});
