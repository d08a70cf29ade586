// The rules and the people of a plan: limits in force, spread of the data, roles, records, acceptances, expected findings.
import * as z from "zod/mini";
import * as q from "./quantities.ts";

/** Units in which a limit may be given. */
export const limitUnit = z.enum([
  "1",
  "pct",
  "mm",
  "m",
  "kN",
  "kN/m",
  "kN/mm",
  "kN/s",
  "kPa",
  "MPa",
  "kNm",
  "t",
  "deg",
  "s",
  "min",
  "m/s",
]);

/** One limit in force: the check's id, its value, where the value is from and who chose it. */
export const rule = z.strictObject({
  id: q.name,
  value: q.from(-1e9, 1e9),
  unit: limitUnit,
  source: q.text,
  chosenBy: q.text,
});

/** A limit replaced for this job, in the unit of the limit it replaces. */
export const override = z.strictObject({
  limit: q.name,
  value: q.from(-1e9, 1e9),
  source: q.text,
  chosenBy: q.text,
});

const ruleId = z
  .string()
  .check(
    z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
    z.describe('the id of a ready-made rule, such as "tandem-75": small letters, digits, hyphens'),
  );

/** The rule set: ready-made rules by id, limits set one by one, overrides. The lowest governs; an absent limit is not set. */
export const limits = z.strictObject({
  use: q.list(ruleId, 100),
  rules: q.list(rule),
  overrides: q.list(override),
});

/** Low and high of the data. Blank is not zero: a starter value then stands in and is an open item. */
export const spread = z.strictObject({
  weight_pct: z.optional(q.pair(-50, 100)),
  cgAlong_m: z.optional(q.from(0, 20).check(z.describe("Either way."))),
  cgAcross_m: z.optional(q.from(0, 5).check(z.describe("Either way."))),
  stiffness_pct: z.optional(q.pair(-90, 500)),
  hookMismatch_mm: z.optional(q.from(0, 1000).check(z.describe("Either way."))),
  settlement_mm: z.optional(q.from(0, 1000).check(z.describe("Of any one support."))),
  friction: z.optional(q.pair(0, 2)),
});

/** Who does what and on which channel. */
export const people = z.strictObject({
  roles: q.list(
    z.strictObject({ role: q.name, name: q.text, does: z.optional(q.text), channel: z.optional(q.name) }),
    200,
  ),
  channels: q.list(z.strictObject({ name: q.name, uses: z.enum(["crane", "transporter", "both"]) }), 50),
  stopWord: z.optional(q.text),
  meeting: z.optional(
    z
      .strictObject({ date: q.text, by: q.text })
      .check(z.describe("In which the plan was reviewed with all who work by it.")),
  ),
  tests: z.optional(q.list(z.strictObject({ channel: q.name, date: q.text, by: q.text, result: q.text }))),
});

/** As-done readings by set and step; never part of what is solved, nor of the plan's hash. */
export const recordEntry = z.strictObject({
  set: q.name,
  step: q.name,
  at: q.text,
  by: q.text,
  readings: q.list(
    z.strictObject({
      what: q.name,
      load_kN: z.optional(q.from(-1e5, 1e5)),
      height_mm: z.optional(q.from(-1e5, 1e5)),
      wind_m_per_s: z.optional(q.speed_m_per_s),
    }),
  ),
  notes: z.optional(q.text),
});

/** A finding accepted by name. */
export const acceptance = z.strictObject({
  check: q.name,
  subject: q.text,
  set: z.optional(q.name),
  step: z.optional(q.name),
  by: q.name,
  date: z.optional(q.text),
  reason: q.text,
});

/** A stop finding that a scenario is made to show. */
export const expectation = z.strictObject({
  check: q.name,
  subject: q.text,
  set: z.optional(q.name),
  step: q.name,
  why: q.text,
});

/** Places whose values nobody has confirmed, and where those values are from. A place stands for everything below it. */
export const unconfirmed = z.strictObject({
  why: q.text,
  places: q.someOf(
    q.text.check(z.describe("Path from the top of the plan, such as transporters[0].mass_t.")),
    5000,
  ),
});
