// The solved shape of a set at stations chosen once: how high the soffit stands above the datum plane, and its twist.

import { camberAt, recoverField } from "../mechanics/index.ts";
import type { Pose, SetContext } from "./types.ts";

/** A place of a girder, by the girder's index and its station, m. */
export interface Station {
  girder: number;
  station: number;
}

/** Between which nodes of the mesh a place lies, and how far to the second. */
interface Between {
  before: number;
  after: number;
  part: number;
  camber: number;
}

/**
 * Makes a reader that writes rise over the datum plane (m, camber included) and twist (rad) of every place, two numbers
 * each. Between nodes it goes straight: they are 1 m apart at most.
 */
export function sectionReader(
  ctx: SetContext,
  places: readonly Station[],
): (pose: Pose, out: Float64Array) => void {
  const between = places.map(({ girder, station }): Between => {
    const { elements } = ctx.model.girders[girder];
    const e = elements.find((one) => station <= one.from + one.length) ?? elements[elements.length - 1];
    const part = Math.min(1, Math.max(0, (station - e.from) / e.length));
    return { before: 3 * e.node1, after: 3 * e.node2, part, camber: camberAt(ctx.model, girder, station) };
  });
  return (pose, out) => {
    const { model } = pose.solution;
    const q = recoverField(pose.solution);
    for (let i = 0; i < between.length; i++) {
      const { before, after, part, camber } = between[i];
      // Heat bows the set: its camber then is that of the pose's own model.
      const own = model === ctx.model ? camber : camberAt(model, places[i].girder, places[i].station);
      out[2 * i] = q[before] + part * (q[after] - q[before]) + own;
      out[2 * i + 1] = q[before + 1] + part * (q[after + 1] - q[before + 1]);
    }
  };
}
