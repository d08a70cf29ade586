// Four corners out of one plane, and the slopes between them.
//
// Twist is how far one corner lies above or below the plane through the other three: Utah DOT, section 03253 (2009).

/**
 * Twist of four corners of a rectangle given going round, m: the height of the fourth over the plane through the other
 * three. Whichever corner is taken last, its size is the same; every second one has the other sign.
 */
export function twistOf(first: number, second: number, third: number, fourth: number): number {
  return fourth - (first - second + third);
}

/** Slope along of four corners, rear left, rear right, front right, front left: mean of both sides, > 0 rises forward. */
export function slopeAlong(levels: readonly [number, number, number, number], length: number): number {
  return (levels[2] + levels[3] - levels[0] - levels[1]) / (2 * length);
}

/** Slope across of the same corners: mean of both ends, > 0 falls to the left. */
export function slopeAcross(levels: readonly [number, number, number, number], width: number): number {
  return (levels[1] + levels[2] - levels[0] - levels[3]) / (2 * width);
}
