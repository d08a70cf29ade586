// What a plan says of wind, and what it leaves out: forecasts, states in which a set is left, limits that are missing.

import { describe, expect, test } from "vitest";
import { checkList } from "../../../src/checks/index.ts";
import { forecastFindings, readingOfForecast } from "../../../src/checks/wind/forecast.ts";
import { lacking } from "../../../src/checks/wind/lacking.ts";
import { leftWind, overnightCheck } from "../../../src/checks/wind/overnight.ts";
import { goTable, tableFindings } from "../../../src/checks/wind/table.ts";
import { checkPlan, type Plan, type SiteWind } from "../../../src/plan/index.ts";
import { type Pose, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { within } from "../../reference/close.ts";
import { scenario, step } from "../../sequence/plans.ts";

/** The demonstration set lashed, and then what is asked for. */
const day = (change: (plan: Plan, wind: SiteWind) => void = () => {}) =>
  scenario("demo", (plan) => {
    const [set] = plan.sets;
    set.steps = set.steps.slice(0, 2);
    plan.site.wind ??= {};
    change(plan, plan.site.wind);
  });

function judged(plan: Plan) {
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  const run = runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  return { ctx, run, stored };
}

describe("forecasts", () => {
  // Lashing takes 20 minutes from 07:00 on, the briefing 15; 120 are kept in hand.
  test("the demonstration day lies within its own", () => expect(forecastFindings(day())).toEqual([]));

  test("a mean over 10 minutes at 10 m, as a gust at 11 m in open country: 1.43 and a little more (2 %)", () => {
    const plan = day();
    const one = { from: "", to: "", speed_m_per_s: 10, averaging_s: 600 };
    within(readingOfForecast(plan, one), 14.3, 0.02);
    within(readingOfForecast(plan, { ...one, averaging_s: 3 }), 10, 0.02);
  });

  test("each step by the minutes before it: wind from 07:20 on meets the second and not the first", () => {
    const plan = day((p, wind) => {
      p.sets[0].steps[1].windLimit_m_per_s = 14;
      wind.forecast = [
        { from: "2026-05-06T06:00", to: "2026-05-06T07:20", speed_m_per_s: 3 },
        { from: "2026-05-06T07:20", to: "2026-05-06T12:00", speed_m_per_s: 15 },
      ];
    });
    expect(forecastFindings(plan).map((f) => [f.level, f.subject])).toEqual([["stop", "brief"]]);
  });

  test("hours without a forecast, steps without minutes, a set without a start are told", () => {
    const short = day((_, wind) => {
      wind.forecast = [{ from: "2026-05-06T06:00", to: "2026-05-06T07:30", speed_m_per_s: 3 }];
    });
    expect(forecastFindings(short).map((f) => [f.level, f.check, f.words])).toEqual([
      ["note", "missing data", "no forecast for the whole time of brief"],
    ]);
    const timeless = day((p) => {
      p.sets[0].steps[0].minutes = undefined;
    });
    expect(forecastFindings(timeless)[0].words).toMatch(/^step lash-down has no minutes/);
    const unstarted = day((p) => {
      p.sets[0].times = undefined;
    });
    expect(forecastFindings(unstarted)[0].subject).toBe("times");
  });

  test("one that ends before it begins is refused, and so is a factor without its source", () => {
    const plan = structuredClone(day());
    plan.site.wind = {
      forecast: [{ from: "2026-05-06T08:00", to: "2026-05-06T07:00", speed_m_per_s: 3 }],
      design: { gust_m_per_s: 40, source: "invented", factor: 0.7 },
    };
    const read = checkPlan(plan);
    const errors = read.ok ? [] : read.errors.map((e) => e.path);
    expect(errors).toEqual(["site.wind.forecast[0].to", "site.wind.design.factor"]);
  });
});

describe("a set that is left", () => {
  test("design gust times factor, squared, with the height: 0.613 x 1.02 x (0.73 x 40)2 (1 %)", () => {
    const wind = leftWind(day());
    expect(wind?.part).toBe(0.73);
    within(wind?.pressure ?? 0, 0.613 * 1.02 * (0.73 * 40) ** 2, 0.01);
    const long = leftWind(
      day((_, w) => {
        if (w.design) w.design.days = 700;
      }),
    );
    within((long?.pressure ?? 0) / (wind?.pressure ?? 1), (0.75 / 0.73) ** 2, 1e-12);
  });

  test("a rest on its trains is judged in it, at its own place and at the plan's end no second time", () => {
    const plan = day((p) => {
      p.sets[0].steps.push(step({ do: "rest", id: "night", on: ["packing"], minutes: 600 }));
    });
    const { ctx, run, stored } = judged(plan);
    const found = overnightCheck(checkList.makers)(ctx, run, stored);
    // 175 kN across on trains whose groups have 448 kN each: some are beyond, and it says where.
    expect(found.length).toBeGreaterThan(0);
    for (const f of found) {
      expect(f.check).toMatch(/^overnight: /);
      expect(f.words).toContain("left at rest night");
      expect(f.from?.step).toBe(2);
    }
  });

  test("without a design gust it is an open item, and nothing is passed", () => {
    const { ctx, run, stored } = judged(
      day((_, w) => {
        w.design = undefined;
      }),
    );
    const found = overnightCheck(checkList.makers)(ctx, run, stored);
    expect(found.map((f) => [f.level, f.check, f.subject])).toEqual([
      ["note", "missing data", "site.wind.design"],
    ]);
  });
});

describe("the table", () => {
  const limited = (value: number) =>
    goTable({
      plan: day((p) => {
        p.limits.rules.push({ id: "strong wind", value, unit: "m/s", source: "owner", chosenBy: "owner" });
      }),
    }).stop;

  test("a plan's rule makes it lower, and not higher; an override does, by name", () => {
    const standing = goTable({ plan: day() }).stop;
    expect(standing.limit.chosenBy).toBe("default");
    within(limited(8).reading / standing.reading, 0.8, 1e-12);
    expect(limited(8).limit.chosenBy).toBe("owner");
    expect(limited(12).reading).toBe(standing.reading);
    const override = { limit: "strong wind", value: 12, source: "engineer", chosenBy: "somebody" };
    const higher = goTable({ plan: day((p) => void p.limits.overrides.push(override)) }).stop;
    within(higher.reading / standing.reading, 1.2, 1e-12);
  });

  test("a step that moves without a wind limit is an open item, one that stands is not", () => {
    const plan = day((p) => {
      p.sets[0].steps.push(step({ do: "roll", distance_m: 1 }));
    });
    const { ctx, run, stored } = judged(plan);
    const open = tableFindings(ctx, run, stored).filter((f) => f.check === "limit not set");
    expect(open.map((f) => f.words)).toEqual([
      "steps that move the set, or leave it on hooks, without a wind limit: roll; nothing is checked in wind there",
    ]);
  });
});

test("what the plan lacks is a note for each, by its field", () => {
  expect(lacking(day())).toEqual([]);
  const bare = day((p) => {
    p.site.wind = undefined;
    p.cranes[0].wind = undefined;
  });
  expect(lacking(bare).map((f) => f.subject)).toEqual(["site.wind.instrument", "cranes[0].wind"]);
  const heightless = day((_, w) => {
    w.setHeight_m = undefined;
  });
  expect(lacking(heightless).map((f) => f.subject)).toEqual(["site.wind.setHeight_m"]);
});
