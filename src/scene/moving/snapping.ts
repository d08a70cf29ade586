// Snapping: where a dragged or nudged thing comes to stand. Marks take it in from near by; else it keeps to a grid.
import { fromSI, type System, toSI, type UnitName, unitFor } from "../../units/index.ts";
import { type Mark, rounded } from "./movable.ts";

/** Keys that are held: Shift for the coarse grid, Alt for none. */
export interface Held {
  shiftKey: boolean;
  altKey: boolean;
}

/** How near (px) a thing must come to a mark to be taken in by it. */
const reach_px = 7;

/** Fine and coarse grid in the unit in which lengths are shown. */
const grids: Readonly<Record<string, readonly [fine: number, coarse: number]>> = {
  m: [0.1, 0.5],
  ft: [0.25, 1],
};

/** The grid that holds now, in the unit of lengths; 0 for none. */
export function gridOf(system: System, { shiftKey, altKey }: Held): { step: number; unit: UnitName } {
  const unit = unitFor("length", system);
  const [fine, coarse] = grids[unit] ?? grids.m;
  return { step: altKey ? 0 : shiftKey ? coarse : fine, unit };
}

/** How near to a mark something is taken in at this scale, m. */
export const reachAt = (pixelsPerMetre: number): number =>
  pixelsPerMetre > 0 ? reach_px / pixelsPerMetre : 0;

/**
 * Snaps a number of the plan (m).
 * @param marks places that take it in when it comes within `reach` (m); the nearest one does
 * @returns the place, and the mark that took it in or null
 */
export function snapped(
  value: number,
  system: System,
  held: Held,
  marks: readonly Mark[] = [],
  reach = 0,
): { value: number; mark: Mark | null } {
  const { step, unit } = gridOf(system, held);
  if (step === 0) return { value: rounded(value), mark: null };
  let mark: Mark | null = null;
  for (const one of marks) {
    const away = Math.abs(one.at - value);
    if (away <= reach && (mark === null || away < Math.abs(mark.at - value))) mark = one;
  }
  if (mark !== null) return { value: swept(mark.at), mark };
  return { value: swept(toSI(Math.round(fromSI(value, unit) / step) * step, unit)), mark: null };
}

/** A number that was nudged by one step of the grid; with Alt by a tenth of the fine one. */
export function nudged(value: number, by: 1 | -1, system: System, held: Held): number {
  const { step, unit } = gridOf(system, held);
  const [fine] = grids[unit] ?? grids.m;
  return swept(value + by * toSI(step === 0 ? fine / 10 : step, unit));
}

/** Without the dust that adding and rounding leave in the last digits: to the hundredth of a millimetre. */
function swept(value: number): number {
  return Number(value.toFixed(5)) + 0;
}
