// McGuire, Gallagher and Ziemian, Matrix Structural Analysis, 2nd ed., Example 4.15 (results read in a text that quotes
// the book); kip and in. The published deflection, 0.238 in, is 3.5 % below an independent recomputation, 0.2463 in,
// and close to the infinite beam on an even bed; hence the two bounds.

import { test } from "vitest";
import { solveBeam, spans } from "./beams.ts";
import { within } from "./close.ts";

test("240 in beam on springs every 15 in between pinned ends, 40 kip at the middle", () => {
  const inner = Array.from({ length: 15 }, (_, i) => 15 * (i + 1));
  const beam = solveBeam(
    spans([240], [0], 29e3 * 128.5),
    [
      { at: 0, kind: "w" },
      ...inner.map((at) => ({ at, kind: "w" as const, stiffness: 22.5 })),
      { at: 240, kind: "w" },
    ],
    [{ at: 120, kind: "w", value: 40 }],
  );
  within(-beam.w(120), 0.2463, 2e-3);
  within(-beam.w(120), 0.238, 4e-2);
  within(beam.moment(120), 546.6, 2e-3);
  within(beam.moment(120), 547, 2e-3);
  within(beam.forces[0], -2.551, 2e-3);
  within(beam.forces[16], -2.551, 2e-3);
  within(beam.forces[8], 5.541, 2e-3);
});
