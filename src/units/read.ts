// Reads what a planner types ("12 ft 6 in", "85 kip", "1.2 t") into SI, and refuses with a sentence what could be misread.
import { type Kind, massOf, toSI, type UnitName, units, unitsOf, weightOf } from "./factors.ts";

/** What came out: a value in SI with the unit it was typed in, or the sentence that says why not. */
export type Reading =
  | { readonly ok: true; readonly value: number; readonly unit: UnitName }
  | { readonly ok: false; readonly problem: string };

/** Other ways in which the trade writes a unit. */
const spellings: Readonly<Record<string, UnitName>> = {
  "'": "ft",
  "′": "ft",
  feet: "ft",
  foot: "ft",
  '"': "in",
  "″": "in",
  inch: "in",
  inches: "in",
  "m²": "m2",
  "mm²": "mm2",
  "ft²": "ft2",
  "in²": "in2",
  "cm²": "cm2",
  "m³": "m3",
  "cm³": "cm3",
  "in³": "in3",
  "m⁴": "m4",
  "cm⁴": "cm4",
  "mm⁴": "mm4",
  "in⁴": "in4",
  "kg/m³": "kg/m3",
  "lb/ft³": "lb/ft3",
  "m/s²": "m/s2",
  "ft/s²": "ft/s2",
  "°C": "C",
  "deg C": "C",
  "°/min": "deg/min",
  day: "d",
  days: "d",
  kips: "kip",
  lbs: "lb",
  tonne: "t",
  tonnes: "t",
  "short tons": "short ton",
  "US ton": "short ton",
  kNm: "kN m",
  kN·m: "kN m",
  Nm: "N m",
  N·m: "N m",
  "kip-ft": "kip ft",
  kip·ft: "kip ft",
  "°": "deg",
  degrees: "deg",
  degree: "deg",
  "lb/ft2": "psf",
  "kip/ft2": "ksf",
  percent: "%",
};

/** Words that mean several things in the trade, and how to say the one that is meant. */
const unclear: Readonly<Record<string, string>> = {
  ton: "write t (1000 kg) or short ton (2000 lb)",
  tons: "write t (1000 kg) or short ton (2000 lb)",
  T: "write t (1000 kg) or short ton (2000 lb)",
  k: "write kip or kN",
  K: "write kip or kN",
  "#": "write lb",
  M: "write m (metres)",
  F: "write degrees Celsius (C); a change by 1 F is not the same as 1 F on the scale",
  "°F": "write degrees Celsius (C); a change by 1 °F is not the same as 1 °F on the scale",
};

const plainNumber = String.raw`\d+(?:\.\d+)?(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?`;
const grouped = String.raw`\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?:\.\d+)?`;
const withFraction = String.raw`\d+[ -]\d+/\d+|\d+/\d+`;
const onePart = new RegExp(`^(?<number>${withFraction}|${grouped}|${plainNumber})\\s*(?<unit>\\S.*)?$`);
const feetAndInches = new RegExp(
  `^(?<feet>${plainNumber}) *(?:ft|feet|foot|'|′)[ -]*(?<inches>${withFraction}|${plainNumber}) *(?:in|inch|inches|"|″)$`,
);

const no = (problem: string): Reading => ({ ok: false, problem });

/**
 * Reads a typed quantity.
 *
 * Accepted: a decimal point, thousands parted by a space, a binary fraction (`6 1/2 in`), feet with inches, a leading
 * sign, a unit with or without a space before it. A mass typed for a force is its weight under standard gravity, a
 * force typed for a mass the mass that weighs it. A comma is always refused: it is a decimal sign to one reader and
 * a thousands sign to another.
 *
 * @param text what was typed
 * @param kind what is asked for; the value comes back in the SI unit of that kind
 * @param unitIfNone the unit of a number typed without one, shown beside the field; none: a unit must be typed
 */
export function read(text: string, kind: Kind, unitIfNone?: UnitName): Reading {
  const typed = text.trim();
  if (typed === "") return no(`Nothing was typed. Type a number with its unit, as in ${exampleOf(kind)}.`);
  if (typed.includes(",")) return no(aboutComma(typed));

  const negative = /^[-−]/.test(typed);
  const rest = typed.replace(/^[-−+]\s*/, "");
  const sign = negative ? -1 : 1;

  const two = feetAndInches.exec(rest)?.groups;
  if (two !== undefined) return feetInches(two.feet, two.inches, sign, kind, typed);

  const one = onePart.exec(rest)?.groups;
  if (one === undefined) {
    return no(`"${typed}" is not a number with a unit. Type one as in ${exampleOf(kind)}.`);
  }
  const number = numberOf(one.number);
  if (typeof number === "string") return no(number);
  const unit = unitOf(one.unit?.trim(), kind, unitIfNone, typed);
  if (typeof unit === "object") return no(unit.problem);
  const value = sign * inKind(number, unit, kind);
  if (!Number.isFinite(value)) return no(`"${typed}" is too large a number.`);
  return { ok: true, value: value === 0 ? 0 : value, unit };
}

