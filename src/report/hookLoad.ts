// What a hook feels: the net load on its picks, and everything that hangs between them and the boom tip.

import { byId, gravityOf, type Plan, pickOf } from "../plan/index.ts";
import type { Pose } from "../sequence/index.ts";

/** Masses between the picks and the boom tip, kg. */
export interface Hanging {
  rigging: number;
  block: number;
  rope: number;
  auxiliary: number;
}

/**
 * What hangs between the picks and the boom tip of a crane in a pose, as its plan's deductions say: the rigging, the
 * hook block, what else is on the boom, and every part of the rope from the tip down to the hook.
 */
export function hangingOn(plan: Plan, setId: string, pose: Pose, craneId: string): Hanging {
  const crane = byId(plan.cranes, craneId);
  const pick = pickOf(byId(plan.sets, setId), craneId);
  const hoist = pose.state.hoists?.find((h) => h.name === craneId);
  if (pick === null || hoist === undefined) return { rigging: 0, block: 0, rope: 0, auxiliary: 0 };
  const rigging = byId(plan.rigging, pick.rigging);
  const length = Math.max(0, (hoist.ropeLength ?? 0) - rigging.slingLength_m - rigging.hookPinHeight_m);
  const { block_t, rope_kg_per_m, auxiliary_t } = crane.deductions;
  return {
    rigging: rigging.mass_t * 1000,
    block: block_t * 1000,
    rope: rope_kg_per_m * crane.partsOfLine * length,
    auxiliary: (auxiliary_t ?? 0) * 1000,
  };
}

/** Load on the boom tip, N: the net load on the picks and the weight of all that hangs. */
export function grossLoad(plan: Plan, setId: string, pose: Pose, craneId: string, net: number): number {
  const { rigging, block, rope, auxiliary } = hangingOn(plan, setId, pose, craneId);
  return net + (rigging + block + rope + auxiliary) * gravityOf(plan);
}
