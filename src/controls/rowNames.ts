// Pasted rows matched with the rows of a table by the columns that name a row, such as bearing line and girder.
import type { Cells } from "./clipboard.ts";
import type { GridModel } from "./gridModel.ts";

/** A pasted row that no row of the table was found for, and why, as a sentence. */
export interface RowNotFound {
  readonly row: number;
  readonly problem: string;
  /** It names what the table has no row of, so that it can be added; a row named twice cannot. */
  readonly isNew: boolean;
}

/** For each pasted row the row of the table, null where there is none. */
export interface RowsFound {
  readonly rows: readonly (number | null)[];
  readonly not: readonly RowNotFound[];
}

const bare = (text: string): string => text.trim().toLowerCase();

/**
 * Which row of the table each pasted row names; null when a needed column is not pasted, so that rows go by their place.
 * A blank in a column of `more`, pasted or in the table, agrees with everything there; equal names go before blanks.
 */
export function rowsByNames(
  model: GridModel,
  cells: Cells,
  columnOf: (j: number) => number | null,
): RowsFound | null {
  const names = model.rowNames;
  if (names === undefined) return null;
  const width = Math.max(0, ...cells.map((row) => row.length));
  const pastedAt = new Map<number, number>();
  for (let j = 0; j < width; j++) {
    const column = columnOf(j);
    if (column !== null) pastedAt.set(column, j);
  }
  if (!names.needed.every((column) => pastedAt.has(column))) return null;
  const more = names.more.filter((column) => pastedAt.has(column));
  const inTable = (row: number, column: number) => bare(model.cell({ row, column }).full);
  const pasted = (cellsOfRow: readonly string[], column: number) =>
    bare(cellsOfRow[pastedAt.get(column) ?? -1] ?? "");
  const all = model.rows.map((_, row) => row);
  const not: RowNotFound[] = [];
  const rows = cells.map((line, i): number | null => {
    const said = [...names.needed, ...more].map((column) => (line[pastedAt.get(column) ?? -1] ?? "").trim());
    const name = said.filter((one) => one !== "").join(" ");
    const alike = all.filter((row) => names.needed.every((c) => inTable(row, c) === pasted(line, c)));
    const agree = alike.filter((row) =>
      more.every((c) => {
        const [mine, theirs] = [pasted(line, c), inTable(row, c)];
        return mine === "" || theirs === "" || mine === theirs;
      }),
    );
    const equal = agree.filter((row) => more.every((c) => inTable(row, c) === pasted(line, c)));
    const found = equal.length > 0 ? equal : agree;
    if (found.length === 1) return found[0];
    const words = names.more.map((column) => model.columns[column].head).join(" or ");
    not.push(
      found.length === 0
        ? { row: i, problem: `there is no ${model.rowWord} "${name}"`, isNew: true }
        : {
            row: i,
            problem: `${found.length} ${model.rowWord}s are called "${name}"; ${words === "" ? "they cannot be told apart" : `add a column that tells the ${words}`}`,
            isNew: false,
          },
    );
    return null;
  });
  // Two pasted rows for one row of the table: none of them is taken, since either may be the wrong one.
  const count = new Map<number, number>();
  for (const row of rows) if (row !== null) count.set(row, (count.get(row) ?? 0) + 1);
  const once = rows.map((row, i) => {
    if (row === null || count.get(row) === 1) return row;
    not.push({
      row: i,
      problem: `${model.rowWord} "${model.rows[row]}" is pasted more than once`,
      isNew: false,
    });
    return null;
  });
  return { rows: once, not: not.sort((a, b) => a.row - b.row) };
}
