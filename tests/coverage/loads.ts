// Witnesses of loads and their changes on the trains that carry the set.

import { expect } from "vitest";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

const faults = shared(() => readScenario("planted-faults"));
/** Cylinders with 1 mm of travel on a path whose grade changes below the decks. */
const short = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "first-roll");
    for (const t of plan.transporters) Object.assign(t, { strokeUp_mm: 1, strokeDown_mm: 1 });
  }),
);
const soft = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "lash-down");
    for (const t of plan.transporters) t.cylinderStiffness_kN_per_mm /= 4;
  }),
);
/** The far crane takes 490 kN over some 400 mm: about 1 % of 1160 kN for every 10 mm. */
const careful = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "far-takes");
    plan.limits.overrides.push({ limit: "change per 10 mm", value: 0.3, source: "crew", chosenBy: "crew" });
  }),
);

export const loadWitnesses: Witness[] = [
  {
    check: "side load",
    ids: ["TR-1"],
    title: "a twelfth of 863 kN, so 72 kN, on an axle-line side good for 62 kN",
    sees: (solve) => {
      const [one] = found(solve(faults()), "side load", "stop");
      expect(one).toMatchObject({ subject: "rear", limit: 62 });
      // The hand value leaves out that the CG stands some centimetres to one side of a gauge of 2.1 m: within a tenth.
      expect(Math.abs((one.value ?? 0) - 72)).toBeLessThan(7.2);
    },
  },
  {
    check: "stroke",
    ids: ["TR-5"],
    title: "1 mm of travel each way on a path that bends below the decks",
    sees: (solve) => expect(found(solve(short()), "stroke", "stop").length).toBeGreaterThan(0),
  },
  {
    check: "tilt growth",
    ids: ["TR-4"],
    title: "cylinders four times as soft let a first tilt grow by more than a fifth",
    sees: (solve) => expect(subjects(found(solve(soft()), "tilt growth", "caution"))).toEqual(["set"]),
  },
  {
    check: "change per 10 mm",
    ids: ["TR-3"],
    title: "a hand-over of about 1 % of the weight every 10 mm, for a crew that asks for 0.3 %",
    sees: (solve) => expect(found(solve(careful()), "change per 10 mm").length).toBeGreaterThan(0),
  },
];
