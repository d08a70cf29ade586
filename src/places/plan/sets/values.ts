// Values of sets in words: with their unit as the user wants it, lists in brackets, nothing as a dash.
import { fieldOf, type PlanPath, readPlace } from "../../../plan/index.ts";
import { printFull, type System, signOf, unitFor } from "../../../units/index.ts";

/** A value that stands at a place of a set. */
export function valueWords(value: unknown, place: string, system: System): string {
  if (value === undefined) return "–";
  if (value === null) return "not known";
  if (typeof value === "string") return value === "" ? "blank" : value;
  if (typeof value === "boolean") return value ? "yes" : "no";
  const field = fieldAt(place);
  if (typeof value === "number") {
    if (field === null || field.unit === null || field.shown === null) return String(value);
    const number = printFull(value, field.unit, unitFor(field.shown, system));
    return `${Number(Number(number).toPrecision(7))} ${signOf(field.shown, system)}`;
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return "none";
    return value.map((one) => (Array.isArray(one) ? `(${one.join("; ")})` : String(one))).join(", ");
  }
  const { low, best, high } = value as Record<string, unknown>;
  if (low !== undefined) return `${String(low)} to ${String(high)}, best ${String(best)}`;
  return JSON.stringify(value);
}

/** What stands at a place of a set by the format; null for places that are no path. */
function fieldAt(place: string) {
  const path: PlanPath | null = readPlace(place);
  return path === null ? null : fieldOf(["sets", 0, ...path]);
}

/** The name of a value in words, for the first column. */
export function placeWords(place: string): string {
  return fieldAt(place)?.words ?? place;
}
