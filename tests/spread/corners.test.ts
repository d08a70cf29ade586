// Which corners there are, what they are called, what a spread finds, and that it can be broken off.
import { describe, expect, test } from "vitest";
import {
  allCorners,
  bestRun,
  chosenCorners,
  cornerName,
  cornerOf,
  runSpread,
  type SpreadResult,
  solvePlan,
  withSpread,
} from "../../src/checks/index.ts";
import { atCorner } from "../../src/checks/spread/apply.ts";
import { follow } from "../../src/checks/spread/follow.ts";
import { carried } from "../../src/checks/spread/gather.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { scenario, step, upTo } from "../sequence/plans.ts";

const demo = scenario("demo");
const girder = scenario("one-girder");

describe("the corners", () => {
  test("of the demonstration plan: every quantity alone, then combinations, no name twice", () => {
    const names = chosenCorners(demo, demo.sets[0]).map((c) => c.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.slice(0, 6)).toEqual([
      "weight -4 %",
      "weight +5 %",
      "CG 0.25 m back",
      "CG 0.25 m forward",
      "CG 0.05 m right",
      "CG 0.05 m left",
    ]);
    for (const one of [
      "stiffness -20 %",
      "stiffness of cranes -20 %, stiffness of trains +25 %",
      "hook of far crane 25 mm high",
      "rear settled 10 mm",
      "near R settled 10 mm",
      "friction 0.1",
      "wind to the left at its limit",
      // What random choices found beyond the rest: hooks on stiff cranes, bearings on soft ones, either end in the wind.
      "weight +5 %, CG 0.25 m forward, stiffness of cranes +25 %, hook of far crane 25 mm high",
      "weight +5 %, CG 0.05 m left, stiffness of cranes -20 %",
      "weight -4 %, CG 0.25 m back, CG 0.05 m left, wind to the left at its limit",
      "weight -4 %, CG 0.25 m forward, CG 0.05 m left, wind to the left at its limit",
    ])
      expect(names).toContain(one);
    expect(names).toHaveLength(57);
    // Light with the CG forward and left is where uplift and tipping are worst.
    expect(names.some((n) => n.startsWith("weight -4 %, CG 0.25 m forward, CG 0.05 m left"))).toBe(true);
  });

  test("all: every combination of low, best and high, the best values alone left out", () => {
    // Weight, along, across, friction (high is the plan's own), wind: 3 3 3 2 3; stiffness 5; hooks 1 + 2; supports 1 + 6.
    expect(allCorners(demo, demo.sets[0])).toHaveLength(3 * 3 * 3 * 5 * 3 * 7 * 2 * 3 - 1);
    // A lone girder: nothing across, no wind limit in any step.
    expect(allCorners(girder, girder.sets[0])).toHaveLength(3 * 3 * 5 * 3 * 5 * 2 - 1);
  });

  test("a quantity that is certain has no corner; a blank one has its starter value's", () => {
    const plan = scenario("one-girder", (p) => {
      p.spread = { weight_pct: [0, 0], cgAlong_m: 0, cgAcross_m: 0, hookMismatch_mm: 0, settlement_mm: 0 };
    });
    const names = chosenCorners(plan, plan.sets[0]).map((c) => c.name);
    expect(names.filter((n) => /weight|CG|hook|settled/.test(n))).toEqual([]);
    expect(names).toContain("friction 0.05");
    const spread = runSpread(prepareContext(plan, "girder"), solvePlan(plan).sets[0], []);
    expect(spread.assumed).toEqual(["stiffness_pct", "friction"]);
  });

  test("in a step a corner is called by what can be felt there", () => {
    const corner = cornerOf(demo, {
      weight_pct: 5,
      cranes_pct: 25,
      mismatch: { crane: "far-crane", mm: 25 },
      settlement: { under: "near L", mm: 10 },
      wind: 1,
    });
    const set = solvePlan(demo).sets[0];
    const at = (id: string) =>
      cornerName(
        demo,
        set,
        [corner],
        0,
        set.steps.findIndex((s) => s.step.id === id),
      );
    expect(at("brief")).toBe("weight +5 %");
    expect(at("first-roll")).toBe("weight +5 %, wind to the left at its limit");
    expect(at("front-down")).toBe("weight +5 %, stiffness of cranes +25 %");
    expect(at("landing")).toBe(corner.name);
    expect(cornerName(demo, set, [corner], bestRun, 0)).toBe("best values");
  });
});

