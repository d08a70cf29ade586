// Buckling of a pose as a check with its trace. It takes tens of milliseconds a pose, so that the run of a plan does not
// make it: it is read at the stages (stages.ts) and where somebody asks.

import { bucklingOf } from "../../mechanics/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, solved } from "../trace.ts";
import { traced } from "../traced.ts";

/** What would cure a set that buckles too soon. */
export const bucklingCure =
  "bracing in plan, picks further apart, hooks kept on longer, or a stiffer compression flange; have it analysed by a licensed engineer";

export function bucklingMeasures(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "buckling factor", true);
  if (limit === null) return [];
  return [
    measure(
      {
        check: "buckling",
        subject: "set",
        kind: "",
        sense: "least",
        unit: "times its loads",
        factor: 1,
        digits: 2,
        cure: bucklingCure,
        ...traced(ctx, ({ solution }, rec): Reading => {
          const found = solution.status === "solved" ? bucklingOf(solution) : null;
          if (found === null || !Number.isFinite(found.factor)) return NOT_HERE;
          solved(
            rec,
            "lambda",
            found.factor,
            "1",
            "least factor on all loads at which the stiffness of the stage vanishes (linear eigenvalue, warping counted)",
          );
          constant(
            rec,
            "lambda_min",
            limit.value,
            "1",
            "least factor",
            `${limit.source} (${limit.chosenBy})`,
          );
          rec?.ends("lambda", "lambda_min");
          return { value: found.factor, limit: limit.value };
        }),
      },
      limit,
    ),
  ];
}
