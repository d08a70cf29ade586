// The steps of a set: one action each, told apart by `do`, with what every step carries besides.
import * as z from "zod/mini";
import { counted, releaseCondition } from "./landing.ts";
import * as q from "./quantities.ts";

/** The number that must be seen before going on, and its band. */
export const numberToSee = z.strictObject({
  what: q.name,
  low: z.optional(q.from(-1e9, 1e9)),
  high: z.optional(q.from(-1e9, 1e9)),
  unit: q.text,
});

const first = { id: q.name, title: z.optional(q.text) };

const common = {
  notes: z.optional(q.text),
  who: z.optional(q.text),
  voice: z.optional(q.text),
  channel: z.optional(q.text),
  see: z.optional(numberToSee),
  carries: q.list(q.name, 200).check(z.describe("Supports meant to carry at the end of the step.")),
  brakes: z.optional(q.list(q.name, 20).check(z.describe("Transporters with brakes on."))),
  windLimit_m_per_s: z.optional(q.speed_m_per_s),
  exclusion: z.optional(q.text),
  minutes: z.optional(q.minutes),
};

const loadUntil = z.strictObject({ load_kN: q.positiveForce_kN });
const heightUntil = z.strictObject({ height_mm: q.lift_mm });
const jack = {
  groups: z.optional(q.someOf(q.name, 100)),
  transporter: z.optional(q.name.check(z.describe("All groups of this transporter."))),
  until: z.union([heightUntil, z.strictObject({ gap_mm: q.from(0, 2000) }), loadUntil]),
};
const hookMotion = z.strictObject({
  crane: q.name,
  height_mm: q.lift_mm,
  speed_factor: z.optional(q.from(0.01, 10)),
});

const hookUp = { do: z.literal("hook up"), crane: q.name, conditions: z.optional(q.list(q.text)) };
const unhook = {
  do: z.literal("unhook"),
  crane: q.name,
  conditions: z.optional(q.list(q.text)),
  release: z.optional(
    q
      .list(releaseCondition, 100)
      .check(z.describe("What must be in and counted before this hook comes off a landed set.")),
  ),
};
const lash = { do: z.literal("lash"), lashings: q.list(q.name) };
const unlash = { do: z.literal("unlash"), lashings: q.list(q.name) };
const takeLoad = {
  do: z.literal("take load"),
  crane: q.name,
  until: z.union([loadUntil, heightUntil, z.strictObject({ frees: q.name })]),
  loadCap_kN: q.positiveForce_kN,
  heightCap_mm: q.lift_mm,
};
const trialLift = {
  do: z.literal("trial lift"),
  crane: q.name,
  height_mm: q.lift_mm,
  loadCap_kN: z.optional(q.positiveForce_kN),
  band_pct: z.optional(q.pct.check(z.describe("Allowed deviation of the reading from the ledger."))),
};
const roll = { do: z.literal("roll"), distance_m: q.from(-500, 500) };
const rollTogether = {
  do: z.literal("roll together"),
  distance_m: q.from(-500, 500),
  cranes: q.someOf(q.name, 4),
  hold: z.enum(["elevation", "load", "rope"]),
  bite_m: q.from(0.01, 100),
  load_kN: z.optional(q.positiveForce_kN.check(z.describe("The load to hold; absent: as at its start."))),
  loadBand_kN: z.optional(q.force_kN),
  follow: z.optional(z.enum(["boom", "swing", "travel"])),
};
const jackUp = { do: z.literal("jack up"), ...jack };
const jackDown = { do: z.literal("jack down"), ...jack };
const level = {
  do: z.literal("level"),
  groups: z.optional(q.someOf(q.name, 100)),
  tolerance_mm: z.optional(q.from(0, 500)),
  level_pct: z.optional(q.slope_pct),
  lean_pct: z.optional(q.slope_pct),
};
const driveOut = {
  do: z.literal("drive out"),
  transporter: q.name,
  toward: z
    .enum(["back", "forward", "left", "right"])
    .check(z.describe("Left and right: with all wheels turned across the path.")),
  distance_m: q.distance_m,
};
const rebunk = {
  do: z.literal("rebunk"),
  transporter: q.name,
  deckAt_m: q.from(-100, 600),
  packing_mm: z.optional(z.record(q.name, q.from(-1000, 3000))),
};
const walk = {
  do: z.literal("walk"),
  crane: q.name,
  dx_m: q.from(-500, 500),
  dy_m: q.from(-300, 300),
  boomOver: z.optional(z.enum(["front", "rear", "side"])),
  outOfLevel_pct: z.optional(
    q.from(0, 20).check(z.describe("Most that the crane stands out of level along the way, by survey.")),
  ),
  hook: z.optional(
    z
      .enum(["stays", "goes along"])
      .check(z.describe("Absent: the boom keeps the hook where it is while the crane moves.")),
  ),
};
const hoistUp = { do: z.literal("hoist up"), hooks: q.someOf(hookMotion, 4) };
const hoistDown = { do: z.literal("hoist down"), hooks: q.someOf(hookMotion, 4) };
const bringOver = {
  do: z.literal("bring over"),
  dx_m: q.from(-500, 500),
  dy_m: q.from(-300, 300),
  bites: z.optional(z.int().check(z.gte(1), z.lte(1000))),
  tolerance_mm: z.optional(q.from(0, 1000)),
};
const land = {
  do: z.literal("land"),
  order: q.someOf(q.name, 4).check(z.describe("Cranes; the first one lowers first.")),
  stages_kN: z.optional(q.list(q.force_kN, 100)),
  until_kN: q.force_kN,
};
const brace = {
  do: z.literal("brace"),
  items: q.someOf(counted, 200),
};
/** What acts while a set stands: ground that sinks below a support (by name), and the set's temperature against its start. */
const standing = {
  settlement_mm: z.optional(
    z.record(q.name, q.from(0, 2000)).check(z.describe("By support: how far the ground below it sinks.")),
  ),
  temperature_C: z.optional(
    q.from(-80, 80).check(z.describe("Change of the set's mean temperature during this step.")),
  ),
  topWarmer_C: z.optional(
    q
      .from(-60, 60)
      .check(z.describe("Change of how much warmer the top flanges are than the bottom flanges.")),
  ),
};
const hold = {
  do: z.literal("hold"),
  point: z.optional(z.enum(["hold", "witness"])),
  releasedBy: q.text,
  evidence: q.text,
  counted: z.optional(q.list(counted, 200).check(z.describe("What is in and counted when it is released."))),
  ...standing,
};
const rest = {
  do: z.literal("rest"),
  on: z.optional(
    q
      .list(q.text, 50)
      .check(
        z.describe('What the set rests on, such as "packing", "stops", "bearings"; never oil or hooks.'),
      ),
  ),
  ...standing,
};

