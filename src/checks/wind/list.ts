// The checks of wind. Those of a pose are read anew in the wind, so that they are handed in.

import type { CheckList, MeasureMaker } from "../measure.ts";
import { windMeasures, windRunCheck } from "./inTheWind.ts";

/**
 * The checks of wind over those of a pose. `cheap` are read in the wind at every stored pose, `all` where somebody asks.
 * The girders are left out of the cheap ones: wind across turns the set and shifts load from girder to girder, which the
 * corners of the spread judge with it; their bending sideways is in no check yet.
 */
export function windChecks(cheap: readonly MeasureMaker[], all: readonly MeasureMaker[]): Partial<CheckList> {
  return {
    onDemand: [windMeasures(all)],
    runChecks: [windRunCheck(cheap)],
  };
}
