// The hook load in motion, where the plan chose a dynamic factor: weight with contingency, everything below the tip, times
// the factor, against the rated load (Guidelines for Marine Lifting and Lowering Operations, 0027/ND Rev 11.2 (2016),
// 6.2.2 to 6.2.4, 10.3.1, table 5-1).

import { dynamicFactorOnshore } from "../../mechanics/index.ts";
import { hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { chartsOf, cranesOf, hookReader } from "./hookLoad.ts";
import { recordGross, recordRatedLoad } from "./hookTrace.ts";
import { recordReach } from "./reach.ts";

/** The rule whose factor is a table by hook load, and not one number. */
const TABLE = "rule marine-0027";

/** Dynamic hook load against the chart; none where no dynamic factor was chosen. */
export function dynamicHookLoads(ctx: SetContext): Measure[] {
  const factor = limitOf(ctx.plan, "dynamic factor", true);
  if (factor === null) return [];
  const contingency = limitOf(ctx.plan, "weight contingency", true) ?? {
    value: 1,
    source: "no contingency was chosen",
    chosenBy: "plan",
  };
  return cranesOf(ctx).map((crane) => {
    const hooked = hookReader(ctx, crane);
    const charts = chartsOf(ctx, crane);
    return measure(
      {
        check: "dynamic hook load",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        cure: "weigh the set, a bigger crane, a smaller radius, or less load handed to this hook",
        ...traced(ctx, (pose, rec): Reading => {
          const hook = hooked(pose);
          if (hook === null) return NOT_HERE;
          const { load, reach } = hook;
          const chart = charts(pose.step);
          const rated = chart.ratedAt(reach.radius);
          if (rated === null) return NOT_HERE;
          const still = contingency.value * load.net + (load.gross - load.net);
          const daf =
            factor.chosenBy === TABLE ? dynamicFactorOnshore(still / (1000 * ctx.gravity)) : factor.value;
          const value = still * daf;
          if (rec !== null) {
            recordGross(rec, ctx, crane, pose, load);
            const chosen = (one: typeof factor) => `${one.source} (${one.chosenBy})`;
            constant(rec, "c", contingency.value, "1", "contingency on the weight", chosen(contingency));
            trace(rec, "F_still", still, "c*F_net + (F - F_net)", "N", "static hook load");
            constant(rec, "DAF", daf, "1", "dynamic factor for this hook load", chosen(factor));
            trace(rec, "F_dyn", value, "F_still*DAF", "N", "dynamic hook load", "0027/ND", "6.2.4");
            recordReach(rec, ctx, crane, pose, reach);
            recordRatedLoad(rec, rated, `${chart.path}, boom ${crane.boomLength_m} m`, reach.radius);
            rec.ends("F_dyn", "F_rated");
          }
          return {
            value,
            limit: rated,
            get where() {
              return `factor ${daf}, contingency ${contingency.value}, radius ${reach.radius.toFixed(1)} m`;
            },
          };
        }),
      },
      factor,
    );
  });
}
