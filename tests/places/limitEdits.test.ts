// Rules and limits are edited by their stricter way: what is looser than all else stands only as an override.
import { expect, test } from "vitest";
import { limitOf, limitTable } from "../../src/checks/index.ts";
import {
  limitSet,
  limitTaken,
  limitWords,
  needsOverride,
  problemOf,
  ruleSwitched,
  unitProblem,
  valueWords,
} from "../../src/places/plan/data/limits/limitEdits.ts";
import { type Plan, readPlan } from "../../src/plan/index.ts";
import { scenario } from "../sequence/plans.ts";

const owner = { source: "job specification 4.2", chosenBy: "owner" };
const withTandem = (): Plan =>
  scenario("demo", (plan) => {
    plan.limits = { use: ["tandem-75"], rules: [], overrides: [] };
  });

test("a stricter value is a limit of the plan's own, a looser one an override, and both say so", () => {
  const plan = withTandem();
  const tight = limitSet(plan, "tandem use", { value: 70, ...owner }, "SI");
  expect(tight.label).toBe("tandem use: own limit 70 %");
  expect(tight.change(plan).limits).toEqual({
    use: ["tandem-75"],
    rules: [{ id: "tandem use", value: 70, unit: "pct", ...owner }],
    overrides: [],
  });
  expect(needsOverride(plan, "tandem use", 80)).toBe(true);
  const loose = limitSet(plan, "tandem use", { value: 80, ...owner }, "SI");
  expect(loose.label).toBe("tandem use: override 80 %, looser than rule tandem-75");
  const after = loose.change(plan);
  expect(after.limits.overrides).toEqual([{ limit: "tandem use", value: 80, ...owner }]);
  expect(after.limits.rules).toEqual([]);
  expect(limitOf(after, "tandem use")).toMatchObject({ value: 80, ...owner });
});

test("looser than a value that only stands by default is an override too", () => {
  const plan = withTandem();
  expect(limitOf(plan, "line lean")?.chosenBy).toBe("default");
  expect(needsOverride(plan, "line lean", 3.5)).toBe(true);
  expect(needsOverride(plan, "line lean", 3)).toBe(false);
  // What must stay above: a lower ratio is the looser one.
  expect(needsOverride(plan, "tipping ratio", 1.4)).toBe(true);
  expect(needsOverride(plan, "tipping ratio", 1.6)).toBe(false);
  // Nothing else limits it.
  expect(needsOverride(plan, "web plumb", 99)).toBe(false);
});

test("setting a limit again replaces it, and it can be taken away", () => {
  let plan = withTandem();
  plan = limitSet(plan, "tandem use", { value: 70, ...owner }, "SI").change(plan);
  // Its own former value is no bound: only what else limits is.
  expect(needsOverride(plan, "tandem use", 74)).toBe(false);
  plan = limitSet(plan, "tandem use", { value: 74, ...owner }, "SI").change(plan);
  expect(plan.limits.rules.map(({ value }) => value)).toEqual([74]);
  plan = limitSet(plan, "tandem use", { value: 90, ...owner }, "SI").change(plan);
  plan = limitSet(plan, "tandem use", { value: 91, ...owner }, "SI").change(plan);
  expect(plan.limits.overrides.map(({ value }) => value)).toEqual([91]);
  plan = limitTaken(plan, "tandem use", "overrides")?.change(plan) ?? plan;
  expect(limitOf(plan, "tandem use")?.value).toBe(74);
  plan = limitTaken(plan, "tandem use", "rules")?.change(plan) ?? plan;
  expect(plan.limits).toEqual(withTandem().limits);
  expect(limitTaken(plan, "tandem use", "rules")).toBeNull();
});

test("a value without source or without the one who chose it is not set", () => {
  expect(problemOf({ value: null, ...owner })).toMatch(/value/);
  expect(problemOf({ value: 1, source: " ", chosenBy: "owner" })).toMatch(/where the value is from/);
  expect(problemOf({ value: 1, source: "letter", chosenBy: "" })).toMatch(/who chose/);
  expect(problemOf({ value: 1, ...owner })).toBe("");
});

test("rules are switched on and off; the plan stays one that is read", () => {
  const plan = withTandem();
  const off = ruleSwitched(plan, "tandem-75");
  expect(off.label).toBe("No longer use rule tandem-75");
  expect(off.change(plan).limits.use).toEqual([]);
  const on = ruleSwitched(plan, "railway-150").change(plan);
  expect(on.limits.use).toEqual(["tandem-75", "railway-150"]);
  expect(readPlan(JSON.stringify(on)).ok).toBe(true);
});

test("values are read in the user's units, and in no other where the unit is per something", () => {
  expect(valueWords(limitTable["set twist"], 50.8, "US")).toBe("2 in");
  expect(valueWords(limitTable["clearance line"], 0.5, "SI")).toBe("0.5 m");
  expect(valueWords(limitTable["mass per metre high"], 3, "US")).toBe("3 t/m");
  expect(limitWords(limitTable["buckling factor"], 1 / 0.7, "SI")).toBe("at least 1.4286");
  expect(limitWords(limitTable["tandem use"], 75, "SI")).toBe("at most 75 %");
});

test("a limit that the plan gives in another unit than it is read in is told", () => {
  const plan = scenario("demo");
  const state = { name: "set twist", ...limitTable["set twist"] };
  expect(unitProblem(plan, state)).toBe("");
  const wrong = scenario("demo", (p) => {
    for (const rule of p.limits.rules) if (rule.id === "set twist") rule.unit = "m";
  });
  expect(unitProblem(wrong, state)).toBe("The plan gives it in m, but it is read in mm. Set it again.");
});
