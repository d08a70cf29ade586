// Cylinders: equal forces in a group, strokes, and which of them stand at the end of their travel.

import type { Condensed, ContactResult } from "./contact.ts";
import type { Device, Layout } from "./devices.ts";

/** Force and stroke of every cylinder; a cylinder in no group carries nothing. */
export function cylindersOf(
  layout: Layout,
  devices: Device[],
  problem: Condensed,
  contact: ContactResult,
  stops: Int8Array,
): { cylinderForce: Float64Array; stroke: Float64Array } {
  const { cylinders, groups } = layout;
  const own = problem.N - 3 * layout.trains.length;
  const cylinderForce = new Float64Array(cylinders.length);
  const stroke = new Float64Array(cylinders.length);
  devices.forEach((d, j) => {
    if (d.kind === "group") {
      const free = groups[d.of].cylinders.filter((c) => stops[c] === 0);
      for (const c of free) cylinderForce[c] = contact.F[j] / free.length;
    } else if (d.kind === "stop") {
      const c = cylinders.findIndex((x) => x.id === d.part);
      cylinderForce[c] = contact.F[j];
    }
  });
  cylinders.forEach((c, i) => {
    const a = own + 3 * c.deck;
    const w = contact.a[a] + contact.a[a + 1] * c.y - contact.a[a + 2] * c.x;
    if (stops[i] !== 0) stroke[i] = stops[i] > 0 ? c.up : -c.down;
    else stroke[i] = w - c.ground + cylinderForce[i] / c.stiffness;
  });
  return { cylinderForce, stroke };
}

/** The cylinder that most violates its present condition, or null. */
export function stopChange(
  layout: Layout,
  force: Float64Array,
  stroke: Float64Array,
  stops: Int8Array,
  problem: Condensed,
  devices: Device[],
  contact: ContactResult,
): { cylinder: number; to: 0 | 1 | -1 } | null {
  const { cylinders, groups } = layout;
  let worst = 1e-12;
  let change: { cylinder: number; to: 0 | 1 | -1 } | null = null;
  const offer = (size: number, cylinder: number, to: 0 | 1 | -1) => {
    if (size > worst) {
      worst = size;
      change = { cylinder, to };
    }
  };
  const own = problem.N - 3 * layout.trains.length;
  groups.forEach((g, index) => {
    const oil = devices.findIndex((d) => d.kind === "group" && d.of === index);
    const free = g.cylinders.filter((c) => stops[c] === 0);
    const pressure = oil >= 0 ? contact.F[oil] / free.length : 0;
    for (const c of g.cylinders) {
      const cyl = cylinders[c];
      if (stops[c] === 0) {
        offer(stroke[c] - cyl.up, c, 1);
        offer(-cyl.down - stroke[c], c, -1);
      } else if (oil >= 0) {
        // Released when the oil would move it off its stop, measured as the stroke that would result.
        const a = own + 3 * cyl.deck;
        const w = contact.a[a] + contact.a[a + 1] * cyl.y - contact.a[a + 2] * cyl.x;
        const would = w - cyl.ground + pressure / cyl.stiffness;
        if (stops[c] > 0 && force[c] > pressure) offer(cyl.up - would, c, 0);
        if (stops[c] < 0 && force[c] < pressure) offer(would + cyl.down, c, 0);
      }
    }
  });
  return change;
}
