// The machines in a plan: transporters, cranes and lashings, each with the source of its numbers.
import * as z from "zod/mini";
import { signOff, soil } from "./ground.ts";
import * as q from "./quantities.ts";
import { craneWind } from "./wind.ts";

/** One side of an axle line. */
export const wheel = z
  .string()
  .check(
    z.regex(/^[1-9]\d{0,2}[LR]$/),
    z.describe('a wheel such as "1L": number of the line from the rear, then L or R'),
  );

/** Axle-line sides that share oil and so act as one support; a wheel is `1L`: line 1 is the rearmost, L is left. */
export const group = z.strictObject({
  name: q.name,
  wheels: q.someOf(wheel, 400),
});

/** A support beam on the deck, `at_m` forward of the deck's centre. */
export const bunk = z.strictObject({
  at_m: q.from(-100, 100),
  kind: z.enum(["fixed", "rocking", "turning"]),
  length_mm: z.optional(q.from(1, 5000).check(z.describe("On which the flange bears, along the girder."))),
  rocks_pct: z.optional(
    q
      .from(0, 50)
      .check(z.describe("Slope between deck and soffit that a rocking or turning bunk follows, either way.")),
  ),
});

/** A rectangle on the ground: along and across the way the machine faces. */
const onGround = z.strictObject({ length_m: q.from(0.01, 20), width_m: q.from(0.01, 20) });

/** Settlement from which a crew acts. */
const settlementTrigger_mm = z.optional(
  q.from(0.1, 1000).check(z.describe("Settlement of its ground from which the crew acts.")),
);

/** Timber or steel mats under each track of a crane, side by side along it, each lying across it. */
export const mat = z.strictObject({
  length_m: q.size_m.check(z.describe("Across the track.")),
  width_m: q.size_m.check(z.describe("Along the track.")),
  mass_t: q.mass_t.check(z.describe("Of one mat.")),
  thickness_m: z.optional(q.from(0.01, 2)),
  bending_MPa: z.optional(q.from(0.1, 1000).check(z.describe("Allowable bending stress."))),
  shear_MPa: z.optional(q.from(0.01, 1000).check(z.describe("Allowable shear stress."))),
  section: z.optional(
    z
      .strictObject({
        modulus_cm3: q.from(1, 1e6),
        shearArea_cm2: q.from(0.1, 1e6),
      })
      .check(z.describe("Of one mat, where it is no solid rectangle.")),
  ),
  material: z.optional(q.text),
  source: z.optional(q.text),
});

