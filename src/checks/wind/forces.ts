// Forces of the wind at a pose: on the set, on every boom that holds it, on block and rope, and what its line pulls across.

import { AIR, BLOCK, boomArea, ROPE } from "../../mechanics/index.ts";
import { byId, hookName } from "../../plan/index.ts";
import { boomOf, type Pose, type SetContext } from "../../sequence/index.ts";

import { forceOn, gustAtTip, pressureAt, WAYS } from "./air.ts";
import { blowerOf } from "./blow.ts";

/** Forces across on one crane, N. */
export interface BoomWind {
  crane: string;
  /** On its boom, at the pressure of its tip over its whole length; null where width or solidity is not stated. */
  boom: number | null;
  /** On block, rigging and rope as far as the plan states them. */
  rigging: number;
  /** Horizontal pull of its line across the path, the greater of both ways. */
  line: number;
}

/** Forces of a wind at a pose, N. @param reading what the site's instrument shows, m/s */
export function windForces(
  ctx: SetContext,
  pose: Pose,
  reading: number,
): { wind: number; booms: BoomWind[] } {
  const blower = blowerOf(ctx);
  const gusts = WAYS.map((toward) => blower.at(pose, pressureAt(ctx.plan, reading), toward).solution);
  const booms = pose.situation.cranes
    .filter((c) => c.hooked)
    .map((c): BoomWind => {
      const crane = byId(ctx.plan.cranes, c.id);
      const { tip } = boomOf(crane, c.tip, c.moved);
      const q = AIR * gustAtTip(ctx.plan, reading, tip[2] - crane.position.elevation_m) ** 2;
      const {
        boomWidth_m,
        boomSolidity,
        boomMembers = "round",
        ropeDiameter_mm,
        blockArea_m2,
      } = crane.wind ?? {};
      const rope = (pose.state.hoists ?? []).find((h) => h.name === c.id)?.ropeLength ?? 0;
      const sail =
        BLOCK * (blockArea_m2 ?? 0) + (ROPE * crane.partsOfLine * rope * (ropeDiameter_mm ?? 0)) / 1000;
      let line = 0;
      for (const s of gusts) {
        const i = s.layout.hoists.findIndex((h) => h.name === c.id);
        if (s.status === "solved" && s.horizontal !== null && i >= 0)
          line = Math.max(line, Math.abs(s.horizontal.lines[2 * i + 1]));
      }
      return {
        crane: hookName(crane),
        boom:
          boomWidth_m === undefined || boomSolidity === undefined
            ? null
            : q * boomArea(crane.boomLength_m, boomWidth_m, boomSolidity, boomMembers),
        rigging: q * sail,
        line,
      };
    });
  return { wind: forceOn(ctx.plan, ctx.set, reading), booms };
}
