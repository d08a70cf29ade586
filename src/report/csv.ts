// The reactions of a whole result as one CSV file: a row for every set, step, stored pose and support.

import type { Result } from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";
import { poseAt, prepareContext, type SetContext } from "../sequence/index.ts";
import { type Column, columnsOf, type Row, rowsOf } from "./columns.ts";
import { fixed, harmless, row } from "./csvText.ts";

/** Prepared sets by id, as `contextsOf` makes them. */
export type Contexts = ReadonlyMap<string, SetContext>;

/** Prepares every set of a result (some ten ms each), for all that solves poses anew. */
export function contextsOf(result: Result, plan: Plan): Contexts {
  return new Map(result.sets.map((set) => [set.setId, prepareContext(plan, set.setId)]));
}

/**
 * All reactions after RFC 4180: UTF-8 text, one header row, rows of one width, CRLF. The poses are those that the
 * result stored: start and end of each step, its events, and as many between as the run needed. Text typed by a user
 * is made harmless; a number not known is blank. Steps that were not solved have no rows. With `withSpread`, low and high
 * of every share stand behind it.
 */
export function reactionsCsv(
  result: Result,
  plan: Plan,
  contexts: Contexts = contextsOf(result, plan),
  withSpread = false,
): string {
  const columns = columnsOf(withSpread);
  const parts = [row(columns.map((column) => column.name))];
  for (const one of rowsOfAll(result, plan, contexts)) {
    parts.push(row(columns.map((column) => cellOf(column, one))));
  }
  return parts.join("");
}

/** The rows of every stored pose of every set, in order. */
export function* rowsOfAll(result: Result, plan: Plan, contexts: Contexts): Generator<Row> {
  for (const set of result.sets) {
    const ctx = contexts.get(set.setId);
    if (ctx === undefined) throw new Error(`rowsOfAll: found no prepared set "${set.setId}"; use contextsOf`);
    for (let p = 0; p < set.count; p++) {
      yield* rowsOf(result, plan, set, poseAt(ctx, set.steps[set.step[p]], set.progress[p]), p);
    }
  }
}

/** One cell as text: numbers with the column's digits, user text made harmless, blank for what is not known. */
export function cellOf(column: Column, of: Row): string {
  const value = column.value(of);
  if (value === null) return "";
  if (typeof value === "string") return column.kind === "user text" ? harmless(value) : value;
  if (!Number.isFinite(value)) return "";
  return column.digits === null ? String(value) : fixed(value, column.digits);
}