function feetInches(feet: string, inches: string, sign: number, kind: Kind, typed: string): Reading {
  if (kind !== "length") {
    return no(`"${typed}" is a length, but ${nameOf(kind)} is asked for, as in ${exampleOf(kind)}.`);
  }
  const whole = numberOf(feet);
  const rest = numberOf(inches);
  if (typeof whole === "string") return no(whole);
  if (typeof rest === "string") return no(rest);
  if (!/^\d+$/.test(feet)) return no(`"${typed}" has a part of a foot and inches too. Use one of the two.`);
  if (rest >= 12) return no(`"${typed}" has ${inches} inches beside feet; fewer than 12 are allowed.`);
  return { ok: true, value: sign * toSI(12 * whole + rest, "in"), unit: "ft" };
}

/** The number in a text without sign, or the sentence that says what is wrong with it. */
function numberOf(text: string): number | string {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (fraction === null) return Number(text.replace(/[ \u00a0\u202f]/g, ""));
  const [, whole = "0", over, under] = fraction;
  const denominator = Number(under);
  if (![2, 4, 8, 16, 32, 64].includes(denominator) || Number(over) >= denominator) {
    return `"${text}" is not a fraction that is used on a tape: halves to 64ths, smaller than 1, are allowed.`;
  }
  return Number(whole) + Number(over) / denominator;
}

function unitOf(
  word: string | undefined,
  kind: Kind,
  unitIfNone: UnitName | undefined,
  typed: string,
): UnitName | { problem: string } {
  if (word === undefined || word === "") {
    if (unitIfNone !== undefined) return unitIfNone;
    if (kind === "ratio") return "1";
    return { problem: `"${typed}" has no unit. Type one of ${unitsOf(kind).join(", ")}.` };
  }
  if (Object.hasOwn(unclear, word)) {
    return { problem: `"${word}" can mean more than one unit: ${unclear[word]}.` };
  }
  const name = Object.hasOwn(spellings, word) ? spellings[word] : word;
  if (!Object.hasOwn(units, name)) {
    return { problem: `"${word}" is no unit known here. Type one of ${unitsOf(kind).join(", ")}.` };
  }
  const unit = name as UnitName;
  const given = units[unit].kind;
  const weighs = (given === "mass" && kind === "force") || (given === "force" && kind === "mass");
  if (given === kind || weighs) return unit;
  return {
    problem: `"${word}" measures ${nameOf(given)}, but ${nameOf(kind)} is asked for. Type one of ${unitsOf(kind).join(", ")}.`,
  };
}

function inKind(number: number, unit: UnitName, kind: Kind): number {
  const value = toSI(number, unit);
  const given = units[unit].kind;
  if (given === "mass" && kind === "force") return weightOf(value);
  if (given === "force" && kind === "mass") return massOf(value);
  return value;
}

function aboutComma(typed: string): string {
  const point = typed.replace(/,/g, ".");
  const without = typed.replace(/,/g, "");
  const decimal = typed.split(",").length === 2 ? `${point} if the comma is a decimal sign, or ` : "";
  return `"${typed}" has a comma, which some read as a decimal sign and others as thousands. Type ${decimal}${without} if it parts thousands.`;
}

const names: Readonly<Record<Kind, string>> = {
  force: "a force",
  mass: "a mass",
  length: "a length",
  area: "an area",
  pressure: "a pressure",
  moment: "a moment",
  lineLoad: "a load per length",
  lineMass: "a mass per length",
  stiffness: "a stiffness",
  speed: "a speed",
  angle: "an angle",
  time: "a time",
  volume: "a volume or a section modulus",
  inertia: "a second moment of area",
  density: "a density",
  flexibility: "a movement per force",
  turning: "a speed of turning",
  acceleration: "an acceleration",
  temperature: "a temperature",
  voltage: "a voltage",
  ratio: "a plain number or a percentage",
};

function nameOf(kind: Kind): string {
  return names[kind];
}

const examples: Readonly<Record<Kind, string>> = {
  force: '"120 kN", "12.2 t" or "27 kip"',
  mass: '"12.2 t" or "26 900 lb"',
  length: '"3.81 m", "120 mm" or "12 ft 6 in"',
  area: '"1.2 m2" or "13 ft2"',
  pressure: '"150 kPa", "355 MPa" or "3.1 ksf"',
  moment: '"850 kN m" or "630 kip ft"',
  lineLoad: '"4.2 kN/m" or "0.29 kip/ft"',
  lineMass: '"430 kg/m" or "290 lb/ft"',
  stiffness: '"4.0 kN/mm" or "23 kip/in"',
  speed: '"9 m/s" or "20 mph"',
  angle: '"2.5 deg"',
  time: '"90 s" or "1.5 min"',
  volume: '"7200 cm3" or "440 in3"',
  inertia: '"0.0008 m4" or "1920 in4"',
  density: '"7850 kg/m3" or "490 lb/ft3"',
  flexibility: '"0.4 mm/kN" or "0.07 in/kip"',
  turning: '"90 deg/min"',
  acceleration: '"9.81 m/s2" or "32.2 ft/s2"',
  temperature: '"15 C"',
  voltage: '"132 kV"',
  ratio: '"0.85" or "85 %"',
};

function exampleOf(kind: Kind): string {
  return examples[kind];
}
