// A list or a record of the plan as a table that is edited: cells from the draft, errors at their cells, changes as edits.
import type { CellChange, GridCell, GridColumn, GridModel, RowNames, Spot } from "../../../controls/index.ts";
import {
  blankAt,
  confirm,
  type Field,
  fieldOf,
  type Plan,
  type PlanError,
  type PlanPath,
  printPath,
  referenceAt,
  sentence,
  valueAt,
  withInserted,
  withValue,
} from "../../../plan/index.ts";
import type { System } from "../../../units/index.ts";
import { columnsOf, type DataColumn, errorLies, nameAround, nameAt, rowsOf } from "./cells.ts";
import {
  type DataEdit,
  entriesRemoved,
  entryAdded,
  entryMoved,
  labelOf,
  namesOf,
  withAllTyped,
} from "./changes.ts";
import { doubtedOf } from "./doubts.ts";
import { emptyText, fullText, openText, readField, shortText, unitOf } from "./typed.ts";

/** What every form and table of plan data stands on. */
export interface DataGround {
  readonly plan: Plan;
  readonly errors: readonly PlanError[];
  readonly system: System;
  readonly edit: (edit: DataEdit) => void;
  /** Why the value at a place, or what lies in it, is not confirmed; "" where it is. */
  readonly doubt: (path: PlanPath) => string;
  /** Confirms the values at these places; why it could not be done, "" when it was. */
  readonly confirm: (paths: readonly PlanPath[], of: string) => string;
  /** Opens the sheet of a place below. */
  readonly open: (path: PlanPath) => void;
}

/** What a form of its own for a part of the plan is given: the draft with its errors and edits, and the index of the set looked at. */
export interface OwnFormProps {
  readonly ground: DataGround;
  readonly set: number;
}

/** Other words that heads of surveys and data sheets have for a column, by the name of its field. */
const also: Readonly<Record<string, readonly string[]>> = {
  asBuilt_m: [
    "surveyed elevation",
    "as built level",
    "surveyed level",
    "measured elevation",
    "as built",
    "actual",
  ],
  design_m: ["design elevation", "design level", "design", "theoretical level"],
  line: ["bearing line", "axis", "abutment", "end"],
  girder: ["girder line", "beam"],
  chainage_m: ["station", "distance", "chainage"],
  elevation_m: ["level", "height", "elevation"],
  crossfall_pct: ["crossfall", "cross slope"],
  allowablePressure_kPa: ["ground pressure", "allowable"],
  radius_m: ["radius", "working radius"],
  boom_m: ["boom", "boom length", "main boom"],
  rated_t: ["rated load", "capacity", "load", "rating"],
  item: ["part", "description", "element"],
  low: ["low", "lowest", "minimum"],
  best: ["best", "mass", "weight", "estimate"],
  high: ["high", "highest", "maximum"],
  source: ["reference", "document", "from"],
};

/** Lists whose rows are found by name when a survey is pasted, with the fields that name a row; a set where sets share names. */
const namedBy: Readonly<Record<string, { needed: readonly string[]; more: readonly string[] }>> = {
  seats: { needed: ["line", "girder"], more: ["set"] },
  bearings: { needed: ["line", "girder"], more: ["set"] },
};

function rowNamesOf(path: PlanPath, columns: readonly DataColumn[]): RowNames | undefined {
  const named = namedBy[String(path[path.length - 1])];
  if (named === undefined) return undefined;
  const places = (names: readonly string[]) =>
    names.map((name) => columns.findIndex(({ inRow }) => inRow.join() === name)).filter((at) => at >= 0);
  return { needed: places(named.needed), more: places(named.more) };
}

/** The problem that is told at a cell: errors at it, and for cells that hold more, errors inside. */
export function problemAt(errors: readonly PlanError[], path: PlanPath, whole: boolean): string {
  const found = errors.find((error) => {
    const lies = errorLies(error.path, path);
    return lies === "at" || (whole && lies === "in");
  });
  return found === undefined ? "" : sentence(found);
}

