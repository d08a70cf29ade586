// Tilt of a set on soft trains: its weight, moved aside by a tilt, tilts it further. The statics take the first tilt alone.
//
// A tilt t0 grows to t0 / (1 - sum(W h) / k): k is the stiffness of all that holds lean, W h the weights times their
// heights above what they stand on. Source: second-order theory of a rigid body on springs.

import type { Solution } from "../mechanics/index.ts";
import type { Pose, SetContext } from "../sequence/index.ts";
import { leanStiffnessOf } from "./lean.ts";
import { limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import { constant, type Recorder, solved, trace } from "./trace.ts";
import { traced } from "./traced.ts";

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
function usedUp(pose: Pose, rec: Recorder | null): number {
  const { model } = pose.solution;
  // The lean of a lone girder is taken as held.
  const pull = model.lean < 0 ? null : overturningOf(pose.solution);
  if (pull === null) return Number.NaN;
  const held = leanStiffnessOf(pose);
  solved(rec, "sum_Wh", pull, "N m", "weights on trains times their heights above what they stand on");
  solved(rec, "k_lean", held, "N m", "stiffness of all that holds lean, per radian");
  return trace(rec, "used", pull / held, "sum_Wh/k_lean", "1", "part of that stiffness used up");
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
        ...traced(ctx, (pose, rec): Reading => {
          const used = usedUp(pose, rec);
          if (!(used < 1)) return NOT_HERE;
          const value = trace(rec, "growth", 1 / (1 - used), "1/(1 - used)", "1", "tilt over the first tilt");
          constant(rec, "most", limit.value, "1", "greatest growth", `${limit.source} (${limit.chosenBy})`);
          rec?.ends("growth", "most");
          return {
            value,
            limit: limit.value,
            get where() {
              return `side to side loads are shown without their last ${((value - 1) * 100).toFixed(0)} %`;
            },
          };
        }),
      },
      limit,
    ),
    measure({
      ...common,
      check: "tilting over",
      unit: "of the stiffness against lean",
      source: "equilibrium: a set whose weights pull over by more than its supports hold back does not stand",
      chosenBy: "statics",
      ...traced(ctx, (pose, rec): Reading => {
        const value = usedUp(pose, rec);
        if (!(value >= 1)) return NOT_HERE;
        constant(rec, "all", 1, "1", "all of it", "equilibrium");
        rec?.ends("used", "all");
        return { value, limit: 1 };
      }),
    }),
  ];
}
