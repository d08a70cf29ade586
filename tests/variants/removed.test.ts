// Any step of the demonstration day left out brings something up that the whole day does not have: in that step's place
// or later, at least a caution, and not merely a limit that nobody set. Holds and rests command nothing, and a level or
// a trial lift only makes sure: they may be left out, and this day has only holds of them.

import { describe, expect, test } from "vitest";
import { type Finding, solvePlan } from "../../src/checks/index.ts";
import type { Plan, Step } from "../../src/plan/index.ts";
import { betweenTrains, gross, groupShare, hung, radiusAfter } from "./byHand.ts";
import { weigh } from "./hand/weights.ts";
import { added, comesUp, steps, type Wanted, whole } from "./order.ts";
import { day } from "./variants.ts";

const may: Step["do"][] = ["hold", "rest", "level", "trial lift"];
const none = { low: 0, high: 0 };
const W = weigh(whole).W / 1000;
const nearTakes = steps.find((s) => s.id === "near-takes");
const taken =
  nearTakes?.do === "take load" && "load_kN" in nearTakes.until ? nearTakes.until.load_kN * 1000 : Number.NaN;

/** A set that never comes to stand over its seats is told so when it is to land. */
const notOverSeats: Wanted = { check: "out of order", subject: "set", in: "landing" };

const wanted: Record<string, Wanted[]> = {
  "lash-down": ["rear L", "rear R", "front L", "front R"].map((subject) => ({
    check: "out of order",
    subject,
    in: "untie",
  })),
  // The far hook would have to reach as much further back.
  "first-roll": [
    {
      check: "chart left",
      subject: "far crane",
      in: "far-hook-up",
      value: radiusAfter("far", ["second-roll"]),
    },
    notOverSeats,
  ],
  "second-roll": [
    {
      check: "chart left",
      subject: "far crane",
      in: "far-hook-up",
      value: radiusAfter("far", ["first-roll"]),
    },
    notOverSeats,
  ],
  "far-hook-up": [{ check: "out of order", subject: "far crane", in: "far-takes" }],
  untie: [
    { check: "out of order", subject: "far crane", in: "far-takes" },
    { check: "left on", subject: "lashing front L", in: "near-off" },
  ],
  // Nothing but the slack of the far line: the front train has its stroke and still most of its part.
  "far-takes": [
    { check: "stroke", subject: "front", in: "front-down", value: { low: 100, high: 100 } },
    { check: "meant to be free", subject: "front aft", in: "front-down" },
    { check: "not clear", subject: "front", in: "front-out", value: none },
  ],
  "front-down": [{ check: "not clear", subject: "front", in: "front-out", value: none }],
  "front-out": [
    { check: "not clear", subject: "rear", in: "roll-with-far", value: { low: 28, high: 28 } },
    notOverSeats,
  ],
  // The near hook reaches back to a row of its chart that does not carry what it is to take.
  "roll-with-far": [
    {
      check: "hook load",
      subject: "near crane",
      in: "near-takes",
      value: {
        low: gross("near", taken, ["first-roll", "second-roll"]).low,
        high: 1.1 * hung("near").high + 60,
      },
    },
    notOverSeats,
  ],
  "near-hook-up": [{ check: "out of order", subject: "near crane", in: "near-takes" }],
  "near-takes": [
    { check: "meant to be free", subject: "rear aft", in: "rear-down" },
    { check: "not clear", subject: "rear", in: "rear-out", value: none },
  ],
  "rear-down": [{ check: "not clear", subject: "rear", in: "rear-out", value: none }],
  // 150 mm of gap and 200 of hoist, less the camber between the rear bunk and the rear end, some 50 mm.
  "rear-out": [{ check: "out of order", subject: "rear", in: "over", value: { low: 0.25, high: 0.35 } }],
  // The hooks go down by as much as with the lift, which is more than there is below them without it.
  lift: ["near L", "near R", "far L", "far R"].map((subject) => ({
    check: "meant to be free",
    subject,
    in: "lower",
  })),
  over: [notOverSeats],
  // One end comes down all of the way before the other, over the 54 m from the near pick to the far bearings.
  lower: [{ check: "set level", subject: "set", in: "landing", value: { low: 2, high: 100 * (1.5 / 54) } }],
  landing: [
    { check: "meant to carry", subject: "near L", in: "secure", value: none },
    { check: "out of order", subject: "far crane", in: "far-off", value: hung("far") },
  ],
  "far-off": [{ check: "left on", subject: "far crane", in: "near-off" }],
  "near-off": [{ check: "left on", subject: "near crane", in: "far-off" }],
};

test("every step of the day is here, but for those that may be left out", () => {
  expect(steps.filter((s) => !may.includes(s.do)).map((s) => s.id)).toEqual(Object.keys(wanted));
});

const solved = new Map<string, { plan: Plan; found: Finding[] }>();

/** The day without a step, and what that adds to its findings. */
function without(id: string): { plan: Plan; found: Finding[] } {
  const known = solved.get(id);
  if (known) return known;
  const plan = day((p) => {
    p.sets[0].steps = p.sets[0].steps.filter((s) => s.id !== id);
  });
  const one = { plan, found: added(plan, solvePlan(plan)) };
  solved.set(id, one);
  return one;
}

describe("without", () => {
  test.each(Object.entries(wanted))("%s", (id, list) => {
    const { plan, found } = without(id);
    const place = steps.findIndex((s) => s.id === id);
    // In its place or later: the step that now stands there, or for the last one the end of the day.
    for (const f of found)
      expect(f.from?.step, f.words).toBeGreaterThanOrEqual(Math.min(place, plan.sets[0].steps.length - 1));
    comesUp(plan, found, list);
  });
});

test("left out, what stops the roll, the load at the hooks and on the groups are those of hand statics", () => {
  const met = without("front-out").found.find((f) => f.check === "not clear");
  expect(Math.abs((met?.limit ?? 0) - betweenTrains)).toBeLessThan(1e-9);
  // Without the front jacked down nothing on the day's first train has changed: its part is the lever's, by its wheels.
  const still = without("far-hook-up").found.find(
    (f) => f.check === "meant to be free" && f.subject === "front aft",
  );
  const part = groupShare("front", "front aft");
  expect(still?.value).toBeGreaterThanOrEqual(part.low);
  expect(still?.value).toBeLessThanOrEqual(part.high);
  expect(part.high).toBeLessThan(W);
});
