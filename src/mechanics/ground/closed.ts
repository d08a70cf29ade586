// Pressure below a stiff footing in closed form: one way with lift-off, two ways in full contact, two tracks by levers.

/** Pressures at both edges of a footing, Pa, and the length over which it presses, m. */
export interface EdgePressures {
  most: number;
  least: number;
  contact: number;
}

/**
 * A rectangular footing under P (N) at a distance e (m) from its middle along its length L (m); width B (m). Ground
 * presses in proportion to its compression and cannot pull: P/BL (1 +- 6e/L) within the middle third, beyond it
 * 2P/3B(L/2-e) over 3(L/2-e). Throws a RangeError when the load lies outside the footing.
 * Source: soil-mechanics texts (Das, Bowles; the second form from memory).
 */
export function oneWay(P: number, B: number, L: number, e: number): EdgePressures {
  const off = Math.abs(e);
  if (!(off < L / 2))
    throw new RangeError(
      `the load lies ${off} m from the middle of a footing of ${L} m: less than ${L / 2} m is allowed; widen the footing`,
    );
  const mean = P / (B * L);
  if (off <= L / 6)
    return { most: mean * (1 + (6 * off) / L), least: mean * (1 - (6 * off) / L), contact: L };
  const contact = 3 * (L / 2 - off);
  return { most: (2 * P) / (B * contact), least: 0, contact };
}

/**
 * Pressures at the corners (+x +y, +x -y, -x +y, -x -y; Pa) of a rectangle Lx by Ly (m) under P (N) at (ex, ey) m from
 * its middle, all of it in contact: P/A (1 +- 6ex/Lx +- 6ey/Ly). Null where a corner would have to pull.
 */
export function twoWay(
  P: number,
  Lx: number,
  Ly: number,
  ex: number,
  ey: number,
): [number, number, number, number] | null {
  const [x, y] = [(6 * ex) / Lx, (6 * ey) / Ly];
  if (Math.abs(x) + Math.abs(y) > 1) return null;
  const mean = P / (Lx * Ly);
  return [mean * (1 + x + y), mean * (1 + x - y), mean * (1 - x + y), mean * (1 - x - y)];
}

/** What the trade's lever rule gives for one track: its load, N, and the pressures at its ends, Pa. */
export interface LeverTrack extends EdgePressures {
  load: number;
}

/**
 * Two tracks by levers, as handbooks do it (Shapiro, Cranes and Derricks: from memory): moments across (N m, toward the
 * first track) shift load between the tracks, V/2 +- M/gauge; each presses evenly across its width, and along it with
 * the distance along/V. A load beyond a track's middle lifts the other one, which then carries nothing.
 */
export function tracksByLever(
  V: number,
  along: number,
  across: number,
  gauge: number,
  length: number,
  width: number,
): [LeverTrack, LeverTrack] {
  const shift = Math.max(-V / 2, Math.min(V / 2, across / gauge));
  const one = (load: number): LeverTrack => ({ load, ...oneWay(load, width, length, along / V) });
  return [one(V / 2 + shift), one(V / 2 - shift)];
}
