// The angle of the boom against the range of radii that its chart rates: what the operator sees in the cab.

import { type Crane, hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, METRE, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { chartsOf, cranesOf, hookReader } from "./hookLoad.ts";
import { craneField } from "./reach.ts";

const DEGREES = 180 / Math.PI;

/** Angle of a boom above the horizontal, rad, with its tip at a radius, m; NaN out of reach. */
export function boomAngleAt(crane: Crane, radius: number): number {
  return Math.acos((radius - crane.boomFootForward_m) / crane.boomLength_m);
}

/**
 * Angle of the boom, against the steepest that the chart rates: that of its least radius. The flattest is in its words;
 * beyond it 'chart left' speaks.
 */
export function boomAngles(ctx: SetContext): Measure[] {
  return cranesOf(ctx).map((crane) => {
    const hooked = hookReader(ctx, crane);
    const charts = chartsOf(ctx, crane);
    const path = craneField(ctx, crane);
    return measure({
      check: "boom angle",
      subject: hookName(crane),
      kind: `${crane.kind} crane`,
      unit: "deg",
      factor: DEGREES,
      digits: 1,
      watched: false,
      source: `${charts(-1).words}: radii that it rates`,
      chosenBy: "plan",
      cure: "stand the crane further away",
      ...traced(ctx, (pose, rec): Reading => {
        const chart = charts(pose.step);
        const hook = hooked(pose);
        if (hook === null || chart.radii === null) return NOT_HERE;
        const { least, greatest } = chart.radii;
        const { angle } = hook.reach;
        const steepest = boomAngleAt(crane, least);
        // A least radius beyond the boom's own reach: 'chart left' speaks.
        if (Number.isNaN(steepest)) return NOT_HERE;
        if (rec !== null) {
          solved(rec, "alpha", angle, "rad", "boom above the horizontal");
          const i = chart.chart.rows.findIndex((row) => row.radius_m === least);
          field(
            rec,
            "R_min",
            least,
            "least radius listed",
            `${chart.path}.rows[${i}].radius_m`,
            least,
            METRE,
          );
          const [foot, boom] = [crane.boomFootForward_m, crane.boomLength_m];
          field(
            rec,
            "x_foot",
            foot,
            "boom foot ahead of the centre",
            `${path}.boomFootForward_m`,
            foot,
            METRE,
          );
          field(rec, "L_boom", boom, "boom", `${path}.boomLength_m`, boom, METRE);
          trace(rec, "alpha_a", steepest, "acos((R_min - x_foot)/L_boom)", "rad", "steepest that is rated");
          rec.ends("alpha", "alpha_a");
        }
        return {
          value: angle,
          limit: steepest,
          get where() {
            const flattest = boomAngleAt(crane, greatest) * DEGREES;
            return `rated from ${flattest.toFixed(1)} to ${(steepest * DEGREES).toFixed(1)} deg`;
          },
        };
      }),
    });
  });
}
