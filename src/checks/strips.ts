// The checks that are drawn as strips below who carries what, apart from all others: a page that reads them at its cursor
// loads no more than these.

import type { SetContext } from "../sequence/index.ts";
import { hookLoads } from "./cranes/hookLoad.ts";
import { girderBending } from "./girders/bending.ts";
import { splices } from "./girders/splices.ts";
import { stiffenerLoads } from "./girders/stiffeners.ts";
import { twoGirderSet } from "./girders/twoGirders.ts";
import { webAtPointLoads } from "./girders/web.ts";
import type { Measure, MeasureMaker } from "./measure.ts";
import { bearingLoads, tipping } from "./set.ts";
import { groupLoads, lineLoads } from "./transporters/loads.ts";
import { strokes } from "./transporters/stroke.ts";

const drawn: readonly MeasureMaker[] = [
  hookLoads,
  groupLoads,
  lineLoads,
  strokes,
  bearingLoads,
  tipping,
  girderBending,
  twoGirderSet,
  webAtPointLoads,
  stiffenerLoads,
  splices,
];

/** The measures of a set that are drawn as strips, in the order of the list of checks. */
export function stripMeasures(ctx: SetContext): Measure[] {
  return drawn.flatMap((make) => make(ctx)).filter(({ strip }) => strip);
}
