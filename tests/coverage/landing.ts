// Witnesses of the checks of landing and fit at the bearings.

import { expect } from "vitest";
import type { CheckList, Finding } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import {
  findingsIn,
  type Landed,
  landingPlan,
  landingRun,
  shortPlan,
  warpSeats,
} from "../checks/landing/hung.ts";
import { subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

/** A landing run once for all witnesses that look at it. */
function once(make: () => Landed): () => Landed {
  let known: Landed | null = null;
  return () => {
    known ??= make();
    return known;
  };
}

/** The demonstration's landing with nearly everything wrong that can be known by hand. */
const spoiled = once(() =>
  landingRun(
    landingPlan((plan) => {
      const { site } = plan;
      const [set] = plan.sets;
      // Both left seats 32 mm high over 3.2 m: 1 % of lean.
      for (const s of site.seats) s.asBuilt_m = s.design_m + (s.girder === "L" ? 0.032 : 0);
      site.nearBackwall_m = site.nearBearing_m - 0.61;
      site.temperature_C = -20;
      set.temperature_C = 30;
      for (const b of site.bearings) {
        b.play_mm = 20;
        b.sideLimit_kN = 7.4;
      }
      for (const g of set.girders) g.sweep_mm = 90;
      plan.spread.cgAcross_m = 0.04;
      for (const s of set.splices) s.boltedFraction = 0.25;
      for (const step of set.steps)
        if (step.do === "hold") step.counted = [{ what: "bearing blocks", count: 2, of: 4 }];
      plan.limits.rules.push({
        id: "web plumb",
        value: 0.5,
        unit: "pct",
        source: "owner (invented)",
        chosenBy: "owner",
      });
    }),
  ),
);

/** Three girders, the middle one's near seat 6 mm low; the near crane is to lower first, but the far hook hangs low. */
const warped = once(() => {
  const plan = shortPlan((p) => {
    warpSeats(p, { "near B": -0.006 });
    for (const step of p.sets[0].steps) if (step.do === "land") step.order.reverse();
  });
  return landingRun(plan, plan.sets[0].id, { "far-crane": 0.79 });
});

/** Two sets of three girders side by side, the second 20 mm from the first and its member 10 mm off its fit. */
const beside = once(() =>
  landingRun(
    shortPlan((plan) => {
      const [one] = plan.sets;
      const own = <T extends { set?: string | undefined }>(list: T[]) =>
        [one.id, "second"].flatMap((set) => list.map((x) => ({ ...x, set })));
      plan.site.seats = own(plan.site.seats);
      plan.site.bearings = own(plan.site.bearings);
      for (const s of plan.site.seats) s.asBuilt_m = s.design_m - (s.set === "second" ? 0.01 : 0);
      const second = structuredClone(one);
      second.id = "second";
      second.start.y_m = 6.47;
      second.infill = [
        {
          name: "frame",
          to: one.id,
          at_m: 6,
          girder: "C",
          toGirder: "A",
          fit: "steel dead load",
          allowed_mm: 4,
        },
      ];
      plan.sets.push(second);
    }),
    "second",
  ),
);

const near = (value: number | null, expected: number, part: number) =>
  expect(Math.abs((value ?? Number.NaN) / expected - 1)).toBeLessThan(part);

/** A witness that looks at one landing. */
function seenIn(
  landing: () => Landed,
  check: string,
  ids: string[],
  title: string,
  look: (found: Finding[], plan: Plan) => void,
): Witness {
  return {
    check,
    ids,
    title,
    sees: (_solve, checks: CheckList) => {
      const run = landing();
      look(findingsIn(run, checks, check), run.ctx.plan);
    },
  };
}

export const landingWitnesses: Witness[] = [
  seenIn(spoiled, "seat level", ["FT-1"], "two seats 32 mm above their design, allowed 3 mm", (found) => {
    expect(subjects(found)).toEqual(["far L", "near L"]);
    for (const f of found) near(f.value, 32, 1e-6);
  }),
  seenIn(spoiled, "bearing plane", ["FT-1"], "32 mm over 3.2 m lean the landed set by 1 %", (found) => {
    expect(subjects(found)).toEqual(["lean"]);
    // Weight goes to the low side, whose bearings then give a little more.
    near(found[0].value, 1, 0.01);
  }),
  seenIn(
    spoiled,
    "web plumb",
    ["ST-11"],
    "webs lean 1 % more than the 0.375 % of their seats' crossfall, the other way",
    (found) => {
      expect(subjects(found)).toEqual(["girder L", "girder R"]);
      for (const f of found) near(f.value, 0.625, 0.1);
    },
  ),
  seenIn(
    spoiled,
    "bearing offset",
    ["FT-3"],
    "58.8 m warmed by 50 C move by 34.4 mm, beyond 20 mm of play: 11.7e-6 per C (AASHTO LRFD 6.4.1, from memory)",
    (found) => {
      expect(subjects(found)).toEqual(["far L", "far R"]);
      for (const f of found) near(f.value, 1000 * 11.7e-6 * 58.8 * 50, 1e-6);
    },
  ),
  seenIn(
    spoiled,
    "backwall gap",
    ["FT-3", "FT-8"],
    "10 mm at the drawn length, and less where the end leans back",
    (found) => {
      expect(subjects(found)).toEqual(["near backwall"]);
      expect(found[0].value as number).toBeLessThan(10.0001);
    },
  ),
  seenIn(
    spoiled,
    "bearing side force",
    ["FT-3"],
    "a grade of 0.6 % pushes the one fixed bearing by 7 kN of 1160 kN, 90 % of 7.4 kN allowed",
    (found) => {
      expect(subjects(found)).toEqual(["near L"]);
      near(found[0].value, (1159 * (31.338 - 30.985)) / 58.8, 0.05);
    },
  ),
  seenIn(
    spoiled,
    "sweep",
    ["FT-5"],
    "90 mm of sweep on 60 m, where 1/8 in. in 10 ft gives 62.5 mm",
    (found) => {
      expect(subjects(found)).toEqual(["girder L", "girder R"]);
      for (const f of found) near(f.limit, 62.5, 1e-9);
    },
  ),
  seenIn(
    spoiled,
    "sweep and CG",
    ["FT-5"],
    "60 mm of mean sweep on girders of some 84 % of the set move its CG by more than 40 mm and less than 60 mm",
    ([found]) => {
      expect(found.value as number).toBeGreaterThan(40);
      expect(found.value as number).toBeLessThan(60);
    },
  ),
  seenIn(
    spoiled,
    "packing",
    ["TR-9"],
    "both left seats 32 mm high ask for some 32 mm below girder L, the plan has none",
    (found) => {
      expect(subjects(found)).toEqual(["front", "rear"]);
      // Half of the difference between the two girders; camber and decks ask for some mm beside.
      for (const f of found) expect(Math.abs((f.value as number) - 16)).toBeLessThan(4);
    },
  ),
  seenIn(
    spoiled,
    "release condition",
    ["ST-9", "ST-10", "FT-7"],
    "two of four bearing blocks, no frames and no bolts counted: stops",
    (found) => {
      const stops = found.filter((f) => f.level === "stop");
      expect(stops.map((f) => [f.subject, f.value, f.limit])).toContainEqual([
        "far crane: bearing blocks",
        2,
        4,
      ]);
      expect(stops.length).toBe(6);
    },
  ),
  seenIn(
    spoiled,
    "bolted fraction",
    ["FT-7"],
    "a quarter of the holes filled, half wanted, at all four splices",
    (found) => {
      expect(found.map((f) => f.value)).toEqual([0.25, 0.25, 0.25, 0.25]);
    },
  ),
  seenIn(
    warped,
    "late contact",
    ["FT-4"],
    "a middle seat 6 mm low stays free below stiff frames",
    (found) => {
      expect(subjects(found)).toEqual(["near B"]);
    },
  ),
  seenIn(
    warped,
    "landing order",
    ["FT-4"],
    "the far end hangs 0.8 m low and touches first though the near crane lowers first",
    (found) => {
      expect(found.length).toBe(1);
      expect(found[0].subject).toMatch(/^far /);
    },
  ),
  seenIn(warped, "bearing share", ["FT-1", "FT-4"], "the free bearing is 100 % off its part", (found) => {
    const one = found.filter((f) => f.subject === "near bearings");
    expect(Math.max(...one.map((f) => f.value as number))).toBeCloseTo(100, 6);
  }),
  seenIn(
    beside,
    "gap between sets",
    ["FT-8"],
    "axes 6.47 m apart, edges 3.225 m from each: 20 mm",
    (found) => {
      expect(subjects(found)).toEqual(["girder"]);
      expect(found[0].value as number).toBeLessThan(20.0001);
    },
  ),
  seenIn(
    beside,
    "infill fit",
    ["FT-6"],
    "all seats of the second set 10 mm low: its member is 10 mm too low",
    (found) => {
      expect(subjects(found)).toEqual(["frame"]);
      near(found[0].value, 10, 1e-6);
    },
  ),
];
