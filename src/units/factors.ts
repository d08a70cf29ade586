// What one of each unit is in plain SI: the only table of conversion factors in the project.

/** What a number measures. The SI unit of each stands beside it. */
export type Kind =
  | "force" // N
  | "mass" // kg
  | "length" // m
  | "area" // m2
  | "pressure" // Pa, also stress
  | "moment" // N m
  | "lineLoad" // N/m
  | "lineMass" // kg/m
  | "stiffness" // N/m
  | "speed" // m/s
  | "angle" // rad
  | "time" // s
  | "volume" // m3, also section modulus
  | "inertia" // m4, second moment of area
  | "density" // kg/m3
  | "flexibility" // m/N
  | "turning" // rad/s
  | "acceleration" // m/s2
  | "temperature" // degrees Celsius, as a state and as a change
  | "voltage" // V
  | "ratio"; // 1

/** Standard gravity, m/s2, exact (3rd CGPM 1901; NIST SP 811 B.8). */
export const standardGravity = 9.80665;

// Exact by definition: NIST SP 811 (2008), Appendix B.8 and footnotes.
const foot = 0.3048; // m
const inch = 0.0254; // m
const pound = 0.45359237; // kg
const poundForce = pound * standardGravity; // N
const kip = 1000 * poundForce; // N

interface Unit {
  readonly kind: Kind;
  /** One of this unit in SI. */
  readonly inSI: number;
}

const table = {
  N: { kind: "force", inSI: 1 },
  kN: { kind: "force", inSI: 1e3 },
  MN: { kind: "force", inSI: 1e6 },
  lbf: { kind: "force", inSI: poundForce },
  kip: { kind: "force", inSI: kip },
  /** Tonne-force, shown as t where loads are given in tonnes. */
  tf: { kind: "force", inSI: 1000 * standardGravity },

  kg: { kind: "mass", inSI: 1 },
  t: { kind: "mass", inSI: 1000 },
  lb: { kind: "mass", inSI: pound },
  "short ton": { kind: "mass", inSI: 2000 * pound },

  m: { kind: "length", inSI: 1 },
  mm: { kind: "length", inSI: 1e-3 },
  cm: { kind: "length", inSI: 1e-2 },
  ft: { kind: "length", inSI: foot },
  in: { kind: "length", inSI: inch },

  m2: { kind: "area", inSI: 1 },
  mm2: { kind: "area", inSI: 1e-6 },
  cm2: { kind: "area", inSI: 1e-4 },
  ft2: { kind: "area", inSI: foot * foot },
  in2: { kind: "area", inSI: inch * inch },

  Pa: { kind: "pressure", inSI: 1 },
  kPa: { kind: "pressure", inSI: 1e3 },
  MPa: { kind: "pressure", inSI: 1e6 },
  GPa: { kind: "pressure", inSI: 1e9 },
  bar: { kind: "pressure", inSI: 1e5 },
  psi: { kind: "pressure", inSI: poundForce / (inch * inch) },
  ksi: { kind: "pressure", inSI: kip / (inch * inch) },
  psf: { kind: "pressure", inSI: poundForce / (foot * foot) },
  ksf: { kind: "pressure", inSI: kip / (foot * foot) },

  "N m": { kind: "moment", inSI: 1 },
  "kN m": { kind: "moment", inSI: 1e3 },
  "kip ft": { kind: "moment", inSI: kip * foot },

  "N/m": { kind: "lineLoad", inSI: 1 },
  "kN/m": { kind: "lineLoad", inSI: 1e3 },
  "kip/ft": { kind: "lineLoad", inSI: kip / foot },
  "lbf/ft": { kind: "lineLoad", inSI: poundForce / foot },

  "kg/m": { kind: "lineMass", inSI: 1 },
  "t/m": { kind: "lineMass", inSI: 1000 },
  "lb/ft": { kind: "lineMass", inSI: pound / foot },

  "N/mm": { kind: "stiffness", inSI: 1e3 },
  "kN/mm": { kind: "stiffness", inSI: 1e6 },
  "MN/m": { kind: "stiffness", inSI: 1e6 },
  "kip/in": { kind: "stiffness", inSI: kip / inch },

  "m/s": { kind: "speed", inSI: 1 },
  "m/min": { kind: "speed", inSI: 1 / 60 },
  "mm/h": { kind: "speed", inSI: 1e-3 / 3600 },
  "in/h": { kind: "speed", inSI: inch / 3600 },
  "km/h": { kind: "speed", inSI: 1 / 3.6 },
  "ft/s": { kind: "speed", inSI: foot },
  "ft/min": { kind: "speed", inSI: foot / 60 },
  mph: { kind: "speed", inSI: (5280 * foot) / 3600 },

  rad: { kind: "angle", inSI: 1 },
  deg: { kind: "angle", inSI: Math.PI / 180 },

  s: { kind: "time", inSI: 1 },
  min: { kind: "time", inSI: 60 },
  h: { kind: "time", inSI: 3600 },
  d: { kind: "time", inSI: 86_400 },

  m3: { kind: "volume", inSI: 1 },
  cm3: { kind: "volume", inSI: 1e-6 },
  in3: { kind: "volume", inSI: inch ** 3 },

  m4: { kind: "inertia", inSI: 1 },
  cm4: { kind: "inertia", inSI: 1e-8 },
  mm4: { kind: "inertia", inSI: 1e-12 },
  in4: { kind: "inertia", inSI: inch ** 4 },

  "kg/m3": { kind: "density", inSI: 1 },
  "lb/ft3": { kind: "density", inSI: pound / foot ** 3 },

  "mm/kN": { kind: "flexibility", inSI: 1e-6 },
  "in/kip": { kind: "flexibility", inSI: inch / kip },

  "rad/s": { kind: "turning", inSI: 1 },
  "deg/min": { kind: "turning", inSI: Math.PI / 180 / 60 },

  "m/s2": { kind: "acceleration", inSI: 1 },
  "ft/s2": { kind: "acceleration", inSI: foot },

  C: { kind: "temperature", inSI: 1 },

  V: { kind: "voltage", inSI: 1 },
  kV: { kind: "voltage", inSI: 1e3 },

  "1": { kind: "ratio", inSI: 1 },
  "%": { kind: "ratio", inSI: 1e-2 },
} as const satisfies Record<string, Unit>;

