// Logan, A First Course in the Finite Element Method, 4th ed., Example 2.1 (results read in a text that quotes the
// book); lb and in. Springs alone: the condensed problem written by hand, with two motions and no elastic set.

import { expect, test } from "vitest";
import { type Condensed, contactWorkspace, solveContact } from "../../src/mechanics/index.ts";
import { within } from "./close.ts";

test("springs of 1000, 2000 and 3000 lb/in in a row between walls, 5000 lb at the second node, within 0.01 %", () => {
  const problem: Condensed = {
    m: 3,
    N: 2,
    C: new Float64Array(9),
    // Each spring's own stretch in the two nodes' motions.
    G: Float64Array.of(1, 0, -1, 1, 0, -1),
    u: new Float64Array(3),
    d: new Float64Array(3),
    k: Float64Array.of(1000, 2000, 3000),
    oneSided: new Uint8Array(3),
    load: Float64Array.of(0, 5000),
  };
  const { a, F, settled } = solveContact(problem, contactWorkspace(), null);
  expect(settled).toBe(true);
  within(a[0], 0.90909, 1e-4);
  within(a[1], 1.36364, 1e-4);
  // Forces of the walls: the first spring pulls its node back, the last pushes it back.
  within(F[0], -909.09, 1e-4);
  within(-F[2], -4090.91, 1e-4);
});
