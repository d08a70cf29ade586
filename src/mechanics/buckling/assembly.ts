// The two matrices of a buckling problem while they are put together, and forms on their unknowns.

import { type Actions, type BucklingElement, elementMatrices, hermite, PER_NODE } from "./element.ts";

/** A linear form on the unknowns. */
export interface Form {
  dofs: number[];
  factors: number[];
}

/** Stiffness and load stiffness, row-major n x n: the pose buckles at the factor with (k + factor g) x = 0. */
export interface Assembly {
  n: number;
  k: Float64Array;
  g: Float64Array;
}

export function assembly(n: number): Assembly {
  return { n, k: new Float64Array(n * n), g: new Float64Array(n * n) };
}

/** Adds value * form^2 / 2 of energy to a matrix of an assembly. */
export function addForm(a: Assembly, matrix: "k" | "g", { dofs, factors }: Form, value: number): void {
  const m = a[matrix];
  for (let i = 0; i < dofs.length; i++)
    for (let j = 0; j < dofs.length; j++) m[a.n * dofs[i] + dofs[j]] += value * factors[i] * factors[j];
}

/** Adds an element between two nodes. */
export function addElement(
  a: Assembly,
  node1: number,
  node2: number,
  element: BucklingElement,
  actions: Actions,
  cuts: readonly number[] = [],
): void {
  const { k, g } = elementMatrices(element, actions, cuts);
  const dof = (i: number) => PER_NODE * (i < PER_NODE ? node1 : node2) + (i % PER_NODE);
  for (let i = 0; i < 12; i++)
    for (let j = 0; j < 12; j++) {
      a.k[a.n * dof(i) + dof(j)] += k[12 * i + j];
      a.g[a.n * dof(i) + dof(j)] += g[12 * i + j];
    }
}

/** Sideways displacement of a node's point at a height above the soffit; v is measured at `reference`. */
export function sidewaysAt(node: number, height: number, reference: number): Form {
  return { dofs: [PER_NODE * node, PER_NODE * node + 2], factors: [1, -(height - reference)] };
}

export function uprightAt(node: number): Form {
  return { dofs: [PER_NODE * node + 4], factors: [1] };
}

export function twistAt(node: number): Form {
  return { dofs: [PER_NODE * node + 2], factors: [1] };
}

/** Twist at a distance inside an element. */
export function twistInside(node1: number, node2: number, inside: number, length: number): Form {
  const [N] = hermite(inside, length);
  const [a, b] = [PER_NODE * node1 + 2, PER_NODE * node2 + 2];
  return { dofs: [a, a + 1, b, b + 1], factors: N };
}

/** The sum of some forms, each times a factor. */
export function combine(parts: readonly (readonly [Form, number])[]): Form {
  const dofs: number[] = [];
  const factors: number[] = [];
  for (const [form, by] of parts)
    form.dofs.forEach((dof, i) => {
      dofs.push(dof);
      factors.push(by * form.factors[i]);
    });
  return { dofs, factors };
}
