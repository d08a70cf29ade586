// Witnesses of the checks of wind.

import { expect } from "vitest";
import { runWind } from "../../src/checks/index.ts";
import { byId, type Plan, type SiteWind } from "../../src/plan/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

const limitIn = (plan: Plan, step: string, V: number): void => {
  byId(plan.sets[0].steps, step).windLimit_m_per_s = V;
};
const windAt = (plan: Plan): SiteWind => {
  plan.site.wind ??= {};
  return plan.site.wind;
};

/** The demonstration set lashed on its trains and no more, in a wind limit of its own. */
const lashed = (V: number, change: (plan: Plan) => void = () => {}) =>
  shared(() =>
    readScenario("demo", (plan) => {
      cutAfter(plan, "lash-down");
      delete plan.expected;
      plan.accept = [];
      plan.site.below.states = [];
      limitIn(plan, "lash-down", V);
      change(plan);
    }),
  );

const calm = lashed(14, (plan) => {
  windAt(plan).design = { gust_m_per_s: 25, source: "invented" };
});
const storm = lashed(30);
const table = lashed(14.5);
const mean = lashed(11, (plan) => {
  windAt(plan).instrument = { height_m: 11, averaging_s: 600 };
});
const design = lashed(14, (plan) => {
  windAt(plan).design = { gust_m_per_s: 60, source: "invented", factor: 0.5, factorSource: "invented" };
});
const shorter = lashed(14, (plan) => {
  windAt(plan).design = { gust_m_per_s: 60, source: "invented", factor: 0.45, factorSource: "invented" };
});
const gusty = lashed(14, (plan) => {
  windAt(plan).forecast = [
    { from: "2026-05-06T06:00", to: "2026-05-06T08:00", speed_m_per_s: 9, averaging_s: 600 },
    { from: "2026-05-06T08:00", to: "2026-05-06T12:00", speed_m_per_s: 10, averaging_s: 600 },
  ];
  plan.sets[0].times = { starts: "2026-05-06T07:00", contingency_min: 120 };
});
const thunder = lashed(14, (plan) => {
  windAt(plan).forecast = [
    { from: "2026-05-06T06:00", to: "2026-05-06T12:00", speed_m_per_s: 3, warns: ["lightning"] },
  ];
});

const sail = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "far-takes");
    plan.accept = [];
    plan.site.below.states = [];
    const { wind } = byId(plan.cranes, "far-crane");
    if (wind) {
      wind.loadArea_m2 = 40;
      wind.blockArea_m2 = 0;
    }
  }),
);

export const windWitnesses: Witness[] = [
  {
    check: "highest wind",
    ids: ["WX-1", "WX-6"],
    title:
      "a limit of 30 m/s on its trains is above what the table (14.3 m/s) and its groups allow; 14 m/s is not",
    sees: (solve, checks) => {
      const search = (plan: Plan) => {
        const [set] = solve(plan).sets;
        return runWind(prepareContext(plan, set.setId), set, undefined, checks);
      };
      expect(search(calm())?.findings).toEqual([]);
      const wind = search(storm());
      expect(wind?.findings.map((f) => [f.level, f.check, f.subject])).toEqual([
        ["stop", "highest wind", "lash-down"],
      ]);
      // 10 m/s over 10 minutes are 14.3 m/s in a gust (Durst); in what else is at its limit it is named beside.
      expect(Math.abs((wind?.steps[0].table.reading ?? 0) - 14.3)).toBeLessThan(0.2);
      expect(wind?.steps[0].checks?.what).toBe("group load");
    },
  },
  {
    check: "in the wind: group load",
    ids: ["WX-2"],
    title:
      "in 30 m/s (180 kN across, some 2.9 m above ground) groups to leeward are overloaded, in the calm none is",
    sees: (solve) => {
      const { findings } = solve(storm());
      expect(findings.filter((f) => f.check === "group load")).toEqual([]);
      const over = found(solve(storm()), "in the wind: group load", "stop");
      expect(subjects(over)).toEqual(expect.arrayContaining(["front left", "front right"]));
      expect(over.every((f) => /blowing to the (left|right)/.test(f.words))).toBe(true);
      expect(found(solve(calm()), "in the wind: group load")).toEqual([]);
    },
  },
  {
    check: "overnight: group load",
    ids: ["WX-3"],
    title:
      "left in half of a design gust of 60 m/s a group is overloaded; its part by wind falls with the factor's square",
    sees: (solve) => {
      const worst = (plan: Plan, subject: string) =>
        found(solve(plan), "overnight: group load", "stop").find((f) => f.subject === subject)?.value ?? 0;
      const [a, b] = [worst(design(), "front left"), worst(shorter(), "front left")];
      expect(a).toBeGreaterThan(b);
      expect(b).toBeGreaterThan(0);
      // L = L0 + c R2, with L0 its load in the calm (0.5 %: side forces may settle at up to 6 % more pressure).
      const c = (a - b) / (0.5 ** 2 - 0.45 ** 2);
      const [set] = solve(design()).sets;
      const L0 =
        set.forces[
          set.forces.length - set.supports.length + set.supports.findIndex((s) => s.name === "front left")
        ];
      expect(Math.abs(a - c * 0.5 ** 2 - L0 / 1000)).toBeLessThan((0.005 * L0) / 1000);
      expect(found(solve(calm()), "overnight: group load")).toEqual([]);
    },
  },
  {
    check: "chart wind",
    ids: ["WX-4"],
    title:
      "a chart that reckons with 40 m2 x 1.2 allows V sqrt(A_ref C_ref / (A C)) with the set's sail on its hook",
    sees: (solve) => {
      const result = solve(sail());
      const [one] = found(result, "chart wind", "stop");
      expect(one.subject).toBe("far crane");
      // By hand: 60 m x 2.48 m x 2.2 = 327 m2, of which the hook has its part by its part of the weight.
      const [set] = result.sets;
      const net =
        set.forces[
          (set.count - 1) * set.supports.length + set.supports.findIndex((s) => s.name === "far crane")
        ];
      const V = 14 * Math.sqrt((40 * 1.2) / ((327 * net) / set.weight));
      expect(Math.abs((one.limit ?? 0) - V)).toBeLessThan(0.02 * V);
    },
  },
  {
    check: "wind limit",
    ids: ["WX-5"],
    title:
      "14.5 m/s in gusts are a strong wind (10 m/s over 10 minutes); 11 m/s shown by a 10-minute mean are one too",
    sees: (solve) => {
      expect(found(solve(calm()), "wind limit", "stop")).toEqual([]);
      expect(subjects(found(solve(table()), "wind limit", "stop"))).toEqual(["lash-down"]);
      const [one] = found(solve(mean()), "wind limit", "stop");
      expect(one.limit).toBeCloseTo(10, 9);
    },
  },
  {
    check: "forecast",
    ids: ["WX-7"],
    title:
      "10 m/s over 10 minutes in the contingency behind the last step pass its 14 m/s in gusts, 9 m/s do not",
    sees: (solve) => {
      const list = found(solve(gusty()), "forecast", "stop");
      expect(list.map((f) => f.subject)).toEqual(["lash-down"]);
      expect(list[0].words).toContain("2026-05-06T08:00");
      expect(found(solve(thunder()), "forecast", "stop")[0].words).toContain("lightning");
      expect(found(solve(calm()), "forecast")).toEqual([]);
    },
  },
];