describe("the run", () => {
  const set = solvePlan(girder).sets[0];
  const ctx = prepareContext(girder, "girder");
  const corners = chosenCorners(girder, girder.sets[0]);

  test("passing over steps already followed changes no bit: every corner followed alone", () => {
    const spread = runSpread(ctx, set, corners);
    const low = new Float64Array(spread.low.length).fill(Number.NaN);
    const high = low.slice();
    for (const corner of [null, ...corners])
      follow(
        { ...(corner ? atCorner(ctx, corner, new Map()) : { ctx, together() {}, gust() {} }), corner },
        set,
        new Map(),
        {
          happening: () => {},
          lost: () => {},
          pose: (i, pose) => {
            set.supports.forEach((support, j) => {
              const value = carried(support, pose, j);
              const at = i * set.supports.length + j;
              if (!(value >= low[at])) low[at] = value;
              if (!(value <= high[at])) high[at] = value;
            });
          },
        },
      );
    expect(spread.low).toEqual(low);
    expect(spread.high).toEqual(high);
  }, 120_000);

  test("the best values lie inside, one to one with the stored poses; each worst value names its corner", () => {
    const spread = runSpread(ctx, set, corners);
    expect(spread.low).toHaveLength(set.count * set.supports.length);
    set.supports.forEach((s, j) => {
      for (let i = 0; i < set.count; i++) {
        const at = i * set.supports.length + j;
        const best = s.band ? set.shares[at] : set.forces[at];
        if (Number.isNaN(set.forces[at])) expect(spread.low[at]).toBeNaN();
        else {
          expect(spread.low[at]).toBeLessThanOrEqual(best);
          expect(spread.high[at]).toBeGreaterThanOrEqual(best);
        }
      }
    });
    for (const w of spread.worst) {
      expect(w.corner === bestRun || w.corner < corners.length).toBe(true);
      expect(w.pose).toBeLessThan(set.count);
    }
    const far = spread.worst.find((w) => w.check === "hook load" && w.subject === "far crane");
    expect(corners[far?.corner ?? 0].name).toMatch(/^weight \+3 %, CG 0.1 m forward/);
  }, 60_000);

  test("it is broken off between two corners, and says how far it came", () => {
    const told: number[] = [];
    const part = runSpread(ctx, set, corners, (done, of) => {
      expect(of).toBe(corners.length);
      told.push(done);
      return done < 3;
    });
    expect(told).toEqual([0, 1, 2, 3]);
    expect(part.done).toBe(3);
    const three = runSpread(ctx, set, corners.slice(0, 3));
    expect(part.high).toEqual(three.high);
  });
});

describe("findings of the spread", () => {
  const alone = (plan: typeof girder, parts: Parameters<typeof cornerOf>[1][]): SpreadResult =>
    runSpread(
      prepareContext(plan, plan.sets[0].id),
      solvePlan(plan).sets[0],
      parts.map((part) => cornerOf(plan, part)),
    );

  test("a corner without equilibrium is a stop that names it: the CG beyond the front train", () => {
    // By hand: the CG stands 1 m behind the front train; 1.5 m further it has nothing to stand on.
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = upTo(p, "roll-out");
      p.sets[0].onTransporters[1].deckAt_m = 16;
    });
    const { findings } = alone(plan, [{ cgAlong_m: 1.5 }]);
    const lost = findings.find((f) => f.check === "in the spread: no equilibrium");
    expect(lost?.level).toBe("stop");
    expect(lost?.words).toMatch(/^in the spread: no equilibrium: .*; corner: CG 1.5 m forward$/);
    expect(alone(plan, [{ cgAlong_m: 0.5 }]).findings.map((f) => f.check)).not.toContain(
      "in the spread: no equilibrium",
    );
  });

  test("a limit passed at a corner only: once, with value, limit and corner; not where the best run passes it too", () => {
    // By hand: front share W (15 - 4) / 16 = 70.66 kN; a bunk rated 72 kN holds it, and 3 % more does not.
    const rated = (kN: number) =>
      scenario("one-girder", (p) => {
        p.sets[0].steps = upTo(p, "roll-out");
        for (const t of p.transporters) t.bunkRated_kN = kN;
      });
    const heavy = [{ weight_pct: 3 }, { weight_pct: 2 }];
    const found = alone(rated(72), heavy).findings.filter((f) => f.check === "in the spread: bunk load");
    expect(found).toHaveLength(1);
    expect(found[0].value).toBeCloseTo(70.655 * 1.03, 2);
    expect(found[0].limit).toBe(72);
    expect(found[0].words).toMatch(/corner: weight \+3 %$/);
    expect(alone(rated(70), heavy).findings.map((f) => f.check)).not.toContain("in the spread: bunk load");
  });

  test("a cap that only a heavy corner meets is a stop of the spread", () => {
    const plan = scenario("one-girder", (p) => {
      p.sets[0].steps = upTo(
        p,
        "far-hook-up",
        step({
          do: "take load",
          crane: "far-crane",
          until: { frees: "front left" },
          loadCap_kN: 47.5,
          heightCap_mm: 300,
        }),
      );
    });
    // By hand: the front comes free at W (15 - 4) / 24 = 47.10 kN; 3 % heavier it needs 48.5 kN.
    expect(solvePlan(plan).findings.map((f) => f.check)).not.toContain("cap reached");
    const { findings } = alone(plan, [{ weight_pct: 3 }]);
    expect(findings.map((f) => f.check)).toContain("in the spread: cap reached");
  });

  test("a shift that the masses cannot make is a caution with what is allowed, and the other corners are run", () => {
    const { findings, done } = alone(girder, [{ cgAlong_m: 6 }, { weight_pct: 3 }]);
    expect(done).toBe(2);
    expect(findings[findings.length - 1].check).toBe("in the spread: not possible");
    expect(findings[findings.length - 1].words).toMatch(/masses below zero/);
  });

  test("joined to a result they are in its order, and the result as given stays", () => {
    const plan = scenario("one-girder", (p) => {
      for (const t of p.transporters) t.bunkRated_kN = 72;
    });
    const result = solvePlan(plan);
    const count = result.findings.length;
    const spread = alone(plan, [{ weight_pct: 3 }]);
    const whole = withSpread(result, spread);
    expect(result.findings).toHaveLength(count);
    expect(result.sets[0].spread).toBeUndefined();
    expect(whole.sets[0].spread).toBe(spread);
    expect(whole.findings).toHaveLength(count + spread.findings.length);
    expect(whole.worst).toBe("stop");
  });
});
