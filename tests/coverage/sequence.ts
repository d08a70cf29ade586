// Witnesses of the checks of the order of steps: who is meant to carry, what was forgotten, losses and ways back.

import { expect } from "vitest";
import { completeResult } from "../../src/checks/index.ts";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

const faults = shared(() => readScenario("planted-faults"));
const order = shared(() => readScenario("order-faults"));
const unnamed = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "brief");
    const [, brief] = plan.sets[0].steps;
    brief.carries = brief.carries.filter((name) => name !== "front left");
  }),
);
/** The front train goes down: from then on the nose hangs on the far hook alone. Nobody has accepted it. */
const alone = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "front-down");
    plan.accept = [];
    for (const step of plan.sets[0].steps) step.wayBack = undefined;
  }),
);
/** The night is spent on the hooks. */
const hungOvernight = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "lift");
    const [set] = plan.sets;
    const { carries } = set.steps[set.steps.length - 1];
    set.steps.push({ id: "night", do: "rest", on: ["hooks"], carries });
  }),
);
const short = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "lash-down");
    const [set] = plan.sets;
    const { carries } = set.steps[0];
    set.steps.push({ id: "bolts", do: "brace", items: [{ what: "bolts", count: 3, of: 8 }], carries });
  }),
);
/** A trial lift whose hook finds a set some 119 t heavy, where the ledger says 150 to 160 t. */
const heavier = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "untie");
    const [set] = plan.sets;
    set.ledger[1].mass_t = { low: 150, best: 155, high: 160 };
    const { carries } = set.steps[0];
    set.steps.push({
      id: "trial",
      do: "trial lift",
      crane: "far-crane",
      height_mm: 300,
      band_pct: 3,
      carries: [...carries, "far crane"],
    });
  }),
);

export const sequenceWitnesses: Witness[] = [
  {
    check: "meant to carry",
    ids: ["SQ-1"],
    title: "the near hook raised by 430 mm where 373 mm free the rear train",
    sees: (solve) =>
      expect(subjects(found(solve(faults()), "meant to carry", "stop"))).toEqual([
        "rear aft",
        "rear left",
        "rear right",
      ]),
  },
  {
    check: "meant to be free",
    ids: ["SQ-1"],
    title: "a group that carries and is not in the step's list",
    sees: (solve) =>
      expect(found(solve(unnamed()), "meant to be free", "stop").map((f) => f.subject)).toEqual([
        "front left",
      ]),
  },
  {
    check: "out of order",
    ids: ["SQ-1"],
    title: "a hook takes load while two ties are still on",
    sees: (solve) =>
      expect(found(solve(order()), "out of order", "stop").map((f) => f.subject)).toEqual(["far crane"]),
  },
  {
    check: "unbacked",
    ids: ["SQ-9", "ST-7", "TR-12"],
    title: "with the front train down, the nose hangs on one hook and nobody accepted it",
    sees: (solve, checks) => {
      const plan = alone();
      const whole = completeResult(plan, solve(plan), { checks, waysBack: false, envelopes: false });
      expect(whole === null ? [] : subjects(found(whole, "unbacked", "stop"))).toEqual(["far crane"]);
    },
  },
  {
    check: "no way back",
    ids: ["SQ-9"],
    title: "rolling back would overload groups that the roll itself does not: no return from the roll on",
    sees: (solve, checks) => {
      const plan = faults();
      const whole = completeResult(plan, solve(plan), { checks, backed: false, envelopes: false });
      expect(whole === null ? [] : subjects(found(whole, "no way back", "note"))).toEqual(["roll-with-far"]);
    },
  },
  {
    check: "rest",
    ids: ["SQ-9"],
    title: "a night on the hooks",
    sees: (solve) =>
      expect(subjects(found(solve(hungOvernight()), "rest", "stop"))).toEqual(["far crane", "near crane"]),
  },
  {
    check: "count not met",
    ids: ["ST-9", "FT-7"],
    title: "three bolts of eight",
    sees: (solve) => expect(found(solve(short()), "count not met", "stop")).toHaveLength(1),
  },
  {
    check: "reading off",
    ids: ["SW-8"],
    title: "the hook of a trial lift reads a set of 119 t, where the ledger says 155 t",
    sees: (solve) => expect(found(solve(heavier()), "reading off").length).toBeGreaterThan(0),
  },
];
