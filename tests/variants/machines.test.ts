// Charts and stiffness lower than thought, picks at another place, more wind: the findings against hand statics, as in the masses.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Finding, type Result, solvePlan, type When } from "../../src/checks/index.ts";
import { judge } from "./hand/judge.ts";
import { tellsOf } from "./told.ts";
import { day } from "./variants.ts";

tellsOf("chart lowered", { "hook load": 20 });
tellsOf("stiffness lowered", { "cap reached": 5 });
tellsOf("pick moved", { "cap reached": 3, "meant to carry": 9, "chart left": 3 });

/** Both charts at half of what they are. */
const low = day((plan) => {
  for (const crane of plan.cranes) for (const row of crane.chart.rows) row.rated_t *= 0.5;
});

test("the day itself asks for nothing; with charts that are too low it does, and neither answers for the other", () => {
  const whole = day();
  const [ofWhole, ofLow] = [solvePlan(whole), solvePlan(low)];
  expect(judge(whole, ofWhole).asked.size).toBe(0);
  expect(judge(whole, ofWhole).wrong).toEqual([]);
  expect(judge(low, ofLow).wrong).toEqual([]);
  expect(judge(low, ofWhole).wrong).not.toEqual([]);
  expect(judge(whole, ofLow).wrong).not.toEqual([]);
});

test("a finding that is missing, a step late, too long or five percent off is seen", () => {
  const result = solvePlan(low);
  const ours = (f: Finding) => f.check === "hook load" && f.subject === "far crane";
  expect(result.findings.filter(ours).length).toBeGreaterThan(0);
  const changed = (change: (f: Finding) => Finding[]): Result => ({
    ...result,
    findings: result.findings.flatMap((f) => (ours(f) ? change(f) : [f])),
  });
  const moved = (w: When | null, by: number): When | null => w && { ...w, step: w.step + by };
  const off = (f: Finding, by: number): Finding => ({ ...f, value: f.value === null ? null : f.value * by });
  for (const change of [
    () => [],
    (f: Finding) => [{ ...f, from: moved(f.from, 1) }],
    (f: Finding) => [{ ...f, from: moved(f.from, -2) }],
    (f: Finding) => [{ ...f, to: moved(f.to, -1) }],
    (f: Finding) => [off(f, 1.05)],
    (f: Finding) => [off(f, 0.95)],
  ])
    expect(judge(low, changed(change)).wrong).not.toEqual([]);
});

test("in more wind the hanging set leans too much, by hand and by the findings; without the finding that is seen", () => {
  const blown = (V: number) =>
    day((plan) => {
      for (const step of plan.sets[0].steps)
        if (["lift", "over", "lower"].includes(step.id)) step.windLimit_m_per_s = V;
    });
  const gusty = blown(9);
  const result = solvePlan(gusty);
  const told = judge(gusty, result);
  expect(told.wrong).toEqual([]);
  expect([...told.asked]).toEqual([["in the wind: set lean", 1]]);
  const without = { ...result, findings: result.findings.filter((f) => f.check !== "in the wind: set lean") };
  expect(judge(gusty, without).wrong).not.toEqual([]);
  // In half of that wind hand statics let no such finding stand.
  expect(judge(blown(4.5), result).wrong).not.toEqual([]);
});

test("hand statics take nothing but types from the program", () => {
  const folder = new URL("./hand/", import.meta.url);
  const lines = readdirSync(folder).flatMap((name) => {
    const text = readFileSync(new URL(name, folder), "utf8");
    return [...text.matchAll(/^(?:import|export) [^;]*? from "([^"]+)";/gms)].map((m) => ({
      all: m[0],
      from: m[1],
    }));
  });
  expect(lines.length).toBeGreaterThan(20);
  const outside = lines.filter(({ from }) => !from.startsWith("./"));
  expect(outside.length).toBeGreaterThan(0);
  expect(outside.filter(({ all }) => !all.startsWith("import type "))).toEqual([]);
});
