// What a form or a table of plan data shows of a group, a list or a record: its cells, and which of them open a sheet of their own.
import {
  type Field,
  fieldOf,
  fieldsIn,
  type Plan,
  type PlanPath,
  printPath,
  valueAt,
} from "../../../plan/index.ts";

/** One cell: a place of the plan, typed here, or opened as a sheet of its own. */
export interface DataCell {
  readonly path: PlanPath;
  readonly field: Field;
  /** What it is called beside others of the same group. */
  readonly words: string;
  readonly opens: boolean;
}

/** Groups that always stand, with at most so many single values, lie flat beside the others. */
const flatUpTo = 4;

const single = (field: Field): boolean => !["list", "record", "group", "either", "pair"].includes(field.is);

/** A list whose entries are single values is typed as one text. */
export function isListOfWords(field: Field, plan: Plan): boolean {
  if (field.is !== "list") return false;
  const entry = fieldOf([...field.path, 0], plan);
  return entry !== null && single(entry);
}

/** The cells of one field. */
function cellsOf(field: Field, plan: Plan, before = ""): DataCell[] {
  const words = before === "" ? field.words : `${before} ${field.words}`;
  const cell = { path: field.path, field, words };
  if (single(field) || isListOfWords(field, plan)) return [{ ...cell, opens: false }];
  const set = valueAt(plan, field.path) !== undefined;
  if ((field.is === "group" || field.is === "pair") && (set || !field.optional)) {
    const inner = fieldsIn(field.path, plan);
    if (inner.length <= flatUpTo && inner.every(single)) {
      // An optional group that is set can be taken away again, in a sheet of its own.
      const taken = field.optional ? [{ ...cell, opens: true }] : [];
      return [...inner.flatMap((one) => cellsOf(one, plan, words)), ...taken];
    }
  }
  return [{ ...cell, opens: true }];
}

/** The cells of a group, an either or a pair, in the order of the format. */
export function cellsIn(path: PlanPath, plan: Plan): DataCell[] {
  return fieldsIn(path, plan).flatMap((field) => cellsOf(field, plan));
}

/** A column of a table: where its cells are inside each row, and what they are. */
export interface DataColumn {
  readonly inRow: PlanPath;
  readonly field: Field;
  readonly words: string;
  readonly opens: boolean;
}

/** Paths of the rows of a list or a record. */
export function rowsOf(path: PlanPath, plan: Plan): PlanPath[] {
  const value = valueAt(plan, path);
  if (Array.isArray(value)) return value.map((_, i) => [...path, i]);
  if (typeof value === "object" && value !== null) return Object.keys(value).map((key) => [...path, key]);
  return [];
}

/** Fields that tell entries of different kinds apart and are common to them come first; the rest opens below. */
const common = [
  "id",
  "do",
  "title",
  "carries",
  "minutes",
  "windLimit_m_per_s",
  "who",
  "channel",
  "brakes",
  "notes",
];

/** The columns of the table of a list or a record. */
export function columnsOf(path: PlanPath, plan: Plan): DataColumn[] {
  const first = [...path, fieldOf(path, plan)?.is === "record" ? "" : 0];
  const entry = fieldOf(first, plan);
  if (entry === null) return [];
  if (single(entry)) return [{ inRow: [], field: entry, words: "value", opens: false }];
  if (entry.is === "either") {
    const shared = common.flatMap((name) => fieldOf([...first, name]) ?? []);
    const columns = shared.map((field) => ({ inRow: [field.name], field, words: field.words, opens: false }));
    return [...columns, { inRow: [], field: entry, words: "all of it", opens: true }];
  }
  // An optional group lies flat only where it is set: what is a column in one row must be one in all.
  const out: DataColumn[] = [];
  for (const field of fieldsIn(first, plan)) {
    const cells = field.optional ? optionalCells(field, plan) : cellsOf(field, plan);
    for (const cell of cells)
      out.push({
        inRow: cell.path.slice(first.length),
        field: cell.field,
        words: cell.words,
        opens: cell.opens,
      });
  }
  return out;
}

function optionalCells(field: Field, plan: Plan): DataCell[] {
  const flat = single(field) || isListOfWords(field, plan);
  return [{ path: field.path, field, words: field.words, opens: !flat }];
}

/** Whether a sheet is a table of entries, or a form of fields. */
export function isTable(path: PlanPath, plan: Plan): boolean {
  const is = fieldOf(path, plan)?.is;
  return is === "list" || is === "record";
}

/** Every cell of a sheet: of all rows of a table, or of a form. */
export function sheetCells(path: PlanPath, plan: Plan): DataCell[] {
  if (!isTable(path, plan)) {
    const field = fieldOf(path, plan);
    if (field === null || valueAt(plan, path) === undefined) return [];
    return cellsIn(path, plan);
  }
  const columns = columnsOf(path, plan);
  return rowsOf(path, plan).flatMap((row) =>
    columns.map((column) => {
      const at = [...row, ...column.inRow];
      return { path: at, field: { ...column.field, path: at }, words: column.words, opens: column.opens };
    }),
  );
}

/** What a thing is called: by its own name, or by what it is for; "" for what has no name. */
export function nameAt(path: PlanPath, plan: Plan): string {
  const value = valueAt(plan, path);
  if (typeof value !== "object" || value === null || Array.isArray(value)) return "";
  const it = value as Record<string, unknown>;
  const words = (key: string) => (typeof it[key] === "string" ? it[key] : "");
  if (words("line") !== "" && words("girder") !== "") return `${words("line")} ${words("girder")}`;
  const keys = [
    "id",
    "name",
    "line",
    "item",
    "crane",
    "transporter",
    "role",
    "mark",
    "what",
    "check",
    "limit",
  ];
  return keys.map(words).find((word) => word !== "") ?? "";
}

/** The name of the innermost thing around a place that has one. */
export function nameAround(path: PlanPath, plan: Plan): string {
  for (let i = path.length - 1; i > 0; i--) {
    const name = nameAt(path.slice(0, i), plan);
    if (name !== "") return name;
  }
  return "";
}

/** Whether `path` is `above` or lies in it. */
export function liesIn(path: PlanPath, above: PlanPath): boolean {
  return above.length <= path.length && above.every((part, i) => part === path[i]);
}

/** A printed path of an error, compared with a place: at it, in it, or elsewhere. */
export function errorLies(printed: string, path: PlanPath): "at" | "in" | "no" {
  const here = printPath(path);
  if (printed === here) return "at";
  return printed.startsWith(`${here}.`) || printed.startsWith(`${here}[`) ? "in" : "no";
}
