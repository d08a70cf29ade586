// Wind in a plan: at the site, on a crane and its chart, on a set. All speeds of the site are 3-s gusts at a stated height; what
// an instrument averages over another time is brought to them by a stated factor.
import * as z from "zod/mini";
import * as q from "./quantities.ts";

const speed_m_per_s = q.from(0.1, 120);

/** A local time, such as 2026-05-04T06:30. */
export const localTime = z
  .string()
  .check(
    z.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d$/),
    z.describe('a local time such as "2026-05-04T06:30"'),
  );

/** What shows the wind to the crew: wind limits of steps are its readings. */
export const instrument = z.strictObject({
  height_m: q.height_m.check(z.describe("Above the ground around.")),
  averaging_s: q.from(1, 3600).check(z.describe("Time over which it averages: 3 for gusts, 600 for a mean.")),
  gustFactor: z.optional(
    q
      .from(1, 3)
      .check(z.describe("3-s gust over its reading; absent: from Durst's curve over open country.")),
  ),
  where: z.optional(q.text),
});

/** The gust for which the finished bridge is designed, and how long the set stands before the deck holds it. */
export const designWind = z.strictObject({
  gust_m_per_s: speed_m_per_s.check(z.describe("3-s gust at 10 m in open country.")),
  source: q.text,
  days: z.optional(q.from(0, 20000).check(z.describe("How long the set stands so; absent: 42."))),
  factor: z.optional(
    q
      .from(0.65, 1)
      .check(z.describe("On the speed, in place of the one that the days give; with its source.")),
  ),
  factorSource: z.optional(q.text),
});

/** What is forecast from one local time to another. */
export const forecast = z.strictObject({
  from: localTime,
  to: localTime,
  speed_m_per_s: q.speed_m_per_s,
  averaging_s: z.optional(q.from(1, 3600).check(z.describe("Absent: 3, a gust."))),
  height_m: z.optional(q.height_m.check(z.describe("Above the ground around; absent: 10."))),
  warns: z.optional(
    q.list(z.enum(["lightning", "ice", "heat", "visibility"]), 4).check(z.describe("What else is forecast.")),
  ),
  source: z.optional(q.text),
});

/** Wind at the site. */
export const siteWind = z.strictObject({
  exposure: z.optional(
    z
      .enum(["B", "C", "D"])
      .check(z.describe("Ground around: B built up or wooded, C open, D flat and unobstructed.")),
  ),
  setHeight_m: z.optional(
    q.height_m.check(z.describe("Of the middle of the set's depth above the ground around, at its highest.")),
  ),
  hills: z.optional(q.from(1, 3).check(z.describe("Factor on pressure for hills and gorges; absent: 1."))),
  instrument: z.optional(instrument),
  design: z.optional(designWind),
  forecast: z.optional(q.list(forecast, 500)),
});

/** What a crane's chart says of wind, and what of the crane stands in it. */
export const craneWind = z.strictObject({
  limit_m_per_s: speed_m_per_s.check(z.describe("Of the load chart: 3-s gust at the boom tip.")),
  source: q.text,
  loadArea_m2: z.optional(q.from(0.01, 5000).check(z.describe("Of the load that the chart reckons with."))),
  loadDrag: z.optional(q.from(0.1, 5).check(z.describe("Of that load; absent: 1.2."))),
  boomWidth_m: z.optional(q.from(0.1, 10).check(z.describe("Seen from the side."))),
  boomSolidity: z.optional(q.from(0.01, 1).check(z.describe("Solid over enclosed area of one face."))),
  boomMembers: z.optional(z.enum(["flat", "round"]).check(z.describe("Absent: round."))),
  ropeDiameter_mm: z.optional(q.from(1, 200)),
  blockArea_m2: z.optional(q.from(0, 50).check(z.describe("Of block and rigging, seen from the side."))),
});

/** How a set stands in the wind, where it is not a pair of bare girders. */
export const setWind = z.strictObject({
  drag: z.optional(q.from(0.1, 10).check(z.describe("Force coefficient on the area; absent: 2.2."))),
  area_m2: z.optional(
    q
      .from(0.1, 5000)
      .check(z.describe("Seen from the side, walkways and railings included; absent: depth times length.")),
  ),
  source: z.optional(q.text),
});

/** When the steps of a set are meant to be done; each takes its `minutes`. */
export const setTimes = z.strictObject({
  starts: localTime,
  contingency_min: z.optional(
    q.minutes.check(z.describe("Kept in hand behind the last step; the weather must hold over it too.")),
  ),
});
