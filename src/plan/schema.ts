// What a plan is: the whole file as one reader (zod), and the types that follow from it.
// Every object is strict, so that a misspelt field is an error and not a silent loss. Units stand in the field names.
import * as z from "zod/mini";
import type * as grounds from "./schema/ground.ts";
import * as machines from "./schema/machines.ts";
import * as q from "./schema/quantities.ts";
import * as riggings from "./schema/rigging.ts";
import * as rules from "./schema/rules.ts";
import * as sets from "./schema/set.ts";
import * as sites from "./schema/site.ts";
import type { numberToSee, step, wayBackStep } from "./schema/steps.ts";
import type * as winds from "./schema/wind.ts";

/** The version of the file format that this program writes. */
export const planVersion = 1;

/** The word by which a plan file is known. */
export const planFormat = "handspan-plan";

/** Reader of a whole plan. `shows` comes first: what this plan or scenario shows. */
export const planSchema = z.strictObject({
  shows: q.text,
  format: z.literal(planFormat),
  version: z.literal(planVersion),
  invented: z.boolean().check(z.describe("True when the data are invented for demonstration.")),
  header: z.strictObject({
    title: q.text,
    revision: q.text,
    preparedBy: q.text,
    checkedBy: q.text,
    status: q.text,
    notes: q.text,
  }),
  site: sites.site,
  transporters: q.list(machines.transporter, 20),
  cranes: q.list(machines.crane, 20),
  rigging: q.list(riggings.rigging, 100),
  lashings: q.list(machines.lashing, 500),
  sets: q.list(sets.planSet, 200),
  limits: rules.limits,
  spread: rules.spread,
  people: z.optional(rules.people),
  accept: q.list(rules.acceptance),
  expected: z.optional(q.list(rules.expectation)),
  record: z.optional(q.list(rules.recordEntry, 20000)),
  unconfirmed: z.optional(q.list(rules.unconfirmed, 500)),
});

/** A plan as read: the single source from which everything else is computed. Treat as immutable. */
export type Plan = z.infer<typeof planSchema>;

export type Site = z.infer<typeof sites.site>;
export type BearingLine = z.infer<typeof sites.bearingLine>;
export type PathPoint = z.infer<typeof sites.pathPoint>;
export type Seat = z.infer<typeof sites.seat>;
export type Bearing = z.infer<typeof sites.bearing>;
export type StopLine = z.infer<typeof sites.stopLine>;
export type Underfoot = z.infer<typeof sites.underfoot>;
export type Obstacle = z.infer<typeof sites.obstacle>;

export type CraneGround = z.infer<typeof grounds.craneGround>;
export type Edge = z.infer<typeof grounds.edge>;
export type SignOff = z.infer<typeof grounds.signOff>;
export type Soil = z.infer<typeof grounds.soil>;

export type Transporter = z.infer<typeof machines.transporter>;
export type Group = z.infer<typeof machines.group>;
export type Bunk = z.infer<typeof machines.bunk>;
export type Mat = z.infer<typeof machines.mat>;
export type Crane = z.infer<typeof machines.crane>;
export type Chart = z.infer<typeof machines.chart>;
export type ChartRow = z.infer<typeof machines.chartRow>;
export type IndicatorPart = z.infer<typeof machines.indicatorPart>;
export type Rigging = z.infer<typeof riggings.rigging>;
export type LiftAttachment = z.infer<typeof riggings.liftAttachment>;
export type RiggingPart = z.infer<typeof riggings.riggingPart>;
export type Lashing = z.infer<typeof machines.lashing>;

export type PlanSet = z.infer<typeof sets.planSet>;
export type Girder = z.infer<typeof sets.girder>;
export type Piece = z.infer<typeof sets.piece>;
export type Splice = z.infer<typeof sets.splice>;
export type Stiffener = z.infer<typeof sets.stiffener>;
export type CrossFrame = z.infer<typeof sets.crossFrame>;
export type Attachment = z.infer<typeof sets.attachment>;
export type LedgerLine = z.infer<typeof sets.ledgerLine>;
export type OnTransporter = z.infer<typeof sets.onTransporter>;
export type Pick = z.infer<typeof sets.pick>;

export type Step = z.infer<typeof step>;
export type WayBackStep = z.infer<typeof wayBackStep>;
export type NumberToSee = z.infer<typeof numberToSee>;
/** The words by which steps are told apart. */
export type StepKind = Step["do"];
/** The step of one kind, as `StepOf<"roll">`. */
export type StepOf<K extends StepKind> = Extract<Step, { do: K }>;

export type SiteWind = z.infer<typeof winds.siteWind>;
export type CraneWind = z.infer<typeof winds.craneWind>;
export type SetWind = z.infer<typeof winds.setWind>;
export type Forecast = z.infer<typeof winds.forecast>;

export type Limits = z.infer<typeof rules.limits>;
export type Rule = z.infer<typeof rules.rule>;
export type LimitUnit = z.infer<typeof rules.limitUnit>;
export type Override = z.infer<typeof rules.override>;
export type Spread = z.infer<typeof rules.spread>;
export type People = z.infer<typeof rules.people>;
export type RecordEntry = z.infer<typeof rules.recordEntry>;
export type Acceptance = z.infer<typeof rules.acceptance>;
export type Expectation = z.infer<typeof rules.expectation>;

/** Low, best and high of one quantity. */
export interface Band {
  low: number;
  best: number;
  high: number;
}
