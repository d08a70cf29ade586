// Witnesses of the checks of the set as a whole.

import { expect } from "vitest";
import { readScenario } from "./plans.ts";
import type { Witness } from "./witness.ts";

const heavy = readScenario("demo", (plan) => {
  for (const b of plan.site.bearings) b.ratedLoad_kN = 100;
});

export const setWitnesses: Witness[] = [
  {
    check: "bearing load",
    ids: ["ST-1"],
    title: "bearings rated for 100 kN below a set of some 1200 kN are overloaded, all four",
    sees: (solve) => {
      const found = solve(heavy).findings.filter((f) => f.check === "bearing load" && f.level === "stop");
      expect(found.map((f) => f.subject).sort()).toEqual(["far L", "far R", "near L", "near R"]);
    },
  },
];
