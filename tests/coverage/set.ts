// Witnesses of the checks of the set as a whole, its data, its weights and its steel.

import { expect } from "vitest";
import { cornerOf, runBuckling, runSpread } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

const heavy = shared(() =>
  readScenario("demo", (plan) => {
    for (const b of plan.site.bearings) b.ratedLoad_kN = 100;
    plan.header.checkedBy = "";
    plan.sets[0].unconfirmed = ["girders[1].camber_mm"];
    plan.sets[0].ledger[1].mass_t = { low: 150, best: 155, high: 160 };
  }),
);
const faults = shared(() => readScenario("planted-faults"));
const demo = shared(() => readScenario("demo"));

/** The demo on its trains only: a roll of 16 m. */
const rolling = (change: (plan: Plan) => void) =>
  shared(() =>
    readScenario("demo", (plan) => {
      cutAfter(plan, "first-roll");
      change(plan);
    }),
  );

const weakFlange = rolling((plan) => {
  plan.sets[0].girders[0].pieces[1].topFlange_mm = [200, 10];
  plan.sets[0].girders[0].pieces[1].bottomFlange_mm = [200, 10];
});
const thinWeb = rolling((plan) => {
  for (const piece of plan.sets[0].girders[0].pieces) piece.web_mm = [2400, 4];
  plan.sets[0].stiffeners = [];
});
const weakSplice = rolling((plan) => {
  for (const s of plan.sets[0].splices) s.moment_kNm = 400;
});
const fewFrames = rolling((plan) => {
  const frames = plan.sets[0].crossFrames;
  plan.sets[0].crossFrames = [frames[0], frames[frames.length - 1]];
});

const tippy = rolling((plan) => {
  plan.sets[0].onTransporters[1].deckAt_m = 31.5;
});
const owner = shared(() =>
  readScenario("demo", (plan) => {
    plan.limits.overrides.push({ limit: "two-girder set", value: 60, source: "owner", chosenBy: "owner" });
  }),
);

export const setWitnesses: Witness[] = [
  {
    check: "bearing load",
    ids: ["ST-1", "ST-2"],
    title: "bearings rated for 100 kN below a set of some 1200 kN are overloaded, all four",
    sees: (solve) =>
      expect(subjects(found(solve(heavy()), "bearing load", "stop"))).toEqual([
        "far L",
        "far R",
        "near L",
        "near R",
      ]),
  },
  {
    check: "unconfirmed data",
    ids: ["SW-4"],
    title: "a value copied from another set and not confirmed is said",
    sees: (solve) =>
      expect(found(solve(heavy()), "unconfirmed data").map((f) => f.words)[0]).toContain("unconfirmed"),
  },
  {
    check: "weight check",
    ids: ["SW-1"],
    title: "a ledger of 150 to 160 t beside a take-off of some 119 t",
    sees: (solve) => {
      const [one] = found(solve(heavy()), "weight check", "caution");
      expect(one).toMatchObject({ subject: "whole set", limit: 150 });
      expect(one.value ?? 0).toBeLessThan(125);
    },
  },
  {
    check: "missing data",
    ids: ["SW-3", "DOC-1"],
    title: "nobody is named who checked the plan",
    sees: (solve) => expect(subjects(found(solve(heavy()), "missing data")).join(" ")).toContain("checkedBy"),
  },
  {
    check: "uplift",
    ids: ["ST-1"],
    title: "while the front train goes down, one of its bunks is free before the other",
    sees: (solve) =>
      expect(found(solve(demo()), "uplift").map((f) => [f.subject, f.from?.step])).toEqual([
        ["front", 7],
        ["rear", 12],
      ]),
  },
  {
    check: "girder bending",
    ids: ["ST-1", "ST-5"],
    title: "a girder with flanges of 200 by 10 mm in its middle piece",
    sees: (solve) =>
      expect(subjects(found(solve(weakFlange()), "girder bending", "stop"))).toEqual(["girder L"]),
  },
  {
    check: "girder slenderness",
    ids: ["ST-3"],
    title: "unbraced from end to end: 58.8 m over a flange of 550 mm",
    sees: (solve) => expect(found(solve(fewFrames()), "girder slenderness").length).toBeGreaterThan(0),
  },
  {
    check: "two-girder set",
    ids: ["ST-4"],
    title:
      "the landed pair of the demo, 58.8 m long and 3.2 m wide, for an owner who allows 60 % of its moment",
    sees: (solve) => expect(subjects(found(solve(owner()), "two-girder set", "stop"))).toEqual(["set"]),
  },
  {
    check: "web crippling",
    ids: ["ST-6"],
    title: "a web of 4 mm without stiffeners above the bunks",
    sees: (solve) => expect(subjects(found(solve(thinWeb()), "web crippling", "stop"))).toContain("girder L"),
  },
  {
    check: "splice moment",
    ids: ["ST-5"],
    title: "splices good for 400 kNm below an overhang of 20 m and more",
    sees: (solve) => expect(found(solve(weakSplice()), "splice moment", "stop").length).toBeGreaterThan(0),
  },
  {
    check: "tipping",
    ids: ["ST-7"],
    title: "the set rolled out on its two trains with its CG beyond half a metre of the front one",
    sees: (solve) => expect(found(solve(tippy()), "tipping", "stop").length).toBeGreaterThan(0),
  },
  {
    check: "in the spread: bearing load",
    ids: ["SW-5"],
    title: "bearings rated 2 % above their best load are overloaded by a set 5 % heavier",
    sees: (solve, checks) => {
      const best = solve(demo());
      const [set] = best.sets;
      const last = set.forces.subarray((set.count - 1) * set.supports.length);
      const plan = readScenario("demo", (p) => {
        for (const b of p.site.bearings) {
          const i = set.supports.findIndex((x) => x.name === `${b.line} ${b.girder}`);
          b.ratedLoad_kN = (1.02 * last[i]) / 1000;
        }
      });
      const spread = runSpread(
        prepareContext(plan, set.setId),
        set,
        [cornerOf(plan, { weight_pct: 5 })],
        () => true,
        checks,
      );
      expect(subjects(spread.findings.filter((f) => f.check === "in the spread: bearing load"))).toEqual([
        "far L",
        "far R",
        "near L",
        "near R",
      ]);
    },
  },
  {
    check: "buckling",
    ids: ["ST-4"],
    title:
      "the set hung from both hooks buckles below 2 times its loads: too near for an owner who asks for 2",
    sees: (solve, checks) => {
      const plan = readScenario("demo", (p) => {
        p.limits.overrides.push({ limit: "buckling factor", value: 2, source: "owner", chosenBy: "owner" });
      });
      const ctx = prepareContext(plan, "set-1");
      const measures = checks.onDemand.flatMap((make) => make(ctx));
      expect(measures.map((m) => m.check)).toContain("buckling");
      const stages = runBuckling(ctx, solve(plan).sets[0], "rests");
      expect(stages?.findings.map((f) => f.check)).toContain("buckling");
    },
  },
  {
    check: "group load",
    ids: ["ST-2", "TR-2"],
    title: "the rear train takes over: by the lever rule 432 kN on six wheels that may carry 372 kN",
    sees: (solve) =>
      expect(subjects(found(solve(faults()), "group load", "stop"))).toEqual([
        "rear aft",
        "rear left",
        "rear right",
      ]),
  },
];
