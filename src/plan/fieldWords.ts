// What a field is called in words, and its unit, from its name alone: `hookPinHeight_m` is "hook pin height" in m.
import type { Shown, UnitName } from "../units/index.ts";

/** The unit in which a field is kept, and how such a number is shown. */
export interface FieldUnit {
  readonly unit: UnitName;
  readonly shown: Shown;
}

/** What stands behind the underscore of a field's name, longest first where one ends like another. */
const endings: Readonly<Record<string, FieldUnit>> = {
  kN_per_mm: { unit: "kN/mm", shown: "stiffness" },
  mm_per_kN: { unit: "mm/kN", shown: "flexibility" },
  kg_per_m3: { unit: "kg/m3", shown: "density" },
  kg_per_m: { unit: "kg/m", shown: "lineMass" },
  m_per_s2: { unit: "m/s2", shown: "acceleration" },
  m_per_s: { unit: "m/s", shown: "windSpeed" },
  m_per_min: { unit: "m/min", shown: "travelSpeed" },
  mm_per_h: { unit: "mm/h", shown: "sinking" },
  deg_per_min: { unit: "deg/min", shown: "turning" },
  kNm: { unit: "kN m", shown: "moment" },
  kN: { unit: "kN", shown: "load" },
  kPa: { unit: "kPa", shown: "groundPressure" },
  MPa: { unit: "MPa", shown: "stress" },
  GPa: { unit: "GPa", shown: "elasticity" },
  kV: { unit: "kV", shown: "voltage" },
  mm2: { unit: "mm2", shown: "smallArea" },
  cm2: { unit: "cm2", shown: "smallArea" },
  m2: { unit: "m2", shown: "area" },
  cm3: { unit: "cm3", shown: "modulus" },
  m4: { unit: "m4", shown: "inertia" },
  mm: { unit: "mm", shown: "smallLength" },
  m: { unit: "m", shown: "length" },
  t: { unit: "t", shown: "mass" },
  deg: { unit: "deg", shown: "angle" },
  pct: { unit: "%", shown: "percent" },
  C: { unit: "C", shown: "temperature" },
  min: { unit: "min", shown: "duration" },
  s: { unit: "s", shown: "instant" },
};

/** Fields whose unit is their name itself. */
const byName: Readonly<Record<string, FieldUnit>> = {
  minutes: { unit: "min", shown: "duration" },
  days: { unit: "d", shown: "days" },
};

/** A field's name without its unit, and the unit; null for a name that carries none. */
export function unitOfName(name: string): { bare: string; unit: FieldUnit | null } {
  const own = Object.hasOwn(byName, name) ? byName[name] : null;
  if (own !== null) return { bare: name, unit: own };
  const cut = name.indexOf("_");
  const ending = cut < 0 ? "" : name.slice(cut + 1);
  if (!Object.hasOwn(endings, ending)) return { bare: name, unit: null };
  return { bare: name.slice(0, cut), unit: endings[ending] };
}

/** Names that say too little when they are only taken apart; by field, or by the field around it and the field. */
const words: Readonly<Record<string, string>> = {
  id: "short name",
  rated_t: "rated load",
  boom_m: "boom length",
  yield_MPa: "yield stress",
  leak_mm_per_h: "sinking by leaks",
  rocks_pct: "slope it follows",
  do: "action",
  y_m: "across, left positive",
  dx_m: "forward by",
  dy_m: "to the left by",
  at_m: "station",
  on: "rests on",
  of: "out of",
  by: "by whom",
  who: "who does it",
  see: "number to see",
  use: "rule sets in use",
  shows: "what this plan shows",
  invented: "invented data",
  format: "file format",
  version: "version of the format",
  accept: "accepted findings",
  expected: "expected findings",
  record: "readings as done",
  unconfirmed: "not yet confirmed",
  places: "places in the plan",
  starts: "starts at",
  from_m: "from",
  to_m: "to",
  fromY_m: "right edge",
  toY_m: "left edge",
  E_GPa: "modulus of elasticity E",
  G_GPa: "shear modulus G",
  EA_kN: "axial stiffness EA",
  topFlange_mm: "top flange",
  bottomFlange_mm: "bottom flange",
  design_m: "elevation as designed",
  asBuilt_m: "elevation as built",
  line: "bearing line",
  fit: "made to fit under",
  voice: "spoken words",
  frees: "until it frees",
  holds: "movement it allows",
  hills: "factor for hills",
  does: "task",
  uses: "used by",
  perPick: "slings at each girder",
  counts: "parts it counts",
  mat: "mats under each track",
  deckAt_m: "deck's centre at station",
  rearEnd_m: "rear end at chainage",
  windLimit_m_per_s: "wind limit",
  order: "cranes in order of lowering",
  bites: "number of bites",
  bite_m: "length of a bite",
  times: "timing",
  hook: "hook while the crane walks",
  "girders.line": "girder",
  "accept.check": "check",
  "readings.at": "time",
  "record.at": "time",
  "hold.point": "kind of point",
  "site.below": "below the gap",
  "wind.design": "design wind",
  "soleStations_m.near": "near",
  "soleStations_m.far": "far",
};

/** What the entries of pairs and triples are called, and the unit of an entry that has one of its own. */
const entries: Readonly<Record<string, readonly { words: string; unit?: FieldUnit }[]>> = {
  topFlange_mm: [{ words: "width" }, { words: "thickness" }],
  bottomFlange_mm: [{ words: "width" }, { words: "thickness" }],
  web_mm: [{ words: "height" }, { words: "thickness" }],
  camber_mm: [{ words: "station", unit: endings.m }, { words: "rise" }],
};

const lowHigh = [{ words: "low" }, { words: "high" }] as const;

/** What the entry `index` of a pair is called, with a unit of its own where it has one. */
export function entryWords(list: string, index: number): { words: string; unit?: FieldUnit } {
  return (entries[list] ?? lowHigh)[index] ?? { words: String(index + 1) };
}

/** A field in words; `around` is the field that holds it, "" at the top. */
export function fieldWords(name: string, around: string): string {
  const known = words[`${around}.${name}`] ?? words[name];
  if (known !== undefined) return known;
  const { bare } = unitOfName(name);
  const apart = bare
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replace(/_/g, " ")
    .toLowerCase();
  return apart.replace(/\bcg\b/g, "CG");
}
