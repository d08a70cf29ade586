// Pressure of wind: from the speed of a 3-s gust, with height, after American and European rules; speeds while it is built.

/**
 * Half the density of air, Pa per (m/s)2, at 15 C and sea level: 1.225 / 2 rounded as ASCE 7 (26.10) and NSCP 207B write it.
 */
export const AIR = 0.613;

/** Pa of 1 ksf and m/s of 1 mph, both exact by definition of pound, foot and mile. */
const KSF = 47880.25898033584;
const MPH = 0.44704;
/** AASHTO LRFD 3.8.1.2.1-1 has 2.56e-6 ksf per mph2: the same in Pa per (m/s)2. */
const AASHTO = (2.56e-6 * KSF) / (MPH * MPH);

/** Ground around: B built up or wooded, C open, D flat and unobstructed, as ASCE 7 and AASHTO LRFD 3.8.1.1.4 name them. */
export type Exposure = "B" | "C" | "D";

/** Metres of 33 ft: below it the height factor of AASHTO LRFD 3.8.1.2.1 stays. */
const LOWEST = 33 * 0.3048;

/** Factor, roughness length (ft) and divisor of AASHTO LRFD 3.8.1.2.1-2 to -4. From memory; its table confirms them. */
const heights: Record<Exposure, [number, number, number]> = {
  B: [6.87, 0.9834, 345.6],
  C: [7.35, 0.0984, 478.4],
  D: [7.65, 0.0164, 616.1],
};

/**
 * Height factor on pressure, 1 at 10 m in open country: AASHTO LRFD 3.8.1.2.1-2 to -4.
 * @param z height above the ground around, m; counted as 10.06 m (33 ft) below that
 */
export function heightFactor(exposure: Exposure, z: number): number {
  const [add, rough, over] = heights[exposure];
  const feet = Math.max(z, LOWEST) / 0.3048;
  return (2.5 * Math.log(feet / rough) + add) ** 2 / over;
}

/**
 * Pressure of a gust, Pa: q = 0.613 Kz Kzt Kd V2 (ASCE 7 26.10-1.SI).
 * @param V 3-s gust at 10 m in open country, m/s, or at the place itself with all factors 1
 * @param Kz height factor @param Kzt factor of hills @param Kd factor of directions
 */
export function gustPressure(V: number, Kz = 1, Kzt = 1, Kd = 1): number {
  return AIR * Kz * Kzt * Kd * V * V;
}

/** Pressure on a bridge with its force coefficient, Pa: P = 2.56e-6 V2 KZ G CD of AASHTO LRFD 3.8.1.2.1-1, brought to m/s and Pa. */
export function aashtoPressure(V: number, Kz: number, G: number, Cd: number): number {
  return AASHTO * V * V * Kz * G * Cd;
}

/** Roughness length and least height of a terrain category, m (EN 1991-1-4 table 4.1). */
export const terrains = {
  "0": { z0: 0.003, least: 1 },
  I: { z0: 0.01, least: 1 },
  II: { z0: 0.05, least: 2 },
  III: { z0: 0.3, least: 5 },
  IV: { z0: 1, least: 10 },
} as const;
export type Terrain = keyof typeof terrains;

/** What EN 1991-1-4 makes of a basic speed at a height. */
export interface PeakPressure {
  /** Terrain factor, roughness factor, mean speed (m/s), turbulence, peak pressure (Pa). */
  kr: number;
  cr: number;
  mean: number;
  turbulence: number;
  peak: number;
}

/** Basic pressure, Pa (EN 1991-1-4 4.10): half of 1.25 kg/m3 times the square of the 10-minute mean at 10 m. */
export function basicPressure(vb: number, density = 1.25): number {
  return 0.5 * density * vb * vb;
}

/**
 * Peak pressure at a height, EN 1991-1-4 4.3 to 4.5 with orography and turbulence factor 1. Formulas from memory.
 * @param vb basic speed: 10-minute mean at 10 m in category II, m/s @param z height above ground, m
 */
export function peakPressure(vb: number, z: number, terrain: Terrain, density = 1.25): PeakPressure {
  const { z0, least } = terrains[terrain];
  const kr = 0.19 * (z0 / 0.05) ** 0.07;
  const log = Math.log(Math.max(z, least) / z0);
  const cr = kr * log;
  const mean = cr * vb;
  const turbulence = 1 / log;
  return { kr, cr, mean, turbulence, peak: (1 + 7 * turbulence) * basicPressure(mean, density) };
}

/**
 * Part of the design speed while steel stands without its deck, by how long it stands (AASHTO Guide Specifications for
 * Wind Loads on Bridges During Construction, 2017: 0.65 to 0.84; 0.73 at 6 weeks and 0.75 at 2 years as a state agency
 * quotes it). It is on SPEED: the pressure falls with its square. Between the values known the next longer one stands, and
 * nothing below 0.73: the bracket of 0.65 is not known to us, so that a plan has to state it.
 * @param days how long it stands so
 */
export function constructionReduction(days: number): number {
  return days <= 42 ? 0.73 : days <= 730 ? 0.75 : 0.84;
}

/** Least speeds of the Beaufort numbers 0 to 12, m/s: mean over 10 minutes at 10 m (WMO No. 306 code table 1100). */
const bands = [0, 0.3, 1.6, 3.4, 5.5, 8, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7];

/** Beaufort number of a 10-minute mean speed, m/s. */
export function beaufortOf(V: number): number {
  let number = 0;
  while (number < 12 && V >= bands[number + 1]) number++;
  return number;
}

/** Speed in the middle of a Beaufort number, m/s: 0.836 B^1.5 (WMO). */
export function beaufortSpeed(number: number): number {
  return 0.836 * number ** 1.5;
}

/** Greatest mean over some seconds against the mean over an hour, over open country (Durst; ASCE 7 figure C26.5-1). From memory. */
const durst: [seconds: number, ratio: number][] = [
  [3, 1.525],
  [5, 1.48],
  [10, 1.43],
  [30, 1.32],
  [60, 1.25],
  [120, 1.18],
  [300, 1.11],
  [600, 1.07],
  [3600, 1],
];

/** Greatest mean over `seconds` over the mean of its hour: between the values known a straight line over the logarithm of time. */
export function hourlyRatio(seconds: number): number {
  if (seconds <= durst[0][0]) return durst[0][1];
  for (let i = 1; i < durst.length; i++) {
    const [t1, r1] = durst[i - 1];
    const [t2, r2] = durst[i];
    if (seconds <= t2) return r1 + ((r2 - r1) * Math.log(seconds / t1)) / Math.log(t2 / t1);
  }
  return 1;
}

/** Speed of the 3-s gust over the mean over `seconds`: 1 at 3 s, about 1.43 for 10 minutes. */
export function gustOver(seconds: number): number {
  return durst[0][1] / hourlyRatio(seconds);
}
