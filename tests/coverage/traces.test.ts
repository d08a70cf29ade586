// Every finding with a number at a place of the operation can be traced: how its value and its limit came about, and that
// the value traced is the one found. The plans are those of the witnesses and the scenarios.

import { expect, test } from "vitest";
import { type Finding, type Result, runWind, solvePlan, traceOf, withWind } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { prepareContext, type SetContext } from "../../src/sequence/index.ts";
import { expectTrue } from "../checks/girders/formulas.ts";
import { step } from "../sequence/plans.ts";
import { cutAfter, readScenario } from "./plans.ts";
import { witnesses } from "./witnesses.ts";

/** What is found by comparing steps, motions or texts, and not worked out by a formula: the numbers are in its words. */
const plain = new Set<string>([
  "meant to carry",
  "meant to be free",
  "cap reached",
  "end not reached",
  "out of order",
  "not clear",
  "not provable",
  "reading off",
  "count not met",
  "length change",
  "missing data",
  "no equilibrium",
  "rest",
]);

const contexts = new Map<Plan, Map<string, SetContext>>();
function contextOf(plan: Plan, set: string): SetContext {
  const own = contexts.get(plan) ?? new Map<string, SetContext>();
  contexts.set(plan, own);
  const ctx = own.get(set) ?? prepareContext(plan, set);
  own.set(set, ctx);
  return ctx;
}

const solved = new Map<Plan, Result>();
for (const name of ["demo", "planted-faults", "order-faults", "machine-faults"]) {
  const plan = readScenario(name);
  solved.set(plan, solvePlan(plan));
}
for (const { sees } of witnesses)
  try {
    sees(
      (plan) => {
        const result = solved.get(plan) ?? solvePlan(plan);
        solved.set(plan, result);
        return result;
      },
      // The checks themselves are looked at by witnesses.test.ts.
      {
        makers: [],
        onDemand: [],
        onRun: [],
        runChecks: [],
        planChecks: [],
        backedChecks: [],
        wayBackChecks: [],
        highestChecks: [],
      },
    );
  } catch {
    // A witness that reads a pose by the checks handed in fails here; its plan is solved or not needed.
  }

// What is found on demand, and what none of those plans has: the highest winds, and ground that sinks.
{
  const plan = readScenario("demo", (changed) => {
    cutAfter(changed, "far-hook-up");
    for (const one of changed.sets[0].steps) one.windLimit_m_per_s = 25;
  });
  const result = solvePlan(plan);
  const [set] = result.sets;
  const wind = runWind(contextOf(plan, set.setId), set);
  solved.set(plan, wind === null ? result : withWind(result, set.setId, wind));
}
{
  const plan = readScenario("one-girder", (changed) => {
    for (const t of changed.transporters) t.settlementTrigger_mm = 4;
    const rest = { do: "rest", minutes: 60, settlement_mm: { "front aft": 5 } } as const;
    changed.sets[0].steps = [step(rest)];
  });
  solved.set(plan, solvePlan(plan));
}

const cases = new Map<string, { plan: Plan; result: Result; finding: Finding }[]>();
for (const [plan, result] of solved)
  for (const finding of result.findings) {
    if (
      finding.value === null ||
      finding.limit === null ||
      finding.worst === null ||
      plain.has(finding.check)
    )
      continue;
    const list = cases.get(finding.check) ?? [];
    if (list.length < 3) list.push({ plan, result, finding });
    cases.set(finding.check, list);
  }

test("many checks found something", () => {
  expect(cases.size).toBeGreaterThan(40);
  for (const check of ["highest wind", "settlement", "set-back", "structure underfoot", "forecast"])
    expect([...cases.keys()]).toContain(check);
});

test.each([...cases].sort(([a], [b]) => a.localeCompare(b)))("%s", (_, list) => {
  for (const { plan, result, finding } of list) {
    const traced = traceOf(plan, result, finding, contextOf(plan, finding.set));
    if (!traced.found) throw new Error(`${finding.subject}: ${traced.why}`);
    const value = traced.value.value * traced.measure.factor;
    expect(Math.abs(value - (finding.value ?? 0))).toBeLessThanOrEqual(
      1e-6 * Math.abs(finding.value ?? 0) + 1e-12,
    );
    expectTrue(traced.trace, plan);
  }
});
