// Masses that nobody weighed, and packing that is wrong: the findings against hand statics.
//
// Hand statics are levers, springs in series, chart rows, plane geometry and moments about the sides of polygons, from
// the plan's own numbers and never from the solver (folder `hand`). Common practice, no source. Where a hand value lies
// within its own bound of a limit, two to six percent, nothing is claimed. In the wind limits of the steps: lean, and
// groups left and right, on both trains and on both hooks; on one train and a hook it is slip that says who holds it. Not
// judged: slip, brakes, lean of the lines, lean restraint, tilt, uplift, level, changes by time and travel, strength and
// buckling.

import { tellsOf } from "./told.ts";

tellsOf("CG moved", {
  "weight check": 20,
  "group load": 6,
  "side load": 6,
  "left-right": 6,
  "hook load": 5,
  tipping: 5,
  stroke: 10,
  "end not reached": 10,
  "set lean": 8,
  "meant to carry": 10,
  "in the wind: set lean": 1,
  "in the wind: group load": 2,
});
tellsOf("packing wrong", { "set lean": 3 });
