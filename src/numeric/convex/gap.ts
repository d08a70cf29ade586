// What is found between two convex bodies.

/** What was found between two bodies. */
export interface Gap {
  /** m; below zero by how far they must be moved apart when they overlap. */
  distance: number;
  /** False when the search was cut off, and the distance is only known to be at least this; points then mean nothing. */
  exact: boolean;
  /** The points of both bodies that are nearest, or deepest. */
  a: Float64Array;
  b: Float64Array;
  /** Direction of length 1 from the first body to the second, along which they are that far apart. */
  normal: Float64Array;
}

export const newGap = (): Gap => ({
  distance: Number.NaN,
  exact: false,
  a: new Float64Array(3),
  b: new Float64Array(3),
  normal: new Float64Array(3),
});
