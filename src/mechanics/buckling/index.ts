// At how many times its own loads a solved pose buckles sideways, and in which shape.

import { leastFactor } from "../../numeric/index.ts";
import type { Solution } from "../solution.ts";
import { PER_NODE } from "./element.ts";
import { stageOf } from "./stage.ts";

export { addElement, addForm, assembly, sidewaysAt, twistAt, uprightAt } from "./assembly.ts";
export type { BucklingElement } from "./element.ts";

/** The buckled shape of one girder at its nodes; the greatest displacement of the set is 1. */
export interface BuckledGirder {
  girder: string;
  x: number[];
  /** Displacement to the left at `reference` above the soffit, and up. */
  sideways: number[];
  upright: number[];
  /** Turn about x, > 0 raises the left side, in rad where displacements are in m. */
  twist: number[];
}

/** The least factor on all loads of a pose at which it buckles. */
export interface Buckling {
  /** Infinity when no load of this kind ever buckles it; below 1 it does not stand. */
  factor: number;
  shape: BuckledGirder[];
  reference: number;
  /** Out-of-balance of the eigenvector, as a share of its parts. */
  residual: number;
  unknowns: number;
}

/**
 * Linear buckling of a solved pose by the theory of thin-walled beams, warping counted (sources in element.ts and
 * numeric/pencil.ts). Costs tens to hundreds of milliseconds. Null when the pose has no stiffness to begin with.
 * Throws RangeError when the pose has no numbers.
 */
export function bucklingOf(s: Solution): Buckling | null {
  const stage = stageOf(s);
  const found = leastFactor(stage.k, stage.g, stage.n);
  if (found === null) return null;
  const { factor, vector, residual } = found;
  let most = 0;
  if (vector !== null)
    for (const g of stage.girders)
      g.x.forEach((_, i) => {
        const at = PER_NODE * (g.first + i);
        for (const q of [0, 4]) if (Math.abs(vector[at + q]) > Math.abs(most)) most = vector[at + q];
      });
  const value = (node: number, q: number) =>
    vector === null || most === 0 ? 0 : vector[PER_NODE * node + q] / most;
  const shape = stage.girders.map((g): BuckledGirder => {
    const nodes = g.x.map((_, i) => g.first + i);
    return {
      girder: g.name,
      x: g.x,
      sideways: nodes.map((node) => value(node, 0)),
      upright: nodes.map((node) => value(node, 4)),
      twist: nodes.map((node) => value(node, 2)),
    };
  });
  return { factor, shape, reference: stage.reference, residual, unknowns: stage.n };
}
