// What a plan says of landing and fit: counted parts, conditions of release, frames to a set that stands already.
import * as z from "zod/mini";
import * as q from "./quantities.ts";

/** Parts that are put in and counted: `count` of `of` are in. */
export const counted = z.strictObject({
  what: q.name,
  count: z.int().check(z.gte(0), z.lte(1e6)),
  of: z.int().check(z.gte(1), z.lte(1e6)),
});

/**
 * What must be in before a hook comes off a landed set. `what` is the name of a counted part in a `brace` or `hold`
 * before it; `kind` tells blocks at the bearings, bracing and frames, bolts and pins.
 */
export const releaseCondition = z.strictObject({
  kind: z.enum(["blocks", "braces", "bolts"]),
  what: q.name,
  least: z
    .int()
    .check(z.gte(1), z.lte(1e6), z.describe("How many of them must be in before the hook comes off.")),
});

/**
 * A frame or other member that joins a girder of this set to one of a set that stands already. `fit`: the load under
 * which the fabricator made it to fit. `drop_mm`: how much lower the other girder's soffit is then (absent: worked out).
 */
export const infill = z.strictObject({
  name: q.name,
  to: q.name.check(z.describe("Id of the set that stands already.")),
  at_m: q.station_m,
  girder: q.name,
  toGirder: q.name,
  fit: z.enum(["no load", "steel dead load", "total dead load"]),
  drop_mm: z.optional(q.level_mm),
  allowed_mm: z.optional(
    q
      .from(0, 500)
      .check(z.describe("By how much the two ends may be off the fit and still be pulled together.")),
  ),
});