/** One transporter (one train of axle lines). `allowedLine_kN` is the maker's limit per axle line, both sides. */
export const transporter = z.strictObject({
  id: q.name,
  name: q.text,
  kind: z.enum(["front", "rear"]),
  lines: z.int().check(z.gte(1), z.lte(100)),
  pitch_m: q.from(0.5, 5),
  gauge_m: q.from(0.3, 10),
  mass_t: q.from(0.1, 1000),
  cgHeight_m: q.from(0, 5),
  bunkHeight_m: q.from(0.1, 10).check(z.describe("Top of bunk above the path, cylinders at mid-stroke.")),
  allowedLine_kN: q.positiveForce_kN,
  allowedSide_kN: z.optional(q.positiveForce_kN),
  allowedGroundPressure_kPa: z.optional(q.from(1, 50000).check(z.describe("Under the print of its tyres."))),
  tyrePrint: z.optional(onGround.check(z.describe("Of all tyres of one axle-line side together."))),
  spreadArea: z.optional(
    onGround.check(
      z.describe(
        "Of plates or fill that spread the load of one axle-line side; absent: its part of the deck's shadow.",
      ),
    ),
  ),
  settlementTrigger_mm,
  strokeUp_mm: q.stroke_mm,
  strokeDown_mm: q.stroke_mm,
  tyreSquash_mm: z.optional(
    q.from(0, 200).check(z.describe("How much lower it stands on its tyres under the allowed line load.")),
  ),
  leak_mm_per_h: z.optional(
    q
      .from(0, 500)
      .check(z.describe("How fast its groups sink with all valves shut; acts while a step stands.")),
  ),
  cylinderStiffness_kN_per_mm: q.stiffness_kN_per_mm,
  cylinderArea_mm2: z.optional(
    q.from(100, 1e6).check(z.describe("Per axle-line side: turns a load into an oil pressure.")),
  ),
  allowedGrade_pct: q.pct,
  allowedCrossfall_pct: q.pct,
  allowedTwist_mm: z.optional(q.from(0, 2000)),
  groups: q.someOf(group, 200),
  bunks: q.someOf(bunk, 50),
  bunkStiffness_kN_per_mm: q.stiffness_kN_per_mm,
  bunkSideStiffness_kN_per_mm: q.stiffness_kN_per_mm,
  bunkFriction: z.optional(q.friction),
  bunkRated_kN: z.optional(q.positiveForce_kN.check(z.describe("Per bunk and girder."))),
  spineMoment_kNm: z.optional(q.from(0.1, 1e6)),
  brakeLimit_kN: z.optional(q.force_kN),
  driveLimit_kN: z.optional(q.force_kN.check(z.describe("Greatest pull of all driven lines together."))),
  drivenLines: z.optional(z.int().check(z.gte(0), z.lte(100))),
  brakedLines: z.optional(z.int().check(z.gte(0), z.lte(100))),
  coupledTo: z.optional(q.name),
  speed_m_per_min: z.optional(q.from(0.01, 200)),
  wheelDiameter_m: q.from(0.1, 3),
  deckLength_m: q.from(0.5, 200),
  deckWidth_m: q.from(0.5, 20),
  source: q.text,
});

/** One row of a load chart. */
export const chartRow = z.strictObject({
  radius_m: q.from(0.5, 300),
  boom_m: q.from(1, 300),
  rated_t: q.from(0, 10000),
});

/** A load chart. Interpolation between rows asks for the page on which the maker allows it. */
export const chart = z.strictObject({
  invented: z.boolean(),
  page: z.optional(q.text),
  interpolation: z.boolean(),
  rows: z.array(chartRow).check(z.minLength(1), z.maxLength(20000)),
});

/** Parts that a load indicator may count. */
export const indicatorPart = z.enum(["set", "rigging", "block", "rope", "auxiliary"]);

/** The hoist line of a crane on its drum. `ratedPull_kN` is what one part of it may pull. */
export const hoistLine = z.strictObject({
  ratedPull_kN: q.positiveForce_kN,
  efficiency: q
    .from(0.3, 1)
    .check(z.describe("Of the whole reeving: hook load over parts of line times the pull at the drum.")),
  rope_m: q.from(1, 10000).check(z.describe("Whole length of the rope, from its end on the drum.")),
  lead_m: z.optional(
    q.from(0, 1000).check(z.describe("From the drum to the boom tip; absent: the boom's length.")),
  ),
  drumDiameter_mm: q.from(50, 10000).check(z.describe("To the middle of the rope of the first layer.")),
  source: q.text,
});

