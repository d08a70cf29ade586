// Lu, Jia and Tang, Structural Mechanics: Analytical and Numerical Approaches, Example 7.1 (results read in a text
// that quotes the book).

import { test } from "vitest";
import { solveBeam } from "./beams.ts";
import { within } from "./close.ts";

test("two spans of unlike E and I turned by moments at their ends and joint, within 0.01 %", () => {
  const beam = solveBeam(
    [
      { from: 0, to: 5, EI: 30e9 * 1.44e-5, load: 0 },
      { from: 5, to: 12, EI: 206e9 * 1.152e-5, load: 0 },
    ],
    [0, 5, 12].map((at) => ({ at, kind: "w" as const })),
    [
      { at: 0, kind: "turn", value: -15e3 },
      { at: 5, kind: "turn", value: -25e3 },
      { at: 12, kind: "turn", value: 35e3 },
    ],
  );
  within(beam.turn(0), -0.0296907, 1e-4);
  within(beam.turn(5), -0.0274241, 1e-4);
  within(beam.turn(12), 0.0395219, 1e-4);
});
