// Numbers that are kept in one unit and typed in another: printed in full for typing, and read back to the unit they are kept in.
import { fromSI, toSI, type UnitName, units } from "./factors.ts";
import { read } from "./read.ts";

/** What was typed, in the unit in which it is kept; or the sentence that says why it was not understood. */
export type Typed =
  | { readonly ok: true; readonly value: number; readonly unit: UnitName }
  | { readonly ok: false; readonly problem: string };

/** Significant digits that a number keeps on its way through SI and back: two roundings cost less than half of the 15th. */
const kept = 15;

/** A number without the dust of the last bit: 12.199999999999999 is 12.2. */
function swept(value: number): number {
  return Number(value.toPrecision(kept));
}

/**
 * A number in full, to be typed over: without unit, without thousands signs, with a decimal point.
 * @param value in `keptIn`
 * @param shownIn the unit beside the field; of the same kind, or a mass for its weight and the other way round is refused
 * @throws {RangeError} when the two units measure different things
 */
export function printFull(value: number, keptIn: UnitName, shownIn: UnitName): string {
  if (units[keptIn].kind !== units[shownIn].kind) {
    throw new RangeError(
      `printFull: '${keptIn}' measures ${units[keptIn].kind} and '${shownIn}' measures ${units[shownIn].kind}: they cannot be shown in each other. Choose a unit of ${units[keptIn].kind}.`,
    );
  }
  const number = keptIn === shownIn ? value : swept(fromSI(toSI(value, keptIn), shownIn));
  return String(Object.is(number, -0) ? 0 : number);
}

/**
 * Reads a typed number as `read` does, into the unit in which it is kept.
 * @param shownIn the unit of a number typed without one
 */
export function readTyped(text: string, keptIn: UnitName, shownIn: UnitName): Typed {
  const reading = read(text, units[keptIn].kind, shownIn);
  if (!reading.ok) return reading;
  return { ok: true, value: swept(fromSI(reading.value, keptIn)), unit: reading.unit };
}
