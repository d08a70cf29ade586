// The parts of a proposal: quick look against the solver, the way out of the trains, lashings and names, coarse runs.
// Common practice, no source, for the ways out; the rest compares the program's own parts with one another.
import { describe, expect, test } from "vitest";
import { planOf } from "../../src/checks/propose/build.ts";
import { boundsOf, type Choice, placesOf } from "../../src/checks/propose/choice.ts";
import { Judge } from "../../src/checks/propose/evaluate.ts";
import { quickLook } from "../../src/checks/propose/lever.ts";
import { type Prospect, prospectsOf } from "../../src/checks/propose/prospect.ts";
import { leverLoads } from "../../src/checks/propose/steps.ts";
import { waysOut } from "../../src/checks/propose/wayOut.ts";
import type { Plan } from "../../src/plan/index.ts";
import { prepareContext, runSet } from "../../src/sequence/index.ts";
import { demo, strippedDemo } from "./sites.ts";

function prospect(change: (plan: Plan) => void = () => {}): Prospect {
  const plan = strippedDemo();
  change(plan);
  const all = prospectsOf(plan, "set-1");
  if (typeof all === "string") throw new Error(all);
  return all[0];
}

const choice: Choice = {
  rearDeck: 8.5,
  frontDeck: 36,
  farPick: 55,
  nearPick: 5,
  shortOf: 1,
  farShare: 0.9,
  nearShare: 0.9,
  landFirst: "far",
};
const FIRST = { lift: 200, lowerFar: 0, lowerNear: 0, farCap: 3000, nearCap: 3000, rearDown: 0 };

describe("the quick look", () => {
  // Levers know no ground below the cranes: it is strong here.
  const onRock = (plan: Plan) => {
    for (const crane of plan.cranes) crane.allowablePressure_kPa = 10_000;
  };

  // Rigid levers know no stroke, no elastic share and no swing: bound chosen from what these cost in the demo.
  test.each([
    [{}],
    [{ farPick: 50 }],
    [{ nearPick: 12 }],
    [{ rearDeck: 4, frontDeck: 40 }],
    [{ rearDeck: 15, frontDeck: 42, farPick: 58, nearPick: 2 }],
  ])("lies no more than a twentieth above what the solver finds, with %j", (change) => {
    const p = prospect(onRock);
    const c = { ...choice, ...change };
    const judged = new Judge(p).judge(c);
    expect(quickLook(p)(c)).toBeLessThan(judged.worst * 1.05);
    expect(quickLook(p)(c)).toBeGreaterThan(judged.worst * 0.6);
  });

  test("calls a place off the far crane's chart what it is, as the solver does", () => {
    const p = prospect(onRock);
    const c = { ...choice, rearDeck: 4, frontDeck: 44 };
    const judged = new Judge(p).judge(c);
    expect(judged.stop).toBe(true);
    expect(judged.governing.check).toBe("chart left");
    expect(quickLook(p)(c)).toBeGreaterThan(10);
  });

  test("finds decks that meet, and a path too short, worse than any use", () => {
    const p = prospect();
    expect(quickLook(p)({ ...choice, rearDeck: 27, frontDeck: 31 })).toBeGreaterThan(10);
    const short = prospect((plan) => {
      plan.site.path.points = plan.site.path.points.slice(-2);
    });
    expect(placesOf(short, choice)).toBeNull();
    expect(quickLook(short)(choice)).toBeGreaterThan(10);
  });
});

test("hook loads by levers, with moments taken by hand", () => {
  const p = prospect();
  const W = p.weight / 1000;
  const [cg] = p.cg;
  const loads = leverLoads(p, choice);
  expect(loads.far).toBeCloseTo((W * (cg - 8.5)) / (55 - 8.5), 9);
  expect(loads.near).toBeCloseTo((W * (55 - cg)) / (55 - 5), 9);
  expect(loads.near + loads.farTogether).toBeCloseTo(W, 9);
});

test("the load taken before jacking down stays below what the lightest set of the spread gives", () => {
  const p = prospect((plan) => {
    plan.spread.weight_pct = [-8, 4];
  });
  expect(boundsOf(p).farShare[1]).toBeCloseTo(0.91, 9);
});

