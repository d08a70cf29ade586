// Ground below cranes and transporters: traces evaluated anew, the swing against a fine search, walks, zones of the path.

import { describe, expect, test } from "vitest";
import { checkList, type Measure, solvePlan, traceOf } from "../../../src/checks/index.ts";
import { footingOf, pressing, pressUnder, rectangle } from "../../../src/mechanics/index.ts";
import { byId, type Plan } from "../../../src/plan/index.ts";
import { type Pose, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { ran, scenario, step, upTo } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const names = [
  "track pressure",
  "track pressure over the swing",
  "track pressure unloaded",
  "mat bending",
  "mat shear",
  "axle pressure",
  "tyre pressure",
  "structure underfoot",
];

function ofGround(plan: Plan): Measure[] {
  const ctx = prepareContext(plan, plan.sets[0].id);
  return [...checkList.makers, ...checkList.onDemand]
    .flatMap((make) => make(ctx))
    .filter((m) => names.includes(m.check));
}

/** The demonstration day up to the far crane's taking its load. */
const day = (change: (plan: Plan) => void = () => {}) =>
  scenario("demo", (plan) => {
    plan.sets[0].steps = upTo(plan, "far-takes");
    plan.site.underfoot.push({ name: "culvert", from_m: 200, to_m: 206, allowedLine_kN: 400 });
    change(plan);
  });

describe("traces", () => {
  const solidTimber = (plan: Plan) => {
    for (const crane of plan.cranes) if (crane.mat) crane.mat.section = undefined;
    for (const t of plan.transporters) t.spreadArea = { length_m: 2, width_m: 1 };
  };
  const weak = (plan: Plan) => {
    for (const crane of plan.cranes) {
      crane.ballastBehind_m = undefined;
      crane.boomMass_t = undefined;
      crane.cgBehind_m = 2;
      if (crane.mat) Object.assign(crane.mat, { bending_MPa: undefined });
      crane.allowablePressure_kPa = undefined;
      crane.soil = "city medium gravel";
    }
  };
  test.each([
    ["as it stands", () => {}],
    ["solid mats, spread areas", solidTimber],
    ["no places of ballast and boom, mats without stresses, presumptive ground", weak],
  ] as const)("every check of the ground gives its numbers: %s", (_, change) => {
    const plan = day(change);
    const result = solvePlan(plan);
    const [set] = result.sets;
    const last = set.steps.length - 1;
    let told = 0;
    for (const { check, subject } of ofGround(plan))
      for (const progress of [0, 0.37, 1]) {
        const traced = traceOf(plan, result, { check, subject, set: set.setId, step: last, progress });
        if (!traced.found) continue;
        expect(traced.value.value).toBe(traced.reading.value);
        expect(traced.limit?.value).toBe(traced.reading.limit);
        expectTrue(traced.trace, plan);
        told++;
      }
    expect(told).toBeGreaterThan(9);
  });
});

test("the pressure over the swing is that of the worst of 3600 directions", () => {
  const plan = day();
  const ctx = prepareContext(plan, plan.sets[0].id);
  const { set } = ctx;
  const run = ran(plan);
  const pose = run.end("far-takes");
  const m = ofGround(plan).find(
    (x) => x.check === "track pressure over the swing" && x.subject === "far crane",
  );
  const traced = m?.trace?.(pose);
  const load = (symbol: string): number => {
    const all = traced ? [traced.value] : [];
    for (const one of all) {
      if (one.symbol === symbol) return one.value;
      all.push(...one.from);
    }
    throw new Error(`no ${symbol} in the trace of set ${set.id}`);
  };
  const { trackGauge_m: g, trackLength_m: l, trackWidth_m: w = 0 } = byId(plan.cranes, "far-crane");
  const f = footingOf([rectangle(0, g / 2, l, w), rectangle(0, -g / 2, l, w)]);
  const V = load("V");
  const far = m?.read(pose);
  const where = /radius ([\d.]+) m, ([\d.]+) kN/.exec(far?.where ?? "") ?? [];
  // By hand from the plan: 780 t of which 320 t of ballast at -7 m, 58 t of boom half-way out, 402 t at -0.8 m.
  const [radius, hook] = [Number(where[1]), Number(where[2])];
  const e = (hook * radius + 9.80665 * ((58 * (1.6 + radius)) / 2 - 320 * 7 - 402 * 0.8)) / (V / 1000);
  let worst = 0;
  for (let i = 0; i < 3600; i++) {
    const a = (i * Math.PI) / 1800;
    worst = Math.max(worst, pressUnder(f, V, e * Math.cos(a), e * Math.sin(a), pressing()).most);
  }
  // The words round the radius to 0.1 m and the hook load to 1 kN: 50 kNm of some 20 MNm, and as much of the pressure.
  expect(Math.abs(load("p") - worst)).toBeLessThan(5e-3 * worst);
});

test("a crane that walks takes its ground with it: a structure underfoot is met where it walks to", () => {
  const at = (dx_m: number) =>
    solvePlan(
      scenario("one-girder", (plan) => {
        const far = byId(plan.cranes, "far-crane");
        far.cgBehind_m = 0;
        plan.site.underfoot.push({ name: "chamber", from_m: 92, to_m: 93, fromY_m: 0, toY_m: 12 });
        plan.sets[0].steps = [step({ do: "walk", crane: "far-crane", dx_m, dy_m: 0 })];
      }),
    ).findings.filter((f) => f.check === "structure underfoot");
  // Tracks of 6 m about chainage 86 end at 89; 3.5 m on they end at 92.5.
  expect(at(2.9)).toEqual([]);
  const [one] = at(3.5);
  expect(one).toMatchObject({ level: "caution", subject: "chamber" });
  expect(one.words).toContain("far crane stands above chamber");
});

test("ground that sinks in a rest beyond the action level of the train on it is told", () => {
  const cautions = (trigger: number) =>
    solvePlan(
      scenario("one-girder", (plan) => {
        for (const t of plan.transporters) t.settlementTrigger_mm = trigger;
        const rest = { do: "rest", minutes: 60, settlement_mm: { "front aft": 5 } } as const;
        plan.sets[0].steps = [step(rest)];
      }),
    ).findings.filter((f) => f.check === "settlement" && f.set !== "");
  expect(cautions(5)).toEqual([]);
  expect(cautions(4.9)).toMatchObject([{ subject: "front", value: 5, limit: 4.9, level: "caution" }]);
});

describe("the path by chainage", () => {
  const rolled = (change: (plan: Plan) => void) => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = upTo(p, "roll-out");
      change(p);
    });
    return solvePlan(plan).findings.filter((f) => f.check === "axle pressure");
  };
  const points = (weak: number, from: number, to: number) => (plan: Plan) => {
    const one = { elevation_m: 10, crossfall_pct: 0, pressureSource: "invented" };
    plan.site.path.points = [
      { ...one, chainage_m: 0, allowablePressure_kPa: 100 },
      { ...one, chainage_m: from - 1e-3, allowablePressure_kPa: 100 },
      { ...one, chainage_m: from, allowablePressure_kPa: weak },
      { ...one, chainage_m: to, allowablePressure_kPa: weak },
      { ...one, chainage_m: to + 1e-3, allowablePressure_kPa: 100 },
      { ...one, chainage_m: 49, allowablePressure_kPa: 100 },
    ];
  };

  test("a weak stretch is met only by the train that passes it, from where its foremost line comes on to it", () => {
    // Front lines run from 32.9..37.1 to 42.9..47.1 m; the rear ones from 16.9..21.1 to 26.9..31.1 m.
    const stops = rolled(points(9, 40, 42));
    expect(new Set(stops.map((f) => f.subject))).toEqual(new Set(["front"]));
    // Foremost line at 37.1 m and 10 m of way: it comes on to the stretch at 0.29, found to 1e-3 of the step.
    expect(Math.abs((stops[0].from?.progress ?? 0) - 0.29)).toBeLessThan(1e-3);
    expect(rolled(points(9.7, 40, 42))).toEqual([]);
  });

  test("a weak stretch of 10 mm, passed between stored poses, is met too", () => {
    expect(rolled(points(9, 40.4, 40.41)).length).toBeGreaterThan(0);
  });

  test("a stretch of which one end says nothing is an open item and not judged", () => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = upTo(p, "roll-out");
    });
    const open = solvePlan(plan).findings.filter((f) => f.subject === "path ground");
    expect(open).toHaveLength(1);
    expect(open[0].check).toBe("limit not set");
  });
});

test("no stored pose of the demonstration day has a crane beyond its ground, hooks on or swung round", () => {
  const plan = day();
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  let read = 0;
  for (const m of ofGround(plan).filter((x) => x.check.startsWith("track")))
    for (let i = 0; i < stored.length; i += 5) {
      const r = m.read(stored[i]);
      if (Number.isNaN(r.value)) continue;
      expect(r.value, `${m.check} of ${m.subject}`).toBeLessThan(r.limit);
      read++;
    }
  expect(read).toBeGreaterThan(20);
});
