// Mats below a track or outrigger, and the spread of a load with depth.

/**
 * Area (m2) that a mat must have under a load P (N) with its own weight W (N) on ground that may bear q_a (Pa).
 * Source: Duerr, Mobile Crane Support Handbook (2010), A = (P + W)/q_a; from a text that quotes it.
 */
export function matArea(P: number, W: number, q_a: number): number {
  return (P + W) / q_a;
}

/** A mat's bending and shear under a load over the middle C of its length L, both m. */
export interface MatActions {
  /** Free length beyond the load, m; pressure of the load alone, Pa; moment, N m; shear at d from the load, N. */
  cantilever: number;
  pressure: number;
  moment: number;
  shear: number;
}

/**
 * Actions in a mat of width B and length L (m) with load P (N) over its middle length C (m); shear is taken at the depth
 * d (m) from the edge of the load. L_c = (L - C)/2, q = P/(L B), M = q B L_c^2/2, V = q B (L_c - d). Source as `matArea`.
 */
export function matActions(P: number, B: number, L: number, C: number, d: number): MatActions {
  const cantilever = Math.max(0, (L - C) / 2);
  const pressure = P / (L * B);
  return {
    cantilever,
    pressure,
    moment: (pressure * B * cantilever ** 2) / 2,
    shear: pressure * B * Math.max(0, cantilever - d),
  };
}

/**
 * Greatest length (m, at most L) over which a mat spreads P (N) with moment and shear within M_a (N m) and V_a (N):
 * P (L' - C)^2/8L' = M_a, and P/2 (1 - (C + 2d)/L') = V_a. Never less than C.
 */
export function effectiveLength(
  P: number,
  L: number,
  C: number,
  d: number,
  M_a: number,
  V_a: number,
): { length: number; by: "mat" | "bending" | "shear" } {
  const h = C + (4 * M_a) / P;
  const bending = h + Math.sqrt(h * h - C * C);
  const shear = V_a >= P / 2 ? Number.POSITIVE_INFINITY : (C + 2 * d) / (1 - (2 * V_a) / P);
  const length = Math.max(Math.min(L, C), Math.min(L, bending, shear));
  return { length, by: length >= L ? "mat" : bending <= shear ? "bending" : "shear" };
}

/** How much each side of a loaded rectangle grows with a metre of depth. */
export const spreads = {
  /** Two down, one out over both sides together half each: L + z. Common practice, no source. */
  twoToOne: 1,
  /** 60 degrees to the horizontal: Municipal Code of Chicago 13-132-060. */
  sixtyDegrees: 2 / Math.tan(Math.PI / 3),
} as const;

/** Pressure (Pa) at depth z (m) below P (N) on L by B (m), each side growing by `growth` per metre of depth. */
export function pressureAtDepth(P: number, L: number, B: number, z: number, growth: number): number {
  return P / ((L + growth * z) * (B + growth * z));
}
