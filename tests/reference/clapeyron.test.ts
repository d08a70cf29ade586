// Clapeyron's three-moment equation, as in Ghali and Neville, Structural Analysis (from memory, recomputed).

import { test } from "vitest";
import { solveBeam, spans, supportsOf } from "./beams.ts";
import { within } from "./close.ts";

test("two unequal spans, 20 kN/m on 24 m and 36 m, within 0.05 %", () => {
  const [w, a, b] = [20e3, 24, 36];
  const beam = solveBeam(spans([a, b], [w, w], 3e9), supportsOf([a, b], true));
  within(-beam.moment(a), (w * (a ** 3 + b ** 3)) / (8 * (a + b)), 1e-6);
  within(-beam.moment(a), 2520e3, 5e-4);
  [135e3, 775e3, 290e3].forEach((R, i) => {
    within(beam.forces[i], R, 5e-4);
  });
});
