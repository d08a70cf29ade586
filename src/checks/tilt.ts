// Tilt of a set on soft trains: its weight, moved aside by a tilt, tilts it further. The statics take the first tilt alone.
//
// A tilt t0 grows to t0 / (1 - sum(W h) / k): k is the stiffness of all that holds lean, W h the weights times their
// heights above what they stand on. Source: second-order theory of a rigid body on springs.

import type { Solution } from "../mechanics/index.ts";
import type { Pose, SetContext } from "../sequence/index.ts";
import { leanStiffnessOf } from "./lean.ts";
import { limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE } from "./measure.ts";

/**
 * Moment per radian of lean by which weights on trains pull over, N m/rad: the set's CG above its soffit as far as it does
 * not hang, what stands on each deck by the height of its bunks, and decks by their own CG. Null when no bunk carries.
 */
export function overturningOf(s: Solution): number | null {
  const { model, layout, devices, contact, hoistForce, state } = s;
  const onDeck = new Float64Array(layout.trains.length);
  devices.forEach((d, j) => {
    if (d.kind === "bunk") onDeck[d.of] += contact.F[j];
  });
  let sum = 0;
  layout.trains.forEach((t, i) => {
    if (onDeck[i] > 0) sum += onDeck[i] * t.bunkHeight + t.mass * state.gravity * t.cgHeight;
  });
  if (sum === 0) return null;
  const hung = hoistForce.reduce((T, force) => T + Math.max(0, force), 0);
  return sum + Math.max(0, model.mass * state.gravity - hung) * model.cg[2];
}

/** Part of what holds lean that the weights use up; from 1 on they tilt over. NaN where no train carries. */
function usedUp(pose: Pose): number {
  const { model } = pose.solution;
  // The lean of a lone girder is taken as held.
  const pull = model.lean < 0 ? null : overturningOf(pose.solution);
  return pull === null ? Number.NaN : pull / leanStiffnessOf(pose);
}

export function tilts(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "tilt growth");
  if (!limit) return [];
  const common = {
    subject: "set",
    kind: "",
    factor: 1,
    digits: 2,
    cure: "groups on either side further apart or stiffer, a lower stack on the bunks, or a hook that steadies the set",
  };
  return [
    measure(
      {
        ...common,
        check: "tilt growth",
        level: "caution",
        unit: "times the first tilt",
        read: (pose) => {
          const used = usedUp(pose);
          if (!(used < 1)) return NOT_HERE;
          const value = 1 / (1 - used);
          const more = `side to side loads are shown without their last ${((value - 1) * 100).toFixed(0)} %`;
          return { value, limit: limit.value, where: more };
        },
      },
      limit,
    ),
    measure({
      ...common,
      check: "tilting over",
      unit: "of the stiffness against lean",
      source: "equilibrium: a set whose weights pull over by more than its supports hold back does not stand",
      chosenBy: "statics",
      read: (pose) => {
        const value = usedUp(pose);
        return value >= 1 ? { value, limit: 1 } : NOT_HERE;
      },
    }),
  ];
}
