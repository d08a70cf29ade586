// What fixes the rigging to a girder against its capacity, and a spreader against the thrust of the legs above it.

import { spreaderCompression } from "../../mechanics/index.ts";
import { hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, KN, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { lineGeometry, topGeometry } from "./geometryTrace.ts";
import { greatestLine, riggedHooks } from "./legs.ts";

/** The pull on the lug, clamp or sling of every girder against what it may carry, where the plan says so. */
export function attachmentLoads(ctx: SetContext): Measure[] {
  return riggedHooks(ctx).flatMap((hook) => {
    const capacity = hook.pick.attachment?.capacity_kN;
    if (capacity === undefined) return [];
    const path = `sets[${ctx.plan.sets.indexOf(ctx.set)}].picks[${ctx.set.picks.indexOf(hook.pick)}].attachment.capacity_kN`;
    return measure({
      check: "lift attachment",
      subject: hookName(hook.crane),
      kind: `${hook.crane.kind} crane`,
      source: `capacity of the ${hook.pick.attachment?.kind} in the plan`,
      chosenBy: "plan",
      watched: false,
      cure: "an attachment of a higher capacity, or less load on this hook",
      ...traced(ctx, (pose, rec): Reading => {
        if (Number.isNaN(pose.forces[hook.column])) return NOT_HERE;
        const { index, force } = greatestLine(hook, pose.forces);
        const line = hook.lines[index];
        if (rec !== null) {
          solved(rec, "F_line", force, "N", `load of ${hook.crane.id} on girder ${line.girder}`);
          lineGeometry(rec, hook, line.y, line.cos);
          field(rec, "F_a", capacity * 1000, "capacity of the attachment", path, capacity, KN);
          rec.ends("F", "F_a");
        }
        const value = trace(rec, "F", force / line.cos, "F_line/c", "N", "pull along the legs");
        return { value, limit: capacity * 1000, where: `girder ${line.girder}` };
      }),
    });
  });
}

/** Compression of every spreader that has legs above it and a stated capacity. */
export function spreaderThrust(ctx: SetContext): Measure[] {
  return riggedHooks(ctx).flatMap((hook) => {
    const capacity = hook.rig.topLegs?.compression_kN;
    if (capacity === undefined) return [];
    return measure({
      check: "spreader thrust",
      subject: hookName(hook.crane),
      kind: `${hook.crane.kind} crane`,
      source: `compression that the spreader of rigging '${hook.rig.id}' may carry, in the plan`,
      chosenBy: "plan",
      watched: false,
      cure: "longer legs above the spreader, a stronger spreader, or less load on this hook",
      ...traced(ctx, (pose, rec): Reading => {
        const net = pose.forces[hook.column];
        if (Number.isNaN(net)) return NOT_HERE;
        const two = hook.lines.length === 2;
        const side = two
          ? Math.max(pose.forces[hook.lines[0].column], pose.forces[hook.lines[1].column])
          : net / 2;
        if (rec !== null) {
          solved(rec, "F_side", side, "N", `load of ${hook.crane.id} on the heavier end of its spreader`);
          topGeometry(rec, hook);
          const path = `${hook.path}.topLegs.compression_kN`;
          field(rec, "C_a", capacity * 1000, "compression allowed", path, capacity, KN);
          rec.ends("C", "C_a");
        }
        const value = trace(
          rec,
          "C",
          spreaderCompression(2 * side, hook.top),
          "F_side*sqrt(1 - c^2)/c",
          "N",
          "thrust of the legs above",
        );
        return { value, limit: capacity * 1000 };
      }),
    });
  });
}
