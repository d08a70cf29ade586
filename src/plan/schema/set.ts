// A set: its girders with field pieces, what hangs on them, where it bears and is picked, and its own steps.
// Stations run from the rear end of the set (m), y to the left (m), heights above the soffit (m).
import * as z from "zod/mini";
import { infill } from "./landing.ts";
import * as q from "./quantities.ts";
import { liftAttachment, loosePart } from "./rigging.ts";
import { step } from "./steps.ts";
import { setTimes, setWind } from "./wind.ts";

/** One field piece: plates of constant size from one station to the next. Flanges [width, thickness], web [height, thickness]. */
export const piece = z.strictObject({
  from_m: q.station_m,
  to_m: q.station_m,
  topFlange_mm: z.tuple([q.plateWidth_mm, q.plateThickness_mm]),
  web_mm: z.tuple([q.webHeight_mm, q.plateThickness_mm]),
  bottomFlange_mm: z.tuple([q.plateWidth_mm, q.plateThickness_mm]),
  yield_MPa: z.optional(q.from(100, 1500)),
  weldLeg_mm: z.optional(q.from(0, 50).check(z.describe("Of the welds between web and flanges."))),
  mark: z.optional(q.text),
});

/** One girder of the set. Camber: [station m, rise of the soffit over the straight line mm], linear between points. */
export const girder = z.strictObject({
  line: q.name,
  y_m: q.from(-50, 50),
  camber_mm: q.list(z.tuple([q.station_m, q.level_mm])),
  sweep_mm: z.optional(
    q
      .from(-1000, 1000)
      .check(z.describe("Measured: how far its middle lies from a line between its ends, left positive.")),
  ),
  pieces: q.someOf(piece, 500),
});

/** A field splice: mass of plates and bolts, and what the whole joint can carry where that is known. */
export const splice = z.strictObject({
  girder: q.name,
  at_m: q.station_m,
  mass_t: q.mass_t,
  moment_kNm: z.optional(q.from(0.1, 1e7)),
  shear_kN: z.optional(q.positiveForce_kN),
  boltedFraction: z.optional(
    q
      .from(0, 1)
      .check(z.describe("Holes filled with bolts and pins while the set is erected; absent: all of them.")),
  ),
});

/** Cross-frames at one station, between all neighbouring girders: mass of all of them, properties of one frame. */
export const crossFrame = z.strictObject({
  at_m: q.station_m,
  mass_t: q.mass_t,
  area_mm2: q.from(1, 1e7),
  inPlaneInertia_m4: q.from(1e-12, 100),
  planInertia_m4: q.from(1e-12, 100),
  torsion_m4: q.from(1e-12, 100),
  height_m: q.height_m.check(z.describe("Of the frame's centroid above the soffit.")),
  moment_kNm: z.optional(q.from(0.01, 1e6)),
});

/** A pair of full-depth stiffeners of one girder's web, one on each side; sizes of one of them. */
export const stiffener = z.strictObject({
  girder: q.name,
  at_m: q.station_m,
  width_mm: z.optional(q.from(20, 1000)),
  thickness_mm: z.optional(q.plateThickness_mm),
});

/** Anything fixed to one girder: walkway, bearing plates, lift lugs. `y_m` is its distance left of that girder. */
export const attachment = z.strictObject({
  name: q.name,
  girder: q.name,
  at_m: q.station_m,
  mass_t: q.mass_t,
  height_m: q.height_m,
  y_m: z.optional(q.from(-10, 10)),
});

/** One line of the weight ledger: what the source says, compared with the take-off of what it `covers`. */
export const ledgerLine = z.strictObject({
  item: q.name,
  covers: z.optional(z.enum(["girders", "splices", "cross-frames", "attachments", "whole set"])),
  mass_t: q.band(0, 5000),
  source: q.text,
  date: z.optional(q.text),
});

/** Where a transporter stands under the set at its start. Packing is by girder name, above the bunk, same for all its bunks. */
export const onTransporter = z.strictObject({
  transporter: q.name,
  deckAt_m: q.from(-100, 600),
  packing_mm: z.record(q.name, q.from(-1000, 3000)),
});

/** Where a crane takes the set. `girders` absent: all of them. */
export const pick = z.strictObject({
  crane: q.name,
  rigging: q.name,
  at_m: q.station_m,
  height_m: q.height_m,
  girders: z.optional(q.someOf(q.name, 20)),
  length_mm: z.optional(
    q.from(1, 5000).check(z.describe("Of the lug, clamp or sling on the flange, along the girder.")),
  ),
  slingLonger_mm: z.optional(
    z
      .record(q.name, q.from(-2000, 2000))
      .check(z.describe("By girder: how much longer its sling is than the rigging's own length.")),
  ),
  attachment: z.optional(liftAttachment),
});

/** One set. */
export const planSet = z.strictObject({
  id: q.name,
  name: q.text,
  length_m: z.optional(q.from(0.5, 500).check(z.describe("Checked against the girders."))),
  steelDensity_kg_per_m3: z.optional(q.from(7000, 9000)),
  E_GPa: z.optional(q.from(50, 400)),
  G_GPa: z.optional(q.from(20, 200)),
  yield_MPa: z.optional(q.from(100, 1500)),
  fabricationFactor_pct: z.optional(
    q.from(0, 100).check(z.describe("Stiffeners and welds as a part of the plates' mass.")),
  ),
  temperature_C: z.optional(
    q
      .from(-60, 80)
      .check(
        z.describe(
          "Mean temperature of its steel at the start; steps of hold and rest change it from there.",
        ),
      ),
  ),
  start: z.strictObject({
    rearEnd_m: q.chainage_m.check(z.describe("Chainage of the rear end of the set.")),
    y_m: z.optional(q.across_m),
  }),
  soleStations_m: z.optional(
    z
      .strictObject({ near: q.station_m, far: q.station_m })
      .check(z.describe("Stations of the sole plates that come to lie on the bearing lines.")),
  ),
  girders: q.someOf(girder, 20),
  splices: q.list(splice),
  crossFrames: q.list(crossFrame),
  stiffeners: z.optional(q.list(stiffener)),
  lateralBracing: z.optional(q.list(z.strictObject({ from_m: q.station_m, to_m: q.station_m }))),
  attachments: q.list(attachment),
  tagLines: z.optional(q.list(z.strictObject({ name: q.name, at_m: q.station_m }))),
  infill: z.optional(q.list(infill).check(z.describe("Members that join it to sets that stand already."))),
  looseParts: z.optional(
    q
      .list(loosePart)
      .check(z.describe("What may shift or fall in the lift; an empty list says: looked at, none.")),
  ),
  forwardMark: z.optional(
    q.text.check(z.describe("The mark on the steel that says which end goes forward, and where it is.")),
  ),
  ledger: q.list(ledgerLine),
  onTransporters: q.list(onTransporter, 20),
  picks: q.list(pick, 20),
  unconfirmed: z.optional(
    q.list(q.text).check(z.describe("Places in this set copied from another and not yet confirmed.")),
  ),
  wind: z.optional(setWind),
  times: z.optional(setTimes),
  steps: q.list(step, 500),
});
