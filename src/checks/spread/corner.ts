// A corner of the spread: one choice for each uncertain quantity, with a name that a person can read.

import { byId, hookName, type Plan } from "../../plan/index.ts";

/** One choice for every uncertain quantity. Zero (null for friction) is the best value. Plain data. */
export interface Corner {
  /** The choices in words, as 'weight +5 %, CG 0.25 m forward'. */
  name: string;
  /** Change of all masses of the set, in percent. */
  weight_pct: number;
  /** Shift of the set's centre of gravity, m: forward and to the left positive; its weight stays. */
  cgAlong_m: number;
  cgAcross_m: number;
  /** Change of the stiffness of all hooks (rope, boom, ground, slings) and of all cylinders of the trains, in percent. */
  cranes_pct: number;
  trains_pct: number;
  /** The hook that hangs higher than meant while two or more carry, and by how much; crane '' for none. */
  mismatch: { crane: string; mm: number };
  /** The transporter (by id) or bearing (by name) under which the ground gave way, and by how much; '' for none. */
  settlement: { under: string; mm: number };
  /** Friction of all bunks; null as the plan has it. */
  friction: number | null;
  /** Wind as a part of the pressure at the step's wind limit: positive blows to the left, negative to the right. */
  wind: number;
}

/** What a corner says beside the best values. */
export type CornerPart = Partial<Omit<Corner, "name">>;

const best: Omit<Corner, "name"> = {
  weight_pct: 0,
  cgAlong_m: 0,
  cgAcross_m: 0,
  cranes_pct: 0,
  trains_pct: 0,
  mismatch: { crane: "", mm: 0 },
  settlement: { under: "", mm: 0 },
  friction: null,
  wind: 0,
};

/** A number without needless places. */
const short = (value: number): string => String(Number(value.toFixed(3)));
const signed = (value: number): string => `${value > 0 ? "+" : ""}${short(value)}`;

/** A corner with these choices, the rest at best, and its name. */
export function cornerOf(plan: Plan, part: CornerPart): Corner {
  const c = { ...best, ...part };
  const words: string[] = [];
  if (c.weight_pct !== 0) words.push(`weight ${signed(c.weight_pct)} %`);
  if (c.cgAlong_m !== 0)
    words.push(`CG ${short(Math.abs(c.cgAlong_m))} m ${c.cgAlong_m > 0 ? "forward" : "back"}`);
  if (c.cgAcross_m !== 0)
    words.push(`CG ${short(Math.abs(c.cgAcross_m))} m ${c.cgAcross_m > 0 ? "left" : "right"}`);
  if (c.cranes_pct === c.trains_pct) {
    if (c.cranes_pct !== 0) words.push(`stiffness ${signed(c.cranes_pct)} %`);
  } else {
    if (c.cranes_pct !== 0) words.push(`stiffness of cranes ${signed(c.cranes_pct)} %`);
    if (c.trains_pct !== 0) words.push(`stiffness of trains ${signed(c.trains_pct)} %`);
  }
  if (c.mismatch.mm !== 0)
    words.push(`hook of ${hookName(byId(plan.cranes, c.mismatch.crane))} ${short(c.mismatch.mm)} mm high`);
  if (c.settlement.mm !== 0) words.push(`${c.settlement.under} settled ${short(c.settlement.mm)} mm`);
  if (c.friction !== null) words.push(`friction ${short(c.friction)}`);
  if (c.wind !== 0) {
    const part = Math.abs(c.wind) === 1 ? "" : `${short(Math.abs(c.wind) * 100)} % of `;
    words.push(`wind to the ${c.wind > 0 ? "left" : "right"} at ${part}its limit`);
  }
  return { ...c, name: words.length === 0 ? bestName : words.join(", ") };
}

/** Name of the corner in which all is at its best value. */
export const bestName = "best values";
