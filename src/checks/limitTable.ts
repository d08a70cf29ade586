// Every limit by its name: in which unit its value is, and which way it becomes stricter.
import type { LimitUnit } from "../plan/index.ts";

/** How a limit is to be read. */
export interface LimitForm {
  /** Unit in which a plan gives it. */
  readonly unit: LimitUnit;
  /** The unit in words where that is per something: a plan's "t" for "t/m". */
  readonly per?: string;
  /** The higher value is the stricter one: what must stay above it, or a load or distance that is assumed. */
  readonly least?: true;
  /** No rule may be looser than the standing value; an override may, since somebody answers for it by name. */
  readonly firm?: true;
}

const most = (unit: LimitUnit, per?: string): LimitForm => (per === undefined ? { unit } : { unit, per });
const least = (unit: LimitUnit, per?: string): LimitForm => ({ ...most(unit, per), least: true });

/** By name. A name that is missing here is no limit that a plan may set. */
export const limitTable: Readonly<Record<string, LimitForm>> = {
  "chart use": most("pct"),
  "tandem use": most("pct"),
  "capacity above share": least("pct"),
  "capacity above share of three": least("pct"),
  "capacity above share of four": least("pct"),
  "capacity over pick": least("pct"),
  "critical lift use": most("pct"),
  "dynamic factor": least("1"),
  "weight contingency": least("1"),
  "hook load caution": most("pct"),
  "line lean": most("pct"),
  "boom side load": most("pct"),
  "wraps left": least("1"),
  swing: most("mm"),

  "skew factor": least("1"),
  "sling angle": least("deg"),
  "proof test": least("pct"),
  "parts above rigging mass": most("pct"),
  "out of grade": most("mm"),
  "out of crossfall": most("mm"),

  "tipping ratio": least("1"),
  "stroke use": most("pct"),
  "left-right": most("pct"),
  "tilt growth": most("1"),
  "tip angle": least("deg"),
  "tip load": least("pct"),
  "acceleration along": least("pct"),
  "acceleration across": least("pct"),
  "rolling resistance": least("pct"),
  "set twist": most("mm"),
  "change of slope along": most("pct"),
  "change of slope across": most("pct"),

  "set-back ratio": least("1"),
  "wall reach": least("1"),

  "strong wind": { unit: "m/s", firm: true },
  "wind caution": { unit: "m/s", firm: true },
  "chart sail": most("1", "m² per t"),

  "web plumb": most("pct"),
  "seat level": most("mm"),
  "bearing plane": most("pct"),
  "backwall gap": least("mm"),
  "gap between sets": least("mm"),
  "bearing share": most("pct"),
  "bearing side use": most("pct"),
  "late contact": least("pct"),
  "shim thickness": least("mm"),
  packing: most("mm"),
  sweep: most("mm", "mm per m"),
  "bolted fraction": least("1"),

  "sway allowance": least("pct"),
  "clearance boom to set": least("m"),
  "clearance boom to boom": least("m"),
  "clearance tail swing": least("m"),
  "clearance set to structure": least("m"),
  "clearance set to path": least("m"),
  "clearance transporter": least("m"),
  "clearance transporter below set": least("m"),
  "clearance rigging to boom": least("m"),
  "clearance line": least("m"),
  "clearance obstacle": least("m"),

  "buckling factor": least("1"),
  "AISC ASD load factor": least("1"),
  "AISC LRFD load factor": least("1"),
  "AASHTO load factor": least("1"),
  "stiffener distance": most("mm"),
  "girder slenderness": most("1"),
  "girder slenderness stop": most("1"),
  "field piece slenderness": most("1"),
  "two-girder set": most("pct"),

  "set lean": most("pct"),
  "set level": most("pct"),
  "fall at loss": most("mm"),
  "lean stiffness": least("1", "kNm per rad and kN"),
  "change per metre": most("pct", "% per m"),
  "change per 10 mm": most("pct", "% per 10 mm"),
  "change per minute": most("pct", "% per min"),
  "mass per metre low": least("t", "t/m"),
  "mass per metre high": most("t", "t/m"),
};
