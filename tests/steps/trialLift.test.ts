// trial lift: the reading compared with the ledger; caps. drive out: proven, or not. One girder, its own numbers.

import { describe, expect, test } from "vitest";
import { type Plan, takeOff } from "../../src/plan/index.ts";
import { force, type Ran, ran, scenario, step, upTo, within } from "../sequence/plans.ts";

const trial = { do: "trial lift", crane: "far-crane", height_mm: 10 } as const;

function lifted(then: { [field: string]: unknown }, change: (plan: Plan) => void = () => {}): Ran {
  return ran(
    scenario("one-girder", (plan) => {
      change(plan);
      plan.sets[0].steps = upTo(plan, "far-takes", step({ ...trial, ...then }));
    }),
  );
}

const found = (r: Ran, id = "trial lift") =>
  r.step(id).happenings.map((h) => [h.kind, h.subject, h.level ?? "stop"]);
/** The ledger's whole mass set to the take-off's times a factor. */
const weighs = (factor: number) => (plan: Plan) => {
  const mass = (takeOff(plan.sets[0]).mass / 1000) * factor;
  plan.sets[0].ledger[0].mass_t = { low: mass, best: mass, high: mass };
};

describe("the reading against the ledger", () => {
  test.each([
    [1.0, []],
    [1.049, []],
    [1.06, [["reading off", "far-crane", "stop"]]],
    [0.96, []],
    [0.94, [["reading off", "far-crane", "stop"]]],
  ])("a ledger of %f times the take-off, band 5 %", (factor, kinds) => {
    const r = lifted({ band_pct: 5 }, weighs(factor));
    expect(found(r)).toEqual(kinds);
    const [h] = r.step("trial lift").happenings;
    if (!h) return;
    const F = force(r.ctx, r.end("trial lift"), "far crane");
    within(h.value as number, F, 1e-6);
    within(h.limit as number, F * factor * (factor < 1 ? 1.05 : 0.95), 1e-6 * F);
  });

  test("without a band nothing is compared; without a ledger of the whole set it says what is missing", () => {
    expect(found(lifted({}, weighs(2)))).toEqual([]);
    const none = lifted({ band_pct: 5 }, (plan) => {
      plan.sets[0].ledger = [];
    });
    expect(found(none)).toEqual([["missing data", "far-crane", "caution"]]);
  });

  test("lines that cover every part weigh the set too", () => {
    const parts = (factor: number) => (plan: Plan) => {
      const { lines } = takeOff(plan.sets[0]);
      const kinds = [...new Set(lines.map((l) => l.kind))];
      plan.sets[0].ledger = kinds.map((covers) => {
        const mass = (factor * lines.filter((l) => l.kind === covers).reduce((a, l) => a + l.mass, 0)) / 1000;
        return { item: covers, covers, mass_t: { low: mass, best: mass, high: mass }, source: "invented" };
      });
    };
    expect(found(lifted({ band_pct: 5 }, parts(1)))).toEqual([]);
    expect(found(lifted({ band_pct: 5 }, parts(1.2)))).toEqual([["reading off", "far-crane", "stop"]]);
  });
});

test("a hook that is not on cannot lift", () => {
  const r = ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(plan, "roll-out", step(trial));
    }),
  );
  expect(found(r)).toEqual([["out of order", "far-crane", "stop"]]);
  expect(r.end("trial lift").situation).toEqual(r.step("trial lift").start);
});

describe("a way out that the plan's data do not show to be clear", () => {
  const out = { do: "drive out", transporter: "front", toward: "right", distance_m: 8 } as const;
  function left(then: { [field: string]: unknown }, change: (plan: Plan) => void = () => {}): Ran {
    return ran(
      scenario("one-girder", (plan) => {
        change(plan);
        plan.sets[0].steps = upTo(plan, "front-down", step({ ...out, ...then }));
      }),
    );
  }

  test("ground beside the path: not told is not provable, too little is not clear", () => {
    expect(found(left({}), "drive out")).toEqual([]);
    expect(found(left({ toward: "left", distance_m: 1 }), "drive out")).toEqual([
      ["not provable", "front", "stop"],
    ]);
    const narrow = left({}, (plan) => {
      plan.site.path.clearRight_m = 9;
    });
    // 8 m and half of the deck's 2.6 m are needed.
    expect(found(narrow, "drive out")).toEqual([["not clear", "front", "stop"]]);
    within(narrow.step("drive out").happenings[0].value as number, 9.3, 1e-12);
  });

  test("along the path: beyond its last point there is nothing to drive on", () => {
    const r = left({ toward: "forward", distance_m: 4 }, (plan) => {
      plan.site.stopLines = [];
    });
    // Front axle at 47.1 m, path to 49 m.
    expect(found(r, "drive out")).toEqual([["not provable", "front", "stop"]]);
    within(r.step("drive out").happenings[0].value as number, 51.1, 1e-9);
  });

  test("a stop line holds an empty train too", () => {
    const r = left({ toward: "forward", distance_m: 1.5 });
    expect(r.step("drive out").happenings.map((h) => h.words)).toEqual([
      "stop line front axle stands in its way after 0.9 m",
    ]);
  });

  test("a box of the plan and a crane in the swept ground", () => {
    // The deck of 5.8 m at chainage 45 m sweeps y -1.3 - 8 to 1.3 m.
    const box = (chainage: number) => (plan: Plan) => {
      plan.site.obstacles = [
        {
          name: "cabin",
          kind: "box",
          from: { chainage_m: chainage, y_m: -9, elevation_m: 10 },
          to: { chainage_m: chainage + 2, y_m: -6, elevation_m: 12.6 },
        },
      ];
    };
    expect(
      left({}, box(47))
        .step("drive out")
        .happenings.map((h) => h.words),
    ).toEqual(["cabin stands in its way out"]);
    expect(found(left({}, box(48)), "drive out")).toEqual([]);
    const crane = left({}, (plan) => {
      const near = plan.cranes.find((c) => c.id === "near-crane");
      if (near) near.position = { ...near.position, chainage_m: 44, y_m: -7 };
    });
    expect(crane.step("drive out").happenings.map((h) => h.words)).toContain(
      "near-crane stands in its way out",
    );
  });
});
