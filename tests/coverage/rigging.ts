// Witnesses of the checks of rigging and of what is lifted.

import { expect } from "vitest";
import type { CheckList, Finding } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

/** The far hook with 490 kN of the set on gear that is too weak in every part. */
const weak = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "far-takes");
    const [far] = plan.rigging;
    far.ratedLoad_kN = 400;
    // Two legs at 30 degrees from the vertical press the spreader with 245 tan 30 = 141 kN and more.
    far.topLegs = { apart_m: 3.2, angle_deg: 30, compression_kN: 120 };
    // Two slings at each girder carry some 61 kN each.
    far.parts = [
      { name: "weak sling", count: 8, ratedLoad_kN: 50, place: "leg" },
      { name: "good sling", count: 8, ratedLoad_kN: 100, place: "leg" },
    ];
    const { attachment } = plan.sets[0].picks[0];
    if (attachment) attachment.capacity_kN = 200;
  }),
);
/** Slings 100 mm longer on the left turn the set by 46 mm across 3.2 m; the near hook stops 50 mm higher. */
const askew = shared(() =>
  readScenario("demo", (plan) => {
    const [set] = plan.sets;
    for (const pick of set.picks) pick.slingLonger_mm = { L: 50, R: -50 };
    const lower = set.steps.find((step) => step.id === "lower");
    if (lower?.do === "hoist down") lower.hooks[1].height_mm -= 50;
  }),
);
/** What the data alone say. */
const bare = shared(() =>
  readScenario("demo", (plan) => {
    const [far, near] = plan.rigging;
    far.softeners = false;
    near.guards = "makeshift";
    // 84 t of rating ask for 105 t of test.
    far.ratedLoad_kN = 84 * 9.80665;
    far.custom = { proofTest_kN: 104 * 9.80665, marked: true };
    near.custom = { proofTest_kN: 1030, marked: false };
    far.topLegs = { apart_m: 4, angle_deg: 65 };
    near.mass_t = 2;
    const [set] = plan.sets;
    for (const pick of set.picks) pick.attachment = { kind: "sling" };
    set.tagLines = [{ name: "rear", at_m: 2 }];
    set.looseParts = [
      { name: "loose planks", heldBy: "" },
      { name: "rail", heldBy: "bolted" },
    ];
    set.unconfirmed = ["pick stations"];
    set.forwardMark = "";
  }),
);
/** The far slings of the one-girder plan, stated with 20 kN/mm, with a known stiffness of each. */
const stiff = shared(() =>
  readScenario("one-girder", (plan) => {
    Object.assign(plan.rigging[0].legs ?? {}, { EA_kN: 20e3 });
  }),
);
const byData = (plan: Plan, checks: CheckList, check: string, level: Finding["level"]): Finding[] =>
  checks.planChecks.flatMap((find) => find(plan)).filter((f) => f.check === check && f.level === level);

