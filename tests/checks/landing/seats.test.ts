// Forces from warped seats and the shims against them: closed forms, the statics themselves, a solver that shares no code.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  leastShims,
  leastShimsInSteps,
  prepareSet,
  type State,
  seatStiffness,
  solveState,
  solveStatics,
} from "../../../src/mechanics/index.ts";
import { solveDense } from "../../independent/dense.ts";

/** A girder's plates: a web of 1 m whose torsion constant h t^3 / 3 is 9e-6 m4 with t = 30 mm. */
const web = (name: string, y: number, length: number, massPerMetre: number) => ({
  name,
  y,
  pieces: [
    {
      from: 0,
      to: length,
      topFlange: [0, 0] as const,
      web: [1, 0.03] as const,
      bottomFlange: [0, 0] as const,
      massPerMetre,
    },
  ],
});

const frameAt = (at: number, inPlaneInertia: number) => ({
  at,
  area: 1e-2,
  inPlaneInertia,
  planInertia: 1e-9,
  torsion: 1e-12,
  mass: 0,
  height: 0.5,
});

/** Girders `spacing` apart on seats at both ends, each of stiffness `k`. */
function setOn(ys: readonly number[], L: number, k: number, inPlane: number, mass = 400): State {
  const names = ["A", "B", "C"];
  return {
    format: "handspan-state",
    version: 1,
    gravity: 10,
    E: 2.1e11,
    G: 8.1e10,
    girders: ys.map((y, i) => web(names[i], y, L, mass * (1 + 0.1 * i))),
    crossFrames: [0, L / 3, (2 * L) / 3, L].map((at) => frameAt(at, inPlane)),
    bearings: ys.flatMap((_, i) =>
      [0, L].map((at) => ({
        name: `${at === 0 ? "near" : "far"} ${names[i]}`,
        girder: names[i],
        at,
        seat: 0,
        stiffness: k,
      })),
    ),
  };
}

const solved = (state: State) => solveStatics(state, { model: prepareSet(state) });
const forcesOf = (state: State) => {
  const { forces } = solveState(state);
  return (state.bearings ?? []).map((b) => forces[`bearing ${b.name}`]);
};
const onSeats = (state: State, levels: readonly number[]): State => ({
  ...state,
  bearings: (state.bearings ?? []).map((b, i) => ({ ...b, seat: levels[i] })),
});

describe("stiffness against warp of the seats", () => {
  test("two girders, one seat 24 mm high: d / (S^2 L / (2 G J) + 4 / k) = 108.0 N on every bearing", () => {
    const [S, L, J, G, k] = [3, 36, 9e-6, 8.1e10, 50e6];
    const K = seatStiffness(solved(setOn([1.5, -1.5], L, k, 1e3))) as Float64Array;
    const closed = 1 / ((S * S * L) / (2 * G * J) + 4 / k);
    expect(0.024 * closed).toBeCloseTo(108.0, 1);
    // Frames of 1e3 m4 beside torsion of 9e-6 m4 cost eight digits of sixteen: 1e-5 leaves room for that.
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        const sign = [1, -1, -1, 1][i] * [1, -1, -1, 1][j];
        expect(Math.abs(K[4 * i + j] * sign - closed) / closed).toBeLessThan(1e-5);
      }
  });

  test("it is what the statics give for a seat that is moved, three girders, all bearings carrying", () => {
    const state = setOn([3, 0, -3], 30, 4e8, 2e-3);
    const K = seatStiffness(solved(state)) as Float64Array;
    const flat = forcesOf(state);
    const by = 1e-4;
    for (let j = 0; j < 6; j++) {
      const moved = forcesOf(
        onSeats(
          state,
          flat.map((_, i) => (i === j ? by : 0)),
        ),
      );
      expect(Math.min(...moved)).toBeGreaterThan(0);
      // Forces come within 1e-9 of the weight, about 4e-4 N here; half a newton of them is what a seat changes least.
      for (let i = 0; i < 6; i++) expect(Math.abs(moved[i] - flat[i] - K[6 * i + j] * by)).toBeLessThan(2e-3);
    }
  });

  test("a plane changes nothing, and the forces of a warp are in equilibrium", () => {
    const state = setOn([3, 0, -3], 30, 4e8, 2e-3);
    const K = seatStiffness(solved(state)) as Float64Array;
    const largest = Math.max(...K.map(Math.abs));
    const places = [3, 0, -3].flatMap((y) => [0, 30].map((x) => [1, x, y]));
    for (let q = 0; q < 3; q++)
      for (let i = 0; i < 6; i++) {
        let sum = 0;
        for (let j = 0; j < 6; j++) sum += K[6 * i + j] * places[j][q];
        expect(Math.abs(sum)).toBeLessThan(1e-8 * 30 * largest);
      }
  });
});

