// Witnesses of how the set stands: lean and level, what holds it sideways and against lean, its ties, the statics
// themselves. One girder of 102.77 kN with its CG at 15 m on trains at 4 and 20 m, so that the front one takes 11/16,
// 70.66 kN; each train weighs 7 t = 68.65 kN and its wheels stand 1.8 m apart.

import { expect } from "vitest";
import type { Result } from "../../src/checks/index.ts";
import { byId } from "../../src/plan/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import {
  about,
  cutAfter,
  found,
  measured,
  onlyStands,
  readScenario,
  shared,
  step,
  subjects,
} from "./plans.ts";
import type { Witness } from "./witness.ts";

const W = 102.771;
const TRAIN = 7 * 9.80665;

/** Both trains braked on a path that rises by 2.5 % and falls across by as much. */
const sloping = shared(() =>
  readScenario("one-girder", (plan) => {
    onlyStands(plan, ["rear", "front"]);
    const { points } = plan.site.path;
    points[1].elevation_m = points[0].elevation_m + 0.025 * (points[1].chainage_m - points[0].chainage_m);
    for (const p of points) p.crossfall_pct = 2.5;
  }),
);
/** The far hook takes 40 kN, then its crane goes 2 m back with its hook; bunks of friction 0.02 on a level path. */
const pulled = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "far-takes");
    Object.assign(byId(plan.cranes, "far-crane"), { travelWithLoad: true, travelSource: "invented" });
    for (const t of plan.transporters) t.bunkFriction = 0.02;
    const back = { crane: "far-crane", dx_m: 2, dy_m: 0, hook: "goes along" };
    plan.sets[0].steps.push(step({ do: "walk", ...back, minutes: 5, brakes: ["rear", "front"] }));
  }),
);
/** The front train alone is braked on 2.5 %, and the girder stands 0.5 m left of the trains' middle. */
const aside = shared(() =>
  readScenario("one-girder", (plan) => {
    onlyStands(plan, ["front"]);
    const { points } = plan.site.path;
    points[1].elevation_m = points[0].elevation_m + 0.025 * (points[1].chainage_m - points[0].chainage_m);
    plan.sets[0].girders[0].y_m = 0.5;
    for (const t of plan.transporters) Object.assign(t, { bunkRated_kN: 60, brakeLimit_kN: 4 });
  }),
);
/** The demonstration set on cylinders forty times as soft, its ties rated below their tightening of 12 kN. */
const soft = shared(() =>
  readScenario("demo", (plan) => {
    cutAfter(plan, "lash-down");
    for (const t of plan.transporters) t.cylinderStiffness_kN_per_mm /= 40;
    for (const l of plan.lashings) l.ratedLoad_kN = 10;
  }),
);

/**
 * Stiffness of the demonstration's groups against lean by hand, kNm per radian: 12 and 8 axle-line sides of 4.2 kN/mm / 40
 * at 1.05 m from the axis in the groups left and right. The bunks, 1800 kN/mm at 1.6 m, are 200 times as stiff.
 */
const HOLDS = (6 + 8) * (4200 / 40) * 1.05 ** 2;

/** Weights times heights by hand, kNm: the set by its CG above the soffit, with four ties of 12 kN by 1.62 m of bunk, trains by 0.9 m. */
const pulls = ({ sets: [set] }: Result): number =>
  (set.weight / 1000) * set.cg[2] + (set.weight / 1000 + 48) * 1.62 + (24.6 + 32.8) * 9.80665 * 0.9;

