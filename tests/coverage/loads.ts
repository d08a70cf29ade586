// Witnesses of loads and their changes on the trains that carry the set.

import { expect } from "vitest";
import { byId } from "../../src/plan/index.ts";
import { lineStiffness, pickFlexibility } from "../sequence/stiffness.ts";
import { about, cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
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

/** The one girder of 102.77 kN: its far hook takes 40 kN within a minute. */
const hasty = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "far-takes");
    byId(plan.sets[0].steps, "far-takes").minutes = 1;
  }),
);
/** Both trains of the one girder roll over a path whose crossfall grows by 0.1 % every metre, for a careful crew. */
const twisted = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "roll-out");
    const [from, to] = plan.site.path.points;
    from.crossfall_pct = 0;
    to.crossfall_pct = 0.1 * (to.chainage_m - from.chainage_m);
    plan.limits.overrides.push({ limit: "change per metre", value: 0.03, source: "crew", chosenBy: "crew" });
  }),
);
/** Stiffness of a hook at 28 m of a girder on trains at 4 and 20 m: springs in series by hand, N/m. */
const atHook = (plan: ReturnType<typeof hasty>) =>
  1 / (1 / lineStiffness(plan, "far-crane") + pickFlexibility(plan, 16, 8));

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
  {
    check: "change per minute",
    ids: ["TR-3", "CR-9"],
    title: "40 kN in a minute, where a quarter of 102.8 kN can be followed",
    sees: (solve) => {
      const [one] = found(solve(hasty()), "change per minute", "caution");
      expect(one.subject).toBe("far crane");
      // The hook hangs 50 mm slack first: the pace of the minute is that of slack and take-up together.
      const k = atHook(hasty());
      about(one.value, (k * (0.05 + 40e3 / k)) / 1000, 0.02);
      about(one.limit, 0.25 * 102.771, 1e-4);
    },
  },
  {
    check: "change per metre",
    ids: ["TR-3"],
    title: "a metre of growing crossfall pushes the girder's 70.7 kN on the front bunk aside by 0.1 % more",
    sees: (solve) => {
      const [one] = found(solve(twisted()), "change per metre", "caution");
      expect(one.subject).toMatch(/^front (left|right)$/);
      // 11/16 of the weight, at a bunk of 1.3 m, over a gauge of 1.8 m.
      about(one.value, ((11 / 16) * 102.771 * 0.001 * 1.3) / 1.8, 0.02);
      about(one.limit, 0.0003 * 102.771, 1e-4);
    },
  },
];
