// Tables on their way to and from spreadsheets: text to cells and back, and what the commas in them may mean.

/** What parts the cells of a line. */
export type Separator = "\t" | ";" | ",";

/** Cells of a table as text, row by row; rows may be of different length. */
export type Cells = readonly (readonly string[])[];

/** What a sign in numbers stands for. */
export type CommaMeaning = "decimal" | "thousands";

/** A table as text, as spreadsheets take it: cells parted by tabs, lines ended; quotes where a cell needs them. */
export function serialise(cells: Cells): string {
  const cell = (text: string) => (/["\t\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);
  return cells.map((row) => `${row.map(cell).join("\t")}\n`).join("");
}

/**
 * Cells of a text, by one separator. A cell that begins with a quote reaches to the next single quote, whatever is inside;
 * two quotes in it are one. One line end at the end of the text ends the last line and begins no other.
 */
export function parse(text: string, separator: Separator): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  for (;;) {
    let cell = "";
    if (text[at] === '"') {
      at++;
      for (;;) {
        const end = text.indexOf('"', at);
        if (end < 0) {
          cell += text.slice(at);
          at = text.length;
          break;
        }
        cell += text.slice(at, end);
        at = end + 1;
        if (text[at] !== '"') break;
        cell += '"';
        at++;
      }
    }
    const start = at;
    while (at < text.length && text[at] !== separator && text[at] !== "\n" && text[at] !== "\r") at++;
    row.push(cell + text.slice(start, at));
    if (text[at] === separator) {
      at++;
      continue;
    }
    rows.push(row);
    row = [];
    if (text[at] === "\r" && text[at + 1] === "\n") at++;
    at++;
    if (at >= text.length) return rows;
  }
}

/**
 * The ways in which a pasted text can be a table, likeliest first. With tabs there is one, with semicolons too; commas part
 * cells or stand inside numbers, so that a text with commas alone has two wherever it could be either.
 */
export function tablesIn(text: string): { separator: Separator; cells: string[][] }[] {
  const bare = text.replace(/"(?:[^"]|"")*"/g, "");
  const of = (separator: Separator) => ({ separator, cells: parse(text, separator) });
  if (bare.includes("\t")) return [of("\t")];
  if (bare.includes(";")) return [of(";")];
  if (!bare.includes(",")) return [of("\t")];
  const parted = of(",");
  const widths = new Set(parted.cells.map((row) => row.length));
  // Lines of different length are no table; then the commas stand inside the cells.
  if (widths.size > 1) return [of("\t")];
  const couldBeOne = parse(text, "\t").every(([cell]) => looksLikeNumber(cell) || cell.trim() === "");
  return couldBeOne ? [parted, of("\t")] : [parted];
}

const looksLikeNumber = (cell: string): boolean =>
  /^\s*[-+−]?\d[\d., \u00a0\u202f']*(\s*[^\d\s].{0,8})?\s*$/.test(cell);

/** The number at the head of a cell, without sign and unit; "" for none. */
function numberIn(cell: string): string {
  return /^\s*[-+−]?\s*([\d.,]+)/.exec(cell)?.[1] ?? "";
}

/** What the commas of one number can mean. */
function meaningsOf(number: string): CommaMeaning[] {
  const out: CommaMeaning[] = [];
  if (/^(\d+|\d{1,3}(\.\d{3})*),\d+$/.test(number) || /^,\d+$/.test(number)) out.push("decimal");
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(number)) out.push("thousands");
  return out;
}

/** What the commas in the numbers of a table mean, as far as they tell it themselves. */
export interface CommaQuestion {
  /** `none`: no number has one. `sure`: each can only mean this. `doubtful`: some can mean both, or they disagree. */
  readonly is: "none" | "sure" | "doubtful";
  readonly meaning: CommaMeaning | null;
  /** Some numbers with a comma, to be shown with both readings. */
  readonly examples: readonly string[];
}

/** Looks at every number with a comma; `isNumber` tells the columns whose cells are numbers. */
export function commaQuestion(cells: Cells, isNumber: (column: number) => boolean): CommaQuestion {
  const all: string[] = [];
  let pointed = false;
  for (const row of cells) {
    row.forEach((cell, column) => {
      if (!isNumber(column)) return;
      const number = numberIn(cell);
      if (number.includes(",")) all.push(number);
      else if (/^\d{1,3}(\.\d{3})+$/.test(number)) pointed = true;
    });
  }
  if (all.length === 0) return { is: "none", meaning: null, examples: [] };
  const examples = [...new Set(all)].slice(0, 3);
  const meanings = all.map(meaningsOf);
  const sure = (one: CommaMeaning) => meanings.every((them) => them.length === 1 && them[0] === one);
  if (sure("thousands")) return { is: "sure", meaning: "thousands", examples };
  // A number such as 1.234 beside decimal commas may have a thousands point: that is doubtful too.
  if (sure("decimal") && !pointed) return { is: "sure", meaning: "decimal", examples };
  return { is: "doubtful", meaning: null, examples };
}

/** A cell with its number written with a decimal point, when its commas mean this; "" when it cannot mean this. */
export function withPoint(cell: string, meaning: CommaMeaning): string {
  const number = numberIn(cell);
  if (number === "") return cell;
  const comma = number.includes(",");
  if (comma && !meaningsOf(number).includes(meaning)) return "";
  const plain =
    meaning === "thousands"
      ? number.replace(/,/g, "")
      : comma || /^\d{1,3}(\.\d{3})+$/.test(number)
        ? number.replace(/\./g, "").replace(",", ".")
        : number;
  return cell.replace(number, plain);
}
