// From a plan's numbers to the State: units, levels under wheels, take-up, seats, what is left out. Expected values
// are written from the plan by hand; bounds are rounding unless said.

import { describe, expect, test } from "vitest";
import { type State, solveState } from "../../src/mechanics/index.ts";
import { type Plan, takeOff } from "../../src/plan/index.ts";
import {
  hookStiffness,
  idealise,
  type Pose,
  planeLevel,
  poseAt,
  prepareContext,
  startSituation,
  wheelsOf,
} from "../../src/sequence/index.ts";
import { craneOf, force, near, ran, ranScenario, scenario, step, upTo, within } from "./plans.ts";

const demo = () => ranScenario("demo");
const stateAt = (id: string, p = 1): State => poseAt(demo().ctx, demo().step(id), p).state;

/** Path by hand: linear between the plan's points. */
function path(plan: Plan, x: number): { level: number; crossfall: number } {
  const { points } = plan.site.path;
  const i = Math.max(
    1,
    points.findIndex((p) => p.chainage_m >= x),
  );
  const [a, b] = [points[i - 1], points[i]];
  const t = (x - a.chainage_m) / (b.chainage_m - a.chainage_m);
  const mix = (u: number, v: number) => u + t * (v - u);
  return {
    level: mix(a.elevation_m, b.elevation_m),
    crossfall: mix(a.crossfall_pct, b.crossfall_pct) / 100,
  };
}

describe("units", () => {
  test("of the set", () => {
    const state = stateAt("lash-down", 0);
    expect(state.E).toBe(210e9);
    expect(state.G).toBe(81e9);
    expect(state.gravity).toBe(9.80665);
    const [left] = state.girders;
    expect(left.pieces.length).toBe(3);
    expect(left.pieces[0]).toMatchObject({
      from: 0,
      to: 19,
      topFlange: [0.55, 0.032],
      web: [2.4, 0.018],
      bottomFlange: [0.6, 0.036],
    });
    near(left.pieces[0].massPerMetre, (0.55 * 0.032 + 2.4 * 0.018 + 0.6 * 0.036) * 7850 * 1.11, 1e-12);
    expect(left.camber?.[1]).toEqual([12, 0.072]);
    expect(state.crossFrames?.[0]).toMatchObject({ at: 0.6, area: 0.0052, mass: 1150, height: 1.2 });
  });

  test("of machines and ties", () => {
    const state = stateAt("lash-down");
    expect(state.trains?.[0]).toMatchObject({
      name: "rear",
      at: 8.5,
      lines: 6,
      pitch: 1.4,
      gauge: 2.1,
      cylinderStiffness: 4.2e6,
      strokeUp: 0.26,
      strokeDown: 0.26,
      mass: 24600,
      bunkStiffness: 1.8e9,
      bunkSideStiffness: 4e7,
      bunkFriction: 0.25,
      brakeLimit: 112e3,
      packing: { L: 0, R: 0 },
      braked: true,
    });
    expect(state.groups?.["rear left"]).toEqual(["rear:4L", "rear:5L", "rear:6L"]);
    expect(state.lashings?.map((l) => [l.train, l.girder, l.at, l.stiffness])).toContainEqual([
      "front",
      "R",
      36,
      18e6,
    ]);
  });

  test("a hook is a series of rope, boom, ground and slings", () => {
    const { plan, ctx } = demo();
    const k = 1e6 / (1 / 3 + 1 / 2.3 + 1 / 14 + 1 / 70);
    near(hookStiffness(plan, plan.cranes[0], ctx.set.picks[0]), k, 1e-12);
    const hoist = stateAt("far-takes").hoists?.[0];
    near(hoist?.stiffness ?? 0, k, 1e-12);
    expect(hoist).toMatchObject({
      at: 55,
      girders: ["L", "R"],
      rigging: "spreader",
      mode: "takeUp",
      load: null,
    });
    expect(hoist).toMatchObject({ pickHeight: 2.47, pinHeight: 1.1 });
  });
});

