// A crane that walks with load over ground of its own: which stretch governs, where it is met, and what stands in.
//
// Hand statics: the far crane of 110 t right ahead of the girder at chainage 86, its CG 1 m behind its centre, has 40 kN of
// the girder on its hook, with block, rigging and rope 52.4 kN, at 33.08 m with the growth of its radius. Both tracks are
// 6 by 0.9 m, 4.2 m apart; they point along x.

import { describe, expect, test } from "vitest";
import { type Finding, solvePlan } from "../../../src/checks/index.ts";
import { byId, type CraneGround, type Plan } from "../../../src/plan/index.ts";
import { scenario, step, upTo } from "../../sequence/plans.ts";

const G = 9.80665;
const HOOK = 40 + (0.6 + 0.3 + 0.0195 * 4 * 4.6) * G;
const RADIUS = 33.08;
const CRANE = 110 * G;
const AREA = 2 * 6 * 0.9;
const ALONG = 3 / ((2 * 0.9 * 6 ** 3) / 12);
const ACROSS = 2.55 / (AREA * (2.1 ** 2 + 0.9 ** 2 / 12));

/** Pressure below the tracks after a way from the place, kPa: all of both presses. */
function pressure(dx: number, dy: number): number {
  // The hook stays where it is: the crane comes nearer to it, and its boom points aside.
  const R = Math.hypot(RADIUS + dx, dy);
  const M = HOOK * R - CRANE;
  const turn = Math.atan2(Math.abs(dy), RADIUS + dx);
  return (CRANE + HOOK) / AREA + M * (Math.cos(turn) * ALONG + Math.sin(turn) * ACROSS);
}

const source = { pressureSource: "invented" };

function walked(ground: CraneGround[] | undefined, dx_m: number, dy_m: number, change = (_: Plan) => {}) {
  const plan = scenario("one-girder", (p) => {
    const crane = byId(p.cranes, "far-crane");
    crane.position.y_m = 0;
    crane.cgBehind_m = 1;
    crane.travelWithLoad = true;
    p.site.craneGround = ground;
    p.sets[0].steps = upTo(p, "far-takes", step({ do: "walk", crane: "far-crane", dx_m, dy_m }));
    change(p);
  });
  const found = solvePlan(plan).findings;
  return { plan, found, last: plan.sets[0].steps.length - 1 };
}

const of = (found: readonly Finding[], check: string) => found.filter((f) => f.check === check);

/** Radius and rope of the hand statics are rounded: 1 %. */
const about = (value: number | null, by: number) =>
  expect(Math.abs((value ?? Number.NaN) - by)).toBeLessThanOrEqual(0.01 * by);

