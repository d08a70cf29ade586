// What a prepared set is: its mesh, factor, motions, own loads, and the rows that were asked of it so far.

import type { Banded, BandedFactor } from "../numeric/index.ts";
import type { Section } from "../section/index.ts";
import type { State } from "./state/types.ts";

/** The part of a State that describes the set itself. */
export type SetData = Pick<State, "E" | "G" | "shear" | "girders" | "crossFrames" | "pointMasses">;

/** One element of a girder between two nodes. */
export interface Element {
  from: number;
  length: number;
  node1: number;
  node2: number;
  phi: number;
  EI: number;
  GA: number;
  GJ: number;
  /** Own mass spread along it with its height above the axis, and masses inside it as [distance from its start, mass]. */
  massPerMetre: number;
  arm: number;
  masses: [number, number][];
  /** First moments of those masses that are off the axis: [distance from its start, mass times left, mass times up]. */
  turning: [number, number, number][];
}

/** A cross-frame between two neighbouring girders: its nodes, its length and its bending stiffness in its own plane. */
export interface CrossElement {
  x: number;
  /** Girders of its ends, the one of less y first. */
  girders: [number, number];
  nodes: [number, number];
  k: Float64Array;
}

/** One girder as a row of elements along x. */
export interface GirderLine {
  name: string;
  y: number;
  from: number;
  to: number;
  camber: readonly (readonly [number, number])[];
  elements: Element[];
}

/** A run of mass along a girder, for centres of gravity and tipping moments. */
export interface MassRun {
  y: number;
  from: number;
  to: number;
  massPerMetre: number;
  height: number;
}
export interface MassPoint {
  x: number;
  y: number;
  z: number;
  mass: number;
}

/** One linear form on the unknowns of the set, with everything that a pose needs to know of it. */
export interface SetRow {
  dofs: readonly number[];
  coefficients: readonly number[];
  /** For a displacement: the element it lies in and the distance from its start. */
  element: Element | null;
  inside: number;
  station: number;
  /** Value in each motion without stiffness. */
  modes: number[];
  /** Displacement of the free set under unit gravity along -z, +y, +x (m per m/s2). */
  sag: number[];
  /** Of a row over many unknowns: displacement of the held set under a unit force on it; made when first needed. */
  field: Float64Array | null;
  /** Its place among the rows of `Pairs`; -1 for none. */
  place: number;
}

/** Rows asked for last, and the flexibility between any two of them by their places; NaN where it was not asked for. */
export interface Pairs {
  rows: SetRow[];
  values: Float64Array;
}

export interface SetModel {
  data: SetData;
  girders: GirderLine[];
  crossElements: CrossElement[];
  /** Height of the member axes above the soffit. */
  axisHeight: number;
  nodeX: Float64Array;
  nodeY: Float64Array;
  matrix: Banded;
  factor: BandedFactor;
  /** Motions without stiffness: heave, lean (two girders or more), level, then any the frame itself has. */
  modeNames: string[];
  modes: Float64Array[];
  /** Index of lean and level among the modes; lean -1 for one girder. */
  lean: number;
  level: number;
  /** Point about which the rigid motions turn. */
  origin: number;
  /** Displacement fields under unit gravity along -z, +y, +x. */
  sagFields: Float64Array[];
  /** Resultants of those loads on every mode. */
  sagModes: Float64Array[];
  mass: number;
  cg: [number, number, number];
  runs: MassRun[];
  points: MassPoint[];
  length: number;
  sections: Map<string, { from: number; to: number; section: Section }[]>;
  /** Rows of the points asked for last: one list per girder and kind of row. */
  rows: { list: SetRow[]; next: number }[];
  pairs: Pairs;
  /** Displacement of the held set under a unit force on an unknown; made when first needed. */
  columns: (Float64Array | null)[];
  /** Rows of lean and level of the best plane through the nodes; made when first needed. */
  plane: { lean: SetRow | null; level: SetRow } | null;
  wind: Map<string, WindCase>;
  /** What the reading of the last State left for the next one. */
  wiring: unknown;
}

/** The free set under a side force on one girder at mid-height, per unit of pressure times factor. */
export interface WindCase {
  field: Float64Array;
  modes: Float64Array;
  /** Resultant side force per unit, its height above the soffit and station. */
  force: number;
  height: number;
  x: number;
  /** The girder it meets; its couple about x per metre of every element, and those at a station: [x, couple]. */
  girder: number;
  couples: Float64Array;
  turns: [number, number][];
}

/** Unstressed height of a girder's soffit above the straight datum at a station, linear between camber points. */
export function camberAt(model: SetModel, girder: number, x: number): number {
  const points = model.girders[girder].camber;
  if (points.length === 0) return 0;
  if (x <= points[0][0]) return points[0][1];
  for (let i = 1; i < points.length; i++)
    if (x <= points[i][0]) {
      const x0 = points[i - 1][0];
      const z0 = points[i - 1][1];
      const x1 = points[i][0];
      const z1 = points[i][1];
      return x1 === x0 ? z1 : z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
    }
  return points[points.length - 1][1];
}
