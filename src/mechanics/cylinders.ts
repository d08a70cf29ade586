// Cylinders: equal forces in a group, strokes, and which of them stand at the end of their travel.

import type { Condensed, ContactResult } from "./contact.ts";
import type { Device } from "./devices.ts";
import type { Cylinder, Layout } from "./layout.ts";

/** Force and stroke of every cylinder into the two arrays; a cylinder in no group carries nothing. */
export function cylindersOf(
  { cylinders, groups, trains }: Layout,
  devices: readonly Device[],
  problem: Condensed,
  contact: ContactResult,
  stops: Int8Array,
  force: Float64Array,
  stroke: Float64Array,
): void {
  const own = problem.N - 3 * trains.length;
  force.fill(0);
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind !== "group" && d.kind !== "stop") continue;
    const all = groups[d.of].cylinders;
    if (d.kind === "group") {
      let free = 0;
      for (let i = 0; i < all.length; i++) if (stops[all[i]] === 0) free++;
      const each = contact.F[j] / free;
      for (let i = 0; i < all.length; i++) if (stops[all[i]] === 0) force[all[i]] = each;
    } else for (const c of all) if (cylinders[c].id === d.part) force[c] = contact.F[j];
  }
  for (let i = 0; i < cylinders.length; i++) {
    const c = cylinders[i];
    if (stops[i] !== 0) stroke[i] = stops[i] > 0 ? c.up : -c.down;
    else {
      const reach = gapUnder(c, own, contact) + force[i] / c.stiffness;
      // Without pressure the wheel hangs from its stop when the deck rises further.
      stroke[i] = force[i] === 0 ? Math.min(reach, c.up) : reach;
    }
  }
}

/** Height of the deck above the ground at a cylinder, from the datum of both. */
function gapUnder(c: Cylinder, own: number, { a }: ContactResult): number {
  const q = own + 3 * c.deck;
  return a[q] + a[q + 1] * c.y - a[q + 2] * c.x - c.ground;
}

/** Stroke beyond a stop that counts as beyond it, m. */
const BEYOND = 1e-12;

/**
 * The stops that every group would put its cylinders on over the present deck: at one pressure p each cylinder i takes
 * the stroke gap_i + p / k_i within its travel, and the strokes add up to the commanded volume. Null when these are
 * the stops that the pose was solved with. Stroke and pressure are those of a convex problem, so they are unique.
 */
export function stopsOver(
  { cylinders, groups, trains }: Layout,
  stops: Int8Array,
  stroke: Float64Array,
  problem: Condensed,
  contact: ContactResult,
): Int8Array | null {
  const own = problem.N - 3 * trains.length;
  let found: Int8Array | null = null;
  for (const g of groups) {
    let within = true;
    for (const c of g.cylinders)
      if (stops[c] !== 0 || stroke[c] > cylinders[c].up + BEYOND || stroke[c] < -cylinders[c].down - BEYOND)
        within = false;
    if (within) continue;
    const members = g.cylinders.map((c) => cylinders[c]);
    const gaps = members.map((c) => gapUnder(c, own, contact));
    const p = pressureFor(members, gaps, g.lift * members.length);
    for (let i = 0; i < members.length; i++) {
      const c = g.cylinders[i];
      const { up, down, stiffness } = members[i];
      const free = gaps[i] + p / stiffness;
      const stop = p > 0 && free > up + BEYOND ? 1 : free < -down - BEYOND ? -1 : 0;
      if (stop === stops[c]) continue;
      found ??= stops.slice();
      found[c] = stop;
    }
  }
  return found;
}

/** Least pressure force per cylinder, N, at which the strokes within their travel add up to `volume`. */
function pressureFor(members: readonly Cylinder[], gaps: readonly number[], volume: number): number {
  const strokesAt = (p: number) => {
    let sum = 0;
    members.forEach(({ up, down, stiffness }, i) => {
      sum += Math.min(up, Math.max(-down, gaps[i] + p / stiffness));
    });
    return sum;
  };
  if (strokesAt(0) >= volume - BEYOND) return 0;
  // The sum of strokes is piecewise linear in p, with a bend where a cylinder leaves one stop or meets the other.
  const bends = members
    .flatMap(({ up, down, stiffness }, i) => [(up - gaps[i]) * stiffness, (-down - gaps[i]) * stiffness])
    .filter((p) => p > 0 && Number.isFinite(p))
    .sort((a, b) => a - b);
  let low = 0;
  let before = strokesAt(0);
  for (const high of bends) {
    const after = strokesAt(high);
    if (after >= volume - BEYOND) return low + ((high - low) * (volume - before)) / (after - before);
    low = high;
    before = after;
  }
  let slope = 0;
  for (const { up, stiffness } of members) if (!Number.isFinite(up)) slope += 1 / stiffness;
  return slope > 0 ? low + (volume - before) / slope : Number.POSITIVE_INFINITY;
}
