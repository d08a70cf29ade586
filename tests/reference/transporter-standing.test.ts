// What stands on three hydraulic groups: the triangle of their centroids, not of the wheels, holds it (statics of a rigid
// body; the wording of groups as supports from FHWA-HIF-07-022, chapters 1 and 6, from memory). Figures recomputed by
// hand and printed rounded: 0.05 %. Tonnes as they are: every length and share is free of the unit of force.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { baseOf, type Edge, leastMargin, loadToReach, marginAbout } from "../../src/mechanics/index.ts";
import { within } from "./close.ts";

const centroids = [
  { name: "rear", x: -6, y: 0 },
  { name: "front right", x: 5, y: -1.8 },
  { name: "front left", x: 5, y: 1.8 },
];
const weight = 190;
const still = { force: weight, x: 0.4, y: 0.3, heightAlong: 4, heightAcross: 4, along: 0, across: 0 };
const base = baseOf(centroids);
if (base === null) throw new Error("three centroids make a base");
const opposite = (edge: number) => base.corners[(edge + 2) % 3].name;

describe("190 t with its CG 0.4 m ahead and 0.3 m left on groups at (-6, 0), (5, -1.8) and (5, 1.8)", () => {
  test("the load left about every edge is the force of the group opposite: 79.455, 39.439 and 71.106 t", () => {
    const forces = { rear: 79.455, "front right": 39.439, "front left": 71.106 };
    for (let i = 0; i < 3; i++)
      within(marginAbout(base, i, still).load, forces[opposite(i) as keyof typeof forces], 5e-4);
  });

  test("shortest distance 0.737 m; with the CG 4.0 m up it turns over at 10.45 degrees", () => {
    const m = leastMargin(base, still);
    expect(opposite(m.edge)).toBe("front right");
    // Printed to the millimetre: half of the last digit.
    within(m.distance, 0.737, 0.0005 / 0.737);
    within((m.angle * 180) / Math.PI, 10.45, 5e-4);
  });

  test("tilted by its angle about that edge, the plumb line from the CG meets the edge", () => {
    const { edge, angle } = leastMargin(base, still);
    const { nx, ny } = base.edges[edge];
    const tilted = { ...still, x: 0.4 - 4 * Math.tan(angle) * nx, y: 0.3 - 4 * Math.tan(angle) * ny };
    expect(Math.abs(marginAbout(base, edge, tilted).distance)).toBeLessThan(1e-12);
  });

  test("braking by 5 % of its weight at the height of the CG moves the load 0.2 m along", () => {
    const m = marginAbout(base, leastMargin(base, still).edge, { ...still, along: 0.05 * 4 });
    // The edge runs 11 m along and 1.8 m across: its normal has 1.8 / sqrt(11^2 + 1.8^2) along.
    within(m.distance, leastMargin(base, still).distance - (0.2 * 1.8) / Math.hypot(11, 1.8), 1e-12);
  });

  test("the load to be added opposite the edge brings the angle that was asked for (seed 5)", () => {
    fc.assert(
      fc.property(fc.double({ min: 11, max: 30, noNaN: true }), (degrees) => {
        const m = leastMargin(base, still);
        const angle = (degrees * Math.PI) / 180;
        const edge: Edge = base.edges[m.edge];
        const added = loadToReach(edge, m, weight, angle);
        if (added === null) return expect(m.height * Math.tan(angle)).toBeGreaterThanOrEqual(edge.depth);
        const distance = (weight * m.distance + added * edge.depth) / (weight + added);
        within(Math.atan(distance / m.height), angle, 1e-9);
        return undefined;
      }),
      { seed: 5 },
    );
    expect(loadToReach(base.edges[0], marginAbout(base, 0, still), weight, 0.01)).toBe(0);
  });
});

test("two trains of two groups each: a rectangle, whose nearest side is half the distance of the groups away", () => {
  const at = (x: number) => [
    { x, y: 1 },
    { x, y: -1 },
  ];
  const rectangle = baseOf([...at(8), ...at(38)]);
  if (rectangle === null) throw new Error("a rectangle is a base");
  const p = { force: 1800, x: 32, y: 0, heightAlong: 3, heightAcross: 3, along: 0, across: 0 };
  const m = leastMargin(rectangle, p);
  within(m.distance, 1, 1e-12);
  within(m.load, 900, 1e-12);
  // About the front side: 6 of 30 m, so that a fifth of the load is left behind, 360 of 1800.
  const front = rectangle.edges.findIndex((e) => e.nx < -0.5);
  within(marginAbout(rectangle, front, p).load, 360, 1e-12);
});

test("groups on one line hold nothing", () => {
  expect(baseOf([0, 3, 9].map((x) => ({ x, y: 2 * x })))).toBeNull();
});
