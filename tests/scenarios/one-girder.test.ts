// The plan of one girder against hand statics: every number in its steps' notes is worked out again from the plan's own
// geometry and compared with the notes at their printing and with the result. Statics, common practice, no source.
//
// Where the load is determinate the result must meet the lever rule within 1e-6 of the weight, once the named
// second-order term is counted: a hook pulls above the CG, so that a pick that has turned by a slope shifts its pull by
// (pick height - CG height) x slope.

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/index.ts";
import { girderShape, type Pose, poseAt } from "../../src/sequence/index.ts";
import { force, frontGroups, ranScenario, rearGroups, share, shares, within } from "../sequence/plans.ts";

const r = ranScenario("one-girder");
const { plan, ctx, run } = r;
const [set] = plan.sets;
const at = (id: string, p = 1): Pose => poseAt(ctx, r.step(id), p);
const notes = (id: string): string => set.steps.find((s) => s.id === id)?.notes ?? "";

/** Weight of the girder from its plates, N, in the plan's own words. */
function weightOf(p: Plan): number {
  const g = 9.80665;
  const [piece] = p.sets[0].girders[0].pieces;
  const area = [piece.topFlange_mm, piece.web_mm, piece.bottomFlange_mm].reduce(
    (sum, [a, b]) => sum + (a * b) / 1e6,
    0,
  );
  return area * (p.sets[0].steelDensity_kg_per_m3 ?? 7850) * g * (piece.to_m - piece.from_m);
}
const W = weightOf(plan);
const CG = ctx.length / 2;
const [REAR, FRONT] = set.onTransporters.map((t) => t.deckAt_m);
const [FAR, NEAR] = set.picks.map((p) => p.at_m);

/** Loads on two supports under the weight, N: [at a, at b]. */
const lever = (a: number, b: number): [number, number] => [
  (W * (b - CG)) / (b - a),
  (W * (CG - a)) / (b - a),
];

/** Second-order moment of the hooks of a pose, N m, > 0 nose up. */
function turned(pose: Pose): number {
  const { stations, droop } = girderShape(ctx, pose)[0];
  let moment = 0;
  for (const [name, s] of [
    ["far crane", FAR],
    ["near crane", NEAR],
  ] as const) {
    const T = force(ctx, pose, name);
    if (!(T > 0)) continue;
    const i = stations.findIndex((x) => x >= s - 1e-9);
    const slope = (droop[i + 1] - droop[i - 1]) / (stations[i + 1] - stations[i - 1]);
    moment += T * (set.picks[0].height_m - ctx.model.cg[2]) * slope;
  }
  return moment;
}

/** Within 1e-6 of the weight. */
const meets = (value: number, hand: number) => within(value, hand, 1e-6 * W);
/** The notes print this number of kN, and it is what the hand statics give, at its printing. */
function printed(text: string, kN: number, digits = 2): void {
  expect(text).toContain(kN.toFixed(digits));
}

test("weight: plates x density x gravity x length", () => {
  const { notes: header } = plan.header;
  printed(header, W / 1000, 3);
  printed(header, W / 1000 / 30, 4);
  expect(header).toContain("0.0445 m2");
  meets(run.weight, W);
  within(run.cg[0], CG, 1e-9);
});

test("rolled out on two trains", () => {
  const [rear, front] = lever(REAR, FRONT);
  const text = notes("roll-out");
  for (const kN of [W / 1000, rear / 1000, front / 1000]) printed(text, kN);
  for (const p of [0, 0.3, 1]) {
    meets(shares(ctx, at("roll-out", p), rearGroups), rear);
    meets(shares(ctx, at("roll-out", p), frontGroups), front);
  }
  // And every group by its place on the deck: half aft, a quarter on either side fore.
  meets(share(ctx, at("roll-out"), "rear aft"), rear / 2);
  meets(share(ctx, at("roll-out"), "front left"), front / 4);
  within(at("roll-out").situation.rearEnd, 25, 1e-9);
});

