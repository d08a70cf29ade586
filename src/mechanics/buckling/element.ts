// One thin-walled element for lateral-torsional buckling: bending sideways, St Venant torsion, warping, bending
// upright, and what the moments and loads of a pose take from or add to them.
//
// Unknowns of a node: v, v' (sideways, at the reference height), phi, phi' (twist, > 0 raises the left side), w and
// thetaY as in the vertical problem. Source of the energy: V. Z. Vlasov, Thin-Walled Elastic Beams; N. S. Trahair,
// Flexural-Torsional Buckling of Structures, chapter 2 (both from memory), derived again from the work of the stresses
// on the second-order strains: a fibre at height z above the shear centre moves sideways by v - z phi.

import { type Stiffnesses, verticalStiffness } from "../frame.ts";

/** Unknowns of a node. */
export const PER_NODE = 6;

/** A straight piece of girder between two nodes, SI; heights above the soffit. */
export interface BucklingElement {
  length: number;
  /** Sideways, upright; Infinity of `GA` leaves web shear out. */
  EIz: number;
  EIy: number;
  GA: number;
  GJ: number;
  EIw: number;
  shearCentre: number;
  /** Wagner's coefficient, m (section/plates.ts). */
  wagner: number;
  /** Own weight per metre, N/m, and its height. */
  down: number;
  downHeight: number;
  /** Height at which v is measured. */
  reference: number;
}

/** Moment, N m sagging positive, and shear, N, at a distance from the element's start. */
export type Actions = (inside: number) => { M: number; V: number };

/** Points and weights of Gauss on -1 .. 1, exact up to the ninth power. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
];

/** Hermite's cubics on (u1, u1', u2, u2') at x of an element, and their first and second derivatives. */
export function hermite(x: number, L: number): [number[], number[], number[]] {
  const t = x / L;
  return [
    [1 - 3 * t * t + 2 * t ** 3, L * (t - 2 * t * t + t ** 3), 3 * t * t - 2 * t ** 3, L * (t ** 3 - t * t)],
    [(6 * t * t - 6 * t) / L, 1 - 4 * t + 3 * t * t, (6 * t - 6 * t * t) / L, 3 * t * t - 2 * t],
    [(12 * t - 6) / L ** 2, (6 * t - 4) / L, (6 - 12 * t) / L ** 2, (6 * t - 2) / L],
  ];
}

/** Places of v and phi in the 12 unknowns of an element. */
const V = [0, 1, 6, 7];
const PHI = [2, 3, 8, 9];
const W = [4, 5, 10, 11];

/**
 * Stiffness and load stiffness (row-major 12 x 12) of an element. `cuts` are distances at which the shear jumps: the
 * work is summed between them.
 */
export function elementMatrices(
  e: BucklingElement,
  actions: Actions,
  cuts: readonly number[] = [],
): { k: Float64Array; g: Float64Array } {
  const k = new Float64Array(144);
  const g = new Float64Array(144);
  const { length: L } = e;
  const add = (
    m: Float64Array,
    rows: number[],
    a: number[],
    columns: number[],
    b: number[],
    value: number,
  ) => {
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) m[12 * rows[i] + columns[j]] += value * a[i] * b[j];
  };
  /** The same product of two different forms: half of it stands on either side of the diagonal. */
  const cross = (a: number[], onA: number[], b: number[], onB: number[], value: number) => {
    add(g, onA, a, onB, b, value);
    add(g, onB, b, onA, a, value);
  };
  const lift = e.shearCentre - e.reference;
  const ends = [0, ...cuts.filter((c) => c > 1e-9 && c < L - 1e-9), L];
  for (let i = 1; i < ends.length; i++) {
    const half = (ends[i] - ends[i - 1]) / 2;
    for (const [point, weight] of GAUSS) {
      const x = ends[i - 1] + half * (1 + point);
      const dx = half * weight;
      const [N, N1, N2] = hermite(x, L);
      // Sideways at the shear centre: v - lift phi.
      const on = [...V, ...PHI];
      const bent = [...N2, ...N2.map((n) => -lift * n)];
      for (let a = 0; a < 8; a++)
        for (let b = 0; b < 8; b++) k[12 * on[a] + on[b]] += e.EIz * dx * bent[a] * bent[b];
      add(k, PHI, N1, PHI, N1, e.GJ * dx);
      add(k, PHI, N2, PHI, N2, e.EIw * dx);
      const { M, V: shear } = actions(x);
      // Work M v_s' phi' + V v_s' phi - M wagner phi'^2 / 2.
      cross(N1, V, N1, PHI, M * dx);
      cross(N1, V, N, PHI, shear * dx);
      add(g, PHI, N1, PHI, N1, (-2 * lift - e.wagner) * M * dx);
      cross(N1, PHI, N, PHI, -lift * shear * dx);
      // The weight sinks by half its height above the shear centre times phi^2.
      add(g, PHI, N, PHI, N, -e.down * (e.downHeight - e.shearCentre) * dx);
    }
  }
  const stiff: Stiffnesses = { EA: 0, EIy: e.EIy, EIz: 0, GJ: 0, GA: e.GA };
  const upright = verticalStiffness(stiff, L);
  const of = [0, 2, 3, 5];
  for (let i = 0; i < 4; i++) for (let j = 0; j < 4; j++) k[12 * W[i] + W[j]] += upright[6 * of[i] + of[j]];
  return { k, g };
}
