// One table of a section as lines for a terminal.

import { oneLine, tableLines } from "../table.ts";
import type { Table } from "./form.ts";

/** A table with its title and words. */
export function linesOfTable({ title, words, head, rows, sides }: Table): string[] {
  const body =
    rows.length === 0
      ? ["nothing to show"]
      : tableLines(
          head,
          rows.map((row) => row.map(oneLine)),
          sides,
        );
  return [title, ...words.map((w) => `  ${oneLine(w)}`), ...body];
}
