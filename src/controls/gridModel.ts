// What a table is made of, as the Grid shows and edits it: columns, rows, cells, and what to do when they change.
import type { Cells } from "./clipboard.ts";
import type { Spot } from "./gridMoves.ts";

/** A column with what stands in its head. */
export interface GridColumn {
  readonly key: string;
  readonly head: string;
  /** Sign of the unit in which numbers of this column are shown; "" for none. */
  readonly unit: string;
  readonly says: string;
  /** Its cells are numbers, so that commas in them are asked about. */
  readonly number: boolean;
  /** Other words by which a pasted head may name it. */
  readonly also?: readonly string[];
}

/** How a cell is edited: typed, chosen, several names ticked, opened as a form of its own, or not at all. */
export type CellIs = "text" | "choice" | "names" | "open" | "fixed";

/** A cell as it is shown. */
export interface GridCell {
  readonly is: CellIs;
  /** What is shown. */
  readonly text: string;
  /** What is typed over and copied; a number in full. */
  readonly full: string;
  readonly choices: readonly string[];
  /** Nothing is set here; `text` says what that means. */
  readonly missing: boolean;
  readonly number: boolean;
  /** What is wrong with it, as a sentence; "" for nothing. */
  readonly problem: string;
  /** Why its value is not confirmed yet, as a sentence; "" where it is. */
  readonly doubt: string;
  readonly says: string;
}

/** What a typed text is: a value (undefined: nothing set), or the sentence that says why it is refused. */
export type CellRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problem: string };

/** Where the cursor goes after a cell was taken. */
export type After = "stay" | "down" | "next" | "before";

export interface CellChange {
  readonly spot: Spot;
  readonly value: unknown;
}

/** Columns that name a row together: all of `needed` must be pasted, those of `more` tell apart what is still alike. */
export interface RowNames {
  readonly needed: readonly number[];
  readonly more: readonly number[];
}

/** A table. Every call of `change`, `insert` and `remove` is one entry of history. */
export interface GridModel {
  readonly label: string;
  readonly columns: readonly GridColumn[];
  /** Heads of the rows. */
  readonly rows: readonly string[];
  cell(spot: Spot): GridCell;
  /** Reads a text for a cell; the row may lie beyond the last, where a paste adds rows. */
  read(spot: Spot, text: string): CellRead;
  /** `words` says what was done, such as "paste"; `grown` rows are added at the end first. */
  change(words: string, changes: readonly CellChange[], grown: number): void;
  /** Instead of all rows there are these many new ones, with these changes in them. */
  replace?(words: string, changes: readonly CellChange[], rows: number): void;
  insert?(index: number, count: number): void;
  remove?(index: number, count: number): void;
  move?(from: number, to: number): void;
  open?(spot: Spot): void;
  /** Says that the values of these cells are right as they stand; why it could not be done, "" when it was. */
  confirm?(spots: readonly Spot[]): string;
  /** The entry of the plan that a cell belongs to: what such a one is called, and confirming all of it as one. */
  readonly entry?: {
    readonly word: string;
    doubted(spot: Spot): boolean;
    confirm(spot: Spot): string;
  };
  /** What one row is called: "seat". */
  readonly rowWord: string;
  /** Pasted rows are matched by their heads and shown before they are taken. */
  readonly survey: boolean;
  /** The columns that name a row, where pasted rows go to the rows of these names, in whatever order they come. */
  readonly rowNames?: RowNames;
}

/** Where each pasted column goes, and the unit that its head names. */
export interface HeadMatch {
  readonly column: number | null;
  readonly unit: string;
}

const wordsOf = (text: string): string[] =>
  text
    .replace(/([A-Za-z])_[A-Za-z0-9]+$/, "$1")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");

/** The unit in a head: in brackets, behind a comma or an underscore; "" for none. */
export function unitInHead(head: string): string {
  const found =
    /[([]\s*([^)\]]+?)\s*[)\]]\s*$/.exec(head) ??
    /,\s*([^,\s]+)\s*$/.exec(head) ??
    /_([A-Za-z]\w*)$/.exec(head);
  return found?.[1] ?? "";
}

/** How well a head names a column: the part of its words that the column has, weighed with the part it covers. */
function likeness(head: string, column: GridColumn): number {
  const bare = head.replace(/[([][^)\]]*[)\]]/g, " ").replace(/,\s*[^,\s]+\s*$/, "");
  const given = wordsOf(bare);
  if (given.length === 0) return 0;
  const names = [column.head, column.key, ...(column.also ?? [])];
  return Math.max(
    ...names.map((name) => {
      const known = wordsOf(name);
      if (known.length === 0) return 0;
      const shared = given.filter((word) => known.includes(word)).length;
      return (2 * shared) / (given.length + known.length);
    }),
  );
}

/** A head is taken for a column from this likeness on: half of the words of both agree. */
const alike = 0.5;

/**
 * Which column each head of a pasted table names, best match first, each column once; null when the first row is no row of
 * heads: it has a number in it, or names no column.
 */
export function matchHeads(first: readonly string[], columns: readonly GridColumn[]): HeadMatch[] | null {
  if (first.some((cell) => /^\s*[-+−]?[\d.,]+\s*\S{0,6}\s*$/.test(cell) && /\d/.test(cell))) return null;
  const pairs = first
    .flatMap((head, i) => columns.map((column, j) => ({ i, j, score: likeness(head, column) })))
    .filter((pair) => pair.score >= alike)
    .sort((a, b) => b.score - a.score);
  const out: HeadMatch[] = first.map((head) => ({ column: null, unit: unitInHead(head) }));
  for (const { i, j } of pairs) {
    if (out[i].column !== null || out.some((one) => one.column === j)) continue;
    out[i] = { column: j, unit: out[i].unit };
  }
  return out.some((one) => one.column !== null) ? out : null;
}

/** A cell that could not be taken, by its place in what was pasted. */
export interface Refused {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly problem: string;
}

/** Cells read for their places; all of them or, with `refused`, none. */
export function readCells(
  model: GridModel,
  cells: Cells,
  spotOf: (row: number, column: number) => Spot | null,
  unitOf: (column: number) => string = () => "",
): { changes: CellChange[]; refused: Refused[] } {
  const changes: CellChange[] = [];
  const refused: Refused[] = [];
  cells.forEach((row, i) => {
    row.forEach((text, j) => {
      const spot = spotOf(i, j);
      if (spot === null) return;
      const unit = unitOf(j);
      const bare = /^\s*[-+−]?[\d.\s/]+$/.test(text) && /\d/.test(text);
      const got = model.read(
        spot,
        unit !== "" && bare && model.columns[spot.column].number ? `${text} ${unit}` : text,
      );
      if (got.ok) changes.push({ spot, value: got.value });
      else refused.push({ row: i, column: j, text, problem: got.problem });
    });
  });
  return { changes, refused };
}
