// Moves in words: labels of the history, and what a screen reader is told of a thing's place.
import { fromSI, type System, signOf, unitFor } from "../../units/index.ts";
import type { Movable, Standing } from "./movable.ts";

/** A length with as many decimals as it has, one at least and three at most: "2.0 m", "12.25 m". */
export function lengthWords(value: number, system: System): string {
  const shown = fromSI(value, unitFor("length", system));
  const digits = [1, 2, 3].find((n) => Math.abs(Number(shown.toFixed(n)) - shown) < 5e-5) ?? 3;
  const number = shown.toFixed(digits);
  return `${/^-[0.]+$/.test(number) ? number.slice(1) : number} ${signOf("length", system)}`;
}

function wayWords(by: number, [more, less]: readonly [string, string], system: System): string {
  return by === 0 ? "" : `${lengthWords(Math.abs(by), system)} ${by > 0 ? more : less}`;
}

/** Differences below this are none, m. */
const least = 5e-6;

const difference = (a: number, b: number): number => (Math.abs(a - b) < least ? 0 : a - b);

/** A move, as the history calls it: "far-crane moved 2.0 m forward, to 279.0 m". */
export function movedWords(thing: Movable, from: Standing, to: Standing, system: System): string {
  const along = difference(to.along, from.along);
  const across = difference(to.across ?? 0, from.across ?? 0);
  const ways = [
    wayWords(along, ["forward", "back"], system),
    wayWords(across, ["to the left", "to the right"], system),
  ].filter((words) => words !== "");
  const places = [
    along === 0 ? "" : lengthWords(to.along, system),
    across === 0 ? "" : `y ${lengthWords(to.across ?? 0, system)}`,
  ].filter((words) => words !== "");
  if (ways.length === 0) return `${thing.name} left where it was`;
  return `${thing.name} moved ${ways.join(" and ")}, to ${places.join(", ")}`;
}

/** Where a thing stands: "Chainage 277.0 m, y 12.5 m". */
export function standingWords(thing: Movable, { along, across }: Standing, system: System): string {
  const y = across === null ? "" : `, y ${lengthWords(across, system)}`;
  return `${thing.alongWords} ${lengthWords(along, system)}${y}`;
}
