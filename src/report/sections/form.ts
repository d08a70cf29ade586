// A section: tables about one matter of a solved set, worked out only when somebody asks for them. The command line prints
// them (`solve --also NAME`), the page shows them.

import type { Finding, SetResult } from "../../checks/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import type { Side } from "../table.ts";

/** A table with its words: numbers as text, with the unit in the head of their column. */
export interface Table {
  title: string;
  /** What must be known to read it, a sentence each. */
  words: string[];
  head: string[];
  sides: Side[];
  /** One cell for every column; '' where there is nothing. */
  rows: string[][];
}

/** A section under way, piece by piece, so that whoever runs it can look up between them and end it. */
export interface Work {
  done: () => number;
  of: number;
  /** Does the next piece; false when there was none left. */
  next: () => boolean;
  /** What the pieces done so far bring. */
  tables: () => Table[];
  /** What they found beyond the findings of the run. */
  findings: () => Finding[];
}

export interface Section {
  /** By which it is asked for: a small letter word. */
  name: string;
  /** What it tells, for a list to choose from. */
  title: string;
  begin: (ctx: SetContext, set: SetResult) => Work;
}

/** A section that is worked out at once. */
export function atOnce(tables: (ctx: SetContext, set: SetResult) => Table[]): Section["begin"] {
  return (ctx, set) => {
    let made: Table[] | null = null;
    return {
      done: () => (made === null ? 0 : 1),
      of: 1,
      next: () => {
        if (made !== null) return false;
        made = tables(ctx, set);
        return true;
      },
      tables: () => made ?? [],
      findings: () => [],
    };
  };
}