/** A step of the way back: a step without a way back of its own. */
export const wayBackStep = z.discriminatedUnion("do", [
  z.strictObject({ ...first, ...hookUp, ...common }),
  z.strictObject({ ...first, ...unhook, ...common }),
  z.strictObject({ ...first, ...lash, ...common }),
  z.strictObject({ ...first, ...unlash, ...common }),
  z.strictObject({ ...first, ...takeLoad, ...common }),
  z.strictObject({ ...first, ...trialLift, ...common }),
  z.strictObject({ ...first, ...roll, ...common }),
  z.strictObject({ ...first, ...rollTogether, ...common }),
  z.strictObject({ ...first, ...jackUp, ...common }),
  z.strictObject({ ...first, ...jackDown, ...common }),
  z.strictObject({ ...first, ...level, ...common }),
  z.strictObject({ ...first, ...driveOut, ...common }),
  z.strictObject({ ...first, ...rebunk, ...common }),
  z.strictObject({ ...first, ...walk, ...common }),
  z.strictObject({ ...first, ...hoistUp, ...common }),
  z.strictObject({ ...first, ...hoistDown, ...common }),
  z.strictObject({ ...first, ...bringOver, ...common }),
  z.strictObject({ ...first, ...land, ...common }),
  z.strictObject({ ...first, ...brace, ...common }),
  z.strictObject({ ...first, ...hold, ...common }),
  z.strictObject({ ...first, ...rest, ...common }),
]);

// Named, so that the published schema holds it once and not in every kind of step.
wayBackStep.register(z.globalRegistry, { id: "wayBackStep" });

const forward = {
  ...common,
  wayBack: z.optional(q.list(wayBackStep, 50).check(z.describe("Absent: past the point of no return."))),
};

/** A step of the sequence. */
export const step = z.discriminatedUnion("do", [
  z.strictObject({ ...first, ...hookUp, ...forward }),
  z.strictObject({ ...first, ...unhook, ...forward }),
  z.strictObject({ ...first, ...lash, ...forward }),
  z.strictObject({ ...first, ...unlash, ...forward }),
  z.strictObject({ ...first, ...takeLoad, ...forward }),
  z.strictObject({ ...first, ...trialLift, ...forward }),
  z.strictObject({ ...first, ...roll, ...forward }),
  z.strictObject({ ...first, ...rollTogether, ...forward }),
  z.strictObject({ ...first, ...jackUp, ...forward }),
  z.strictObject({ ...first, ...jackDown, ...forward }),
  z.strictObject({ ...first, ...level, ...forward }),
  z.strictObject({ ...first, ...driveOut, ...forward }),
  z.strictObject({ ...first, ...rebunk, ...forward }),
  z.strictObject({ ...first, ...walk, ...forward }),
  z.strictObject({ ...first, ...hoistUp, ...forward }),
  z.strictObject({ ...first, ...hoistDown, ...forward }),
  z.strictObject({ ...first, ...bringOver, ...forward }),
  z.strictObject({ ...first, ...land, ...forward }),
  z.strictObject({ ...first, ...brace, ...forward }),
  z.strictObject({ ...first, ...hold, ...forward }),
  z.strictObject({ ...first, ...rest, ...forward }),
]);