/** One crane in one configuration. The boom foot lies `boomFootForward_m` ahead of the centre of rotation. */
export const crane = z.strictObject({
  id: q.name,
  name: q.text,
  kind: z.enum(["far", "near"]),
  position: z.strictObject({
    chainage_m: q.chainage_m,
    y_m: q.from(-300, 300),
    elevation_m: q.elevation_m,
  }),
  facing_deg: z.optional(
    q.from(-360, 360).check(z.describe("Direction of the tracks: 0 is forward, 90 is left.")),
  ),
  boomFootForward_m: q.from(-10, 20),
  boomFootHeight_m: q.from(0, 20),
  boomLength_m: q.from(2, 250),
  tailRadius_m: q.from(0.5, 50),
  trackGauge_m: q.from(0.5, 30),
  trackLength_m: q.from(0.5, 40),
  trackWidth_m: z.optional(q.from(0.1, 5)),
  mass_t: q
    .from(1, 10000)
    .check(z.describe("Of the whole crane, with ballast and boom, without block, rope and load.")),
  cgBehind_m: z.optional(
    q
      .from(-20, 20)
      .check(
        z.describe(
          "Crane's own CG behind its centre of rotation, as it turns with the house; of the rest where ballast or boom have a place of their own.",
        ),
      ),
  ),
  cgHeight_m: z.optional(q.height_m),
  ballast_t: z.optional(q.mass_t),
  ballastBehind_m: z.optional(
    q
      .from(-50, 50)
      .check(z.describe("Ballast's CG behind the centre of rotation; absent: counted in cgBehind_m.")),
  ),
  boomMass_t: z.optional(
    q.mass_t.check(z.describe("Boom with head, CG at half its length; absent: counted in cgBehind_m.")),
  ),
  outOfLevel_pct: z.optional(q.from(0, 20)),
  allowedOutOfLevel_pct: z.optional(q.from(0, 20)),
  allowablePressure_kPa: z.optional(q.from(1, 50000)),
  pressureSource: z.optional(q.text),
  soil: z.optional(soil.check(z.describe("Names a presumptive value where no allowable one is given."))),
  groundAccepted: z.optional(signOff),
  settlementTrigger_mm,
  mat: z.optional(mat),
  chart,
  deductions: z.strictObject({
    block_t: q.mass_t,
    rope_kg_per_m: q.from(0, 100),
    auxiliary_t: z.optional(q.mass_t),
  }),
  travelChart: z.optional(
    chart.check(z.describe("For travel with load, where the maker gives another one; same rows as `chart`.")),
  ),
  partsOfLine: z.int().check(z.gte(1), z.lte(100)),
  hoistLine: z.optional(hoistLine),
  leastHookToTip_m: z.optional(
    q.from(0, 50).check(z.describe("Hook to boom tip, below which the block would meet the tip.")),
  ),
  allowedSideLoad_pct: z.optional(
    q.from(0, 50).check(z.describe("Pull across the boom, in percent of the hook load, by its maker.")),
  ),
  stiffness: z.strictObject({
    rope_kN_per_mm: q.band(1e-4, 1e6),
    boom_kN_per_mm: q.band(1e-4, 1e6),
    ground_kN_per_mm: q.band(1e-4, 1e6),
  }),
  radiusGrowth_mm_per_kN: q.band(0, 50),
  indicator: z.strictObject({
    counts: q.list(indicatorPart, 10),
    accuracy_pct: q.from(0, 50),
  }),
  hoistSpeed_m_per_min: q.from(0.01, 300),
  boomSpeed_deg_per_min: z.optional(q.from(0.01, 1000)),
  swingSpeed_deg_per_min: z.optional(q.from(0.01, 1000)),
  travelSpeed_m_per_min: z.optional(q.from(0.01, 200)),
  travelWithLoad: z.boolean(),
  travelSource: z.optional(q.text),
  wind: z.optional(craneWind),
  source: q.text,
});

/** A tie from a transporter's deck to a girder at set station `at_m`. `set` when sets share girder names. */
export const lashing = z.strictObject({
  id: q.name,
  transporter: q.name,
  girder: q.name,
  set: z.optional(q.name),
  at_m: q.station_m,
  stiffness_kN_per_mm: q.stiffness_kN_per_mm,
  slack_mm: q.from(0, 500),
  pretension_kN: q.force_kN,
  ratedLoad_kN: z.optional(q.positiveForce_kN),
  holdsAlong_kN: z.optional(
    q.force_kN.check(z.describe("What it holds the set by along the path, either way; absent: nothing.")),
  ),
  holdsAcross_kN: z.optional(q.force_kN),
});
