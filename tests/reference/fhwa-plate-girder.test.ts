// FHWA, Steel Bridge Design Handbook, Design Example 1 (three-span continuous straight I-girder), end span section:
// figures from memory, all recomputed. Inches; within 0.1 %.

import { test } from "vitest";
import { sectionOf } from "../../src/section/index.ts";
import { within } from "./close.ts";

test("welded girder with unequal flanges: 16 x 1, 69 x 1/2, 18 x 1 3/8 in", () => {
  const s = sectionOf({ topFlange: [16, 1], web: [69, 0.5], bottomFlange: [18, 1.375] });
  within(s.depth, 71.375, 1e-12);
  within(s.area, 75.25, 1e-3);
  within(s.centroid, 31.74, 1e-3);
  within(s.depth - s.centroid, 39.63, 1e-3);
  within(s.strongInertia, 62653, 1e-3);
  within(s.strongInertia, 62658, 1e-3);
  within(s.strongInertia / (s.depth - s.centroid), 1581, 1e-3);
  within(s.strongInertia / s.centroid, 1974, 1e-3);
  within((s.area * 490) / 144, 256.1, 1e-3);
  within(s.weakInertia, 1010.3, 1e-3);
  within(s.torsion, 23.81, 1e-3);
  within(s.warping, 1.113e6, 1e-3);
});
