// The ground below a crane's tracks wherever it stands: that of its own place, and the stretches along its way.

import type { Area } from "../../mechanics/index.ts";
import type { Crane, Plan } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Allowable, allowableAt } from "./allowable.ts";
import { areaInPlan, covered, meet } from "./meet.ts";
import { craneAreasAt, movedAt } from "./standing.ts";

/** A stretch of ground of which the plan says what it may bear. */
export interface Stretch {
  name: string;
  area: Area;
  allowable: Allowable;
}

/** The stretches along the ways of cranes; those that say nothing are open items and left out. */
export function stretchesOf(plan: Plan): Stretch[] {
  return (plan.site.craneGround ?? []).flatMap((one, i) => {
    const allowable = allowableAt(`site.craneGround[${i}]`, one);
    return allowable === null ? [] : [{ name: one.name, area: areaInPlan(one), allowable }];
  });
}

/** All ground around a crane of which the plan says something: its own place, and the stretches. */
export const groundAround = (plan: Plan, crane: Crane): Area[] => [
  ...craneAreasAt(crane, [0, 0]),
  ...stretchesOf(plan).map((s) => s.area),
];

/** What tracks with their mats stand on: the lowest of all that bears them. */
export interface Below {
  allowable: Allowable;
  /** The stretch whose it is; '' for the ground of the crane's own place. */
  name: string;
  /** Whether part of them stands where the plan says nothing, so that the value of the crane's own place stands in. */
  bare: boolean;
}

/**
 * Tells what a crane stands on at a pose. The value of its own place counts until its tracks have left that place, and
 * wherever no stretch lies below them.
 */
export function groundBelow(
  ctx: SetContext,
  crane: Crane,
  own: Allowable,
): (pose: Pick<Pose, "situation">) => Below {
  const stretches = stretchesOf(ctx.plan);
  const place = craneAreasAt(crane, [0, 0]);
  const known = groundAround(ctx.plan, crane);
  const onAny = (areas: readonly Area[], ground: Area) => areas.some((a) => meet(a, ground));
  const look = (moved: readonly [number, number]): Below => {
    const areas = craneAreasAt(crane, moved);
    const ownPlace = place.some((p) => onAny(areas, p));
    const bare = !covered(areas, known);
    let lowest: Stretch | null = null;
    for (const one of stretches)
      if (onAny(areas, one.area) && !(lowest !== null && one.allowable.value >= lowest.allowable.value))
        lowest = one;
    const counts = ownPlace || bare || lowest === null;
    return lowest === null || (counts && own.value <= lowest.allowable.value)
      ? { allowable: own, name: "", bare }
      : { allowable: lowest.allowable, name: lowest.name, bare };
  };
  let [x, y] = [Number.NaN, Number.NaN];
  let last: Below = { allowable: own, name: "", bare: false };
  return (pose) => {
    const moved = movedAt(crane, pose);
    if (moved[0] === x && moved[1] === y) return last;
    [x, y] = moved;
    last = look(moved);
    return last;
  };
}

/** Stored poses by what a crane stands on: lists of their places, one for every allowable pressure. */
export function byGround(
  below: (pose: Pick<Pose, "situation">) => Below,
  stored: readonly Pose[],
): { allowable: Allowable; poses: number[] }[] {
  const out = new Map<number, { allowable: Allowable; poses: number[] }>();
  stored.forEach((pose, i) => {
    const { allowable } = below(pose);
    const one = out.get(allowable.value);
    if (one === undefined) out.set(allowable.value, { allowable, poses: [i] });
    else one.poses.push(i);
  });
  return [...out.values()];
}
