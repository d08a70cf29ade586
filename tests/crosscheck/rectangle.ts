// Rectangles: what beams of the finite-element program are made of, and plates of a State that have the same stiffness.
//
// The program's beams take a rectangle. A State takes three plates. So that both sides bend, shear and twist alike, the
// plates are chosen such that area, strong inertia, torsion constant and web area are those of the rectangle.

import type { PlateSize } from "../../src/mechanics/index.ts";
import { sectionOf } from "../../src/section/index.ts";

/** Height and width of a rectangle, m. */
export interface Rectangle {
  h: number;
  b: number;
}

/** The rectangle of a given area and strong inertia. */
export function rectangleOf(area: number, strongInertia: number): Rectangle {
  const h = Math.sqrt((12 * strongInertia) / area);
  return { h, b: area / h };
}

/**
 * St Venant torsion constant of a rectangle, m4, by its series. Source: S. P. Timoshenko, J. N. Goodier, Theory of
 * Elasticity, 3rd ed., section 109 (from memory); k1 = 0.1406 for a square.
 */
export function torsionOf({ h, b }: Rectangle): number {
  const [long, short] = h > b ? [h, b] : [b, h];
  let sum = 0;
  for (let n = 1; n < 60; n += 2) sum += Math.tanh((n * Math.PI * long) / (2 * short)) / n ** 5;
  return ((long * short ** 3) / 3) * (1 - ((192 * short) / (Math.PI ** 5 * long)) * sum);
}

/** Share of a rectangle's area that shears. Source: G. R. Cowper's and every handbook's 5/6 for slender beams. */
const SHEAR_SHARE = 5 / 6;

/**
 * Plates with the stiffness of a rectangle: a web of 5/6 of its area, and two equal flanges with the rest. Given the
 * flanges' thickness, areas and inertia fix web and width; the thickness follows from the torsion constant.
 */
export function platesLike(r: Rectangle): { topFlange: PlateSize; web: PlateSize; bottomFlange: PlateSize } {
  const area = r.h * r.b;
  const inertia = (r.b * r.h ** 3) / 12;
  const torsion = torsionOf(r);
  const at = (t: number) => {
    const flange: PlateSize = [((1 - SHEAR_SHARE) * area) / 2 / t, t];
    // Least to greatest web height: the inertia grows with it.
    const plates = (height: number) => ({
      topFlange: flange,
      web: [height, (SHEAR_SHARE * area) / height] as PlateSize,
      bottomFlange: flange,
    });
    const height = root((x) => sectionOf(plates(x)).strongInertia - inertia, 0.2 * r.h, 1.2 * r.h);
    return plates(height);
  };
  const thickness = root((t) => sectionOf(at(t)).torsion - torsion, 0.3 * r.b, 3 * r.b);
  return at(thickness);
}

/** The zero of a growing function between two bounds, to the last digit. */
function root(f: (x: number) => number, low: number, high: number): number {
  if (!(f(low) <= 0 && f(high) >= 0)) throw new RangeError(`no zero between ${low} and ${high}`);
  for (let i = 0; i < 200; i++) {
    const mid = (low + high) / 2;
    if (f(mid) < 0) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}
