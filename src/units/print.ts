// Prints SI values as people read them: in the chosen units, with no more digits than the number is worth.
import { fromSI, type UnitName } from "./factors.ts";

/** How a person wants to read numbers. The plan's file never changes with it. `SI_t` is SI with loads in tonnes. */
export type System = "SI" | "SI_t" | "US";

/** The systems with the words for choosing one. */
export const systems: Readonly<Record<System, string>> = {
  SI: "SI, loads in kN",
  SI_t: "SI, loads in t",
  US: "US customary",
};

/** What a shown number is: finer than its kind, since a stroke and a span are both lengths but are read differently. */
export type Shown =
  | "load" // N
  | "mass" // kg
  | "length" // m
  | "smallLength" // m: strokes, gaps, packing, droop
  | "area" // m2
  | "groundPressure" // Pa
  | "oilPressure" // Pa
  | "stress" // Pa
  | "moment" // N m
  | "lineLoad" // N/m
  | "lineMass" // kg/m
  | "stiffness" // N/m
  | "windSpeed" // m/s
  | "travelSpeed" // m/s
  | "angle" // rad
  | "duration" // s
  | "instant" // s: times over which an instrument averages
  | "days" // s
  | "smallArea" // m2: plates, cylinders
  | "modulus" // m3
  | "inertia" // m4
  | "elasticity" // Pa
  | "density" // kg/m3
  | "flexibility" // m/N
  | "turning" // rad/s
  | "sinking" // m/s
  | "acceleration" // m/s2
  | "temperature" // degrees Celsius
  | "voltage" // V
  | "percent"; // 1

interface Form {
  readonly unit: UnitName;
  readonly digits: number;
  /** What stands behind the number, when it is not the unit's own name. */
  readonly sign?: string;
}

type Forms = Readonly<Record<Shown, Form>>;

const si: Forms = {
  load: { unit: "kN", digits: 1 },
  mass: { unit: "t", digits: 1 },
  length: { unit: "m", digits: 2 },
  smallLength: { unit: "mm", digits: 0 },
  area: { unit: "m2", digits: 1, sign: "m²" },
  groundPressure: { unit: "kPa", digits: 0 },
  oilPressure: { unit: "bar", digits: 0 },
  stress: { unit: "MPa", digits: 0 },
  moment: { unit: "kN m", digits: 0 },
  lineLoad: { unit: "kN/m", digits: 1 },
  lineMass: { unit: "kg/m", digits: 0 },
  stiffness: { unit: "kN/mm", digits: 1 },
  windSpeed: { unit: "m/s", digits: 1 },
  travelSpeed: { unit: "m/min", digits: 1 },
  angle: { unit: "deg", digits: 1, sign: "°" },
  duration: { unit: "min", digits: 0 },
  instant: { unit: "s", digits: 0 },
  days: { unit: "d", digits: 0 },
  smallArea: { unit: "mm2", digits: 0, sign: "mm²" },
  modulus: { unit: "cm3", digits: 0, sign: "cm³" },
  inertia: { unit: "m4", digits: 8, sign: "m⁴" },
  elasticity: { unit: "GPa", digits: 0 },
  density: { unit: "kg/m3", digits: 0, sign: "kg/m³" },
  flexibility: { unit: "mm/kN", digits: 3 },
  turning: { unit: "deg/min", digits: 0, sign: "°/min" },
  sinking: { unit: "mm/h", digits: 1 },
  acceleration: { unit: "m/s2", digits: 3, sign: "m/s²" },
  temperature: { unit: "C", digits: 0, sign: "°C" },
  voltage: { unit: "kV", digits: 0 },
  percent: { unit: "%", digits: 0 },
};

const us: Forms = {
  load: { unit: "kip", digits: 1 },
  mass: { unit: "lb", digits: 0 },
  length: { unit: "ft", digits: 2 },
  smallLength: { unit: "in", digits: 2 },
  area: { unit: "ft2", digits: 0, sign: "ft²" },
  groundPressure: { unit: "ksf", digits: 2 },
  oilPressure: { unit: "psi", digits: 0 },
  stress: { unit: "ksi", digits: 1 },
  moment: { unit: "kip ft", digits: 0 },
  lineLoad: { unit: "kip/ft", digits: 2 },
  lineMass: { unit: "lb/ft", digits: 0 },
  stiffness: { unit: "kip/in", digits: 1 },
  windSpeed: { unit: "mph", digits: 0 },
  travelSpeed: { unit: "ft/min", digits: 0 },
  angle: { unit: "deg", digits: 1, sign: "°" },
  duration: { unit: "min", digits: 0 },
  instant: { unit: "s", digits: 0 },
  days: { unit: "d", digits: 0 },
  smallArea: { unit: "in2", digits: 2, sign: "in²" },
  modulus: { unit: "in3", digits: 1, sign: "in³" },
  inertia: { unit: "in4", digits: 1, sign: "in⁴" },
  elasticity: { unit: "ksi", digits: 0 },
  density: { unit: "lb/ft3", digits: 0, sign: "lb/ft³" },
  flexibility: { unit: "in/kip", digits: 4 },
  turning: { unit: "deg/min", digits: 0, sign: "°/min" },
  sinking: { unit: "in/h", digits: 2 },
  acceleration: { unit: "ft/s2", digits: 2, sign: "ft/s²" },
  temperature: { unit: "C", digits: 0, sign: "°C" },
  voltage: { unit: "kV", digits: 0 },
  percent: { unit: "%", digits: 0 },
};

const forms: Readonly<Record<System, Forms>> = {
  SI: si,
  SI_t: { ...si, load: { unit: "tf", digits: 1, sign: "t" } },
  US: us,
};

/** What stands in the place of a number that is not known: never a zero. */
export const missing = "–";

/** A printed number and its unit, apart, so that a table can put the unit into its head. */
export interface Printed {
  readonly number: string;
  readonly unit: string;
}

/** The unit's sign in which such a number is shown: "kN", "t", "kip", "°". */
export function signOf(shown: Shown, system: System): string {
  const form = forms[system][shown];
  return form.sign ?? form.unit;
}

/** The unit in which such a number is shown, for typing it back: `read(text, "force", unitFor("load", "US"))`. */
export function unitFor(shown: Shown, system: System): UnitName {
  return forms[system][shown].unit;
}

/** Places behind the decimal point with which such a number is shown. */
export function digitsFor(shown: Shown, system: System): number {
  return forms[system][shown].digits;
}

/**
 * Prints a value given in SI (N, kg, m, Pa, rad, s; percentages as a fraction of 1).
 * A value that is undefined, null or not finite is printed as missing.
 */
export function printed(value: number | null | undefined, shown: Shown, system: System): Printed {
  const form = forms[system][shown];
  const unit = form.sign ?? form.unit;
  if (value === null || value === undefined || !Number.isFinite(value)) return { number: missing, unit };
  const number = fromSI(value, form.unit).toFixed(form.digits);
  return { number: /^-[0.]+$/.test(number) ? number.slice(1) : number, unit };
}

/** The same as one text: "123.4 kN", "75 %", "2.5°". */
export function print(value: number | null | undefined, shown: Shown, system: System): string {
  const { number, unit } = printed(value, shown, system);
  return unit === "°" ? `${number}${unit}` : `${number} ${unit}`;
}