describe("far crane takes 40 kN", () => {
  const hook = 40e3;
  const front = (W * (CG - REAR) - hook * (FAR - REAR)) / (FRONT - REAR);
  const rear = W - hook - front;

  test("by hand, in the notes", () => {
    printed(notes("far-takes"), front / 1000);
    printed(notes("far-takes"), rear / 1000);
    expect(notes("far-takes")).toContain("24/16 = 1.5 kN");
    within((FAR - REAR) / (FRONT - REAR), 1.5, 1e-12);
    within((FAR - FRONT) / (FRONT - REAR), 0.5, 1e-12);
  });

  test("and solved", () => {
    const pose = at("far-takes");
    meets(force(ctx, pose, "far crane"), hook);
    const moment = turned(pose) / (FRONT - REAR);
    meets(shares(ctx, pose, frontGroups), front + moment);
    meets(shares(ctx, pose, rearGroups), rear - moment);
  });

  test("every kN on the hook takes 1.5 kN off the front and adds 0.5 kN to the rear, at every part of it", () => {
    const start = at("far-takes", 0);
    for (const p of [0.2, 0.5, 0.9]) {
      const pose = at("far-takes", p);
      const T = force(ctx, pose, "far crane");
      expect(T).toBeGreaterThan(1e3);
      const moment = turned(pose) / (FRONT - REAR);
      const off = shares(ctx, pose, frontGroups) - shares(ctx, start, frontGroups);
      const added = shares(ctx, pose, rearGroups) - shares(ctx, start, rearGroups);
      meets(off - moment, -1.5 * T);
      meets(added + moment, 0.5 * T);
    }
  });
});

test("front train lowered away: rear train and far hook", () => {
  const [rear, far] = lever(REAR, FAR);
  printed(notes("front-down"), far / 1000);
  printed(notes("front-down"), rear / 1000);
  for (const pose of [at("front-down"), at("front-out", 0.5), at("roll-with-far", 0)]) {
    const moment = turned(pose) / (FAR - REAR);
    meets(share(ctx, pose, "far crane"), far + moment);
    meets(shares(ctx, pose, rearGroups), rear - moment);
  }
});

test("rolled together on a level path with the hook at its height: the loads stay", () => {
  expect(notes("roll-with-far")).toContain("shares do not change");
  const [rear, far] = lever(REAR, FAR);
  const run16 = r.step("roll-with-far");
  within(at("roll-with-far").situation.rearEnd - run16.start.rearEnd, 16, 1e-9);
  // Between bites the line leans by up to 0.5 m in 36 m: its pull along the set at the pick, 1 m above the axis, gives
  // T x 0.014 x 1 m over 24 m, 6e-4 of T.
  for (let i = 0; i <= 64; i++) {
    const pose = at("roll-with-far", i / 64);
    within(share(ctx, pose, "far crane"), far, 1e-3 * far);
    within(shares(ctx, pose, rearGroups), rear, 1e-3 * far);
  }
  // At rest at the end of a bite it is plumb.
  const plumb = at("roll-with-far", 0.5);
  meets(share(ctx, plumb, "far crane"), far + turned(plumb) / (FAR - REAR));
});

test("near crane takes 45 kN", () => {
  const hook = 45e3;
  const pose = at("near-takes");
  meets(force(ctx, pose, "near crane"), hook);
  // Moments about the rear bunk: W 11 + hook x 2 = far x 24.
  const far = (W * (CG - REAR) + hook * (REAR - NEAR)) / (FAR - REAR);
  const moment = turned(pose) / (FAR - REAR);
  meets(share(ctx, pose, "far crane"), far + moment);
  meets(shares(ctx, pose, rearGroups), W - hook - far - moment);
});

test("both hooks alone", () => {
  const [near, far] = lever(NEAR, FAR);
  printed(notes("rear-down"), far / 1000);
  for (const pose of [at("rear-down"), at("rear-out"), at("over", 0.5), at("lower")]) {
    const moment = turned(pose) / (FAR - NEAR);
    meets(share(ctx, pose, "far crane"), far + moment);
    meets(share(ctx, pose, "near crane"), near - moment);
  }
});

test("landed: the bearings by the lever rule, the rear end where the soles meet the bearings", () => {
  const { nearBearing_m, farBearing_m } = plan.site;
  const { rearEnd } = at("landing").situation;
  within(rearEnd + (set.soleStations_m?.near ?? 0), nearBearing_m, 1e-9);
  const [near, far] = lever(nearBearing_m - rearEnd, farBearing_m - rearEnd);
  printed(notes("landing"), near / 1000);
  for (const pose of [at("landing"), at("far-off"), at("near-off")]) {
    meets(share(ctx, pose, "near G"), near);
    meets(share(ctx, pose, "far G"), far);
  }
});

test("each train's groups also carry its own 7 t", () => {
  const pose = at("roll-out");
  const gross = frontGroups.reduce((sum, name) => sum + force(ctx, pose, name), 0);
  meets(gross - shares(ctx, pose, frontGroups), 7000 * 9.80665);
});
