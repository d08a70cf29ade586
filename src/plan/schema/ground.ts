// What a plan says of the ground: soil classes, ground that cranes walk over, edges to keep back from, and who signed.
import * as z from "zod/mini";
import * as q from "./quantities.ts";

/** Soil classes of the presumptive tables in `src/checks/ground/presumptive.ts`. */
export const soil = z.enum([
  "ibc crystalline bedrock",
  "ibc foliated rock",
  "ibc sandy gravel",
  "ibc sand",
  "ibc clay",
  "ibc mud, peat or loose fill",
  "city dense gravel",
  "city medium gravel",
  "city medium clay",
  "city medium silt",
]);

/** Who signed for it, with what they looked at. */
export const signOff = z.strictObject({
  by: q.name,
  date: z.optional(q.text),
  on: z.optional(q.text.check(z.describe("What it rests on: borings, utilities searched, drawings."))),
});

/** A stretch of ground that cranes walk over, beside that of their own places; `fromY_m` is its right edge. */
export const craneGround = z.strictObject({
  name: q.name,
  from_m: q.chainage_m,
  to_m: q.chainage_m,
  fromY_m: z.optional(q.from(-300, 300).check(z.describe("Right edge; absent: it reaches right across."))),
  toY_m: z.optional(q.from(-300, 300)),
  allowablePressure_kPa: z.optional(q.from(1, 50000)),
  pressureSource: z.optional(q.text),
  soil: z.optional(soil.check(z.describe("Names a presumptive value where no allowable one is given."))),
});

const corner = z.strictObject({ chainage_m: q.chainage_m, y_m: q.from(-1000, 1000) });

/** The top edge of a slope, trench or retaining wall, between two points in plan; the drop is `depth_m`. */
export const edge = z.strictObject({
  name: q.name,
  kind: z.enum(["slope", "trench", "retained"]),
  from: corner,
  to: corner,
  depth_m: q.from(0.1, 200),
  signedOff: z.optional(signOff),
});