/** Choices of a field: its own, yes and no, or the names that it may use. */
export function choicesOf(field: Field, plan: Plan): readonly string[] | null {
  if (field.is === "choice") return field.choices;
  if (field.is === "flag") return ["yes", "no"];
  if (field.is === "text" && field.refers !== null) return namesOf(plan, field.refers, field.path);
  return null;
}

/** Names from which a list of references is ticked; null for other lists, and where the order of the names says something. */
export function namesFor(field: Field, plan: Plan): readonly string[] | null {
  if (field.is !== "list" || field.name === "order") return null;
  const entry = fieldOf([...field.path, 0], plan);
  return entry === null || entry.refers === null ? null : namesOf(plan, entry.refers, field.path);
}

/** A cell of plan data as a table shows it. */
export function gridCell(ground: DataGround, path: PlanPath, field: Field, opens: boolean): GridCell {
  const { plan, errors, system } = ground;
  const value = valueAt(plan, path);
  const here = { ...field, path };
  const names = opens ? null : namesFor(here, plan);
  const choices = opens ? null : (names ?? choicesOf(here, plan));
  const missing = value === undefined || value === null;
  const text = opens
    ? openText(here, plan)
    : missing
      ? emptyText(field, value)
      : shortText(field, value, system);
  return {
    is: opens
      ? "open"
      : field.is === "fixed"
        ? "fixed"
        : names !== null
          ? "names"
          : choices === null
            ? "text"
            : "choice",
    text,
    full: opens ? text : fullText(field, value, system),
    choices: choices === null ? [] : field.optional && names === null ? ["", ...choices] : choices,
    missing,
    number: field.is === "number" || field.is === "whole",
    problem: problemAt(errors, path, opens || field.is === "list"),
    doubt: ground.doubt(path),
    says: field.says,
  };
}

/** What is asked of a table: where it stands, and what one entry is called. */
export interface TableAsked {
  readonly path: PlanPath;
  readonly words: string;
  readonly rowWord: string;
  readonly survey: boolean;
  /** Entries side by side, fields below one another. */
  readonly across: boolean;
  /** Entries are added by other means only, since each must be chosen among several kinds. */
  readonly closed?: boolean;
}

/** Rows of a record are the names it may have, whether it has them or not. */
function rowsFor(path: PlanPath, plan: Plan): PlanPath[] {
  const rows = rowsOf(path, plan);
  const refers = fieldOf(path, plan)?.is === "record" ? (referenceAt([...path, "a name"])?.to ?? null) : null;
  if (refers === null) return rows;
  const known = namesOf(plan, refers, path);
  const kept = rows.map((row) => String(row[row.length - 1]));
  return [...new Set([...known, ...kept])].map((name) => [...path, name]);
}

/** A table of plan data, which also tells where each of its cells is in the plan. */
export interface DataTableModel extends GridModel {
  readonly pathOf: (spot: Spot) => PlanPath;
}

