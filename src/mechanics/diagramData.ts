// What the diagrams of a pose are: stress resultants at the start of every element, and what acts inside it.

import type { Element } from "./setModel.ts";

/** A force or couple on a girder's axis: N up, N m about x and about y. */
export interface PointAction {
  x: number;
  force: number;
  aboutX: number;
  aboutY: number;
  /** Support whose vertical force it is; '' for a mass, a couple and other loads. */
  support: string;
}

/** Stress resultants of one girder. Per element: values at its start and what is spread along it. */
export interface GirderDiagram {
  name: string;
  elements: readonly Element[];
  /** At the start of every element, before any action that stands there: N m, N, N m. */
  moment: Float64Array;
  shear: Float64Array;
  torsion: Float64Array;
  /** Spread along an element: N/m down, N m/m about x, N m/m about y. */
  down: Float64Array;
  aboutX: Float64Array;
  aboutY: Float64Array;
  /** Point actions by station, and the index of the first one of every element (one more entry than elements). */
  points: PointAction[];
  first: Int32Array;
}

/** Diagrams of all girders of a solved pose, in the order of the set's girders. */
export interface Diagrams {
  girders: GirderDiagram[];
}
