// Stiffness and shape functions of one straight beam element with web shear (Timoshenko).
//
// A straight set whose member axes lie at one reference height separates exactly into a vertical problem
// (w, theta_x, theta_y) and a plan problem (u, v, theta_z). The erection statics use the first; the second is
// taken as rigid. Source: Przemieniecki, Theory of Matrix Structural Analysis, section 5.6 (from memory).

/** What an element is made of, SI. */
export interface Stiffnesses {
  EA: number;
  /** Bending in the vertical plane. */
  EIy: number;
  /** Bending in plan. */
  EIz: number;
  GJ: number;
  /** Shear stiffness of the vertical plane; Infinity leaves shear out. */
  GA: number;
}

/** Bending stiffness of the vertical plane and shear stiffness (Infinity leaves shear out). */
export interface BendingStiffness {
  EI: number;
  GA: number;
}

/** Phi = 12 E I / (G A_s L^2); 0 when shear is left out. */
export function shearRatio(s: Stiffnesses, length: number): number {
  return Number.isFinite(s.GA) && s.GA > 0 ? (12 * s.EIy) / (s.GA * length * length) : 0;
}

/**
 * 6 x 6 stiffness (row-major) of an element along +x in the vertical problem, unknowns
 * (w1, thetaX1, thetaY1, w2, thetaX2, thetaY2), with w' = -thetaY for the rigid part.
 */
export function verticalStiffness(s: Stiffnesses, length: number): Float64Array {
  const phi = shearRatio(s, length);
  const b = s.EIy / (length ** 3 * (1 + phi));
  const t = s.GJ / length;
  const k = new Float64Array(36);
  const set = (i: number, j: number, value: number) => {
    k[i * 6 + j] = value;
    k[j * 6 + i] = value;
  };
  const L = length;
  set(0, 0, 12 * b);
  set(0, 2, -6 * L * b);
  set(0, 3, -12 * b);
  set(0, 5, -6 * L * b);
  set(2, 2, (4 + phi) * L * L * b);
  set(2, 3, 6 * L * b);
  set(2, 5, (2 - phi) * L * L * b);
  set(3, 3, 12 * b);
  set(3, 5, 6 * L * b);
  set(5, 5, (4 + phi) * L * L * b);
  set(1, 1, t);
  set(1, 4, -t);
  set(4, 4, t);
  return k;
}

/**
 * Row of the vertical displacement at xi = x/L inside an element on (w1, thetaY1, w2, thetaY2). The same row
 * spreads a point load to the ends, so that work is consistent. Exact for a Timoshenko element; cubic when phi = 0.
 */
export function displacementRow(xi: number, length: number, phi: number): [number, number, number, number] {
  const c = 1 / (1 + phi);
  const x2 = xi * xi;
  const x3 = x2 * xi;
  return [
    c * (2 * x3 - 3 * x2 - phi * xi + 1 + phi),
    -c * length * (x3 - (2 + phi / 2) * x2 + (1 + phi / 2) * xi),
    c * (-2 * x3 + 3 * x2 + phi * xi),
    -c * length * (x3 - (1 - phi / 2) * x2 - (phi / 2) * xi),
  ];
}

/**
 * Displacement at `a` under a unit force at `b` (both from the element's start, along the force) while both ends are
 * held: what the nodes alone do not know of a load between them. Derivation: the Timoshenko beam's particular solution
 * w = (x - b)^3 / 6 EI - (x - b) / GA beyond b, less what the shape functions make of its end values.
 */
export function innerFlexibility(
  s: BendingStiffness,
  length: number,
  phi: number,
  a: number,
  b: number,
): number {
  const rest = length - b;
  const past = a > b ? a - b : 0;
  const end = (rest * rest * rest) / (6 * s.EI) - rest / s.GA;
  const slope = (rest * rest) / (2 * s.EI);
  // What the shape functions of the far end make of its displacement and slope (see displacementRow).
  const x = a / length;
  const far = (x * (x * (3 - 2 * x) + phi)) / (1 + phi);
  const turned = (length * x * (x * (x - 1 + phi / 2) - phi / 2)) / (1 + phi);
  return (past * past * past) / (6 * s.EI) - past / s.GA - far * end - turned * slope;
}

/** The same under a unit force per metre all along the element. */
export function innerSag(s: BendingStiffness, length: number, a: number): number {
  const b = length - a;
  return (a * a * b * b) / (24 * s.EI) + (a * b) / (2 * s.GA);
}
