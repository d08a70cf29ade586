// Lean and level are the slopes of the best plane through the displaced set, and hang on nothing that was asked before.
// Source: least squares by singular values of the library ml-matrix, over the whole displacement field.

import fc from "fast-check";
import { Matrix, SVD } from "ml-matrix";
import { expect, test } from "vitest";
import { attitudeOf, prepareSet, recoverField, solveStatics } from "../../src/mechanics/index.ts";
import { states } from "./states.ts";

const seed = 52117;

/** Heave, slope along and slope across of the best plane through points (x, y, w); without `wide` no slope across. */
function plane(x: ArrayLike<number>, y: ArrayLike<number>, w: readonly number[], wide: boolean): number[] {
  const rows = w.map((_, i) => (wide ? [1, x[i], y[i]] : [1, x[i]]));
  return new SVD(new Matrix(rows), { autoTranspose: true }).solve(Matrix.columnVector(w)).to1DArray();
}

test(`300 random states: lean and level against the best plane through all nodes (seed ${seed})`, () => {
  let compared = 0;
  fc.assert(
    fc.property(states(), (state) => {
      const model = prepareSet(state);
      const s = solveStatics(state, { model });
      if (s.status !== "solved") return;
      compared++;
      const found = attitudeOf(s);
      // Asked again, and of a set prepared anew: the same bits.
      expect(attitudeOf(s)).toEqual(found);
      expect(attitudeOf(solveStatics(state))).toEqual(found);
      const q = recoverField(s);
      const w = Array.from(model.nodeX, (_, i) => q[3 * i]);
      const [, along, across = 0] = plane(model.nodeX, model.nodeY, w, model.lean >= 0);
      // Rounding alone parts the two: slopes to some 0.1 and displacements to some metres in double precision.
      expect(Math.abs(found.level + along)).toBeLessThan(1e-13);
      expect(Math.abs(found.lean - across)).toBeLessThan(1e-13);
    }),
    { seed, numRuns: 300 },
  );
  expect(compared).toBeGreaterThan(150);
});
