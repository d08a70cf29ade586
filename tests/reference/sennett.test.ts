// Sennett, Matrix Analysis of Structures, section 3.8 (results read in a text that quotes the book); lb and in.

import { test } from "vitest";
import { solveBeam, spans } from "./beams.ts";
import { within } from "./close.ts";

test("a middle support 0.25 in down, two spans of 120 in, left end clamped, no load, within 0.1 %", () => {
  const beam = solveBeam(spans([120, 120], [0, 0], 2.9e6), [
    { at: 0, kind: "w" },
    { at: 0, kind: "turn" },
    { at: 120, kind: "w", level: -0.25 },
    { at: 240, kind: "w" },
  ]);
  within(beam.forces[0], 3.9558, 1e-3);
  within(beam.forces[1], 258.929, 1e-3);
  within(beam.forces[2], -5.754, 1e-3);
  within(beam.forces[3], 1.7981, 1e-3);
  within(beam.moment(120), 215.774, 1e-3);
});
