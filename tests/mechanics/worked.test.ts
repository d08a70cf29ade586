// Worked examples of the erection mechanics (hand statics; formulas beside each check).

import { expect, test } from "vitest";
import { solveState } from "../../src/mechanics/index.ts";
import { beamState } from "./states.ts";

const close = (value: number, expected: number, relative: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(
    relative * Math.abs(expected),
  );

test("W1 overhang: reactions by statics, tip q c (4 a c^2 + 3 c^3 - a^3) / (24 E I)", () => {
  const s = beamState(
    30,
    0.01,
    5e3,
    [
      ["rear", 0],
      ["front", 18],
    ],
    { ask: { droopAt: [30] } },
  );
  const a = solveState(s);
  expect(a.status).toBe("solved");
  close(a.forces["bearing rear"], 25e3, 1e-6);
  close(a.forces["bearing front"], 125e3, 1e-6);
  close(a.droop.G[0], -11.5714e-3, 1e-4);
  expect(a.residual.force).toBeLessThan(1e-9);
  expect(a.residual.moment).toBeLessThan(1e-9);
});
const hoist = (takeUp: number) =>
  beamState(
    30,
    0.01,
    5e3,
    [
      ["rear", 0],
      ["front", 18],
    ],
    {
      hoists: [
        {
          name: "far",
          at: 30,
          girders: ["G"],
          rigging: "spreader",
          mode: "takeUp",
          takeUp,
          stiffness: 2e6,
          pickHeight: 0.5,
        },
      ],
    },
  );
test("W2", () => {
  for (const [h, f, r1, r2] of [
    [0, 9.759, 31.506, 108.735],
    [0.01, 18.193, 37.129, 94.679],
    [-0.02, 0, 25, 125],
    [0.08, 75, 75, 0],
    [0.5, 75, 75, 0],
  ]) {
    const a = solveState(hoist(h));
    console.log(h, a.status, a.passes, a.forces, a.residual);
    expect(Math.abs(a.forces["hoist far"] - f * 1e3)).toBeLessThan(1);
    expect(Math.abs(a.forces["bearing rear"] - r1 * 1e3)).toBeLessThan(1);
    expect(Math.abs(a.forces["bearing front"] - r2 * 1e3)).toBeLessThan(1);
  }
});
