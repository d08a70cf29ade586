// Slings of unequal length: a stiff set hangs as the linkage of hook, spreader, slings and set does, whose least
// potential energy is searched here at large angles; forces balance; nothing changes where all slings are alike.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answerOf, bridle, type State, solveState, solveStatics } from "../../src/mechanics/index.ts";
import { balanceOf, massOf } from "./balance.ts";
import { states } from "./states.ts";

const seed = 20417;

const hung = states({ girders: [2, 3], plans: ["hung"] })
  .filter((s) => (s.crossFrames ?? []).length > 0)
  .map(({ wind: _calm, ...s }) => ({ ...s, ask: { droopAt: (s.hoists ?? []).map((h) => h.at) } }));

/** The state with slings longer on its first girder at every hoist. */
const longerOn = (state: State, by: number): State => ({
  ...state,
  hoists: (state.hoists ?? []).map((h) => ({ ...h, longer: { [h.girders[0]]: by } })),
});

test(`300 sets on unequal slings balance, and all lengths alike change nothing (seed ${seed})`, () => {
  let solved = 0;
  let changed = 0;
  fc.assert(
    fc.property(hung, fc.integer({ min: -60, max: 60 }), (state, by) => {
      const s = solveStatics(longerOn(state, by / 1000));
      if (s.status !== "solved") return;
      solved++;
      const answer = answerOf(s);
      const b = balanceOf(s.state, answer, s);
      expect(Math.max(b.set, b.sideways)).toBeLessThan(1e-9);
      const even = solveState(state);
      if (Math.abs(even.lean - answer.lean) > 1e-5) changed++;
      const alike = solveState({
        ...state,
        hoists: (state.hoists ?? []).map((h) => ({
          ...h,
          longer: Object.fromEntries(h.girders.map((g) => [g, 0.25])),
        })),
      });
      expect(Math.abs(alike.lean - even.lean)).toBeLessThan(1e-12);
    }),
    { seed, numRuns: 300 },
  );
  expect(solved).toBeGreaterThan(250);
  expect(changed).toBeGreaterThan(200);
});

/** A load below a hook in the plane across: `b` half the picks' distance, `d` its CG below them and `y` left of their middle. */
interface Load {
  b: number;
  d: number;
  y: number;
}

/** Depth of the CG below the hook for the picks at two places, and the lean of the load (left up positive). */
function hangsAt(
  left: [number, number],
  right: [number, number],
  { d, y }: Load,
): { depth: number; lean: number } {
  // Axes: first to the left, second up; the hook at the origin.
  const [u, v] = [left[0] - right[0], left[1] - right[1]];
  const size = Math.hypot(u, v);
  const [cx, sx] = [u / size, v / size];
  const middle = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2];
  return { depth: -(middle[1] + sx * y - cx * d), lean: Math.atan2(v, u) };
}

/** Where two circles around `p` and `q` meet, below. */
function meet(p: [number, number], rp: number, q: [number, number], rq: number): [number, number] {
  const [u, v] = [q[0] - p[0], q[1] - p[1]];
  const D = Math.hypot(u, v);
  const a = (rp * rp - rq * rq + D * D) / (2 * D);
  const h = Math.sqrt(rp * rp - a * a);
  const [x, z] = [p[0] + (a * u) / D, p[1] + (a * v) / D];
  const one: [number, number] = [x - (h * v) / D, z + (h * u) / D];
  const two: [number, number] = [x + (h * v) / D, z - (h * u) / D];
  return one[1] < two[1] ? one : two;
}

/** Lean at the greatest depth of the CG over two free angles, by shrinking steps. */
function deepest(of: (phi: number, alpha: number) => { depth: number; lean: number }): number {
  let at: [number, number] = [0, 0];
  let step = 0.05;
  while (step > 1e-9) {
    const here = of(...at).depth;
    const tries = [
      [step, 0],
      [-step, 0],
      [0, step],
      [0, -step],
      [step, step],
      [-step, -step],
      [step, -step],
      [-step, step],
    ].map(([p, q]): [number, number] => [at[0] + p, at[1] + q]);
    const depths = tries.map(([p, q]) => of(p, q).depth);
    const most = Math.max(...depths);
    if (most > here) at = tries[depths.indexOf(most)];
    else step /= 2;
  }
  return of(...at).lean;
}