describe("shims", () => {
  const tolerance = 0.05;
  // Tenths of a millimetre.
  const warp = fc.array(fc.integer({ min: -200, max: 200 }), { minLength: 6, maxLength: 6 });

  test("put in, they give the shares within the tolerance: 30 random warps of three girders (seed 4711)", () => {
    const state = setOn([3, 0, -3], 9, 4e8, 2e-4);
    const K = seatStiffness(solved(state)) as Float64Array;
    const meant = forcesOf(state);
    let wrong = 0;
    fc.assert(
      fc.property(warp, (tenths) => {
        const off = tenths.map((t) => t * 1e-4);
        const asked = { stiffness: K, meant, off, tolerance };
        const shims = leastShims(asked) as number[];
        expect(shims).not.toBeNull();
        for (const h of shims) expect(h).toBeGreaterThanOrEqual(0);
        const before = solveState(onSeats(state, off)).forces;
        const after = solveDense(
          onSeats(
            state,
            off.map((z, i) => z + shims[i]),
          ),
        ).forces;
        const worst = (forces: Record<string, number>) =>
          Math.max(
            ...(state.bearings ?? []).map((b, i) => Math.abs(forces[`bearing ${b.name}`] / meant[i] - 1)),
          );
        if (worst(before) > tolerance) wrong++;
        // The other solver's frames and ours agree to 0.1 %; the shims stand right at the tolerance.
        expect(worst(after)).toBeLessThan(tolerance + 1e-3);
      }),
      { seed: 4711, numRuns: 30 },
    );
    // The warps are such that something had to be done.
    expect(wrong).toBeGreaterThan(25);
  });

  test("in whole millimetres, where a millimetre is fine enough, no fewer of them do it (seed 4712)", () => {
    const state = setOn([1.5, -1.5], 30, 4e8, 2e-3);
    const K = seatStiffness(solved(state)) as Float64Array;
    const meant = forcesOf(state);
    const step = 0.001;
    const fits = (off: readonly number[], n: readonly number[]) =>
      meant.every((F, i) => {
        let change = 0;
        for (let j = 0; j < 4; j++) change += K[4 * i + j] * (off[j] + n[j] * step);
        return Math.abs(change) <= 1e-4 * F * (1 + 1e-9);
      });
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 4, maxLength: 4 }), (tenths) => {
        const off = tenths.map((t) => t * 1e-4);
        const found = leastShimsInSteps({ stiffness: K, meant, off, tolerance: 1e-4 }, step);
        // All of up to 7 mm on each seat, tried one by one.
        let least = Number.POSITIVE_INFINITY;
        for (let a = 0; a < 8; a++)
          for (let b = 0; b < 8; b++)
            for (let c = 0; c < 8; c++)
              for (let d = 0; d < 8; d++) if (fits(off, [a, b, c, d])) least = Math.min(least, a + b + c + d);
        const sum = found === null ? Number.POSITIVE_INFINITY : found.reduce((s, h) => s + h, 0) / step;
        if (Number.isFinite(least)) expect(Math.round(sum)).toBe(least);
        if (found !== null) {
          for (const h of found) expect(Math.abs(h / step - Math.round(h / step))).toBeLessThan(1e-9);
          expect(
            fits(
              off,
              found.map((h) => Math.round(h / step)),
            ),
          ).toBe(true);
        }
      }),
      { seed: 4712, numRuns: 20 },
    );
  });
});
