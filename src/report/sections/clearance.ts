// The section on clearances: every pair in every step in which it moves, with its least distance, its limit and where.

import type { Clearance, SetResult } from "../../checks/index.ts";
import type { Side } from "../table.ts";
import { atOnce, type Section, type Table } from "./form.ts";
import { sectionTitles } from "./titles.ts";

const metres = (x: number): string => x.toFixed(3).replace(/^-(0\.0*)$/, "$1");

/** Whether a pair is as far apart as in the step before. */
function repeats(c: Clearance, before: Clearance | undefined): boolean {
  return before !== undefined && before.step === c.step - 1 && metres(before.distance) === metres(c.distance);
}

function stepTable(set: SetResult): Table {
  const last = new Map<string, Clearance>();
  const rows: string[][] = [];
  for (const c of set.clearances?.list ?? []) {
    const again = repeats(c, last.get(c.subject));
    last.set(c.subject, c);
    if (again) continue;
    const limit = c.limit === null ? null : c.limit + c.sway;
    rows.push([
      `${c.step + 1} ${set.steps[c.step].step.id}`,
      c.subject,
      metres(c.distance),
      Number(c.progress.toFixed(6)).toString(),
      metres(c.within),
      limit === null ? "not set" : metres(limit),
      limit !== null && c.distance < limit ? metres(limit - c.distance) : "",
    ]);
  }
  return {
    title: "least distances, step by step",
    words: [
      "over the whole motion of a step: between its poses a distance is nowhere less than told by more than the column 'within'",
      "below zero: how deep both overlap; steps in which a pair keeps its distance are left out",
      "booms as wide as stated or 1/26 of their length, tails as whole circles, girders with their webs' recesses filled; no attachments, no boom suspension",
      "the swing of a boom to its first pick is not planned and not in it",
    ],
    head: ["step", "pair", "least m", "at progress", "within m", "limit m", "short by m"],
    sides: ["left", "left", "right", "right", "right", "right", "right"] satisfies Side[],
    rows,
  };
}

export const clearanceSection: Section = {
  name: "clearance",
  title: sectionTitles.clearance,
  begin: atOnce((_ctx, set) => [stepTable(set)]),
};
