// Masses of a corner: the total stays or is scaled, the centre of gravity moves by what was stated, the mesh stays.
import { describe, expect, test } from "vitest";
import { withMasses } from "../../src/checks/spread/masses.ts";
import { prepareSet } from "../../src/mechanics/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";

const demo = prepareContext(scenario("demo"), "set-1").model;
const lone = prepareContext(scenario("one-girder"), "girder").model;

describe("masses of a corner", () => {
  // By definition: the CG is sum(m x) / sum(m). Bound: rounding of some hundred additions.
  test.each([
    [1, 0.25, 0],
    [1, 0, -0.05],
    [0.96, -0.25, 0.05],
    [1.05, 0.25, 0.05],
  ])("demo: times %f, CG moved by %f m along and %f m across", (factor, along, across) => {
    const moved = prepareSet(withMasses(demo, factor, along, across));
    expect(moved.mass / demo.mass).toBeCloseTo(factor, 12);
    expect(moved.cg[0] - demo.cg[0]).toBeCloseTo(along, 10);
    expect(moved.cg[1] - demo.cg[1]).toBeCloseTo(across, 10);
    // The height of the CG changes only by what heavier ends and sides differ in height.
    expect(Math.abs(moved.cg[2] - demo.cg[2])).toBeLessThan(0.005);
  });

  test("the frame is that of the set as planned, to the last bit", () => {
    const moved = prepareSet(withMasses(demo, 1.05, 0.25, 0.05));
    expect(moved.nodeX).toEqual(demo.nodeX);
    expect(moved.nodeY).toEqual(demo.nodeY);
    expect(moved.matrix).toEqual(demo.matrix);
  });

  test("every mass grows straight with its station: a girder of one piece too", () => {
    const data = withMasses(lone, 1, 0.1, 0);
    const pieces = data.girders[0].pieces;
    // By hand: m (1 + a (x - X)) with a = shift / r2; thirty equal lumps 1 m apart have r2 = (30 x 30 - 1) / 12.
    const a = 0.1 / ((30 ** 2 - 1) / 12);
    for (const p of pieces) {
      const even = lone.data.girders[0].pieces[0].massPerMetre;
      expect(p.massPerMetre / even).toBeCloseTo(1 + a * ((p.from + p.to) / 2 - 15), 10);
    }
    expect(prepareSet(data).cg[0]).toBeCloseTo(15.1, 10);
  });

  test("a lone girder's CG does not move across: its lean is held", () => {
    expect(prepareSet(withMasses(lone, 1, 0, 0.05)).cg[1]).toBe(0);
  });

  test("a shift that would need a mass below zero is refused, with what is allowed", () => {
    expect(() => withMasses(lone, 1, 6, 0)).toThrow(RangeError);
    expect(() => withMasses(lone, 1, 6, 0)).toThrow(/masses below zero; at most 0\.8\d of that is allowed/);
  });
});
