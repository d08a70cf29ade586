// Force coefficients of what stands in the wind on a site, each on a stated area.

/**
 * A pair of bare I-girders on the depth of ONE of them, the girder in the lee counted with it: the value used for open
 * I-girders before the deck is on (AASHTO guide specifications for wind during construction, 2017). From memory.
 */
export const BARE_GIRDERS = 2.2;

/** A stranded rope or line on its diameter: EN 1991-1-4 7.9.2 and FEM 1.001 2.2.4.1. From memory. */
export const ROPE = 1.2;

/** A hook block, a spreader, a box: solid bodies on the area that they show; FEM 1.001 has 1.1 to 1.2. From memory. */
export const BLOCK = 1.2;

/** Solidity, then spacing over width 0.5, 1, 2, 4, 5, 6: force on what stands behind over that in front (FEM 1.001 T.2.2.4.1.c, ISO 4302). From memory. */
const solidities = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6];
const spacings = [0.5, 1, 2, 4, 5, 6];
const shielded = [
  [0.75, 0.4, 0.32, 0.21, 0.15, 0.1],
  [0.92, 0.75, 0.59, 0.43, 0.25, 0.1],
  [0.95, 0.8, 0.63, 0.5, 0.33, 0.2],
  [1, 0.88, 0.76, 0.66, 0.55, 0.45],
  [1, 0.95, 0.88, 0.81, 0.75, 0.68],
  [1, 1, 1, 1, 1, 1],
];

/** Place of a value among others in order, with the part of the way to the next; held at both ends. */
function between(list: readonly number[], value: number): [number, number] {
  const v = Math.min(Math.max(value, list[0]), list[list.length - 1]);
  let i = 0;
  while (i < list.length - 2 && v > list[i + 1]) i++;
  return [i, (v - list[i]) / (list[i + 1] - list[i])];
}

/**
 * Part of the wind that a member or frame behind another of its kind still takes (straight lines between the values of FEM 1.001).
 * @param solidity solid over enclosed area of the one in front: 1 for a plate girder
 * @param spacing clear distance over the depth of the one in front
 */
export function shieldingFactor(solidity: number, spacing: number): number {
  const [i, s] = between(spacings, spacing);
  const [j, t] = between(solidities, solidity);
  const at = (row: number[]) => row[j] + t * (row[j + 1] - row[j]);
  return at(shielded[i]) + s * (at(shielded[i + 1]) - at(shielded[i]));
}

/**
 * Force coefficient of some equal girders side by side, on the depth of one: the first in full, the others shielded by it.
 * @param one coefficient of a girder alone @param count how many @param spacing clear distance over depth
 */
export function girdersDrag(one: number, count: number, spacing: number): number {
  let part = 1;
  let sum = 0;
  const eta = shieldingFactor(1, spacing);
  for (let i = 0; i < count; i++) {
    sum += part;
    // Each stands behind all those before it; never below a tenth (FEM 1.001 2.2.4.1.2, from memory).
    part = Math.max(part * eta, 0.1);
  }
  return one * sum;
}

/** Members of a lattice. */
export type Members = "flat" | "round";

/**
 * Force coefficient of a lattice of square section, wind square to a face, on the SOLID area of that face, all four faces
 * counted: 4 e2 - 5.9 e + 4, with round members times 0.51 e2 + 0.57, at most 1 (ASCE 7 figure 29.4-3). From memory.
 * @param solidity solid over enclosed area of one face, 0 to 1
 */
export function latticeDrag(solidity: number, members: Members): number {
  const e = solidity;
  return (4 * e * e - 5.9 * e + 4) * (members === "round" ? Math.min(1, 0.51 * e * e + 0.57) : 1);
}

/** Solid area times force coefficient of a lattice boom seen from the side, m2: length x width x solidity x coefficient. */
export function boomArea(length: number, width: number, solidity: number, members: Members): number {
  return length * width * solidity * latticeDrag(solidity, members);
}