export const riggingWitnesses: Witness[] = [
  {
    check: "rigging load",
    ids: ["CR-12"],
    title: "490 kN on rigging rated for 400 kN",
    sees: (solve) => expect(subjects(found(solve(weak()), "rigging load", "stop"))).toEqual(["far crane"]),
  },
  {
    check: "part of rigging",
    ids: ["CR-12"],
    title: "slings rated 50 kN of which each carries more than 60 kN; those of 100 kN hold",
    sees: (solve) =>
      expect(subjects(found(solve(weak()), "part of rigging", "stop"))).toEqual(["far crane: weak sling"]),
  },
  {
    check: "spreader thrust",
    ids: ["CR-12"],
    title: "a spreader good for 120 kN pressed with over 141 kN by legs at 30 degrees",
    sees: (solve) => {
      const [one] = found(solve(weak()), "spreader thrust", "stop");
      expect(one?.subject).toBe("far crane");
      // The heavier end carries a little more than half of 490 kN.
      expect(one?.value).toBeGreaterThan(141.4);
      expect(one?.value).toBeLessThan(150);
    },
  },
  {
    check: "lift attachment",
    ids: ["CR-15"],
    title: "lugs good for 200 kN with half of 490 kN on each",
    sees: (solve) => expect(subjects(found(solve(weak()), "lift attachment", "stop"))).toEqual(["far crane"]),
  },
  {
    check: "hung crossfall",
    ids: ["CR-14"],
    title: "slings 100 mm longer on the left lean the set: 46 mm across on top of the 15 to 22 mm it had",
    sees: (solve) => {
      const all = found(solve(askew()), "hung crossfall", "caution");
      expect(subjects(all)).toEqual(["far bearings", "near bearings"]);
      // 100 mm over 3.2 m, times e / (e + d) = 1.1 / 2.36, over 3.2 m: 46.5 mm; the soft set spreads it unevenly.
      for (const f of all) expect(Math.abs((f.value ?? 0) - 65)).toBeLessThan(8);
    },
  },
  {
    check: "hung grade",
    ids: ["CR-14"],
    title: "the near hook 50 mm higher: some 59 mm more between the ends, 126 mm before",
    sees: (solve) => {
      const [one] = found(solve(askew()), "hung grade", "caution");
      expect(Math.abs((one?.value ?? 0) - 185)).toBeLessThan(5);
    },
  },
  {
    check: "edge guard",
    ids: ["CR-13"],
    title: "slings around flanges without guards, and with makeshift ones",
    sees: (_, checks) =>
      expect(subjects(byData(bare(), checks, "edge guard", "stop"))).toEqual([
        "far spreader",
        "near spreader",
      ]),
  },
  {
    check: "proof test",
    ids: ["CR-12"],
    title: "84 t of rating tested with 104 t where 105 t are asked; gear without its mark",
    sees: (_, checks) => {
      const all = byData(bare(), checks, "proof test", "stop");
      expect(subjects(all)).toEqual(["far spreader", "near spreader marking"]);
      expect(all[0].limit).toBeCloseTo(105 * 9.80665, 6);
    },
  },
  {
    check: "sling angle",
    ids: ["CR-12"],
    title: "legs at 25 degrees from the horizontal",
    sees: (_, checks) => {
      const [one] = byData(bare(), checks, "sling angle", "stop");
      expect(one?.value).toBeCloseTo(25, 9);
    },
  },
  {
    check: "rigging mass",
    ids: ["CR-12"],
    title: "parts of 2.7 t counted as 2.0 t on the hook",
    sees: (_, checks) => {
      const [one] = byData(bare(), checks, "rigging mass", "caution");
      expect(one?.subject).toBe("near spreader");
      expect(one?.value).toBeCloseTo(2.7, 9);
    },
  },
  {
    check: "tag lines",
    ids: ["CR-17"],
    title: "one line at the rear, none in front",
    sees: (_, checks) =>
      expect(subjects(byData(bare(), checks, "tag lines", "caution"))).toEqual(["front half"]),
  },
  {
    check: "loose part",
    ids: ["SW-6"],
    title: "planks on the set and nothing that holds them",
    sees: (_, checks) =>
      expect(subjects(byData(bare(), checks, "loose part", "caution"))).toEqual(["loose planks"]),
  },
  {
    check: "lift point",
    ids: ["SW-6"],
    title: "pick stations copied and not confirmed",
    sees: (_, checks) =>
      expect(subjects(byData(bare(), checks, "lift point", "caution"))).toEqual(["pick stations"]),
  },
  {
    check: "end for end",
    ids: ["SW-7"],
    title: "no mark of the forward end: turned, the CG at 30.05 m of 60 m lies 0.10 m further back",
    sees: (_, checks) => {
      const [one] = byData(bare(), checks, "end for end", "note");
      expect(one?.value).toBeCloseTo(0.096, 3);
      expect(one?.words).toContain("further back");
    },
  },
  {
    check: "sling stiffness",
    ids: ["CR-12"],
    title: "two slings of 20 MN and 2.4 m give 16.7 kN/mm, and are stated with 20",
    sees: (_, checks) => {
      const [one] = byData(stiff(), checks, "sling stiffness", "caution");
      expect(one?.subject).toBe("far slings of far-crane");
      expect(one?.value).toBe(20);
      expect(one?.limit).toBeCloseTo((2 * 20e3) / 2400, 9);
    },
  },
];
