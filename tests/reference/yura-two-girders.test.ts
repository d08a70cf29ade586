// J. Yura, T. Helwig, R. Herman, C. Zhou, "Global lateral buckling of I-shaped girder systems", ASCE Journal of
// Structural Engineering 134(9), 2008; AASHTO LRFD 6.10.3.4.2 (formula from memory): two girders buckle as one at a sum of
// moments Cb pi^2 S E sqrt(Iy Ix) / L^2. The eigenvalue of the pose is held against it, not against itself.
//
// The formula leaves the girders' own torsion out and is known to lie up to 4 % below the whole theory for such sets;
// frames at wide spacing let each girder bend between them, which costs a few percent. Bounds: -4 % and +4 %.

import { describe, expect, test } from "vitest";
import { bucklingOf, type State, solveStatics } from "../../src/mechanics/index.ts";
import { sectionOf } from "../../src/section/index.ts";

const E = 2e11;
const plates = { topFlange: [0.6, 0.045], web: [2.31, 0.016], bottomFlange: [0.6, 0.045] } as const;

/** Two equal girders on bearings at their ends, with frames every `bay` metres. */
function twin(L: number, spacing: number, bay: number): State {
  const girder = (name: string, y: number) => ({
    name,
    y,
    pieces: [{ from: 0, to: L, ...plates, massPerMetre: 714 }],
  });
  const seat = (name: string, on: string, at: number) => ({
    name,
    girder: on,
    at,
    seat: 0,
    stiffness: 5e9,
    holds: "guided" as const,
  });
  return {
    format: "handspan-state",
    version: 1,
    gravity: 9.80665,
    E,
    G: 7.7e10,
    girders: [girder("L", spacing / 2), girder("R", -spacing / 2)],
    crossFrames: Array.from({ length: Math.round(L / bay) + 1 }, (_, i) => ({
      at: i * bay,
      area: 4e-3,
      inPlaneInertia: 5e-3,
      planInertia: 0,
      torsion: 0,
      mass: 0,
      height: 1.2,
    })),
    bearings: [
      seat("rear left", "L", 0),
      seat("rear right", "R", 0),
      seat("front left", "L", L),
      seat("front right", "R", L),
    ],
  };
}

/** Sum of both girders' moments at mid-span under their own weight. */
const moment = (L: number) => (2 * 714 * 9.80665 * L * L) / 8;

describe("two girders 3 m apart under their own weight, Cb = 1.12 of a uniform load", () => {
  const { strongInertia, weakInertia } = sectionOf(plates);
  test.each([
    [40, 5],
    [50, 10],
    [60, 5],
    [60, 10],
    [70, 10],
  ])("%d m, frames every %d m", (L, bay) => {
    const buckling = bucklingOf(solveStatics(twin(L, 3, bay)));
    const formula = ((1.12 * Math.PI ** 2 * 3 * E) / L ** 2) * Math.sqrt(weakInertia * strongInertia);
    const ratio = ((buckling?.factor ?? 0) * moment(L)) / formula;
    expect(ratio).toBeGreaterThan(0.96);
    expect(ratio).toBeLessThan(1.04);
    // It is the set that goes, not one girder: both middles move the same way, one up and one down.
    const [left, right] = buckling?.shape ?? [];
    const mid = left.x.findIndex((x) => Math.abs(x - L / 2) <= 1);
    expect(left.sideways[mid] * right.sideways[mid]).toBeGreaterThan(0);
    expect(left.upright[mid] * right.upright[mid]).toBeLessThan(0);
  });

  test("wider apart is stiffer, in proportion within 4 % (from 2 m to 3 m)", () => {
    const of = (spacing: number) => bucklingOf(solveStatics(twin(60, spacing, 5)))?.factor ?? 0;
    expect(of(3) / of(2) / 1.5).toBeGreaterThan(0.96);
    expect(of(3) / of(2) / 1.5).toBeLessThan(1.04);
  });
});