export const standingWitnesses: Witness[] = [
  {
    check: "set lean",
    ids: ["ST-1"],
    title: "a girder whose lean is held stands on a crossfall of 2.5 %, and with it leans by more than 2 %",
    sees: (solve) => about(found(solve(sloping()), "set lean", "caution")[0]?.value, 2.5, 1e-3),
  },
  {
    check: "set level",
    ids: ["ST-1"],
    title: "on a grade of 2.5 %, less what the front train sinks more than the rear one: more than 2 %",
    sees: (solve) => {
      // 11/16 less 5/16 of W on 8 sides of 2 kN/mm sinks the front by 2.4 mm more, on 16 m.
      const sunk = ((6 / 16) * W) / (8 * 2) / 16000;
      // The girder bends by about a millimetre over these 16 m: 0.01 %.
      const { value } = found(solve(sloping()), "set level", "caution")[0];
      expect(Math.abs((value ?? 0) - (2.5 - 100 * sunk))).toBeLessThan(0.01);
    },
  },
  {
    check: "slip",
    ids: ["TR-10"],
    title: "a line of 40 kN, 2 m out of plumb along the path, pulls by 3.7 kN, where friction holds 1.3 kN",
    sees: (solve) => {
      const [one] = found(solve(pulled()), "slip", "stop");
      // Boom foot at 11.3 m, 40 m of boom over 32.4 m; picks at 10 + 1.3 + 1.555 m: a pendulum of 21.8 m.
      const reach = Math.hypot(86 - 53, 6) - 1.1;
      const pull = (40 * 2) / (11.3 + Math.sqrt(40 ** 2 - reach ** 2) - 12.855);
      // 1 %: the lengths are rounded, and the pull's moment shifts some load between bunks and hook.
      about(one?.value, (100 * pull) / (0.02 * (W - 40)), 0.01);
    },
  },
  {
    check: "brake",
    ids: ["TR-10"],
    title:
      "on 2.5 % the front train holds the girder, itself and the rear train, which is released: 6 kN, its brakes 4",
    sees: (solve) => {
      const stops = found(solve(aside()), "brake", "stop");
      expect(subjects(stops)).toEqual(["front"]);
      about(stops[0].value, 0.025 * (W + 2 * TRAIN), 2e-3);
      expect(stops[0].words).toMatch(/1\.7 kN of it for rear, whose brakes are released/);
    },
  },
  {
    check: "bunk load",
    ids: ["TR-1"],
    title: "the front bunk carries 11/16 of the girder, 70.7 kN, on 60",
    sees: (solve) => {
      const stops = found(solve(aside()), "bunk load", "stop");
      expect(subjects(stops)).toEqual(["front"]);
      about(stops[0].value, (11 / 16) * W, 2e-3);
    },
  },
  {
    check: "left-right",
    ids: ["TR-1"],
    title:
      "half a metre left of the middle, the girder makes the front train's sides differ by 28 % of their sum",
    sees: (solve) => {
      const front = (11 / 16) * W;
      const cautions = found(solve(aside()), "left-right", "caution");
      expect(subjects(cautions)).toEqual(["front"]);
      about(cautions[0].value, (100 * front * 0.5) / 0.9 / (front + TRAIN), 2e-3);
    },
  },
  {
    check: "lashing load",
    ids: ["TR-10"],
    title: "ties tightened to 12 kN that are good for 10",
    sees: (solve) => {
      const stops = found(solve(soft()), "lashing load", "stop");
      expect(subjects(stops)).toEqual([
        "lashing front L",
        "lashing front R",
        "lashing rear L",
        "lashing rear R",
      ]);
    },
  },
  {
    check: "tilting over",
    ids: ["TR-4"],
    title: "weights on cylinders forty times as soft pull over by more than twice what the groups hold",
    sees: (solve) => {
      const result = solve(soft());
      about(found(result, "tilting over", "stop")[0]?.value, pulls(result) / HOLDS, 0.005);
    },
  },
  {
    check: "lean restraint lost",
    ids: ["ST-1"],
    title: "groups so soft hold less than the 1.5 kNm per radian and kN of weight that is asked for",
    sees: (solve) => {
      const result = solve(soft());
      const [one] = found(result, "lean restraint lost", "stop");
      expect(one?.limit).toBe(1.5);
      about(one?.value, HOLDS / (result.sets[0].weight / 1000), 0.01);
    },
  },
  {
    check: "residual",
    ids: [],
    title: "a residual of one part in a million of the weight is no equilibrium, a solved pose has none",
    sees: (solve, checks) => {
      const [set] = solve(aside()).sets;
      const ctx = prepareContext(aside(), set.setId);
      const m = measured(checks, ctx, "residual", "statics");
      const pose = poseAt(ctx, set.steps[0], 0);
      const { value, limit } = m.read(pose);
      expect(value).toBeLessThan(limit);
      const off = { ...pose.solution, residual: { force: 1e-6, moment: 1e-9 } };
      expect(m.read({ ...pose, solution: off }).value).toBeGreaterThan(limit);
    },
  },
];
