// Cylinders: equal forces in a group, strokes, and which of them stand at the end of their travel.

import type { Condensed, ContactResult } from "./contact.ts";
import type { Device } from "./devices.ts";
import type { Cylinder, Layout } from "./layout.ts";

/** Force and stroke of every cylinder; a cylinder in no group carries nothing. */
export function cylindersOf(
  { cylinders, groups, trains }: Layout,
  devices: readonly Device[],
  problem: Condensed,
  contact: ContactResult,
  stops: Int8Array,
): { cylinderForce: Float64Array; stroke: Float64Array } {
  const own = problem.N - 3 * trains.length;
  const cylinderForce = new Float64Array(cylinders.length);
  const stroke = new Float64Array(cylinders.length);
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind === "group") {
      const all = groups[d.of].cylinders;
      let free = 0;
      for (const c of all) if (stops[c] === 0) free++;
      for (const c of all) if (stops[c] === 0) cylinderForce[c] = contact.F[j] / free;
    } else if (d.kind === "stop")
      for (const c of groups[d.of].cylinders) if (cylinders[c].id === d.part) cylinderForce[c] = contact.F[j];
  }
  for (let i = 0; i < cylinders.length; i++) {
    const c = cylinders[i];
    if (stops[i] !== 0) stroke[i] = stops[i] > 0 ? c.up : -c.down;
    else stroke[i] = gapUnder(c, own, contact) + cylinderForce[i] / c.stiffness;
  }
  return { cylinderForce, stroke };
}

/** Height of the deck above the ground at a cylinder, from the datum of both. */
function gapUnder(c: Cylinder, own: number, { a }: ContactResult): number {
  const q = own + 3 * c.deck;
  return a[q] + a[q + 1] * c.y - a[q + 2] * c.x - c.ground;
}

/** The cylinder that most violates its present condition, or null. */
export function stopChange(
  { cylinders, groups, trains }: Layout,
  force: Float64Array,
  stroke: Float64Array,
  stops: Int8Array,
  problem: Condensed,
  devices: readonly Device[],
  contact: ContactResult,
): { cylinder: number; to: 0 | 1 | -1 } | null {
  let worst = 1e-12;
  let cylinder = -1;
  let to: 0 | 1 | -1 = 0;
  const offer = (size: number, c: number, state: 0 | 1 | -1) => {
    if (size <= worst) return;
    worst = size;
    cylinder = c;
    to = state;
  };
  const own = problem.N - 3 * trains.length;
  for (let index = 0; index < groups.length; index++) {
    const g = groups[index];
    let pressure = Number.NaN;
    for (const c of g.cylinders) {
      if (stops[c] === 0) {
        offer(stroke[c] - cylinders[c].up, c, 1);
        offer(-cylinders[c].down - stroke[c], c, -1);
        continue;
      }
      // Released when the oil would move it off its stop, measured as the stroke that would result.
      if (Number.isNaN(pressure)) pressure = pressureOf(index, g.cylinders, devices, contact, stops);
      if (Number.isNaN(pressure)) break;
      const would = gapUnder(cylinders[c], own, contact) + pressure / cylinders[c].stiffness;
      if (stops[c] > 0 && force[c] > pressure) offer(cylinders[c].up - would, c, 0);
      if (stops[c] < 0 && force[c] < pressure) offer(would + cylinders[c].down, c, 0);
    }
  }
  return cylinder < 0 ? null : { cylinder, to };
}

/** Force per free cylinder of a group; NaN when all stand at their stops. */
function pressureOf(
  group: number,
  cylinders: readonly number[],
  devices: readonly Device[],
  contact: ContactResult,
  stops: Int8Array,
): number {
  const oil = devices.findIndex((d) => d.kind === "group" && d.of === group);
  let free = 0;
  for (const c of cylinders) if (stops[c] === 0) free++;
  return oil < 0 ? Number.NaN : contact.F[oil] / free;
}
