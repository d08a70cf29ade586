// Cranes: what hangs on a hook with a given net load. Apart from what judges it: the table of reactions needs no more.

import {
  byId,
  type Crane,
  gravityOf,
  type Pick,
  type Plan,
  type PlanSet,
  pickOf,
  type Rigging,
} from "../../plan/index.ts";
import { hookAbovePicks, type Pose } from "../../sequence/index.ts";
import type { HookLoad } from "./hookTrace.ts";

/** A crane with its rigging, and what of its hook load does not change from pose to pose. */
export interface Hook {
  crane: Crane;
  rig: Rigging;
  /** Place of its force among the supports. */
  column: number;
  /** N. */
  fixed: Omit<HookLoad, "net" | "rope" | "gross">;
  /** Weight of one metre of rope below the boom tip, N/m, and the length that slings and spreader take the place of, m. */
  ropePerMetre: number;
  slings: number;
}

/** The hook of a crane that holds a pick; `column` is the place of its force among the supports. */
export function hookOf(plan: Plan, crane: Crane, pick: Pick, column: number): Hook {
  const rig = byId(plan.rigging, pick.rigging);
  const g = gravityOf(plan);
  return {
    crane,
    rig,
    column,
    fixed: {
      rigging: rig.mass_t * 1000 * g,
      block: crane.deductions.block_t * 1000 * g,
      auxiliary: (crane.deductions.auxiliary_t ?? 0) * 1000 * g,
    },
    ropePerMetre: crane.deductions.rope_kg_per_m * crane.partsOfLine * g,
    slings: hookAbovePicks(rig),
  };
}

/** What hangs on a hook with a net load; null when it is not on. */
export function loadOn(
  { crane, fixed, ropePerMetre, slings }: Hook,
  pose: Pose,
  net: number,
): HookLoad | null {
  for (const hoist of pose.state.hoists ?? []) {
    if (hoist.name !== crane.id) continue;
    const { rigging, block, auxiliary } = fixed;
    const rope = ropePerMetre * Math.max(0, (hoist.ropeLength ?? 0) - slings);
    return { net, rigging, block, rope, auxiliary, gross: net + rigging + block + rope + auxiliary };
  }
  return null;
}

/** What hangs on a crane's hook with a given net load: rigging, block, rope below the tip, auxiliary block; null when not on. */
export function hookLoadWith(
  plan: Plan,
  set: PlanSet,
  pose: Pose,
  crane: Crane,
  net: number,
): HookLoad | null {
  const pick = pickOf(set, crane.id);
  return pick && loadOn(hookOf(plan, crane, pick, -1), pose, net);
}
