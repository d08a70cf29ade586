// Rigging in a plan: from the hook to what is fixed to the girders, with the parts it is made of and the proofs of them.
import * as z from "zod/mini";
import * as q from "./quantities.ts";

/** A part of a rigging assembly: sling, shackle, beam, clamp. */
export const riggingPart = z.strictObject({
  name: q.name,
  count: z.int().check(z.gte(1), z.lte(1000)),
  ratedLoad_kN: q.positiveForce_kN,
  mass_t: z.optional(q.mass_t),
  hitch: z.optional(
    z
      .enum(["straight", "basket"])
      .check(z.describe("A basket carries with both legs of its sling, each rated as a straight one.")),
  ),
  angle_deg: z.optional(q.from(0, 90).check(z.describe("Of the leg from the vertical."))),
  place: z.optional(
    z
      .enum(["hook", "top leg", "beam", "leg", "pick"])
      .check(
        z.describe(
          "What it carries: all that hangs on the hook (hook), its share of the legs above the spreader (top leg), the same as the hook but not its own parts above (beam), its share of a line to a girder (leg, pick). Absent: as a leg.",
        ),
      ),
  ),
});

/** Legs from the hook to the ends of a spreader. Without angle and length, the hook's height above its lower pins stands. */
const topLegs = z.strictObject({
  apart_m: q.from(0.05, 60).check(z.describe("Between the lower ends of the two legs.")),
  angle_deg: z.optional(q.from(0, 89).check(z.describe("From the vertical."))),
  length_m: z.optional(q.from(0.1, 100)),
  compression_kN: z.optional(q.positiveForce_kN.check(z.describe("That the spreader may carry."))),
});

/** The slings down to the girders. */
const legs = z.strictObject({
  perPick: z.int().check(z.gte(1), z.lte(8), z.describe("Slings at each girder.")),
  alongApart_m: z.optional(
    q.from(0, 40).check(z.describe("Between the two slings of a girder, along it, where they part.")),
  ),
  diameter_mm: z.optional(q.from(5, 300).check(z.describe("Of a wire rope; gives its stiffness."))),
  EA_kN: z.optional(q.from(1, 1e8).check(z.describe("Axial stiffness of one sling, where it is known."))),
  lengthTolerance_mm: z.optional(
    q.from(0, 1000).check(z.describe("By which one sling may be longer or shorter than another.")),
  ),
});

/** From hook to set. `hookPinHeight_m` is the hook pin above the spreader's lower pins, or above the picks. */
export const rigging = z.strictObject({
  id: q.name,
  kind: z.enum(["spreader", "point", "separate"]),
  mass_t: q.mass_t,
  hookPinHeight_m: q.from(0, 60),
  slingLength_m: q.from(0, 100),
  slingStiffness_kN_per_mm: q.stiffness_kN_per_mm,
  ratedLoad_kN: q.positiveForce_kN.check(z.describe("Of the whole assembly, at the hook.")),
  softeners: z.boolean().check(z.describe("Guards at every edge that a sling bears on.")),
  guards: z.optional(
    z
      .enum(["made", "makeshift"])
      .check(z.describe("Whether the edge guards were made for the job, or are what was at hand.")),
  ),
  topLegs: z.optional(topLegs),
  legs: z.optional(legs),
  custom: z.optional(
    z
      .strictObject({
        proofTest_kN: z.optional(q.positiveForce_kN),
        marked: z.optional(z.boolean().check(z.describe("With its safe working load."))),
        source: z.optional(q.text),
      })
      .check(z.describe("Gear made for the job, not bought with a rating: its proof test and its marking.")),
  ),
  parts: z.optional(q.list(riggingPart, 200)),
});

/** What the rigging holds on a girder: a sling around it, a clamp, or a lug. */
export const liftAttachment = z.strictObject({
  kind: z.enum(["sling", "clamp", "lug"]),
  fixing: z.optional(z.enum(["bolted", "welded"])),
  capacity_kN: z.optional(q.positiveForce_kN.check(z.describe("At one girder, as it is pulled here."))),
  detail: z.optional(q.text.check(z.describe("Drawing or calculation that shows it."))),
  removal: z.optional(q.text.check(z.describe("How it comes off, and what is made good."))),
  removedBy: z.optional(q.text),
});

/** Something that may shift or fall in the lift, and how it is held. */
export const loosePart = z.strictObject({
  name: q.name,
  heldBy: q.text,
  checkedBy: z.optional(q.text),
});
