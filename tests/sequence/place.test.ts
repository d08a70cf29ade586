// Where things are: the path under wheels, the datum plane while trains roll over kinks, the boom. Plane geometry,
// no source needed; bounds beside each check.

import { describe, expect, test } from "vitest";
import { byId, type Plan } from "../../src/plan/index.ts";
import {
  boomOf,
  datumPoint,
  motionOf,
  pathLevel,
  planeLevel,
  plumbOf,
  prepareContext,
  type SetContext,
  type Situation,
  startSituation,
  wheelsOf,
} from "../../src/sequence/index.ts";
import { frontGroups, ranScenario, rearGroups, scenario, step, within } from "./plans.ts";

/** The demo with a path of dips, humps and changing crossfall. */
function bumpy(): Plan {
  return scenario("demo", (plan) => {
    plan.site.path.points = [
      [120, 30.4, 0.5],
      [151, 30.65, 1.2],
      [163, 30.6, -0.4],
      [170, 30.78, 0.9],
      [177.5, 30.72, 0],
      [190, 30.95, 0.5],
      [210.5, 30.99, 0.5],
    ].map(([chainage_m, elevation_m, crossfall_pct]) => ({ chainage_m, elevation_m, crossfall_pct }));
  });
}

/** Straight line between the listed points, written anew from the plan's own numbers. */
function levelByHand(points: Plan["site"]["path"]["points"], x: number): [number, number] {
  let k = 0;
  while (k < points.length - 2 && x > points[k + 1].chainage_m) k++;
  const [a, b] = [points[k], points[k + 1]];
  const t = (x - a.chainage_m) / (b.chainage_m - a.chainage_m);
  const inside = Math.min(1, Math.max(0, t));
  return [
    a.elevation_m + t * (b.elevation_m - a.elevation_m),
    (a.crossfall_pct + inside * (b.crossfall_pct - a.crossfall_pct)) / 100,
  ];
}

describe("the path", () => {
  const plan = bumpy();
  test.each([120, 135.5, 151, 160, 163, 169.999, 177.5, 200, 210.5])("between its points, at %d m", (x) => {
    const [elevation, crossfall] = levelByHand(plan.site.path.points, x);
    within(pathLevel(plan, x).elevation, elevation, 1e-12);
    within(pathLevel(plan, x).crossfall, crossfall, 1e-15);
  });

  test.each([100, 119, 211, 230])("beyond its ends it runs on at the last slope, at %d m", (x) => {
    const [elevation, crossfall] = levelByHand(plan.site.path.points, x);
    within(pathLevel(plan, x).elevation, elevation, 1e-12);
    within(pathLevel(plan, x).crossfall, crossfall, 1e-15);
  });
});

test("wheels stand symmetrically about the deck centre, line 1 rearmost, left at +y", () => {
  const wheels = wheelsOf(scenario("demo"), "rear");
  expect(wheels.map((w) => w.id)).toEqual([1, 2, 3, 4, 5, 6].flatMap((line) => [`${line}L`, `${line}R`]));
  expect(wheels[0]).toEqual({ id: "1L", x: -3.5, y: 1.05 });
  expect(wheels[11]).toEqual({ id: "6R", x: 3.5, y: -1.05 });
  within(
    wheels.reduce((sum, w) => sum + w.x, 0),
    0,
    1e-12,
  );
});

/** Elevations of the datum plane in the world at places of the set and of the gap. */
function levels(ctx: SetContext, s: Situation): number[] {
  return [0, 0.3, 0.7, 1].flatMap((u) => [-3, 0, 2].map((y) => planeLevel(s, u * ctx.length, y)));
}
const greatest = (a: number[], b: number[]) => Math.max(...a.map((x, i) => Math.abs(x - b[i])));

