// Peery, Aircraft Structures (1950), section 6.2 (read in a text that quotes the book); inches, within 0.05 %.

import { test } from "vitest";
import { sectionOf } from "../../src/section/index.ts";
import { within } from "./close.ts";

test("I section 6 in deep, flanges 3 x 1 in, web 1 in: I = 43.33 in4, 55 385 psi under 800 000 lb in", () => {
  const s = sectionOf({ topFlange: [3, 1], web: [4, 1], bottomFlange: [3, 1] });
  within(s.strongInertia, 43.33, 5e-4);
  within((800000 * s.depth) / 2 / s.strongInertia, 55385, 5e-4);
  // The book divides by a rounded 43.3.
  within((800000 * s.depth) / 2 / 43.3, 55427, 5e-4);
});