test("mass and CG of the frame are those of the weight take-off, masses off the girders' axes included", () => {
  for (const name of ["demo", "one-girder"] as const) {
    const { plan, ctx } = ranScenario(name);
    const weighed = takeOff(plan.sets[0]);
    near(ctx.model.mass, weighed.mass, 1e-12);
    // Weights at heights of their own plates: 1e-9 of a metre.
    for (const i of [0, 1, 2] as const) within(ctx.model.cg[i], weighed.cg[i], 1e-9);
  }
});

describe("the ground under wheels", () => {
  test.each([
    ["lash-down", 0],
    ["first-roll", 0.37],
    ["second-roll", 1],
    ["roll-with-far", 0.611],
  ] as const)("%s at %d: with the datum plane it makes the path again", (id, p) => {
    const { plan } = demo();
    const pose = poseAt(demo().ctx, demo().step(id), p);
    for (const t of pose.state.trains ?? []) {
      for (const w of wheelsOf(plan, t.name)) {
        const s = t.at + w.x;
        const hand = path(plan, pose.situation.rearEnd + s);
        const ground = pose.state.ground?.[`${t.name}:${w.id}`] ?? Number.NaN;
        const world = ground + planeLevel(pose.situation, s, w.y) - t.bunkHeight;
        within(world, hand.level - hand.crossfall * w.y, 1e-12 * 31);
      }
    }
  });

  test("at the start it is level on the mean for both trains", () => {
    const state = stateAt("lash-down", 0);
    for (const t of state.trains ?? []) {
      const own = Object.entries(state.ground ?? {}).filter(([id]) => id.startsWith(`${t.name}:`));
      expect(own.length).toBe(2 * t.lines);
      within(own.reduce((sum, [, z]) => sum + z, 0) / own.length, 0, 1e-12);
    }
  });

  test("grade and crossfall turn gravity", () => {
    const pose = poseAt(demo().ctx, demo().step("first-roll"), 0.5);
    expect(pose.state.grade).toBe(pose.situation.plane.grade);
    expect(pose.state.crossfall).toBe(pose.situation.plane.crossfall);
    // From the plan: 0.55 % and 0.5 % or so.
    within(pose.state.grade ?? 0, 0.006, 0.001);
    within(pose.state.crossfall ?? 0, 0.0055, 0.0006);
  });
});

describe("hooks", () => {
  const { ctx, step: of } = demo();
  const hoistOf = (pose: Pose, id: string) => {
    const found = pose.state.hoists?.find((h) => h.name === id);
    if (!found) throw new Error(id);
    return found;
  };

  test("take-up counts from the datum plane to where the line is taut", () => {
    for (const [id, p] of [
      ["far-takes", 0.3],
      ["far-takes", 1],
      ["roll-with-far", 0.44],
      ["lower", 0.8],
    ] as const) {
      const pose = poseAt(ctx, of(id), p);
      const taut = craneOf(pose.situation, "far-crane").tautAt;
      within(hoistOf(pose, "far-crane").takeUp ?? 0, taut - planeLevel(pose.situation, 55, 0), 1e-12);
    }
  });

  test("rope runs from picks to boom tip, and leans with the trains ahead of the boom", () => {
    const pose = poseAt(ctx, of("roll-with-far"), 0.8 / 28);
    const hoist = hoistOf(pose, "far-crane");
    // Tip 30.9 + 2.4 + sqrt(78^2 - (radius - 1.6)^2) high; the trains have rolled a bite of 1 m, the boom none.
    const tip = craneOf(pose.situation, "far-crane").tip;
    const radius = Math.hypot(tip[0] - 277, tip[1] - 12.5);
    const height = 33.3 + Math.sqrt(78 ** 2 - (radius - 1.6) ** 2);
    within(hoist.ropeLength ?? 0, height - planeLevel(pose.situation, 55, 0) - 2.47, 1e-9);
    within(hoist.offset?.[0] ?? 0, -1, 1e-3);
    within(hoist.offset?.[1] ?? 1, 0, 1e-3);
  });

  test("none before it is hooked up, none after", () => {
    expect(stateAt("far-hook-up", 0.9).hoists).toEqual([]);
    expect(stateAt("far-hook-up").hoists?.map((h) => h.name)).toEqual(["far-crane"]);
    expect(stateAt("near-off").hoists).toEqual([]);
  });

  test("a load that is held is given as a load", () => {
    const s = poseAt(ctx, of("far-takes"), 1).situation;
    const held = { ...s, cranes: s.cranes.map((c) => ({ ...c, heldLoad: 4e5 })) };
    expect(idealise(ctx, held).hoists?.[0]).toMatchObject({ mode: "load", load: 4e5 });
  });
});

