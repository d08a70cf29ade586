// Slips in what a plan says of the ground are refused with their place and how to mend them.

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
    "ballast and boom as heavy as the whole crane",
    (p) => Object.assign(p.cranes[0], { mass_t: 378 }),
    /cranes\[0\]\.mass_t: a crane of 378 t whose ballast and boom weigh 378 t/,
  ],
  [
    "a structure from left to right",
    (p) => Object.assign(p.site.underfoot[0], { fromY_m: 4, toY_m: -4 }),
    /site\.underfoot\[0\]\.toY_m: a left edge at -4 m; more than its right edge, 4 m/,
  ],
  [
    "an edge of no length",
    (p) => {
      const at = { chainage_m: 190, y_m: -6 };
      p.site.edges = [{ name: "ditch", kind: "trench", from: at, to: { ...at }, depth_m: 1.5 }];
    },
    /site\.edges\[0\]\.to: an edge of no length/,
  ],
  [
    "ground along the way of a crane from far to near",
    (p) => {
      p.site.craneGround = [{ name: "lawn", from_m: 90, to_m: 80, allowablePressure_kPa: 60 }];
    },
    /site\.craneGround\[0\]\.to_m: an end at 80 m; more than its start, 90 m/,
  ],
  [
    "ground along the way of a crane from left to right",
    (p) => {
      p.site.craneGround = [{ name: "lawn", from_m: 80, to_m: 90, fromY_m: 2, toY_m: -2 }];
    },
    /site\.craneGround\[0\]\.toY_m: a left edge at -2 m; more than its right edge, 2 m/,
  ],
  [
    "two stretches of one name",
    (p) => {
      p.site.craneGround = [80, 90].map((from_m) => ({ name: "lawn", from_m, to_m: from_m + 10 }));
    },
    /site\.craneGround\[1\]\.name: "lawn"; a name that no other stretch of ground has/,
  ],
  [
    "ground that may bear nothing",
    (p) => {
      p.site.craneGround = [{ name: "lawn", from_m: 80, to_m: 90, allowablePressure_kPa: 0 }];
    },
    /site\.craneGround\[0\]\.allowablePressure_kPa: 0; /,
  ],
  [
    "a soil class that no table has",
    (p) => Object.assign(p.cranes[1], { soil: "good ground" }),
    /cranes\[1\]\.soil/,
  ],
])("%s", (_, change, words) => {
  const found = errors(change);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(words);
});
