// Witnesses of the checks of cranes and their lines.

import { expect } from "vitest";
import { byId, type Plan, type Step } from "../../src/plan/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import { cutAfter, found, measured, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

/** The one-girder plan up to the far crane's taking 40 kN of it, with a chart of one rated load at every radius. */
const taking = (rated_t: number, change: (plan: Plan) => void = () => {}) =>
  shared(() =>
    readScenario("one-girder", (plan) => {
      cutAfter(plan, "far-takes");
      byId(plan.cranes, "far-crane").chart.rows = [1, 60].map((radius_m) => ({
        radius_m,
        boom_m: 40,
        rated_t,
      }));
      change(plan);
    }),
  );

// Some 52 kN on the hook: 40 kN of the girder, 0.6 t of block, rigging and rope.
const small = taking(4, (plan) => {
  plan.limits.use.push("marine-0027", "osha-1926-751");
});
const light = taking(40, (plan) => {
  const crane = byId(plan.cranes, "far-crane");
  crane.allowedOutOfLevel_pct = 0.1;
  crane.leastHookToTip_m = 22;
  crane.hoistLine = {
    ratedPull_kN: 12,
    efficiency: 0.9,
    rope_m: 120,
    lead_m: 40,
    drumDiameter_mm: 420,
    source: "invented",
  };
  plan.header.preparedBy = " ";
  plan.people = { roles: [], channels: [] };
  const set = plan.sets[0].id;
  const readings = [{ what: "far crane", load_kN: 70 }];
  plan.record = [{ set, step: "far-takes", at: "07:40", by: "indicator", readings }];
});

/** A crane that may travel with load. */
function mayTravel(plan: Plan, id: string): void {
  Object.assign(byId(plan.cranes, id), {
    travelWithLoad: true,
    travelSource: "invented",
    travelSpeed_m_per_min: 5,
  });
}

const walk = (crane: string, rest: object): Step =>
  ({ id: "walk", do: "walk", crane, carries: [], ...rest }) as unknown as Step;

/** The far crane goes 2 m aside with its hook going along, in 6 s, with the boom said to stand over the side. */
const aside = taking(40, (plan) => {
  mayTravel(plan, "far-crane");
  const rest = { dx_m: 0, dy_m: 2, hook: "goes along", minutes: 0.1, boomOver: "side" };
  plan.sets[0].steps.push(walk("far-crane", rest));
});

/** The near crane goes 0.5 m along before the rear train lets go: the set swings by that. */
const swings = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "rear-down");
    mayTravel(plan, "near-crane");
    plan.limits.use.push("em-385-1-1-16");
    plan.sets[0].steps.splice(
      -1,
      0,
      walk("near-crane", { dx_m: 0.5, dy_m: 0, hook: "goes along", minutes: 5 }),
    );
  }),
);

const railway = taking(7, (plan) => {
  plan.limits.use.push("railway-150");
});
/** A walk with load by a crane whose maker does not allow it. */
const forbidden = taking(40, (plan) => {
  plan.sets[0].steps.push(walk("far-crane", { dx_m: 1, dy_m: 0 }));
});
const shortChart = taking(40, (plan) => {
  byId(plan.cranes, "far-crane").chart.rows[1].radius_m = 20;
});

const charted = shared(() => readScenario("one-girder", (plan) => cutAfter(plan, "far-hook-up")));

const far = ["far crane"];

