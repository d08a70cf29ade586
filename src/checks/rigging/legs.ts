// The legs of a rigging assembly below its hook: how many share what, at which angle, from the plan's geometry.

import { apexAside, type FourLegs, fourLegsOf, wireArea, wireModulus } from "../../mechanics/index.ts";
import { byId, type Crane, type Pick, type Rigging } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";

/** A hook with its rigging on its picks; SI. */
export interface RiggedHook {
  crane: Crane;
  pick: Pick;
  rig: Rigging;
  /** Place in the plan, as `rigging[0]`. */
  path: string;
  /** Weight of the whole assembly, N. */
  weight: number;
  /** Column of the hook's net load among the forces. */
  column: number;
  /** One line to every girder that it holds, from left to right. */
  lines: RiggedLine[];
  /** Angle of the legs above the spreader from the vertical, rad; 0 where there are none. */
  top: number;
  /** Four legs to one hook; null for any other form. */
  four: FourSlings | null;
}

/** What goes down to one girder. */
export interface RiggedLine {
  girder: string;
  y: number;
  column: number;
  /** Cosine of its legs' angle from the vertical. */
  cos: number;
}

/** Four slings to one hook, with what their sharing rests on. */
export interface FourSlings {
  legs: FourLegs;
  /** Either diagonal pair longer by the tolerance, m; null where the rule of the skew factor stands in. */
  errors: [readonly number[], readonly number[]] | null;
}

/** Axial stiffness of one sling, N: as stated, or by its diameter; null where the plan has neither. */
export function slingEA({ legs }: Rigging): number | null {
  if (legs?.EA_kN !== undefined) return legs.EA_kN * 1000;
  if (legs?.diameter_mm !== undefined) return wireModulus * wireArea * (legs.diameter_mm / 1000) ** 2;
  return null;
}

/** Angle of the two legs above a spreader from the vertical, rad; 0 where the plan has none. */
export function topAngle({ topLegs, hookPinHeight_m }: Rigging): number {
  if (topLegs === undefined) return 0;
  if (topLegs.angle_deg !== undefined) return (topLegs.angle_deg * Math.PI) / 180;
  if (topLegs.length_m !== undefined) return Math.asin(topLegs.apart_m / 2 / topLegs.length_m);
  return Math.atan2(topLegs.apart_m / 2, hookPinHeight_m);
}

/** Every hook of a set with its rigging. */
export function riggedHooks(ctx: SetContext): RiggedHook[] {
  const { plan, set } = ctx;
  return set.picks.map((pick) => {
    const crane = byId(plan.cranes, pick.crane);
    const rig = byId(plan.rigging, pick.rigging);
    const held = set.girders
      .filter((g) => pick.girders === undefined || pick.girders.includes(g.line))
      .sort((a, b) => b.y_m - a.y_m);
    const middle = held.reduce((sum, g) => sum + g.y_m / held.length, 0) + hookAside(rig, pick, held);
    const half = (rig.legs?.alongApart_m ?? 0) / 2;
    // Slings to one point stand below its pin; all others hang plumb from spreader or block, but for what parts along.
    const rise = rig.kind === "point" ? rig.hookPinHeight_m : rig.slingLength_m;
    const lines = held.map((g) => {
      const aside = rig.kind === "point" ? g.y_m - middle : 0;
      return {
        girder: g.line,
        y: g.y_m - middle,
        column: ctx.supportIndex.get(`line ${crane.id} ${g.line}`) ?? -1,
        cos: rise > 0 ? rise / Math.hypot(rise, aside, half) : 1,
      };
    });
    return {
      crane,
      pick,
      rig,
      path: `rigging[${plan.rigging.indexOf(rig)}]`,
      weight: rig.mass_t * 1000 * ctx.gravity,
      column: ctx.supportIndex.get(`hoist ${crane.id}`) ?? -1,
      lines,
      top: rig.kind === "spreader" ? topAngle(rig) : 0,
      four: fourOf(rig, lines, half),
    };
  });
}

/** How far to the left of the middle of its picks slings of unequal length put a hook that they meet in, m. */
function hookAside(rig: Rigging, pick: Pick, held: readonly { line: string; y_m: number }[]): number {
  if (rig.kind !== "point" || pick.slingLonger_mm === undefined || held.length < 2) return 0;
  const longer = held.map((g) => (pick.slingLonger_mm?.[g.line] ?? 0) / 1000);
  const mean = longer.reduce((sum, x) => sum + x / longer.length, 0);
  const between = held[0].y_m - held[held.length - 1].y_m;
  const even = Math.hypot(rig.hookPinHeight_m, between / 2) - mean;
  return apexAside(even + longer[0], even + longer[longer.length - 1], between);
}

/** Four slings to one hook: two girders, and two slings on each that part along it. */
function fourOf(rig: Rigging, lines: readonly RiggedLine[], half: number): FourSlings | null {
  if (rig.kind !== "point" || lines.length !== 2 || !(half > 0) || !(rig.hookPinHeight_m > 0)) return null;
  const [left, right] = lines.map((line) => line.y);
  const depth = rig.hookPinHeight_m;
  const EA = slingEA(rig);
  const picks = [
    [half, left, depth],
    [half, right, depth],
    [-half, right, depth],
    [-half, left, depth],
  ] as const;
  // Slings that are alike share alike, whatever their stiffness is.
  const one = EA ?? 1;
  const e = rig.legs?.lengthTolerance_mm;
  return {
    legs: fourLegsOf(picks, [one, one, one, one]),
    errors:
      EA === null || e === undefined
        ? null
        : [
            [e / 1000, 0, e / 1000, 0],
            [0, e / 1000, 0, e / 1000],
          ],
  };
}

/** The line that carries most at a pose: its index, and its force, N. */
export function greatestLine(hook: RiggedHook, forces: Float64Array): { index: number; force: number } {
  let index = 0;
  let force = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < hook.lines.length; i++) {
    const F = forces[hook.lines[i].column] / hook.lines[i].cos;
    if (F > force) [index, force] = [i, F];
  }
  return { index, force: forces[hook.lines[index].column] };
}