describe("places along the path", () => {
  test("the front axle stands at the stop line when the far crane takes load, the set over its seats at the end", () => {
    const p = prospect();
    const places = placesOf(p, choice);
    const axle = (places?.farTakes ?? 0) + 36 + 3.5 * 1.4;
    expect(axle).toBeLessThanOrEqual(209.5 + 1e-9);
    expect(axle).toBeGreaterThan(209.48);
    const plan = planOf(p, choice, FIRST) as Plan;
    const set = plan.sets[0];
    let at = set.start.rearEnd_m;
    for (const s of set.steps) {
      if (s.do === "roll" || s.do === "roll together") at += s.distance_m;
      if (s.do === "bring over") at += s.dx_m;
    }
    expect(at + 0.6).toBeCloseTo(212, 6);
  });
});

describe("the way out", () => {
  const out = (change: (plan: Plan) => void = () => {}) => {
    const p = prospect(change);
    const places = placesOf(p, choice);
    if (!places) throw new Error("no places");
    return waysOut(p, places, choice.rearDeck, choice.frontDeck);
  };

  test("the front train leaves away from the near crane, the rear train back along the path", () => {
    expect(out().front.toward).toBe("right");
    expect(out().rear.toward).toBe("back");
  });

  test("with the near crane on the right it leaves to the left, where the ground is free", () => {
    const mirrored = out((plan) => {
      for (const c of plan.cranes) if (c.kind === "near") c.position.y_m *= -1;
      plan.site.path.clearLeft_m = 20;
    });
    expect(mirrored.front.toward).toBe("left");
  });

  test("a box in the way sends it to the other side", () => {
    const box = out((plan) => {
      plan.site.path.clearLeft_m = 20;
      for (const c of plan.cranes) if (c.kind === "near") c.position.y_m = 40;
      plan.site.obstacles = [
        {
          name: "cabin",
          kind: "box",
          from: { chainage_m: 200, y_m: -8, elevation_m: 30 },
          to: { chainage_m: 210, y_m: -3, elevation_m: 33 },
        },
      ];
    });
    expect(box.front.toward).toBe("left");
  });

  test("a near crane beside the path behind the rear train sends that one across", () => {
    const crowded = out((plan) => {
      for (const c of plan.cranes)
        if (c.kind === "near") Object.assign(c.position, { y_m: 8, chainage_m: 190 });
    });
    expect(crowded.rear.toward).toBe("right");
  });
});

describe("the plan that comes out", () => {
  test("has the lashings moved with their trains and tied before the roll", () => {
    const plan = planOf(prospect(), choice, FIRST) as Plan;
    expect(plan.lashings.map((l) => l.at_m)).toEqual([8.5, 8.5, 36, 36]);
    const moved = planOf(prospect(), { ...choice, rearDeck: 7 }, FIRST) as Plan;
    expect(moved.lashings.map((l) => l.at_m)).toEqual([7, 7, 36, 36]);
  });

  test("copies a lashing that another set uses as well", () => {
    const p = prospect((plan) => {
      plan.sets.push({ ...structuredClone(plan.sets[0]), id: "set-2" });
    });
    const plan = planOf(p, { ...choice, rearDeck: 7 }, FIRST) as Plan;
    expect(plan.lashings).toHaveLength(8);
    expect(plan.lashings.slice(0, 4)).toEqual(p.plan.lashings);
    expect(plan.lashings.slice(4).map((l) => [l.set, l.at_m])).toEqual([
      ["set-1", 7],
      ["set-1", 7],
      ["set-1", 36],
      ["set-1", 36],
    ]);
  });

  test("keeps the states below, from the first travel on when their step is gone", () => {
    const [p] = prospectsOf(demo(), "set-1") as Prospect[];
    const plan = planOf(p, choice, FIRST) as Plan;
    expect(plan.site.below.states?.map((s) => s.step)).toEqual(["roll-out"]);
    expect(plan.accept.every((a) => plan.sets[0].steps.some((s) => s.id === a.step))).toBe(true);
  });
});

test("a coarse run ends every step in the very situation of a full run, with the same forces", () => {
  const ctx = prepareContext(demo(), "set-1");
  const full = runSet(ctx, []);
  const coarse = runSet(ctx, [], { coarse: true });
  expect(coarse.count).toBeLessThan(full.count);
  const m = ctx.supports.length;
  full.steps.forEach((s, i) => {
    const c = coarse.steps[i];
    expect(c.start).toEqual(s.start);
    expect(c.ends).toEqual(s.ends);
    const last = (run: typeof full, step: typeof s) => {
      const row = step.first + step.count - 1;
      return Array.from(run.forces.subarray(row * m, (row + 1) * m));
    };
    expect(last(coarse, c)).toEqual(last(full, s));
  });
});