/** The table of a list or a record. */
export function tableOf(ground: DataGround, asked: TableAsked): DataTableModel {
  const { plan, system } = ground;
  const { path, words, rowWord, survey, across, closed = false } = asked;
  const columns = columnsOf(path, plan);
  const rows = rowsFor(path, plan);
  const isRecord = fieldOf(path, plan)?.is === "record";
  const heads = rows.map((row, i) =>
    isRecord ? String(row[row.length - 1]) : nameAt(row, plan) || String(i + 1),
  );
  const turned = ({ row, column }: Spot): Spot => (across ? { row: column, column: row } : { row, column });
  const placed = (spot: Spot): { at: PlanPath; column: DataColumn } => {
    const { row, column } = turned(spot);
    const inPlan = rows[row] ?? [...path, row];
    return { at: [...inPlan, ...columns[column].inRow], column: columns[column] };
  };
  const rowAt = (spot: Spot): PlanPath | null => rows[turned(spot).row] ?? null;
  const cell = (spot: Spot): GridCell => {
    const { at, column } = placed(spot);
    const it = gridCell(ground, at, column.field, column.opens);
    if (turned(spot).column > 0 || it.problem !== "") return it;
    return { ...it, problem: problemAt(ground.errors, rows[turned(spot).row], false) };
  };
  const read = (spot: Spot, text: string) => {
    const { at, column } = placed(spot);
    return readField(
      { ...column.field, path: at, optional: column.field.optional || isRecord },
      plan,
      text,
      system,
    );
  };
  const apply = (draft: Plan, changes: readonly CellChange[]) =>
    withAllTyped(
      draft,
      changes.map(({ spot, value }) => ({ at: placed(spot).at, value })),
    );
  const blank = () => blankAt([...path, 0], plan);
  const named = nameAround([...path, 0], plan);
  const about = `${named === "" ? "" : `${named}: `}${words.toLowerCase()}`;
  const confirmedIn = (changes: readonly CellChange[]) => {
    const { length } = doubtedOf(
      plan,
      changes.map(({ spot }) => placed(spot).at),
    );
    return length === 0 ? "" : `, ${length === changes.length ? "all" : length} of them confirmed`;
  };
  const change = (done: string, changes: readonly CellChange[], grown: number) => {
    const [first] = changes;
    const one = changes.length === 1 && done === "set" && grown === 0;
    const { at, column } = placed(first.spot);
    const label = one
      ? labelOf(plan, { ...column.field, path: at }, column.words, first.value, system)
      : `${about}: ${done}, ${changes.length} cells${confirmedIn(changes)}`;
    ground.edit({
      label,
      change: (draft) => {
        let out = draft;
        const count = rows.length;
        for (let i = 0; i < grown; i++) out = withInserted(out, path, count + i, blank());
        return apply(out, changes);
      },
    });
  };
  const ordered = {
    remove: (index: number, count: number) => ground.edit(entriesRemoved(plan, path, index, count, rowWord)),
    move: (from: number, to: number) => ground.edit(entryMoved(plan, path, from, to, rowWord)),
  };
  const lines = isRecord
    ? {}
    : closed
      ? ordered
      : {
          ...ordered,
          insert: (index: number, count: number) =>
            ground.edit(entryAdded(plan, path, index, count, rowWord)),
          replace: (done: string, changes: readonly CellChange[], count: number) =>
            ground.edit({
              label: `${about}: ${done} in place of all, ${count} ${rowWord}s`,
              change: (draft) => {
                // What was not confirmed in the rows before says nothing of the rows that stand in their place.
                const cleared = confirm(draft, null, [printPath(path)]);
                return apply(withValue(cleared, path, Array.from({ length: count }, blank)), changes);
              },
            }),
        };
  const head = (column: DataColumn): GridColumn => {
    const { field, inRow, words: said } = column;
    const name = String(inRow[inRow.length - 1] ?? "value");
    return {
      key: inRow.join(".") || "value",
      head: said,
      unit: unitOf(field, system),
      says: field.says,
      number: field.is === "number" || field.is === "whole",
      also: also[name] ?? [],
    };
  };
  const shared = {
    label: words,
    cell,
    read,
    change,
    rowWord,
    survey,
    open: (spot: Spot) => ground.open(placed(spot).at),
    confirm: (spots: readonly Spot[]) =>
      ground.confirm(
        spots.map((spot) => placed(spot).at),
        about,
      ),
    entry: {
      word: asked.rowWord,
      doubted: (spot: Spot) => rowAt(spot) !== null && ground.doubt(rowAt(spot) as PlanPath) !== "",
      confirm: (spot: Spot) => {
        const row = rowAt(spot);
        return row === null ? "" : ground.confirm([row], about);
      },
    },
    pathOf: (spot: Spot) => placed(spot).at,
  };
  const rowNames = rowNamesOf(path, columns);
  if (!across)
    return {
      ...shared,
      ...lines,
      ...(rowNames === undefined ? {} : { rowNames }),
      columns: columns.map(head),
      rows: heads,
    };
  const fields = columns.map((column) => {
    const unit = unitOf(column.field, system);
    return unit === "" ? column.words : `${column.words}, ${unit}`;
  });
  const entries = heads.map((one, i) => ({ key: `${i}`, head: one, unit: "", says: "", number: true }));
  return { ...shared, rowWord: "field", survey: false, columns: entries, rows: fields };
}
