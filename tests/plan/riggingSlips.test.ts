// Slips in rigging are refused with their place: parts of one name, legs too short to meet, slings of a girder not there.

import { expect, test } from "vitest";
import { checkPlan, type Plan } from "../../src/plan/index.ts";
import { scenario } from "../sequence/plans.ts";

const errors = (change: (plan: Plan) => void): string[] => {
  const plan = scenario("demo");
  change(plan);
  const checked = checkPlan(plan);
  return checked.ok ? [] : checked.errors.map((e) => `${e.path}: ${e.found}; ${e.allowed}`);
};

test.each<[string, (plan: Plan) => void, RegExp]>([
  [
    "two parts of one name",
    (p) => p.rigging[0].parts?.push({ ...p.rigging[0].parts[0] }),
    /rigging\[0\]\.parts\[4\].*hook shackle/,
  ],
  [
    "legs of 1.5 m to ends 3.2 m apart",
    (p) => Object.assign(p.rigging[0], { topLegs: { apart_m: 3.2, length_m: 1.5 } }),
    /rigging\[0\]\.topLegs\.length_m: legs of 1\.5 m to ends 3\.2 m apart/,
  ],
  [
    "legs above the spreader of rigging that has none",
    (p) => Object.assign(p.rigging[0], { kind: "point", topLegs: { apart_m: 3.2 } }),
    /rigging\[0\]\.topLegs: .*"point"/,
  ],
  [
    "one sling that parts along the girder",
    (p) => Object.assign(p.rigging[0], { legs: { perPick: 1, alongApart_m: 2 } }),
    /rigging\[0\]\.legs\.alongApart_m: .*1 at each/,
  ],
  [
    "the sling of a girder that is not in the set",
    (p) => Object.assign(p.sets[0].picks[0], { slingLonger_mm: { M: 20 } }),
    /sets\[0\]\.picks\[0\]\.slingLonger_mm\.M/,
  ],
])("%s", (_, change, words) => {
  const found = errors(change);
  expect(found.length).toBe(1);
  expect(found[0]).toMatch(words);
});

test("the demonstration has none of them", () => {
  expect(errors(() => {})).toEqual([]);
});
