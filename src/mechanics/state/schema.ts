// The reader of a state file (zod): its fields, with unit and range of each number. Types of what it reads: types.ts.
// Every reader carries, as its error text, what is allowed at its place.

import * as z from "zod/mini";

// Without this zod compiles readers with `new Function`, which the page's content security policy forbids.
z.config({ jitless: true });

export const stateFormat = "handspan-state";
export const stateVersion = 1;

/** A bound as a person writes it: 1e10, not 10000000000. */
const bound = (x: number) => (Math.abs(x) >= 1e6 ? x.toExponential().replace("+", "") : String(x));

/** A finite number from `low` to `high`, both included; `unit` empty for a ratio. */
function from(low: number, high: number, unit: string, about = "") {
  const allowed = `a number from ${bound(low)} to ${bound(high)}${unit === "" ? "" : ` ${unit}`}`;
  const words = [unit, about].filter((part) => part !== "").join("; ");
  const number = z.number({ error: allowed }).check(z.gte(low, allowed), z.lte(high, allowed));
  return words === "" ? number : number.check(z.describe(words));
}

/** An object with these fields and no others. */
function fields<T extends z.core.$ZodLooseShape>(shape: T, about = "") {
  const names = Object.keys(shape);
  const error = `the fields ${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
  const object = z.strictObject(shape, { error });
  return about === "" ? object : object.check(z.describe(about));
}

/** A list of at least `least` and at most `most` entries. */
function list<T extends z.core.$ZodType>(item: T, least: number, most: number) {
  const allowed = `a list of ${least} to ${most} entries`;
  return z.array(item, { error: allowed }).check(z.minLength(least, allowed), z.maxLength(most, allowed));
}

/** Values by name. */
const named = <T extends z.core.$ZodType>(value: T, what: string) =>
  z.record(z.string(), value, { error: `an object of names, each with ${what}` });

function word<const T extends readonly [string, ...string[]]>(words: T) {
  return z.enum(words, { error: `one of ${words.map((w) => JSON.stringify(w)).join(", ")}` });
}

const nameWords = "a name of 1 to 80 signs";
const name = z.string({ error: nameWords }).check(z.minLength(1, nameWords), z.maxLength(80, nameWords));
const cylinderWords = "a cylinder id `train:line side`, such as rear:1L";
const cylinder = z
  .string({ error: cylinderWords })
  .check(z.minLength(1, cylinderWords), z.maxLength(90, cylinderWords));
const names = (least: number, most: number) => list(name, least, most);
const flag = z.boolean({ error: "true or false" });

const station = from(-1000, 1000, "m", "along the set, from its rear end");
const height = from(-100, 100, "m", "above the soffit, up positive");
const level = from(-1000, 1000, "m", "from the straight unstressed soffit, up positive");
const mass = from(0, 1e7, "kg");
const stiffness = from(1, 1e12, "N/m");
const softOrNone = from(0, 1e12, "N/m");
const force = from(0, 1e10, "N");
const friction = from(0, 2, "");
const slope = from(-0.5, 0.5, "");

const plate = z
  .tuple([from(0, 20, "m"), from(0, 20, "m")], { error: "a list of two lengths in m, each from 0 to 20" })
  .check(z.describe("m; width or height across the girder's axis, then thickness"));

const piece = fields({
  from: station,
  to: station,
  topFlange: plate,
  web: plate,
  bottomFlange: plate,
  massPerMetre: from(0, 1e5, "kg/m", "stiffeners and welds included"),
});

const camberPoint = z.tuple([station, level], { error: "a list of a station and a height in m" });

const girder = fields({
  name,
  y: from(-100, 100, "m", "left positive"),
  camber: z.optional(list(camberPoint, 0, 2000)),
  pieces: list(piece, 1, 500),
});

const crossFrame = fields(
  {
    at: station,
    area: from(0, 10, "m2"),
    inPlaneInertia: from(1e-12, 100, "m4", "bending in the vertical plane across the bridge"),
    planInertia: from(0, 100, "m4"),
    torsion: from(0, 100, "m4"),
    mass,
    height,
  },
  "joins all neighbouring girders at its station",
);

const pointMass = fields({
  girder: name,
  at: station,
  mass,
  height,
  off: z.optional(from(-50, 50, "m", "distance left of its girder's axis; 0 when left out")),
});

const train = fields({
  name,
  at: from(-1000, 1000, "m", "station of the deck's centre"),
  lines: z
    .int({ error: "a whole number from 1 to 200" })
    .check(z.gte(1, "a whole number from 1 to 200"), z.lte(200, "a whole number from 1 to 200")),
  pitch: from(0.1, 20, "m"),
  gauge: from(0.1, 50, "m"),
  cylinderStiffness: stiffness,
  strokeUp: z.optional(from(0, 10, "m")),
  strokeDown: z.optional(from(0, 10, "m")),
  mass,
  cgHeight: from(0, 100, "m", "above ground"),
  bunkHeight: from(0, 100, "m", "above ground"),
  bunks: list(from(-500, 500, "m", "from the deck's centre, forward positive"), 0, 100),
  bunkGirders: names(0, 50),
  bunkStiffness: stiffness,
  bunkSideStiffness: z.optional(softOrNone),
  bunkFriction: z.optional(friction),
  brakeLimit: z.optional(force),
  packing: z.optional(named(level, "a height in m")),
  braked: z.optional(flag),
});

const hoist = fields({
  name,
  at: station,
  girders: names(1, 50),
  rigging: word(["spreader", "point", "separate"]),
  mode: word(["load", "takeUp"]),
  takeUp: z.optional(
    z.nullable(from(-1000, 1000, "m", "from the line just taut on the straight unstressed set")),
  ),
  load: z.optional(z.nullable(from(0, 1e10, "N", "net load on the picks"))),
  stiffness,
  pickHeight: height,
  pinHeight: z.optional(
    from(0, 100, "m", "hook pin above the spreader's lower pins (spreader) or above the picks (point)"),
  ),
  longer: z.optional(named(level, "how much longer its sling is, in m")),
  ropeLength: z.optional(from(0.1, 1000, "m", "boom tip to picks")),
  offset: z.optional(
    z
      .tuple([from(-1000, 1000, "m"), from(-1000, 1000, "m")], { error: "a list of two lengths in m" })
      .check(z.describe("m; boom tip from the true plumb above the picks, along and across")),
  ),
});

const lashing = fields({
  train: name,
  girder: name,
  at: station,
  stiffness,
  slack: z.optional(from(0, 10, "m")),
  pretension: z.optional(force),
});

const bearing = fields({
  name,
  girder: name,
  at: station,
  seat: level,
  stiffness,
  holds: z.optional(word(["free", "guided", "fixed"])),
  friction: z.optional(friction),
  sideLimit: z.optional(force),
  sideStiffness: z.optional(softOrNone),
});

export const stateSchema = fields({
  format: z.literal(stateFormat, { error: JSON.stringify(stateFormat) }),
  version: z.literal(stateVersion, { error: String(stateVersion) }),
  gravity: from(0.1, 100, "m/s2"),
  E: from(1e6, 1e13, "Pa"),
  G: from(1e6, 1e13, "Pa"),
  shear: z.optional(flag.check(z.describe("whether webs give way to shear; true when left out"))),
  girders: list(girder, 1, 50),
  crossFrames: z.optional(list(crossFrame, 0, 2000)),
  pointMasses: z.optional(list(pointMass, 0, 10000)),
  trains: z.optional(list(train, 0, 50)),
  groups: z.optional(named(list(cylinder, 1, 400), "a list of cylinder ids")),
  groupLift: z.optional(named(from(-10, 10, "m"), "a lift in m")),
  ground: z.optional(named(level, "a level in m")),
  hoists: z.optional(list(hoist, 0, 50)),
  lashings: z.optional(list(lashing, 0, 200)),
  bearings: z.optional(list(bearing, 0, 2000)),
  grade: z.optional(slope.check(z.describe("tangent; rises forward"))),
  crossfall: z.optional(slope.check(z.describe("tangent; falls towards +y"))),
  wind: z.optional(
    fields({
      pressure: from(0, 1e5, "Pa"),
      factor: from(0, 100, "", "force coefficient on the girder's depth"),
      toward: word(["+y", "-y"]),
    }),
  ),
  ask: z.optional(fields({ droopAt: z.optional(list(station, 0, 2000)) })),
});

/** The format as JSON Schema (2020-12): shape and ranges. What looks at several places at once only `readState` checks. */
export function stateJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(stateSchema);
  return {
    $schema,
    $id: `${stateFormat}-${stateVersion}.schema.json`,
    title: `Physical state of one pose, file format ${stateFormat}, version ${stateVersion}`,
    ...rest,
  };
}
