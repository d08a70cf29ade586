// Slings by statics alone: legs of known direction, bridles of two legs, baskets, what a spreader is pressed with, stretch.
// Angles are from the vertical, rad, unless a name says otherwise; forces N, lengths m.

/**
 * Tension over vertical load of a leg at an angle from the horizontal: 1 / sin. Statics; 60 degrees gives 1.155.
 * Throws a RangeError unless 0 < angle <= pi/2: a level leg carries nothing.
 */
export function tensionFactor(fromHorizontal: number): number {
  if (!(fromHorizontal > 0 && fromHorizontal <= Math.PI / 2 + 1e-12))
    throw new RangeError(
      `a leg at ${fromHorizontal} rad from the horizontal; allowed: above 0, up to pi/2: measure from the horizontal`,
    );
  return 1 / Math.sin(fromHorizontal);
}

/** One leg of a bridle. */
export interface BridleLeg {
  /** Vertical part of its tension, N. */
  vertical: number;
  /** N. */
  tension: number;
  /** Horizontal part, toward the other pick, N. */
  horizontal: number;
  /** m. */
  length: number;
}

/**
 * Two legs from one hook, which hangs plumb above the centre of gravity, to picks at `toFirst` and `toSecond` (m) from
 * it on either side, with the hook `height` (m) above the picks: shares by levers, tensions along the legs. The
 * horizontal parts are equal. Throws a RangeError where the hook is not above the picks or not between them.
 */
export function bridle(
  weight: number,
  toFirst: number,
  toSecond: number,
  height: number,
): [BridleLeg, BridleLeg] {
  if (!(height > 0) || !(toFirst >= 0) || !(toSecond >= 0) || !(toFirst + toSecond > 0))
    throw new RangeError(
      `a hook ${height} m above picks at ${toFirst} and ${toSecond} m; allowed: a height above 0 and the hook between two picks`,
    );
  const between = toFirst + toSecond;
  const leg = (own: number, other: number): BridleLeg => {
    const vertical = (weight * other) / between;
    const length = Math.hypot(own, height);
    return { vertical, tension: (vertical * length) / height, horizontal: (vertical * own) / height, length };
  };
  return [leg(toFirst, toSecond), leg(toSecond, toFirst)];
}

/** What a basket carries with `legs` legs of one rated tension at an angle from the vertical: legs x rated x cos. */
export function basketCapacity(rated: number, fromVertical: number, legs = 2): number {
  return legs * rated * Math.cos(fromVertical);
}

/**
 * Compression in a spreader whose two top legs stand at `fromVertical` under a load (N): half the load x tan.
 * Weight of the spreader itself left out unless it is in the load.
 */
export function spreaderCompression(load: number, fromVertical: number): number {
  return (load / 2) * Math.tan(fromVertical);
}

/** Modulus of a wire rope sling, Pa, and its area over the square of its diameter: 0027/ND Rev 11.2 (2016), 5.6.13. */
export const wireModulus = 80e9;
export const wireArea = 0.785;

/** Axial stiffness EA (N) of a wire rope sling of a diameter (m), by 0027/ND 5.6.13. */
export function wireStiffness(diameter: number): number {
  return wireModulus * wireArea * diameter * diameter;
}

/** Stretch (m) of a sling of EA (N) and length (m) under a tension (N). */
export function stretch(tension: number, EA: number, length: number): number {
  return (tension * length) / EA;
}

/** How far two slings of unequal length put their hook from the middle between level picks toward the first, m. */
export function apexAside(first: number, second: number, between: number): number {
  return (second * second - first * first) / (2 * between);
}

/**
 * Where two slings of unequal length put their hook: its distance from the middle between the picks toward the first,
 * m, and its height above them, m. Picks lie level, `between` apart. Throws a RangeError where the slings do not meet
 * above the picks.
 */
export function apexOf(first: number, second: number, between: number): { toward: number; height: number } {
  const toward = apexAside(first, second, between);
  const square = first * first - (between / 2 - toward) ** 2;
  if (!(square > 0))
    throw new RangeError(
      `slings of ${first} and ${second} m do not meet above picks ${between} m apart; allowed: a sum above ${between} m and a difference below it`,
    );
  return { toward, height: Math.sqrt(square) };
}
