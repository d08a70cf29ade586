// Hibbeler, Mechanics of Materials, Examples 12.14 and 12.21 (results read in a text that quotes the book).

import { test } from "vitest";
import { solveBeam, spans } from "./beams.ts";
import { within } from "./close.ts";

test("Example 12.21: propped cantilever, 8 kN at the middle of 3 m and 6 kN/m, within 0.05 %", () => {
  const beam = solveBeam(
    spans([3], [6], 1000),
    [
      { at: 0, kind: "w" },
      { at: 0, kind: "turn" },
      { at: 3, kind: "w" },
    ],
    [{ at: 1.5, kind: "w", value: 8 }],
  );
  within(beam.forces[2], 9.25, 5e-4);
  within(beam.forces[0], 16.75, 5e-4);
  within(beam.forces[1], 11.25, 5e-4);
});

test("Example 12.14: cantilever, load falling from 4 kN/m to zero at 6 m of 8 m, within 0.1 %", () => {
  const EI = 1e9;
  // The falling load in 120 steps of 0.05 m: off by less than 1e-4.
  const steps = Array.from({ length: 120 }, (_, i) => 4e6 * (1 - (i + 0.5) / 120));
  const beam = solveBeam(spans([...steps.map(() => 0.05), 2], [...steps, 0], EI), [
    { at: 0, kind: "w" },
    { at: 0, kind: "turn" },
  ]);
  const down = (-beam.w(8) * EI) / 1e6;
  within(down, (4 * 6 ** 4) / 30 + ((8 - 6) * 4 * 6 ** 3) / 24, 1e-4);
  within(down, 244.8, 1e-3);
});
