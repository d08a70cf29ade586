// Which limit is in force, where it is from and who chose it. Values of the ready-made rules: see hookLoad.test.ts;
// defaults: common practice, no source.

import { describe, expect, test } from "vitest";
import { limitNames, limitOf, readyRules, ruleSetWords } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { scenario, upTo } from "../sequence/plans.ts";
import { findingsOf } from "./readings.ts";

type Limits = Plan["limits"];
const limited = (limits: Partial<Limits>) =>
  scenario("one-girder", (plan) => {
    plan.limits = { use: [], rules: [], overrides: [], ...limits };
    plan.sets[0].steps = upTo(plan, "roll-out");
  });
const rule = (id: string, value: number): Limits["rules"][number] => ({
  id,
  value,
  unit: "pct",
  source: "job specification 4.2",
  chosenBy: "owner",
});

test("a default stands where nobody chose, and says so", () => {
  expect(limitOf(limited({}), "stroke use")).toEqual({
    value: 95,
    source: "common practice, no source: 5 % of the stroke kept in hand",
    chosenBy: "default",
  });
});

test("a limit without a default is not set", () => {
  expect(limitOf(limited({}), "tandem use")).toBeNull();
  expect(limitOf(limited({}), "capacity above share")).toBeNull();
});

test("a ready-made rule sets its limit, by its name", () => {
  expect(limitOf(limited({ use: ["tandem-75"] }), "tandem use")).toEqual({
    value: 75,
    source: readyRules["tandem-75"].source,
    chosenBy: "rule tandem-75",
    means: "no crane of a shared lift may carry more",
  });
});

test("a ready-made rule may set several limits at once", () => {
  const plan = limited({ use: ["queensland-2006"] });
  const values = [
    "capacity above share",
    "capacity above share of three",
    "capacity above share of four",
  ].map((name) => limitOf(plan, name));
  expect(values.map((one) => one?.value)).toEqual([20, 33, 50]);
  expect(new Set(values.map((one) => one?.chosenBy))).toEqual(new Set(["rule queensland-2006"]));
});

test("of a ready-made rule and the plan's own the lowest governs", () => {
  const plan = (value: number) => limited({ use: ["tandem-75"], rules: [rule("tandem use", value)] });
  expect(limitOf(plan(70), "tandem use")).toEqual({
    value: 70,
    source: "job specification 4.2",
    chosenBy: "owner",
  });
  expect(limitOf(plan(80), "tandem use")).toMatchObject({ value: 75, chosenBy: "rule tandem-75" });
  // For what must stay above, the highest.
  expect(limitOf(plan(80), "tandem use", true)).toMatchObject({ value: 80, chosenBy: "owner" });
});

test("the plan's own limit stands in place of a default, lower or higher", () => {
  for (const value of [1.2, 2])
    expect(limitOf(limited({ rules: [rule("tipping ratio", value)] }), "tipping ratio", true)).toMatchObject({
      value,
      chosenBy: "owner",
    });
});

test("an override replaces whatever stands, also with a higher value", () => {
  const override = { limit: "tandem use", value: 85, source: "letter 12", chosenBy: "engineer" };
  const plan = limited({ use: ["tandem-75"], rules: [rule("tandem use", 70)], overrides: [override] });
  expect(limitOf(plan, "tandem use")).toEqual({ value: 85, source: "letter 12", chosenBy: "engineer" });
});

test("the rule set in words names all three", () => {
  const override = { limit: "set lean", value: 3, source: "letter 12", chosenBy: "engineer" };
  const plan = limited({ use: ["tandem-75"], rules: [rule("stroke use", 90)], overrides: [override] });
  expect(ruleSetWords(plan)).toBe("tandem-75, stroke use 90 pct, override set lean 3");
  expect(ruleSetWords(limited({}))).toBe("no rule chosen: defaults only");
});

describe("names that no check knows are findings", () => {
  test.each<[string, Partial<Limits>]>([
    ["tandem-80", { use: ["tandem-75", "tandem-80"] }],
    ["tandem usage", { rules: [rule("tandem usage", 70)] }],
    ["leaning", { overrides: [{ limit: "leaning", value: 1, source: "letter", chosenBy: "engineer" }] }],
  ])("%s", (id, limits) => {
    const found = findingsOf(limited(limits), "caution").filter((f) => f.check === "limit not set");
    expect(found.map((f) => f.subject)).toEqual([id]);
    expect(found[0].words).toContain(`'${id}'`);
    expect(found[0].words).toContain("limits nothing");
  });

  test("known ones are not", () => {
    const plan = limited({ use: Object.keys(readyRules), rules: limitNames.map((id) => rule(id, 50)) });
    expect(findingsOf(plan, "caution").filter((f) => f.check === "limit not set")).toEqual([]);
  });
});

test("a limit that nobody set is an open item and never passed", () => {
  const bare = limited({});
  delete bare.transporters[0].spineMoment_kNm;
  const notes = findingsOf(bare, "note").filter((f) => f.check === "limit not set");
  expect(notes.map((f) => f.subject)).toEqual(
    expect.arrayContaining(["tandem use", "capacity above share", "rear spineMoment_kNm"]),
  );
  const chosen = findingsOf(limited({ use: ["tandem-75"] }), "note").filter(
    (f) => f.check === "limit not set",
  );
  expect(chosen.map((f) => f.subject)).not.toContain("tandem use");
});

test("a limit of the plan reaches the check it names", () => {
  // One girder on trains 4 m and 20 m from its rear end: (20^2 / 2) / (10^2 / 2) = 4 about the front.
  const below = (value: number) =>
    findingsOf(limited({ rules: [rule("tipping ratio", value)] })).filter((f) => f.check === "tipping");
  expect(below(3.9)).toEqual([]);
  const [found, ...more] = below(4.1);
  expect(more).toEqual([]);
  expect(found).toMatchObject({ limit: 4.1, source: "job specification 4.2", chosenBy: "owner" });
});
