// A plan solved in turn after an edit is the plan solved anew, to the last bit; and what a run is said not to read is not read.

import { isDeepStrictEqual } from "node:util";
import { describe, expect, test } from "vitest";
import {
  type Answer,
  type CheckList,
  checkList,
  type KeptRuns,
  noRuns,
  type Result,
  solveInTurn,
  solvePlan,
} from "../../src/checks/index.ts";
import { unread, unreadInSet, unreadInStep } from "../../src/checks/keptRuns.ts";
import { quickRunChecks } from "../../src/checks/runFindings.ts";
import { checkPlan, type Plan, type PlanPath, printPath, valueAt, withValue } from "../../src/plan/index.ts";
import { prepareContext, runSet } from "../../src/sequence/index.ts";
import { chance } from "../sequence/chance.ts";
import { type ScenarioName, scenario, scenarioNames } from "../sequence/plans.ts";

/** Without the checks over a whole run, which are made anew after every edit: the many edits are done without them. */
const quick: CheckList = { ...checkList, runChecks: [...quickRunChecks] };

function inTurn(plan: Plan, kept: KeptRuns, step: number, checks = quick) {
  const answers: Answer[] = [];
  // As the worker has it: what comes is a copy that shares nothing with the plan before.
  const copy = structuredClone(plan);
  const work = solveInTurn(copy, { kept, checks, first: { set: copy.sets[0].id, step } });
  for (let next = work.next(); ; next = work.next()) {
    if (next.done) return { result: next.value, answers };
    if (next.value !== null) answers.push(next.value);
  }
}

/** Paths of all values that are no lists and no records. */
function leaves(value: unknown, path: PlanPath = []): PlanPath[] {
  if (typeof value !== "object" || value === null) return [path];
  if (Array.isArray(value)) return value.flatMap((item, i) => leaves(item, [...path, i]));
  return Object.entries(value).flatMap(([name, item]) => leaves(item, [...path, name]));
}

const kindOf = (path: PlanPath): string => path.map((p) => (typeof p === "number" ? "[]" : p)).join(".");

/** The plan with one value changed a little; null where that is no plan any more. */
function edited(plan: Plan, path: PlanPath): Plan | null {
  const value = valueAt(plan, path);
  const others =
    typeof value === "number"
      ? [value * 1.01, value + 1, value - 1]
      : typeof value === "boolean"
        ? [!value]
        : [`${value} and so on`];
  for (const other of others) {
    const changed = withValue(plan, path, other);
    if (checkPlan(structuredClone(changed)).ok && !isDeepStrictEqual(changed, plan)) return changed;
  }
  return null;
}

const told = (result: Result, fresh: Result): string[] =>
  (Object.keys(fresh) as (keyof Result)[]).filter((key) => !isDeepStrictEqual(result[key], fresh[key]));

