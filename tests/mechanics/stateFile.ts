// The example of DEVELOPERS.md as tests use it: its text, and copies of it with some places changed.

import { readFileSync } from "node:fs";
import { readState, type StateError } from "../../src/mechanics/index.ts";

const guide = readFileSync(new URL("../../DEVELOPERS.md", import.meta.url), "utf8");
const section = guide.slice(guide.indexOf("## The state file"));

/** The JSON block of the section "The state file". */
export const example = section.slice(section.indexOf("```json") + 8, section.indexOf("```\n"));

/** Put at a place, it takes the field out. */
export const nothing = Symbol("nothing");

/** The text of the example with values put at places such as `trains/0/lines`. */
export function changed(places: Readonly<Record<string, unknown>>): string {
  const data: unknown = JSON.parse(example);
  for (const [place, value] of Object.entries(places)) {
    const path = place.split("/");
    const last = path.pop() as string;
    let at = data;
    for (const part of path) at = (at as Record<string, unknown>)[part];
    if (typeof at !== "object" || at === null) throw new Error(`the example has no place ${place}`);
    const holder = at as Record<string, unknown>;
    if (value === nothing) delete holder[last];
    else holder[last] = value;
  }
  return JSON.stringify(data);
}

/** The errors of the example with these places changed; none when it still reads. */
export function errorsAfter(places: Readonly<Record<string, unknown>>): StateError[] {
  const result = readState(changed(places));
  return result.ok ? [] : result.errors;
}
