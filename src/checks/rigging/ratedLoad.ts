// The load on a whole rigging assembly against its own rated load: what hangs below the hook, without block and rope.

import { byId, hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { recordRated, traced } from "../traced.ts";

/** Net load of every hook against the rated load of its rigging. */
export function riggingLoads(ctx: SetContext): Measure[] {
  return ctx.set.picks.map((pick) => {
    const crane = byId(ctx.plan.cranes, pick.crane);
    const rig = byId(ctx.plan.rigging, pick.rigging);
    const column = ctx.supportIndex.get(`hoist ${crane.id}`) ?? -1;
    const path = `rigging[${ctx.plan.rigging.indexOf(rig)}].ratedLoad_kN`;
    const what = `net load of ${crane.id} on its picks`;
    return measure({
      check: "rigging load",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      source: `rated load of rigging '${rig.id}' in the plan`,
      chosenBy: "plan",
      cure: "rigging of a higher rating, or less load on this hook",
      ...traced(ctx, (pose, rec): Reading => {
        const net = pose.forces[column];
        if (Number.isNaN(net)) return NOT_HERE;
        recordRated(rec, net, what, path, rig.ratedLoad_kN, "rated load of the rigging");
        return { value: net, limit: rig.ratedLoad_kN * 1000 };
      }),
    });
  });
}