describe("after an edit", () => {
  const seed = 20261125;
  const random = chance(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const plan = scenario("demo");
  const kinds = new Map<string, PlanPath[]>();
  for (const path of leaves(plan)) kinds.set(kindOf(path), [...(kinds.get(kindOf(path)) ?? []), path]);
  const isGround = (kind: string) =>
    /^(site|transporters|cranes|rigging|lashings)\b/.test(kind) ||
    /^sets\.\[\]\.(?!steps|name|times|forwardMark|unconfirmed)/.test(kind);
  // Anything that all steps follow from has them all solved anew, whatever it is: some of these stand for the rest.
  const ground = [...kinds.keys()].filter(isGround);
  const some = Array.from({ length: 8 }, () => pick(ground));
  const asked = [...[...kinds.keys()].filter((kind) => !isGround(kind)), ...some];

  test(`every kind of field but the ground of all steps, and some of that, one after another (seed ${seed})`, () => {
    const kept = noRuns();
    inTurn(plan, kept, 0);
    const wrong: string[] = [];
    let done = 0;
    let whole = 0;
    for (const kind of asked) {
      const path = pick(kinds.get(kind) as PlanPath[]);
      const now = edited(plan, path);
      if (now === null) continue;
      const { result, answers } = inTurn(now, kept, 10);
      const fresh = solvePlan(structuredClone(now), { checks: quick });
      done++;
      for (const key of told(result, fresh)) wrong.push(`${printPath(path)}: ${key}`);
      const first = answers[0];
      if (first?.is === "step" && first.run.steps[0]?.index === 10) whole++;
    }
    expect(wrong).toEqual([]);
    expect(done).toBeGreaterThan(60);
    expect(whole).toBe(done);
  }, 600_000);

  test("steps put in, taken out and put in order otherwise", () => {
    const kept = noRuns();
    inTurn(plan, kept, 0);
    const changes: ((steps: Plan["sets"][0]["steps"]) => void)[] = [
      (steps) => void steps.splice(3, 0, { ...structuredClone(steps[1]), id: "another hold" }),
      (steps) => void steps.splice(18, 1),
      (steps) => void steps.pop(),
      (steps) => void steps.splice(2, 2, steps[3], steps[2]),
      () => {},
    ];
    for (const change of changes) {
      const now = scenario("demo", (copy) => change(copy.sets[0].steps));
      expect(told(inTurn(now, kept, 4).result, solvePlan(now, { checks: quick }))).toEqual([]);
    }
  }, 120_000);

  test("with all checks, a limit that is watched, and a way back without leaving anything behind", () => {
    const kept = noRuns();
    const use = (steps: (plan: Plan) => void) => scenario("demo", steps);
    const edits = [
      use(() => {}),
      use((copy) => {
        copy.limits.rules.push({ id: "hook load", value: 700, unit: "kN", source: "test", chosenBy: "test" });
      }),
      use((copy) => {
        copy.sets[0].steps[6].windLimit_m_per_s = 3;
      }),
      use(() => {}),
    ];
    for (const now of edits)
      expect(told(inTurn(now, kept, 12, checkList).result, solvePlan(now))).toEqual([]);
  }, 120_000);
});

test("the step under the cursor, looked at alone after a change of all, carries what the whole run gives", () => {
  const kept = noRuns();
  inTurn(scenario("demo"), kept, 0);
  const now = scenario("demo", (copy) => {
    copy.sets[0].attachments[0].mass_t += 0.5;
  });
  for (const step of [8, 13, 17]) {
    const { answers, result } = inTurn(now, noRuns(), step);
    const alone = answers[0];
    if (alone?.is !== "step") throw new Error("the first answer must be the step");
    const whole = result.sets[0];
    const run = whole.steps[step];
    const n = whole.supports.length;
    expect(alone.run.count).toBe(run.count);
    // Solved from a start that was found by fewer looks: the same within the residual of the statics, 1e-9 of the weight,
    // and what a search for an end (1e-9 of a step) makes of it.
    alone.run.forces.forEach((force, k) => {
      const other = whole.forces[run.first * n + k];
      if (Number.isNaN(other)) expect(force).toBeNaN();
      else expect(Math.abs(force - other)).toBeLessThan(1e-6 * whole.weight);
    });
  }
}, 60_000);

test.each(scenarioNames)("%s: a run reads nothing of what is said to be unread", (name: ScenarioName) => {
  const closed = <T extends object>(record: T, names: readonly string[]): T => {
    const copy = { ...record };
    for (const field of names)
      if (field in copy)
        Object.defineProperty(copy, field, {
          enumerable: false,
          get: () => {
            throw new Error(`${field} was read`);
          },
        });
    return copy;
  };
  const open = scenario(name);
  const plan = closed(
    {
      ...open,
      sets: open.sets.map((set) =>
        closed({ ...set, steps: set.steps.map((step) => closed(step, unreadInStep)) }, unreadInSet),
      ),
    },
    unread,
  );
  expect(() => plan.header).toThrow("header was read");
  for (const { id } of open.sets) {
    const run = runSet(prepareContext(plan, id), []);
    expect(isDeepStrictEqual(run.forces, runSet(prepareContext(open, id), []).forces)).toBe(true);
  }
});
