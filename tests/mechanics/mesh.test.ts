// Nodes that fall nearly together: piece ends and cross-frames a little apart must not cost the answer its digits.

import { describe, expect, test } from "vitest";
import { prepareSet, type State, solveState } from "../../src/mechanics/index.ts";
import { twinState } from "./states.ts";

/** A 60 m twin set on four seats, one of them 10 mm high, with a splice `gap` before its middle frame at 30 m. */
function spliced(gap: number, end = 60, heavier = 1): State {
  const state = twinState(60, 2, 0.05, 800, {
    bearings: [
      ["L", 2],
      ["R", 2],
      ["L", 58],
      ["R", 58],
    ].map(([girder, at], i) => ({
      name: `b${i}`,
      girder: String(girder),
      at: Number(at),
      seat: i === 0 ? 0.01 : 0,
      stiffness: 1e9,
    })),
    ask: { droopAt: [30] },
  });
  const girders = state.girders.map((g, i) => {
    const [piece] = g.pieces;
    const to = i === 0 ? end : 60;
    const rear = { ...piece, to: 30 - gap };
    const front = { ...piece, from: 30 - gap, to, massPerMetre: heavier * piece.massPerMetre };
    return { ...g, pieces: gap > 0 ? [rear, front] : [{ ...piece, to }] };
  });
  return { ...state, girders };
}

describe("a splice near a cross-frame", () => {
  const plain = solveState(spliced(0));
  for (const gap of [0.5, 0.02, 0.01, 1e-3, 1e-4, 1e-6, 1e-9, 1e-12])
    test(`${gap} m away: forces and droop within 1e-6, what the other mesh costs`, () => {
      const state = spliced(gap);
      const a = solveState(state);
      expect(prepareSet(state).modes.length).toBe(3);
      expect(a.status).toBe("solved");
      for (const name of ["b0", "b1", "b2", "b3"]) {
        const [x, y] = [a.forces[`bearing ${name}`], plain.forces[`bearing ${name}`]];
        expect(Math.abs(x - y)).toBeLessThan(1e-6 * (plain.weight / 4));
      }
      expect(Math.abs(a.droop.L[0] - plain.droop.L[0])).toBeLessThan(1e-6 * Math.abs(plain.droop.L[0]));
      expect(a.residual.force).toBeLessThan(1e-9);
      expect(a.residual.moment).toBeLessThan(1e-9);
    });
  test("between pieces of unlike mass: not a gram of weight is lost", () => {
    for (const gap of [0.019, 0.007, 1e-9]) {
      const a = solveState(spliced(gap, 60, 3));
      expect(Math.abs(a.weight / (2 * 8000 * (30 - gap + 3 * (30 + gap))) - 1)).toBeLessThan(1e-12);
      let sum = 0;
      for (const name of ["b0", "b1", "b2", "b3"]) sum += a.forces[`bearing ${name}`];
      expect(Math.abs(sum / a.weight - 1)).toBeLessThan(1e-12);
      expect(a.residual.moment).toBeLessThan(1e-9);
    }
  });
});

test("girders whose ends differ by a rounding error are held like girders of one length", () => {
  const plain = solveState(spliced(0));
  for (const end of [60 - 1e-9, 60 + 1e-9, 60 - 7e-15]) {
    const a = solveState(spliced(0, end));
    expect(a.status).toBe("solved");
    for (const name of ["b0", "b1", "b2", "b3"])
      expect(Math.abs(a.forces[`bearing ${name}`] - plain.forces[`bearing ${name}`])).toBeLessThan(
        1e-6 * (plain.weight / 4),
      );
    expect(a.residual.force).toBeLessThan(1e-9);
    expect(a.residual.moment).toBeLessThan(1e-9);
  }
});
