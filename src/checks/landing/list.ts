// The checks of landing and fit at the bearings.

import type { Plan } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { dataFindings } from "../dataMeasure.ts";
import { type CheckList, type Measure, useOf } from "../measure.ts";
import { measureFindings } from "../measureFindings.ts";
import type { Finding } from "../types.ts";
import { backwallGaps, gapsBetweenSets, gapsOpen } from "./gaps.ts";
import { infillFindings, infillMeasures } from "./infill.ts";
import { bearingShares, bearingSideForces, loadsOpen } from "./loads.ts";
import { landingFindings, lateMeasures } from "./order.ts";
import { packingMeasures } from "./packing.ts";
import {
  boltFindings,
  boltMeasures,
  plumbOpen,
  releaseFindings,
  releaseMeasures,
  webPlumb,
} from "./release.ts";
import { planeMeasures, seatMeasures } from "./seatLevels.ts";
import { sweepMeasures } from "./sweep.ts";
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
  onDemand: [...overSeats, releaseMeasures, boltMeasures],
  onRun: [lateMeasures],
  onPlan: [seatMeasures, sweepMeasures],
  onSet: [planeMeasures, packingMeasures, infillMeasures],
  runChecks: [
    overSeatsFindings,
    (ctx: SetContext) => dataFindings([...planeMeasures(ctx), ...packingMeasures(ctx)]),
    landingFindings,
    releaseFindings,
    boltFindings,
    infillFindings,
  ],
  planChecks: [
    (plan: Plan) => dataFindings([...seatMeasures(plan), ...sweepMeasures(plan)]),
    temperatureOpen,
    gapsOpen,
    loadsOpen,
    plumbOpen,
  ],
};
