// Every limit with its unit and direction; what was chosen of it, and which of all governs.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import {
  isLooser,
  limitNames,
  limitOf,
  limitStates,
  limitTable,
  readyRules,
} from "../../src/checks/index.ts";
import { windLimits } from "../../src/checks/wind/limits.ts";
import { scenario } from "../sequence/plans.ts";

const owner = { source: "job specification 4.2", chosenBy: "owner" };

test("the table names every limit, and no other", () => {
  expect(Object.keys(limitTable).sort()).toEqual([...limitNames].sort());
  const states = limitStates(scenario("demo"));
  expect(states.map(({ name }) => name).sort()).toEqual([...limitNames].sort());
});

test("the checks take the stricter way of each limit from the table, or say the same", () => {
  const files = readdirSync("src/checks", { recursive: true, encoding: "utf8" }).filter((one) =>
    one.endsWith(".ts"),
  );
  const said = files.flatMap((file) => {
    const text = readFileSync(join("src/checks", file), "utf8");
    return [...text.matchAll(/limitOf\([\w.]+, "([^"]+)", (true|false)\)/g)];
  });
  expect(said.length).toBeGreaterThan(10);
  for (const [call, name, least] of said)
    expect(limitTable[name]?.least === true, call).toBe(least === "true");
});

test("what governs is what the checks take, for every limit of every bundled plan", () => {
  for (const name of ["demo", "one-girder", "planted-faults", "order-faults"] as const) {
    const plan = scenario(name);
    for (const state of limitStates(plan))
      expect(state.governs, state.name).toEqual(limitOf(plan, state.name));
  }
});

test("of a ready-made allowance for sway and a larger one of the plan the larger governs", () => {
  const plan = scenario("demo", (p) => {
    p.limits.use = [...p.limits.use, "sway-1"];
    p.limits.rules.push({ id: "sway allowance", value: 3, unit: "pct", ...owner });
  });
  const state = limitStates(plan).find(({ name }) => name === "sway allowance");
  expect(state?.chosen.map(({ value }) => value)).toEqual([readyRules["sway-1"].value, 3]);
  expect(state?.governs).toMatchObject({ value: 3, chosenBy: "owner" });
});

test("an override governs, and what it replaced is still known", () => {
  const plan = scenario("demo", (p) => {
    p.limits.use = ["tandem-75"];
    p.limits.overrides.push({ limit: "tandem use", value: 85, ...owner });
  });
  const state = limitStates(plan).find(({ name }) => name === "tandem use");
  if (state === undefined) throw new Error("no such limit");
  expect(state).toMatchObject({ area: "cranes", unit: "pct", standing: null });
  expect(state.governs).toMatchObject({ value: 85, chosenBy: "owner" });
  expect(state.without).toMatchObject({ value: 75, chosenBy: "rule tandem-75" });
  expect(isLooser(state, 85, 75)).toBe(true);
  expect(isLooser({ ...state, least: true }, 85, 75)).toBe(false);
});

test("no rule makes the wind limits looser than they stand, only an override does", () => {
  const { value } = windLimits.standing["strong wind"];
  const plan = (more: number) =>
    scenario("demo", (p) => {
      p.limits.rules.push({ id: "strong wind", value: value + more, unit: "m/s", ...owner });
    });
  expect(limitOf(plan(2), "strong wind")).toMatchObject({ value, chosenBy: "default" });
  expect(limitOf(plan(-2), "strong wind")).toMatchObject({ value: value - 2, chosenBy: "owner" });
  const replaced = plan(2);
  replaced.limits.overrides.push({ limit: "strong wind", value: value + 2, ...owner });
  expect(limitOf(replaced, "strong wind")).toMatchObject({ value: value + 2, chosenBy: "owner" });
});

test("a limit that nobody set and that has no standing value governs nothing", () => {
  const plan = scenario("demo", (p) => {
    p.limits = { use: [], rules: [], overrides: [] };
  });
  const open = limitStates(plan).filter(({ governs }) => governs === null);
  expect(open.map(({ name }) => name)).toContain("tandem use");
  expect(open.map(({ name }) => name)).toContain("set twist");
  for (const { standing, chosen } of open) expect([standing, ...chosen]).toEqual([null]);
});
