// What is kept clear of what: the convex bodies of a plan in groups (a boom, a train, the set, a backwall), before any pose.

import type { SetContext } from "../../sequence/index.ts";
import type { BodyGroup, SweptBody } from "./form.ts";
import { machineGroups } from "./machines.ts";
import { setGroup } from "./set.ts";
import { stillGroups } from "./site.ts";

/** All groups of a set of a plan. The coordinates of what never moves stand in `still`, at their places. */
export interface SweptBodies {
  groups: BodyGroup[];
  bodies: SweptBody[];
  /** Per group: its first body; one more entry closes the last. */
  firstBody: number[];
  points: number;
  still: Float64Array;
  /** Groups that are put in their place for every pose; the rest stands still. */
  moving: number;
}

const made = new WeakMap<SetContext, SweptBodies>();

/** The bodies around a set, laid out once; `placeBodies` gives them their place. */
export function sweptBodies(ctx: SetContext): SweptBodies {
  const known = made.get(ctx);
  if (known !== undefined) return known;
  const moving = [setGroup(ctx), ...machineGroups(ctx)];
  const drafts = [...moving, ...stillGroups(ctx)];
  const groups: BodyGroup[] = [];
  let points = 0;
  for (const d of drafts) {
    const bodies = d.bodies.map((b) => ({ ...b, first: b.first + points }));
    groups.push({ kind: d.kind, of: d.of, name: d.name, bodies, first: points, points: d.points });
    points += d.points;
  }
  const still = new Float64Array(3 * points);
  drafts.forEach((d, g) => {
    if (d.still !== undefined) still.set(d.still, 3 * groups[g].first);
  });
  const firstBody = [0];
  for (const g of groups) firstBody.push(firstBody[firstBody.length - 1] + g.bodies.length);
  const found: SweptBodies = {
    groups,
    bodies: groups.flatMap((g) => g.bodies),
    firstBody,
    points,
    still,
    moving: moving.length,
  };
  made.set(ctx, found);
  return found;
}
