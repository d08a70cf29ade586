// Where a girder is carried in a pose: bunks, hooks and bearings by station, without ties.

import { type Diagrams, pointForcesOn } from "../../mechanics/index.ts";
import type { Pose } from "../../sequence/index.ts";

/** Below this part of the set's weight a support does not count as carrying. */
const CARRIES = 1e-3;

/** A support that carries a girder; force N, up positive. */
export interface Carrying {
  x: number;
  force: number;
  /** Name of its force in the statics, as 'bunk rear L 1'. */
  support: string;
  what: "bunk" | "hoist" | "bearing";
}

/** What carries the girders of the pose that was asked for last: several checks ask for one after the other. */
let last: { d: Diagrams; girders: Carrying[][] } | null = null;

/** The supports that carry a girder (by its index in the statics), in order of station. */
export function carryingOn(d: Diagrams, pose: Pose, index: number): readonly Carrying[] {
  if (last?.d !== d) {
    const { model, state } = pose.solution;
    const least = CARRIES * model.mass * state.gravity;
    last = { d, girders: d.girders.map((_, girder) => carrying(d, girder, least)) };
  }
  return last.girders[index];
}

function carrying(d: Diagrams, girder: number, least: number): Carrying[] {
  const out: Carrying[] = [];
  for (const { x, force, support } of pointForcesOn(d, girder)) {
    if (!(force > least)) continue;
    const what = support.slice(0, support.indexOf(" "));
    if (what === "bunk" || what === "hoist" || what === "bearing") out.push({ x, force, support, what });
  }
  return out.sort((a, b) => a.x - b.x);
}
