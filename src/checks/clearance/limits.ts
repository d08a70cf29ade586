// Rules and standing limits on clearances, in metres; distances to overhead lines by voltage.

import type { Plan } from "../../plan/index.ts";
import type { AreaLimits, Limit } from "../limitForm.ts";

const usual = (value: number, why: string) => ({ value, source: `common practice, no source: ${why}` });

export const clearanceLimits: AreaLimits = {
  ready: {
    "sway-1": {
      limit: "sway allowance",
      value: 1,
      source:
        "common practice, no source: a set on tag lines in a light wind stays within 1 % of the length of its lines",
    },
  },
  standing: {
    "clearance boom to set": usual(1, "m between a boom and the load that hangs or lies beside it"),
    "clearance boom to boom": usual(1, "m between the booms of two cranes that work together"),
    "clearance tail swing": usual(0.6, "m in which a person beside a swinging tail is not crushed"),
    "clearance set to structure": usual(0.15, "m between a set that is moved and what it must not touch"),
    "clearance set to path": usual(0.3, "m of a set above the path that it is carried over"),
    "clearance transporter": usual(0.3, "m between transporters and what stands beside their way"),
    "clearance transporter below set": usual(0.02, "m between a transporter that drives out and the set"),
    "clearance rigging to boom": usual(0.5, "m between a boom and the block, slings or spreader below it"),
    "clearance line": usual(0.5, "m between a line and what stands beside it"),
    "clearance obstacle": usual(0.6, "m around obstacles of the site that state no clearance of their own"),
  },
};

/**
 * Least distance to an overhead line by its voltage: 29 CFR 1926.1408 Table A, from memory, in feet.
 */
const TABLE_A: readonly [kV: number, ft: number][] = [
  [50, 10],
  [200, 15],
  [350, 20],
  [500, 25],
  [750, 35],
  [1000, 45],
];
const FOOT = 0.3048;

type Obstacle = Plan["site"]["obstacles"][number];

/** The limit of an overhead line: what the plan states for it, else by its voltage; null where the table has none. */
export function lineLimit(o: Obstacle): Limit | null {
  if (o.clearance_m !== undefined)
    return { value: o.clearance_m, source: `clearance stated for ${o.name} in the plan`, chosenBy: "plan" };
  const kV = o.voltage_kV;
  if (kV === undefined)
    return {
      value: 20 * FOOT,
      source: "29 CFR 1926.1408(a)(2), from memory: 20 ft while the voltage is not known, up to 350 kV",
      chosenBy: "default",
    };
  const row = TABLE_A.find(([most]) => kV <= most);
  return row === undefined
    ? null
    : {
        value: row[1] * FOOT,
        source: `29 CFR 1926.1408 Table A, from memory: ${row[1]} ft up to ${row[0]} kV`,
        chosenBy: "default",
      };
}
