// The site in a plan: the gap and its bearing lines, the path of the transporters, seats, bearings, what is near and below.
// Chainage (m) runs forward, y (m) to the left, elevation (m) up.
import * as z from "zod/mini";
import { craneGround, edge, signOff, soil } from "./ground.ts";
import * as q from "./quantities.ts";
import { siteWind } from "./wind.ts";

/** The two bearing lines: near (the side the set comes from) and far. */
export const bearingLine = z.enum(["near", "far"]);

/** One surveyed point of the path; between points everything runs straight. */
export const pathPoint = z.strictObject({
  chainage_m: q.chainage_m,
  elevation_m: q.elevation_m,
  crossfall_pct: q.slope_pct.check(z.describe("Positive falls to the left (+y).")),
  allowablePressure_kPa: z.optional(q.from(1, 50000)),
  pressureSource: z.optional(q.text),
  soil: z.optional(soil.check(z.describe("Names a presumptive value where no allowable one is given."))),
});

/** The path on the near side. `curved` stands for a path curved in plan, which is refused until it is solved. */
export const path = z.strictObject({
  curved: z.optional(z.boolean()),
  clearLeft_m: z.optional(
    q.from(0, 500).check(z.describe("Free ground to drive on, from the axis of the path to the left.")),
  ),
  clearRight_m: z.optional(q.from(0, 500)),
  wheelFriction: z.optional(q.friction.check(z.describe("Between wheels and path, in the worst weather."))),
  wheelFrictionSource: z.optional(q.text),
  points: z.array(pathPoint).check(z.minLength(2), z.maxLength(10000)),
  groundAccepted: z.optional(signOff),
});

/** Elevation of one bearing seat; `asBuilt_m` is null until it was surveyed. `set` when sets share girder names. */
export const seat = z.strictObject({
  line: bearingLine,
  girder: q.name,
  set: z.optional(q.name),
  design_m: q.elevation_m,
  asBuilt_m: z.nullable(q.elevation_m),
  shims_mm: z.optional(q.from(0, 500).check(z.describe("Thickness of the shims put on the seat."))),
  source: q.text,
  date: q.text,
});

/** One bearing under one girder. `y_m` is its place across the bridge (absent: right under its girder). */
export const bearing = z.strictObject({
  line: bearingLine,
  girder: q.name,
  set: z.optional(q.name),
  holds: z.enum(["fixed", "guided", "free"]),
  stiffness_kN_per_mm: q.stiffness_kN_per_mm,
  sideStiffness_kN_per_mm: z.optional(q.stiffness_kN_per_mm),
  sideLimit_kN: z.optional(q.force_kN),
  friction: z.optional(q.friction),
  play_mm: z.optional(
    q.from(0, 500).check(z.describe("How far it can move along the girder from its middle, either way.")),
  ),
  offset_mm: z.optional(
    q
      .from(-500, 500)
      .check(z.describe("How far forward of the bearing line the middle of its play is set; absent: 0.")),
  ),
  width_mm: z.optional(q.from(10, 3000)),
  length_mm: z.optional(q.from(1, 5000).check(z.describe("Of the sole plate, along the girder."))),
  height_mm: z.optional(
    q.from(0, 2000).check(z.describe("From seat to soffit, plates included; absent: 0.")),
  ),
  y_m: z.optional(q.across_m),
  ratedLoad_kN: q.positiveForce_kN,
});

/** A line that no axle line may pass. */
export const stopLine = z.strictObject({ name: q.name, chainage_m: q.chainage_m });

/** A structure under the path or under a crane: backwall, approach slab, culvert. */
export const underfoot = z.strictObject({
  name: q.name,
  from_m: q.chainage_m,
  to_m: q.chainage_m,
  allowablePressure_kPa: z.optional(q.from(1, 50000)),
  allowedLine_kN: z.optional(q.positiveForce_kN),
  fromY_m: z.optional(q.from(-300, 300).check(z.describe("Right edge; absent: it reaches right across."))),
  toY_m: z.optional(q.from(-300, 300)),
  cover_m: z.optional(q.from(0, 50).check(z.describe("Ground above it, through which pressure spreads."))),
  source: z.optional(q.text),
  signedOff: z.optional(signOff),
});

/** What lies below the gap, and its state by step. */
export const below = z.strictObject({
  kind: z.enum(["water", "road", "rail", "ground"]),
  elevation_m: z.optional(q.elevation_m),
  states: z.optional(q.list(z.strictObject({ set: z.optional(q.name), step: q.name, state: q.text }))),
});

const place = z.strictObject({
  chainage_m: q.chainage_m,
  y_m: q.from(-1000, 1000),
  elevation_m: q.elevation_m,
});

/** A thing to keep clear of: a box between two opposite corners, or an overhead line between two points. */
export const obstacle = z.strictObject({
  name: q.name,
  kind: z.enum(["box", "overhead line"]),
  from: place,
  to: place,
  clearance_m: z.optional(q.height_m),
  voltage_kV: z.optional(q.from(0, 2000)),
});

/** The whole site. Faces are the abutment faces: the path ends at `nearFace_m`, the gap lies between the faces. */
export const site = z.strictObject({
  nearBearing_m: q.chainage_m,
  farBearing_m: q.chainage_m,
  nearFace_m: q.chainage_m,
  farFace_m: q.chainage_m,
  nearBackwall_m: z.optional(q.chainage_m),
  farBackwall_m: z.optional(q.chainage_m),
  skew_deg: q.from(-80, 80).check(z.describe("Only 0 is solved; other values are refused.")),
  gravity_m_per_s2: z.optional(q.from(9.7, 9.9)),
  temperature_C: z.optional(
    q
      .from(-60, 80)
      .check(
        z.describe("At which the girders have their drawn length and the bearings stand in their middle."),
      ),
  ),
  path,
  seats: q.list(seat),
  bearings: q.list(bearing),
  stopLines: q.list(stopLine),
  underfoot: q.list(underfoot),
  craneGround: z.optional(
    q
      .list(craneGround)
      .check(
        z.describe(
          "Ground along the ways of cranes; where none lies, the pressure that the ground of the crane's own place allows stands in.",
        ),
      ),
  ),
  edges: z.optional(q.list(edge)),
  wallSignedOff: z.optional(
    signOff.check(z.describe("Who signed for the surcharge of machines behind backwalls and wingwalls.")),
  ),
  below,
  obstacles: q.list(obstacle),
  wind: z.optional(siteWind),
});