describe("a stiff pair of girders on one hook, slings unequal by D", () => {
  const { b, d, y } = { b: 1.6, d: 1.25, y: 0.04 };
  const girder = (name: string, at: number) => ({
    name,
    y: at,
    pieces: [
      {
        from: 0,
        to: 20,
        topFlange: [0.4, 0.03] as const,
        web: [2 * d - 0.06, 0.02] as const,
        bottomFlange: [0.4, 0.03] as const,
        massPerMetre: 500,
      },
    ],
  });
  const frame = (at: number) => ({
    at,
    area: 3e-3,
    inPlaneInertia: 1e-2,
    planInertia: 1e-6,
    torsion: 1e-7,
    mass: 0,
    height: d,
  });
  /** Lean by the statics, stiffened, less that of equal slings and a middle CG (nought). */
  const lean = (rigging: "spreader" | "point" | "separate", pinHeight: number, D: number) => {
    const state: State = {
      format: "handspan-state",
      version: 1,
      gravity: 9.80665,
      E: 2.1e20,
      G: 8.1e19,
      girders: [girder("L", b), girder("R", -b)],
      crossFrames: [0.5, 10, 19.5].map(frame),
      // Puts the CG `y` to the left.
      pointMasses: [{ girder: "L", at: 10, mass: (20000 * y) / (b - y), height: d }],
      hoists: [5, 15].map((at, i) => ({
        name: `h${i}`,
        at,
        girders: ["L", "R"],
        rigging,
        mode: "takeUp" as const,
        takeUp: 0.5,
        load: null,
        stiffness: 2e6,
        pickHeight: 2 * d,
        pinHeight,
        longer: { L: D / 2, R: -D / 2 },
      })),
    };
    const answer = solveState(state);
    expect(answer.status).toBe("solved");
    const { cg } = massOf(state);
    expect(Math.abs(cg[1] - y)).toBeLessThan(1e-9);
    const lines = ["L", "R"].map((name) => answer.forces[`line h0 ${name}`]);
    return { lean: answer.lean, below: 2 * d - cg[2], lines, weight: answer.weight, cgY: cg[1] };
  };

  // Bound: angles below 0.04 rad, whose squares are 0.0016: 2 % of the lean, and 1e-4 where it is near nought.
  const near = (value: number, expected: number) =>
    expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThan(
      1e-4 + 0.02 * Math.abs(expected),
    );

  test.each([-0.06, -0.02, 0, 0.03, 0.08])("below a spreader, D = %d m: the linkage's least energy", (D) => {
    const e = 1.1;
    const l = 5.5;
    const { lean: found, below } = lean("spreader", e, D);
    const load = { b, d: below, y };
    const by = deepest((phi, alpha) => {
      const end = (side: number): [number, number] => [
        side * b * Math.cos(phi) + e * Math.sin(phi),
        side * b * Math.sin(phi) - e * Math.cos(phi),
      ];
      const [from, to] = [end(1), end(-1)];
      const left: [number, number] = [
        from[0] + (l + D / 2) * Math.sin(alpha),
        from[1] - (l + D / 2) * Math.cos(alpha),
      ];
      return hangsAt(left, meet(to, l - D / 2, left, 2 * b), load);
    });
    near(found, by);
    // And the formula of small angles: -(y + e D / 2b) / (e + d).
    near(found, -(y + (e * D) / (2 * b)) / (e + below));
  });

  test.each([-0.06, 0, 0.05])("from one point, D = %d m: the hook over the CG", (D) => {
    const h = 3;
    const { lean: found, below } = lean("point", h, D);
    const even = Math.hypot(h, b);
    // The rigid triangle turns about the hook until its CG is plumb below.
    const apex = meet([b, 0], even + D / 2, [-b, 0], even - D / 2).map((x, i) => (i === 0 ? x : Math.abs(x)));
    near(found, -Math.atan2(y - apex[0], apex[1] + below));
  });

  test.each([-0.06, 0, 0.05])(
    "from one point, D = %d m: the lines are those of a bridle with its hook above the CG",
    (D) => {
      const h = 3;
      const { lines, weight, cgY, lean: found, below } = lean("point", h, D);
      // Leaning, the CG swings out below the picks; half of the set hangs on each hook.
      const aside = cgY + below * found;
      const [left, right] = bridle(weight / 2, b - aside, b + aside, h);
      // Bound: squares of a lean of 0.03 rad.
      expect(Math.abs(lines[0] / left.vertical - 1)).toBeLessThan(1e-3);
      expect(Math.abs(lines[1] / right.vertical - 1)).toBeLessThan(1e-3);
    },
  );

  test.each([-0.06, 0.05])("on separate lines, D = %d m: the longer side hangs lower by it", (D) => {
    const even = lean("separate", 0, 0).lean;
    near(lean("separate", 0, D).lean - even, -D / (2 * b));
  });
});