describe("the datum plane", () => {
  test("goes through the bunk tops of both trains with their cylinders at mid-stroke", () => {
    const ctx = prepareContext(bumpy(), "set-1");
    const start = startSituation(ctx);
    for (const t of start.trains) {
      const machine = byId(ctx.plan.transporters, t.id);
      let mean = 0;
      for (const w of wheelsOf(ctx.plan, t.id))
        mean += levelByHand(ctx.plan.site.path.points, start.rearEnd + t.deckAt + w.x)[0];
      mean /= 2 * machine.lines;
      within(planeLevel(start, t.deckAt, 0), mean + machine.bunkHeight_m, 1e-12);
    }
  });

  test("moves without a jump while trains roll over kinks: no faster than their steepest slope allows", () => {
    const ctx = prepareContext(bumpy(), "set-1");
    const start = startSituation(ctx);
    const roll = step({ do: "roll", distance_m: 30, carries: [...rearGroups, ...frontGroups] });
    const motion = motionOf("roll");
    const ends = [30, 3];
    within(greatest(levels(ctx, motion.at(ctx, roll, start, ends, 0)), levels(ctx, start)), 0, 1e-12);
    // Slopes to 2.6 %, levers of 60 m over a base of 27.5 m: 0.026 x (1 + 2 x 60 / 27.5) < 0.15 m per metre rolled,
    // and the crossfall changes by less than 0.2 % per metre, 3 m aside.
    const parts = 4000;
    let before = levels(ctx, start);
    let moved = 0;
    for (let i = 1; i <= parts; i++) {
      const now = levels(ctx, motion.at(ctx, roll, start, ends, i / parts));
      expect(greatest(now, before), `at ${i / parts}`).toBeLessThanOrEqual((0.15 + 0.01) * (30 / parts));
      moved = Math.max(moved, greatest(now, levels(ctx, start)));
      before = now;
    }
    expect(moved, "the bumps were felt").toBeGreaterThan(0.1);
  });

  test("does not jump where fewer trains carry than before", () => {
    const { ctx, step: of } = ranScenario("demo");
    const run = of("roll-with-far");
    const motion = motionOf("roll together");
    const soon = motion.at(ctx, run.step, run.start, run.ends, 1e-9);
    // 28 m x 1e-9 at slopes below 1 %.
    expect(greatest(levels(ctx, soon), levels(ctx, run.start))).toBeLessThanOrEqual(1e-9);
  });

  test("rolled there and back it is where it was", () => {
    const ctx = prepareContext(bumpy(), "set-1");
    const start = startSituation(ctx);
    const motion = motionOf("roll");
    const there = motion.at(ctx, step({ do: "roll", distance_m: 23 }), start, [23, 3], 1);
    const back = motion.at(ctx, step({ do: "roll", distance_m: -23 }), there, [-23, 3], 1);
    within(greatest(levels(ctx, back), levels(ctx, start)), 0, 1e-12);
    expect(greatest(levels(ctx, there), levels(ctx, start))).toBeGreaterThan(0.1);
  });

  test("one that stood off the trains' bunks stays off them by as much", () => {
    const ctx = prepareContext(bumpy(), "set-1");
    const start = startSituation(ctx);
    const motion = motionOf("roll");
    const roll = (s: Situation) => motion.at(ctx, step({ do: "roll", distance_m: 21 }), s, [21, 3], 1);
    const high = { ...start, plane: { ...start.plane, elevation: start.plane.elevation + 0.25 } };
    const apart = levels(ctx, roll(high)).map((z, i) => z - levels(ctx, roll(start))[i]);
    for (const d of apart) within(d, 0.25, 1e-12 * 31);
  });

  test("a point above it is shifted along its slopes", () => {
    const s = { ...startSituation(prepareContext(scenario("demo"), "set-1")) };
    s.plane = { chainage: 150, elevation: 31, grade: 0.01, crossfall: 0.02 };
    s.rearEnd = 140;
    s.across = 0.5;
    const [x, y, z] = datumPoint(s, 10, 2, 3);
    within(x, 150 - 0.03, 1e-12);
    within(y, 2.5 + 0.06, 1e-12);
    within(z, 31 - 0.04 + 3, 1e-12);
  });

  test("the plumb point of the picks lies where they hang, between the girders", () => {
    const ctx = prepareContext(scenario("demo"), "set-1");
    const s = startSituation(ctx);
    const [x, y] = plumbOf(ctx, s, "far-crane");
    within(x, s.rearEnd + 55 - s.plane.grade * 2.47, 1e-12);
    within(y, -0.2 + s.plane.crossfall * 2.47, 1e-12);
  });
});

describe("the boom", () => {
  const crane = (change: Partial<Plan["cranes"][number]>) => ({ ...scenario("demo").cranes[0], ...change });

  test.each([
    [20, 0],
    [0, 35],
    [-12, 14],
    [30, -50],
  ])("its tip is a boom length from its foot, over the point asked for: %d, %d", (dx, dy) => {
    const machine = crane({});
    const { position } = machine;
    const tip: [number, number] = [position.chainage_m + dx, position.y_m + dy];
    const boom = boomOf(machine, tip);
    within(Math.hypot(...boom.tip.map((v, i) => v - boom.foot[i])), machine.boomLength_m, 1e-12 * 78);
    expect(boom.tip.slice(0, 2)).toEqual(tip);
    within(boom.radius, Math.hypot(dx, dy), 1e-12);
    within(
      Math.hypot(boom.foot[0] - position.chainage_m, boom.foot[1] - position.y_m),
      machine.boomFootForward_m,
      1e-12,
    );
    within(boom.foot[2], position.elevation_m + machine.boomFootHeight_m, 1e-12);
    within(Math.cos(boom.angle) * machine.boomLength_m, boom.radius - machine.boomFootForward_m, 1e-10);
    expect(boom.inReach).toBe(true);
  });

  test("60 m long with its foot as origin, from 36 m to 24 m radius: the tip rises by 6.99 m", () => {
    const machine = crane({ boomLength_m: 60, boomFootForward_m: 0 });
    const at = (radius: number) =>
      boomOf(machine, [machine.position.chainage_m - radius, machine.position.y_m]).tip[2];
    within(at(24) - at(36), Math.sqrt(60 ** 2 - 24 ** 2) - Math.sqrt(60 ** 2 - 36 ** 2), 1e-12 * 60);
    within(at(24) - at(36), 6.99, 0.005);
    // By 75 mm for each 100 mm there: slope 36 / 48.
    within(at(35.95) - at(36.05), 0.075, 1e-5);
  });

  test("a point beyond its length is out of reach", () => {
    const machine = crane({});
    const far: [number, number] = [machine.position.chainage_m + 78 + machine.boomFootForward_m, 12.5];
    expect(boomOf(machine, far).inReach).toBe(false);
    expect(boomOf(machine, [far[0] - 0.01, far[1]]).inReach).toBe(true);
  });
});
