// The site as drawn: seats, path, gap and reactions at the plan's levels. Closed forms; no source needed.
import { describe, expect, test } from "vitest";
import {
  carriedAt,
  centreOf,
  drawSite,
  type Faces,
  numberOf,
  reactionsOf,
  type Tone,
} from "../../src/shape/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { posed } from "./posed.ts";

const plan = samplePlan();
const set = plan.sets[0];
const origin: [number, number, number] = [40, 0, 100];
const site = drawSite(plan, set, origin);

/** Corners of faces with a tone, in the world. */
function corners(faces: Faces, tone: Tone): number[][] {
  const found: number[][] = [];
  faces.tones.forEach((n, v) => {
    if (n === numberOf(tone)) found.push([0, 1, 2].map((k) => faces.positions[3 * v + k] + origin[k]));
  });
  return found;
}

describe("site", () => {
  test("the path follows its profile with crossfall and ends at the backwall", () => {
    const path = corners(site.ground, "path");
    expect(Math.max(...path.map((p) => p[0]))).toBeCloseTo(39.2, 4);
    const atZero = path.filter((p) => Math.abs(p[0]) < 1e-3);
    expect(atZero.length).toBeGreaterThan(0);
    // Point of the profile at chainage 0: 100.6 m, 1 % falling to the left.
    for (const [, y, z] of atZero) expect(z).toBeCloseTo(100.6 - 0.01 * y, 3);
  });

  test("seats stand at their level: as built where surveyed, else as designed", () => {
    const { bodies } = site;
    const tops = bodies.parts.flatMap((part, p) => {
      if (!part.name.startsWith("seat ")) return [];
      const i = bodies.boxes.parts.indexOf(p);
      const m = bodies.boxes.matrices;
      return [[part.name, centreOf(bodies, bodies.boxes, i)[2] + m[16 * i + 10] / 2] as const];
    });
    expect(tops.length).toBe(4);
    for (const [name, z] of tops) expect(z).toBeCloseTo(name.startsWith("seat near") ? 98.203 : 98.2, 4);
  });

  test("faces look outward: tops up, and the right side of the path to the right", () => {
    const { ground } = site;
    ground.tones.forEach((n, v) => {
      if (n === numberOf("path")) expect(ground.normals[3 * v + 2]).toBeGreaterThan(0.99);
    });
    const right = corners(site.ground, "ground cut").filter(
      (p) => Math.abs(p[1] + site.lines.pathHalf) < 1e-3,
    );
    expect(right.length).toBeGreaterThan(4);
  });

  test("a level that the plan does not give is said not to be given", () => {
    expect(site.lines.belowGiven).toBe(false);
    expect(site.lines.below).toBeCloseTo(98.2 - 5, 6);
    const given = structuredClone(plan);
    given.site.below = { kind: "water", elevation_m: 91 };
    const drawn = drawSite(given, given.sets[0], origin);
    expect(drawn.lines.belowGiven).toBe(true);
    for (const p of corners(drawn.ground, "water").filter((q) => q[2] > drawn.lines.base + 1)) {
      expect(p[2]).toBeCloseTo(91, 4);
    }
    expect(corners(drawn.ground, "water").length).toBeGreaterThan(3);
  });

  test("everything drawn is finite", () => {
    for (const a of [site.ground.positions, site.nearSide.positions, site.bodies.boxes.matrices]) {
      expect(a.every((x) => Number.isFinite(x))).toBe(true);
    }
  });
});

describe("reactions", () => {
  test("on four groups: each at the middle of its wheels, their shares the whole weight", () => {
    const { ctx, pose, world } = posed(1, 0.5);
    const list = reactionsOf(ctx, pose, world).filter((r) => r.support.what === "group");
    expect(list.map((r) => [r.support.name, r.nth])).toEqual([
      ["rear left", 0],
      ["rear right", 1],
      ["front left", 0],
      ["front right", 1],
    ]);
    const weight = ctx.model.mass * ctx.gravity;
    const sum = list.reduce((total, r) => total + r.share, 0);
    // Forces stand normal to a path of 1 % grade and 1 % crossfall: 1 - cos is 1e-4 at most.
    expect(Math.abs(sum / weight - 1)).toBeLessThan(1e-4);
    const front = world.decks.front.centre;
    expect(list[2].at[0]).toBeCloseTo(front[0], 3);
    expect(list[2].at[1]).toBeCloseTo(0.9, 6);
    expect(carriedAt(ctx, pose)).toEqual([6, 20]);
  });

  test("a hook that holds shows from above, at the hook", () => {
    const { ctx, pose, world } = posed(5, 1);
    const hook = reactionsOf(ctx, pose, world).find((r) => r.support.what === "hoist");
    expect(hook?.from).toBe("above");
    expect(hook?.at).toEqual(world.cranes["far-1"].hook);
    expect(hook?.force).toBeGreaterThan(50_000);
  });
});
