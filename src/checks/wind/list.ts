// The checks of wind. Those of a pose are read anew in the wind, so that they are handed in.

import type { Plan } from "../../plan/index.ts";
import { dataFindings } from "../dataMeasure.ts";
import type { CheckList, MeasureMaker } from "../measure.ts";
import { careMeasures } from "./care.ts";
import { chartWind } from "./chart.ts";
import { forecastFindings, forecastLimits } from "./forecast.ts";
import { highestFindings, highestWinds } from "./highestFindings.ts";
import { windMeasures, windRunCheck } from "./inTheWind.ts";
import { lacking } from "./lacking.ts";
import { overnightCheck, overnightMeasures, overnightSliding } from "./overnight.ts";
import { tableFindings, tableLimits } from "./table.ts";

/**
 * The checks of wind over those of a pose: `cheap` are read in the wind at every stored pose, `all` where a set is left and
 * where somebody asks. The girders are left out of the cheap ones: wind across turns the set and shifts load from girder to
 * girder, which the corners of the spread and the highest wind judge; their bending sideways is in no check yet.
 */
export function windChecks(cheap: readonly MeasureMaker[], all: readonly MeasureMaker[]): Partial<CheckList> {
  return {
    makers: [chartWind],
    onDemand: [
      windMeasures(all),
      overnightMeasures(all),
      overnightSliding,
      tableLimits,
      forecastLimits,
      highestWinds(all),
    ],
    runChecks: [tableFindings, windRunCheck(cheap), overnightCheck(all)],
    planChecks: [lacking, forecastFindings, (plan: Plan) => dataFindings(careMeasures(plan))],
    highestChecks: [highestFindings],
    onPlan: [careMeasures],
  };
}
