// The checks of landing and fit at the bearings.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type CheckList, type Measure, useOf } from "../measure.ts";
import { measureFindings } from "../measureFindings.ts";
import type { Finding } from "../types.ts";
import { backwallGaps, gapsBetweenSets, gapsOpen } from "./gaps.ts";
import { infillFindings, infillMeasures } from "./infill.ts";
import { bearingShares, bearingSideForces, loadsOpen } from "./loads.ts";
import { landingFindings, lateMeasures } from "./order.ts";
import { packingFindings } from "./packing.ts";
import {
  boltFindings,
  boltMeasures,
  plumbOpen,
  releaseFindings,
  releaseMeasures,
  webPlumb,
} from "./release.ts";
import { planeFindings, seatFindings, seatMeasures } from "./seatLevels.ts";
import { sweepFindings, sweepMeasures } from "./sweep.ts";
import { bearingOffsets, temperatureOpen } from "./temperature.ts";

/** Read at the stored poses in which the set stands over its seats. */
const overSeats = [bearingOffsets, backwallGaps, gapsBetweenSets, bearingShares, bearingSideForces, webPlumb];

function overSeatsFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const measures = overSeats.flatMap((make): Measure[] => make(ctx));
  return measures.flatMap((m) => {
    const readings = stored.map((pose) =>
      pose.situation.overSeats ? m.read(pose) : { value: Number.NaN, limit: Number.NaN },
    );
    const use = Float64Array.from(readings, (r) => useOf(m, r));
    return measureFindings(ctx, run, m, (i) => readings[i], use);
  });
}

export const landingChecks: Partial<CheckList> = {
  onDemand: [...overSeats, seatMeasures, sweepMeasures, infillMeasures, releaseMeasures, boltMeasures],
  onRun: [lateMeasures],
  runChecks: [
    overSeatsFindings,
    planeFindings,
    landingFindings,
    releaseFindings,
    boltFindings,
    packingFindings,
    infillFindings,
  ],
  planChecks: [seatFindings, temperatureOpen, gapsOpen, loadsOpen, plumbOpen, sweepFindings],
};