describe("bearings", () => {
  test("only over the seats, at their as-built elevation plus their height, unsurveyed ones by design", () => {
    expect(stateAt("over", 0.999).bearings).toEqual([]);
    const r = ran(
      scenario("demo", (plan) => {
        plan.site.seats[3].asBuilt_m = null;
        plan.sets[0].steps = upTo(plan, "over");
      }),
    );
    const pose = poseAt(r.ctx, r.step("over"), 1);
    const seats = { "near L": 30.987, "near R": 30.996, "far L": 31.335, "far R": 31.35 };
    for (const b of pose.state.bearings ?? []) {
      const y = b.girder === "L" ? 1.6 : -1.6;
      const chainage = b.name.startsWith("near") ? 212 : 270.8;
      within(b.at, chainage - pose.situation.rearEnd, 1e-12);
      const level = b.seat + planeLevel(pose.situation, b.at, y);
      within(level, seats[b.name as keyof typeof seats] + 0.15, 1e-12 * 31);
      expect(b).toMatchObject({ stiffness: 9e8, sideLimit: 120e3 });
    }
    expect(pose.state.bearings?.map((b) => b.holds)).toEqual(["fixed", "guided", "guided", "free"]);
  });
});

describe("what is left out", () => {
  test("a train that has driven out, with its groups, levels and ties", () => {
    const state = stateAt("front-out");
    expect(state.trains?.map((t) => t.name)).toEqual(["rear"]);
    expect(Object.keys(state.groups ?? {})).toEqual(["rear aft", "rear left", "rear right"]);
    expect(Object.keys(state.ground ?? {}).every((id) => id.startsWith("rear:"))).toBe(true);
  });

  test("ties that are not on", () => {
    expect(stateAt("lash-down", 0).lashings).toEqual([]);
    expect(stateAt("lash-down").lashings?.length).toBe(4);
    expect(stateAt("untie").lashings).toEqual([]);
  });
});

test("packing goes into the bunks, in metres", () => {
  const plan = scenario("demo", (p) => {
    p.sets[0].onTransporters[0].packing_mm = { L: 25, R: 5 };
  });
  const ctx = prepareContext(plan, "set-1");
  expect(idealise(ctx, startSituation(ctx)).trains?.[0].packing).toEqual({ L: 0.025, R: 0.005 });
});

test("the State alone, solved anew, gives the plan's forces to the last bit", () => {
  const { ctx } = demo();
  for (const [id, p] of [
    ["second-roll", 0.5],
    ["far-takes", 0.7],
    ["roll-with-far", 0.33],
    ["landing", 0.6],
  ] as const) {
    const pose = poseAt(ctx, demo().step(id), p);
    const answer = solveState(structuredClone(pose.state));
    expect(answer.status).toBe("solved");
    let compared = 0;
    ctx.supports.forEach((s, i) => {
      if (Number.isNaN(pose.forces[i]) || s.what === "lashing") return;
      expect(answer.forces[s.force], `${id} ${s.name}`).toBe(pose.forces[i]);
      compared++;
    });
    expect(compared).toBeGreaterThan(5);
  }
});

test("a lone girder and a plan's own gravity are taken as they are", () => {
  const plan = scenario("one-girder", (p) => {
    p.site.gravity_m_per_s2 = 9.78;
    p.sets[0].steps = upTo(p, "roll-out", step({ do: "hold", releasedBy: "", evidence: "" }));
  });
  const { ctx, run, end } = ran(plan);
  expect(ctx.gravity).toBe(9.78);
  near(run.weight, 0.0445 * 30 * 7850 * 9.78, 1e-12);
  near(force(ctx, end("hold"), "bunk front G 1"), (run.weight * 11) / 16, 1e-6);
});
