// Rows of a prepared set: the displacement of any point as a linear form on the unknowns, and the flexibility between
// two of them. A row is made when first asked for; supports need no node.

import { bandedSolve } from "../numeric/index.ts";
import { displacementRow } from "./frame.ts";
import type { Element, SetModel, SetRow } from "./setModel.ts";

/** Element of a girder that holds station x, and x inside it; throws a RangeError off the girder. */
export function locate(model: SetModel, girder: number, x: number): { e: Element; xi: number } {
  const g = model.girders[girder];
  if (!(x >= g.from - 1e-9 && x <= g.to + 1e-9))
    throw new RangeError(
      `station ${x} m lies off girder ${g.name}; ${g.from} to ${g.to} m is allowed: move the support on to the girder`,
    );
  let low = 0;
  let high = g.elements.length - 1;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (g.elements[mid].from <= x) low = mid;
    else high = mid - 1;
  }
  const e = g.elements[low];
  return { e, xi: Math.min(1, Math.max(0, (x - e.from) / e.length)) };
}

/** What a row measures: the vertical displacement, the twist, or the slope rotation of a girder's axis at a station. */
export type RowKind = "w" | "x" | "y";

/** The row of a point of a girder, made when first asked for. Throws a RangeError off the girder. */
export function rowAt(model: SetModel, girder: number, station: number, kind: RowKind): SetRow {
  const key = `${girder}${kind}${station}`;
  const known = model.rowIndex.get(key);
  if (known) return known;
  const { e, xi } = locate(model, girder, station);
  const w1 = 3 * e.node1;
  const w2 = 3 * e.node2;
  if (kind === "w") return addRow(model, key, [w1, w1 + 2, w2, w2 + 2], displacementRow(xi, e.length, e.phi));
  const turn = kind === "x" ? 1 : 2;
  return addRow(model, key, [w1 + turn, w2 + turn], [1 - xi, xi]);
}

/** Registers a linear form on the unknowns of the set under a name. */
export function addRow(model: SetModel, key: string, dofs: number[], coefficients: number[]): SetRow {
  const form = (field: Float64Array) => {
    let s = 0;
    for (let i = 0; i < dofs.length; i++) s += coefficients[i] * field[dofs[i]];
    return s;
  };
  const row: SetRow = {
    index: model.rows.length,
    key,
    dofs,
    coefficients,
    modes: Float64Array.from(model.modes, form),
    sag: Float64Array.from(model.sagFields, form),
    column: null,
    flexibility: new Float64Array(16).fill(Number.NaN),
  };
  model.rows.push(row);
  model.rowIndex.set(key, row);
  return row;
}

/** Value of a row in a displacement field of the set. */
export function rowValue(row: SetRow, field: Float64Array): number {
  let s = 0;
  for (let i = 0; i < row.dofs.length; i++) s += row.coefficients[i] * field[row.dofs[i]];
  return s;
}

/** Displacement field of the held set under a unit force on a row. */
export function columnOf(model: SetModel, row: SetRow): Float64Array {
  if (row.column) return row.column;
  const field = new Float64Array(model.factor.n);
  for (let i = 0; i < row.dofs.length; i++) field[row.dofs[i]] += row.coefficients[i];
  bandedSolve(model.factor, field);
  row.column = field;
  return field;
}

/** Displacement at row `a` per unit force at row `b`; the order of asking never changes its bits. */
export function flexibility(model: SetModel, a: SetRow, b: SetRow): number {
  if (b.index < a.flexibility.length) {
    const known = a.flexibility[b.index];
    if (!Number.isNaN(known)) return known;
  }
  const swap = a.key > b.key;
  const value = swap ? rowValue(b, columnOf(model, a)) : rowValue(a, columnOf(model, b));
  remember(a, b.index, value);
  remember(b, a.index, value);
  return value;
}

function remember(row: SetRow, index: number, value: number): void {
  if (index >= row.flexibility.length) {
    const wider = new Float64Array(Math.max(index + 1, row.flexibility.length * 2)).fill(Number.NaN);
    wider.set(row.flexibility);
    row.flexibility = wider;
  }
  row.flexibility[index] = value;
}