describe("a walk of 2 m toward the girder", () => {
  const firm = { name: "hardstanding", from_m: 70, to_m: 84, allowablePressure_kPa: 200, ...source };

  test("a soft strip below the tracks is met where their end comes on to it, with its own limit and source", () => {
    const soft = { name: "drain", from_m: 82.3, to_m: 82.31, allowablePressure_kPa: 150, ...source };
    const { found, last } = walked([firm, soft], -2, 0);
    const stops = of(found, "track pressure").filter((f) => f.from?.step === last);
    expect(stops).toHaveLength(1);
    const [one] = stops;
    // The tracks end at 83 m and come to 82.31 m after 0.69 m of 2 m: found to 1e-3 of the step.
    expect(Math.abs((one.from?.progress ?? 0) - 0.345)).toBeLessThan(1e-3);
    expect(one).toMatchObject({ subject: "far crane", level: "stop", limit: 150 });
    expect(one.source).toBe("site.craneGround[1]: invented");
    expect(one.words).toContain("on 'drain'");
    about(one.value, pressure(-0.69, 0));
    expect(of(found, "missing data").filter((f) => f.subject.startsWith("site.craneGround"))).toEqual([]);
  });

  test("of two stretches and its own place the weakest counts, until the tracks have left that place", () => {
    const better = { ...firm, allowablePressure_kPa: 1000 };
    // 130 kPa are too little at the place itself, and as far as the tracks stand on it: 6 m on.
    const weak = (p: Plan) => {
      byId(p.cranes, "far-crane").allowablePressure_kPa = 130;
    };
    expect(pressure(-6, 0)).toBeGreaterThan(130);
    for (const [way, until] of [
      [2, 1],
      [7, 6 / 7],
    ]) {
      const { found, last } = walked([better], -way, 0, weak);
      const [one] = of(found, "track pressure").filter((f) => f.to?.step === last);
      expect(one).toMatchObject({ limit: 130, source: "cranes[0]: invented for this demonstration" });
      // The better ground alone bears it once it has left its place: found to 1e-3 of the step.
      expect(Math.abs((one.to?.progress ?? 0) - until)).toBeLessThan(1e-3);
    }
  });

  test("where the plan says nothing of the way, what its own place allows stands in, and it says so", () => {
    const { found, last } = walked(undefined, -2, 0);
    const [one] = of(found, "missing data").filter((f) => f.subject === "site.craneGround");
    expect(one).toMatchObject({ level: "caution", from: { step: last, progress: 0 } });
    expect(one.words).toMatch(/far crane.*the 300\.0 kPa of its own place stand in/);
    // Half a strip does not do: the way goes to 81 m.
    const half = [{ ...firm, from_m: 81.5 }];
    expect(of(walked(half, -2, 0).found, "missing data").map((f) => f.subject)).toContain("site.craneGround");
  });

  test("a stretch without a value, or with a soil class alone, or without a source, is told", () => {
    const { found } = walked(
      [
        { name: "lawn", from_m: 70, to_m: 81.8 },
        { name: "clay", from_m: 81.8, to_m: 82.5, soil: "ibc clay" },
        { name: "gravel", from_m: 82.5, to_m: 84, allowablePressure_kPa: 200 },
      ],
      -2,
      0,
    );
    const told = found.filter((f) => f.subject.startsWith("site.craneGround")).map((f) => [f.check, f.level]);
    expect(told).toEqual(
      expect.arrayContaining([
        ["limit not set", "note"],
        ["presumptive bearing", "caution"],
        ["ground record", "caution"],
        ["missing data", "caution"],
      ]),
    );
    // 1500 psf of IBC 2012 Table 1806.2.
    const [one] = of(found, "track pressure").filter((f) => f.source.includes("Table 1806.2"));
    expect(Math.abs((one.limit ?? 0) - 71.8)).toBeLessThan(0.05);
  });
});

test("a soft patch that a corner of the tracks cuts between two stored poses is found where it is cut", () => {
  // The tracks go 2 m forward and 0.5 m to the right; the corner at (83, 2.55) goes along y = 2.55 - (83 - x)/4. A patch
  // from 5 to 10 mm to the right of that at x = 82.2 comes below the front end at 0.8/2 = 0.4 and is left at 0.42.
  const [x, y] = [82.2, 2.55 - 0.2];
  const patch = { name: "cover", from_m: x - 1e-3, to_m: x, fromY_m: y - 0.01, toY_m: y - 5e-3 };
  const hard = { name: "yard", from_m: 60, to_m: 100, allowablePressure_kPa: 300, ...source };
  const { found, last } = walked([hard, { ...patch, allowablePressure_kPa: 150, ...source }], -2, -0.5);
  const stops = of(found, "track pressure").filter((f) => f.worst?.step === last);
  expect(stops).toHaveLength(1);
  const [one] = stops;
  expect(one).toMatchObject({ level: "stop", limit: 150, source: "site.craneGround[1]: invented" });
  expect(one.worst?.progress).toBeGreaterThanOrEqual(0.4);
  expect(one.worst?.progress).toBeLessThanOrEqual(0.4205);
  const part = one.worst?.progress ?? Number.NaN;
  about(one.value, pressure(-2 * part, -0.5 * part));
  expect(one.words).toContain("where it walks over 'cover'");
  // 10 mm further to the left it is missed: the track's side passes it by.
  const beside = { ...patch, fromY_m: y + 2e-3, toY_m: y + 7e-3, allowablePressure_kPa: 150, ...source };
  expect(
    of(walked([hard, beside], -2, -0.5).found, "track pressure").filter((f) => f.worst?.step === last),
  ).toEqual([]);
});
