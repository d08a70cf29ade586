// What is moved along a drawn set: every pick, bunk and deck at its station, kept within the room that it has.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { slidersOf, stationOf, within } from "../../../src/places/plan/data/drawn/along.ts";
import { type Plan, readPlan, valueAt, withValue } from "../../../src/plan/index.ts";
import { movedTo } from "../../../src/scene/index.ts";

function demo(): Plan {
  const read = readPlan(readFileSync("scenarios/demo.json", "utf8"));
  if (!read.ok) throw new Error("the demonstration is no plan");
  return read.plan;
}

test("picks, bunks and decks stand at their stations, bunks by their deck", () => {
  const plan = withValue(demo(), ["transporters", 1, "bunks", 0, "at_m"], -1.5);
  const at = slidersOf(plan, 0).map((one) => [one.thing.key, stationOf(one, one.standing.along)]);
  expect(at).toEqual([
    ["pick far-crane", 55],
    ["pick near-crane", 5],
    ["bunk rear 0", 8.5],
    ["bunk front 0", 34.5],
    ["transporter rear", 8.5],
    ["transporter front", 36],
  ]);
});

test("a pick stays on the set, a bunk on its deck, and each is written to its own place", () => {
  const plan = demo();
  const sliders = slidersOf(plan, 0);
  const of = (key: string) => {
    const found = sliders.find(({ thing }) => thing.key === key);
    if (found === undefined) throw new Error(`no ${key}`);
    return found;
  };
  const pick = of("pick far-crane");
  expect([within(pick, -3), within(pick, 61), within(pick, 42)]).toEqual([0, 60, 42]);
  // The front train's deck is 11.4 m long.
  expect(within(of("bunk front 0"), 9)).toBeCloseTo(5.7, 12);
  const moved = movedTo(plan, pick.thing, { along: 42, across: null });
  expect(valueAt(moved, ["sets", 0, "picks", 0, "at_m"])).toBe(42);
  expect(moved.transporters).toBe(plan.transporters);
});

test("a draft without a number has no slider for it, and the others stay", () => {
  const draft = withValue(demo(), ["sets", 0, "picks", 0, "at_m"], "not yet");
  expect(slidersOf(draft, 0).map(({ thing }) => thing.key)).not.toContain("pick far-crane");
  expect(slidersOf(draft, 0)).toHaveLength(5);
});