/** The name of a unit that this project knows. */
export type UnitName = keyof typeof table;

/** Every unit with its kind and its worth in SI. */
export const units: Readonly<Record<UnitName, Unit>> = table;

/** Whether a word names a unit, exactly as written here (`kN`, not `KN`). */
export function isUnit(word: string): word is UnitName {
  return Object.hasOwn(units, word);
}

/** Units of one kind, in the order of the table. */
export function unitsOf(kind: Kind): readonly UnitName[] {
  return (Object.keys(units) as UnitName[]).filter((name) => units[name].kind === kind);
}

/** A value given in a unit, in SI: `toSI(12, "ft")` is 3.6576 (m). Angles in rad, ratios as a fraction. */
export function toSI(value: number, unit: UnitName): number {
  return value * units[unit].inSI;
}

/** A value in SI (N, kg, m, Pa, rad, ...), given in a unit: `fromSI(1000, "kN")` is 1. */
export function fromSI(value: number, unit: UnitName): number {
  return value / units[unit].inSI;
}

/**
 * A value in one unit given in another of the same kind.
 * @throws {RangeError} when the units measure different things; a mass becomes a weight by `weightOf` only
 */
export function convert(value: number, from: UnitName, to: UnitName): number {
  const a = units[from];
  const b = units[to];
  if (a.kind !== b.kind) {
    throw new RangeError(
      `'${from}' measures ${a.kind} and '${to}' measures ${b.kind}: they cannot be converted into each other. Units of ${a.kind} are ${unitsOf(a.kind).join(", ")}.`,
    );
  }
  return (value * a.inSI) / b.inSI;
}

/** Weight (N) of a mass (kg) under standard gravity. */
export function weightOf(mass: number): number {
  return mass * standardGravity;
}

/** Mass (kg) whose weight under standard gravity is this force (N). */
export function massOf(force: number): number {
  return force / standardGravity;
}
