// Level of a crane while it carries, against what its maker allows (29 CFR 1926.1402(b): support and level within the
// maker's limits); while it walks, the worst of the way as well.

import { hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field } from "../trace.ts";
import { traced } from "../traced.ts";
import { cranesOf, hookReader } from "./hookLoad.ts";
import { craneField, levelErrorIn, PERCENT, recordLevelError } from "./reach.ts";

/** Level error against the allowed one, for cranes whose plan states that. */
export function craneLevels(ctx: SetContext): Measure[] {
  return cranesOf(ctx).flatMap((crane) => {
    const allowed = crane.allowedOutOfLevel_pct;
    if (allowed === undefined) return [];
    const path = `${craneField(ctx, crane)}.allowedOutOfLevel_pct`;
    const hooked = hookReader(ctx, crane);
    return measure(
      {
        check: "crane level",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        unit: "% out of level",
        factor: 100,
        digits: 2,
        watched: false,
        cure: "level the ground or the mats below the tracks before the hook takes load",
        ...traced(ctx, (pose, rec): Reading => {
          const error = levelErrorIn(ctx, crane, pose.step);
          if (error === undefined || hooked(pose) === null) return NOT_HERE;
          if (rec !== null) {
            recordLevelError(rec, ctx, crane, pose.step);
            field(rec, "e_a", allowed / 100, "allowed level error", path, allowed, PERCENT);
            rec.ends("e_level", "e_a");
          }
          return { value: error / 100, limit: allowed / 100 };
        }),
      },
      { source: `maker's limit of ${crane.id}; 29 CFR 1926.1402(b)`, chosenBy: "plan" },
    );
  });
}
