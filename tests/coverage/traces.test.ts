// Every finding with a number can be traced: how its value and its limit came about, and that both are the ones found. The
// plans are those of the witnesses and all scenarios; findings at a place of the operation, of the data alone, with a limit
// and without one.

import { expect, test } from "vitest";
import {
  type CheckList,
  checkList,
  type Finding,
  type Result,
  runWind,
  solvePlan,
  traceOf,
  withWind,
} from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { prepareContext, type SetContext, type SetRun } from "../../src/sequence/index.ts";
import { expectTrue } from "../checks/girders/formulas.ts";
import { step } from "../sequence/plans.ts";
import { cutAfter, readScenario } from "./plans.ts";
import { witnesses } from "./witnesses.ts";

/** What is found by comparing texts or the order of steps, with the reason why no number stands in it. */
const plain: Readonly<Record<string, string>> = {
  "missing data": "something is not there",
  "unconfirmed data": "somebody has not confirmed something",
  "limit not set": "nobody set a limit",
  "ground record": "a name or a source is not there",
  "no equilibrium": "the statics found none, in words",
  "not provable": "ground or an obstacle is not described",
};

const contexts = new Map<Plan, Map<string, SetContext>>();
function contextOf(plan: Plan, set: string): SetContext | undefined {
  if (set === "") return undefined;
  const own = contexts.get(plan) ?? new Map<string, SetContext>();
  contexts.set(plan, own);
  const ctx = own.get(set) ?? prepareContext(plan, set);
  own.set(set, ctx);
  return ctx;
}

/** A finding with a number, and the run that it is of. */
interface Case {
  plan: Plan;
  run: Pick<Result, "sets"> | SetRun;
  finding: Finding;
}

const cases = new Map<string, Case[]>();
const seen = new Set<string>();
function take(plan: Plan, run: Case["run"], findings: readonly Finding[]): void {
  for (const finding of findings) {
    const { check, id, value, limit, worst } = finding;
    if (value === null && limit === null) continue;
    // Several witnesses look at one scenario with small changes: what comes out the same is traced once.
    const key = JSON.stringify([id, value, limit, worst]);
    if (seen.has(key)) continue;
    seen.add(key);
    const list = cases.get(check) ?? [];
    list.push({ plan, run, finding });
    cases.set(check, list);
  }
}

const solved = new Map<Plan, Result>();
function solve(plan: Plan): Result {
  const known = solved.get(plan);
  if (known !== undefined) return known;
  const result = solvePlan(plan);
  solved.set(plan, result);
  take(plan, result, result.findings);
  return result;
}

for (const name of ["demo", "planted-faults", "order-faults", "machine-faults", "one-girder"])
  solve(readScenario(name));

/** All checks, which also hand what they find to the traces: some witnesses make them themselves. */
const taking: CheckList = {
  ...checkList,
  planChecks: [
    (plan) => {
      const found = checkList.planChecks.flatMap((find) => find(plan));
      take(plan, { sets: [] }, found);
      return found;
    },
  ],
  runChecks: [
    (ctx, run, stored) => {
      const found = checkList.runChecks.flatMap((find) => find(ctx, run, stored));
      take(ctx.plan, run, found);
      return found;
    },
  ],
};
for (const { sees } of witnesses)
  try {
    sees(solve, taking);
  } catch {
    // Whether a witness sees what it should is asked by witnesses.test.ts; what it solves is looked at here.
  }

// What is found on demand, and what none of those plans has: the highest winds, and ground that sinks.
{
  const plan = readScenario("demo", (changed) => {
    cutAfter(changed, "far-hook-up");
    for (const one of changed.sets[0].steps) one.windLimit_m_per_s = 25;
  });
  const result = solve(plan);
  const [set] = result.sets;
  const ctx = contextOf(plan, set.setId);
  const wind = ctx === undefined ? null : runWind(ctx, set);
  if (wind !== null) take(plan, withWind(result, set.setId, wind), wind.findings);
}
solve(
  readScenario("one-girder", (changed) => {
    for (const t of changed.transporters) t.settlementTrigger_mm = 4;
    const rest = { do: "rest", minutes: 60, settlement_mm: { "front aft": 5 } } as const;
    changed.sets[0].steps = [step(rest)];
  }),
);

test("many checks found something, of the data too, and what has no arithmetic has no number", () => {
  expect(cases.size).toBeGreaterThan(80);
  for (const check of ["highest wind", "settlement", "set-back", "structure underfoot", "forecast"])
    expect([...cases.keys()]).toContain(check);
  for (const check of [
    "edge distance",
    "wall surcharge",
    "settlement action level",
    "packing",
    "bearing plane",
    "seat level",
    "weight check",
  ])
    expect([...cases.keys()]).toContain(check);
  for (const check of ["meant to carry", "meant to be free", "rest", "not clear", "count not met"])
    expect([...cases.keys()]).toContain(check);
  for (const [check, why] of Object.entries(plain)) expect(cases.has(check), `${check}: ${why}`).toBe(false);
});

/** Two numbers that are worked out by the same code from a pose that is solved again. */
function expectSame(one: number, found: number, what: string): void {
  // Iterations of the statics end at 1e-9 or so of the weight; a difference of two loads may lose some of it.
  expect(Math.abs(one - found), `${what}: ${one} against ${found}`).toBeLessThanOrEqual(
    1e-6 * Math.abs(found) + 1e-12,
  );
}

test.each([...cases].sort(([a], [b]) => a.localeCompare(b)))("%s", (_, list) => {
  for (const { plan, run, finding } of list) {
    const { subject, value, limit, set } = finding;
    if (value === null) throw new Error(`${subject}: a limit of ${limit} and no value`);
    const traced = traceOf(plan, run, finding, contextOf(plan, set));
    if (!traced.found) throw new Error(`${subject}: ${traced.why}`);
    const { factor } = traced.measure;
    expect(traced.measure.unit, subject).toBe(finding.unit);
    expectSame(traced.value.value * factor, value, subject);
    expect(traced.limit === null, `${subject}: a limit in the trace where the finding has one`).toBe(
      limit === null,
    );
    if (traced.limit !== null && limit !== null)
      expectSame(traced.limit.value * factor, limit, `limit of ${subject}`);
    expectTrue(traced.trace, plan);
  }
});