export const craneWitnesses: Witness[] = [
  {
    check: "hook load",
    ids: ["CR-2", "CR-4", "SW-2"],
    title: "some 5 t below the tip of a crane rated for 4 t",
    sees: (solve) => {
      const [one] = found(solve(small()), "hook load", "stop");
      expect(one.subject).toBe("far crane");
      expect(one.limit).toBeCloseTo(4 * 9.80665, 6);
    },
  },
  {
    check: "hook load",
    ids: ["CR-5"],
    title:
      "some 5.3 t below the tip of a crane rated for 7 t: good for 131 % of it, where a railway asks for 150 %",
    sees: (solve) => {
      const [one] = found(solve(railway()), "hook load", "stop");
      expect(one.chosenBy).toBe("rule railway-150");
      expect(one.limit).toBeCloseTo((7 * 9.80665) / 1.5, 6);
    },
  },
  {
    check: "little capacity left",
    ids: ["CR-6"],
    title: "above 90 % of the rated load, with what a metre of radius and 5 % of share would make of it",
    sees: (solve) => {
      const [one] = found(solve(small()), "little capacity left", "caution");
      expect(one.words).toMatch(/with 1 m more radius \d+ %, with 5 % more share \d+ %/);
    },
  },
  {
    check: "critical lift",
    ids: ["CR-4"],
    title: "one crane above 75 % of its rated load, and two cranes at any load",
    sees: (solve) => {
      expect(subjects(found(solve(small()), "critical lift", "caution"))).toEqual(far);
      expect(subjects(found(solve(swings()), "critical lift", "note"))).toEqual(["set"]);
    },
  },
  {
    check: "dynamic hook load",
    ids: ["CR-4"],
    title: "a load 20 % above the rating is further above it with contingency and dynamic factor",
    sees: (solve) => {
      const [still] = found(solve(small()), "hook load", "stop");
      const [moving] = found(solve(small()), "dynamic hook load", "stop");
      // 10 % on the whole, and 10 % on the girder's 40 kN before.
      expect(moving.value).toBeCloseTo(1.1 * ((still.value as number) + 0.1 * 40), 3);
    },
  },
  {
    check: "chart left",
    ids: ["CR-1", "CR-2"],
    title: "picks 33.5 m from a crane whose chart ends at 20 m",
    sees: (solve) => expect(subjects(found(solve(shortChart()), "chart left", "stop"))).toEqual(far),
  },
  {
    check: "line lean",
    ids: ["CR-7"],
    title: "a tip 2 m aside of its picks leans a line of some 20 m by far more than 3 %",
    sees: (solve) => expect(subjects(found(solve(aside()), "line lean"))).toEqual(far),
  },
  {
    check: "boom side load",
    ids: ["CR-7"],
    title: "a tip 2 m aside of its picks pulls across the boom by far more than 2 % of the hook load",
    sees: (solve) => expect(subjects(found(solve(aside()), "boom side load"))).toEqual(far),
  },
  {
    check: "boom over",
    ids: ["CR-10"],
    title: "tracks and boom both point back: the boom is over the front, not over the side",
    sees: (solve) => expect(found(solve(aside()), "boom over")[0].words).toContain("over the front"),
  },
  {
    check: "out of order",
    ids: ["CR-10"],
    title: "a crane that walks with load without its maker's leave",
    sees: (solve) => expect(subjects(found(solve(forbidden()), "out of order", "stop"))).toEqual(far),
  },
  {
    check: "crane speed",
    ids: ["CR-9", "CR-10"],
    title: "2 m of travel in 0.1 minutes by a crane that makes 5 m/min",
    sees: (solve) => {
      const [one] = found(solve(aside()), "crane speed", "caution");
      expect(one.value).toBeCloseTo(20, 9);
      expect(one.limit).toBe(5);
    },
  },
  {
    check: "swing",
    ids: ["CR-7"],
    title: "the last bunk frees while the tip of the near crane stands 0.5 m from plumb",
    sees: (solve) => {
      const [one] = found(solve(swings()), "swing", "stop");
      expect(one.subject).toBe("near crane");
      expect(one.value).toBeCloseTo(0.5, 1);
    },
  },
  {
    check: "crane level",
    ids: ["CR-11"],
    title: "0.2 % out of level where 0.1 % is allowed",
    sees: (solve) => expect(subjects(found(solve(light()), "crane level", "stop"))).toEqual(far),
  },
  {
    check: "line pull",
    ids: ["CR-1"],
    title: "some 52 kN on 4 parts at 90 %: 14.5 kN in a line rated for 12 kN",
    sees: (solve) => {
      const [one] = found(solve(light()), "line pull", "stop");
      expect(one.value).toBeCloseTo(14.5, 0);
    },
  },
  {
    check: "wraps left",
    ids: ["CR-17"],
    title: "120 m of rope less 40 m to the tip leave nothing for 4 parts of some 20 m",
    sees: (solve) => expect(subjects(found(solve(light()), "wraps left", "stop"))).toEqual(far),
  },
  {
    check: "hook under tip",
    ids: ["CR-12"],
    title: "a hook some 20 m below the tip where 22 m are asked for",
    sees: (solve) => expect(subjects(found(solve(light()), "hook under tip", "stop"))).toEqual(far),
  },
  {
    check: "indicated load",
    ids: ["SW-8"],
    title: "an indicator that showed 70 kN where some 52 kN hang",
    sees: (solve) => expect(subjects(found(solve(light()), "indicated load", "stop"))).toEqual(far),
  },
  {
    check: "not ready",
    ids: ["CR-3"],
    title: "two cranes, and neither planner, lift director nor meeting",
    sees: (solve) =>
      expect(subjects(found(solve(light()), "not ready", "caution"))).toEqual([
        "header.preparedBy",
        "people.meeting",
        "people.roles",
      ]),
  },
  {
    check: "boom angle",
    ids: ["CR-1"],
    title:
      "a boom of 40 m over 32.4 m stands at 35.8 degrees; at the chart's least radius of 6 m it would at 83",
    sees: (solve, checks) => {
      const [set] = solve(charted()).sets;
      const ctx = prepareContext(charted(), set.setId);
      const { value, limit } = measured(checks, ctx, "boom angle", "far crane").read(
        poseAt(ctx, set.steps[1], 1),
      );
      // Picks at chainage 53, crane at 86 and 6 m aside, boom foot 1.1 m ahead; half a degree for the hook's own growth.
      const degrees = 180 / Math.PI;
      const hand = Math.acos((Math.hypot(86 - 53, 6) - 1.1) / 40) * degrees;
      expect(Math.abs(value * degrees - hand)).toBeLessThan(0.5);
      expect(limit).toBeCloseTo(Math.acos((6 - 1.1) / 40), 9);
    },
  },
];
