// Rows of a prepared set: the displacement of any point as a linear form on the unknowns, and the flexibility between
// two of them. A row is made when first asked for; supports need no node.

import { bandedSolve } from "../numeric/index.ts";
import { displacementRow, innerFlexibility, innerSag } from "./frame.ts";
import type { Element, Pairs, SetModel, SetRow } from "./setModel.ts";

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

/** Rows remembered per girder and kind: as many as one pose has. A row made anew has the same bits. */
const MOST_ROWS = 24;

/** The row of a point of a girder, made when first asked for. Throws a RangeError off the girder. */
export function rowAt(model: SetModel, girder: number, station: number, kind: RowKind): SetRow {
  const known = model.rows[3 * girder + (kind === "w" ? 0 : kind === "x" ? 1 : 2)];
  const { list } = known;
  for (let i = 0; i < list.length; i++) if (list[i].station === station) return list[i];
  const { e, xi } = locate(model, girder, station);
  const row = kind === "w" ? displacementAt(model, e, xi) : turnAt(model, e, xi, kind === "x" ? 1 : 2);
  row.station = station;
  list[known.next] = row;
  known.next = (known.next + 1) % MOST_ROWS;
  return row;
}

/** The displacement of a point inside an element: what its ends do, and what loads between them add. */
function displacementAt(model: SetModel, e: Element, xi: number): SetRow {
  const w1 = 3 * e.node1;
  const w2 = 3 * e.node2;
  const { length, phi } = e;
  const row = makeRow(model, [w1, w1 + 2, w2, w2 + 2], displacementRow(xi, length, phi));
  const inside = xi * length;
  row.element = e;
  row.inside = inside;
  let own = e.massPerMetre * innerSag(e, length, inside);
  const { masses } = e;
  for (let i = 0; i < masses.length; i++)
    own += masses[i][1] * innerFlexibility(e, length, phi, inside, masses[i][0]);
  row.sag[0] -= own;
  return row;
}

/** A turn of a point inside an element, about x (1) or y (2): linear between its ends. */
function turnAt(model: SetModel, e: Element, xi: number, about: 1 | 2): SetRow {
  return makeRow(model, [3 * e.node1 + about, 3 * e.node2 + about], [1 - xi, xi]);
}

/** A linear form on the unknowns of the set. */
export function makeRow(model: SetModel, dofs: number[], coefficients: number[]): SetRow {
  const { modes, sagFields } = model;
  const row: SetRow = {
    dofs,
    coefficients,
    element: null,
    inside: 0,
    station: Number.NaN,
    modes: [],
    sag: [],
    field: null,
    place: -1,
  };
  // Written out for the common three: a grown array has room for many more.
  row.modes =
    modes.length === 3
      ? [rowValue(row, modes[0]), rowValue(row, modes[1]), rowValue(row, modes[2])]
      : modes.map((field) => rowValue(row, field));
  row.sag = [rowValue(row, sagFields[0]), rowValue(row, sagFields[1]), rowValue(row, sagFields[2])];
  return row;
}

/** Value of a row in a displacement field of the set. */
export function rowValue(row: SetRow, field: Float64Array): number {
  const { dofs, coefficients } = row;
  let s = 0;
  for (let i = 0; i < dofs.length; i++) s += coefficients[i] * field[dofs[i]];
  return s;
}

function columnOf(model: SetModel, dof: number): Float64Array {
  const known = model.columns[dof];
  if (known !== null) return known;
  const field = new Float64Array(model.factor.n);
  field[dof] = 1;
  bandedSolve(model.factor, field);
  model.columns[dof] = field;
  return field;
}

/** A row over more unknowns than a point touches: its own displacement field is made, and no column of its unknowns. */
const LONG_ROW = 4;

/** Rows between which flexibilities are remembered: those of two or three poses. */
const MOST_PLACES = 64;

/** The memory of a set that was asked for nothing yet. */
export function noPairs(): Pairs {
  return { rows: [], values: new Float64Array(MOST_PLACES * MOST_PLACES).fill(Number.NaN) };
}

/** Displacement at row `a` per unit force at row `b`; neither their order nor what was asked before changes its bits. */
export function flexibility(model: SetModel, a: SetRow, b: SetRow): number {
  if (a.dofs.length > LONG_ROW) return rowValue(b, fieldOf(model, a));
  if (b.dofs.length > LONG_ROW) return rowValue(a, fieldOf(model, b));
  if (a.place < 0 || b.place < 0) remember(model.pairs, a, b);
  const { values } = model.pairs;
  const at = a.place > b.place ? a.place * MOST_PLACES + b.place : b.place * MOST_PLACES + a.place;
  const known = values[at];
  if (!Number.isNaN(known)) return known;
  const value = comesAfter(a, b) ? ordered(model, b, a) : ordered(model, a, b);
  values[at] = value;
  return value;
}

/** Gives both rows their places; when there is no room all others are forgotten. */
function remember({ rows, values }: Pairs, a: SetRow, b: SetRow): void {
  if (rows.length + 2 > MOST_PLACES) {
    for (const row of rows) row.place = -1;
    rows.length = 0;
    values.fill(Number.NaN);
  }
  if (a.place < 0) a.place = rows.push(a) - 1;
  if (b.place < 0) b.place = rows.push(b) - 1;
}

/** Displacement of the held set under a unit force on a row, solved for once. */
function fieldOf(model: SetModel, row: SetRow): Float64Array {
  if (row.field !== null) return row.field;
  const field = new Float64Array(model.factor.n);
  for (let i = 0; i < row.dofs.length; i++) field[row.dofs[i]] += row.coefficients[i];
  bandedSolve(model.factor, field);
  row.field = field;
  return field;
}

/** The entry for unknowns p < q is always read from the column of p. */
function ordered(model: SetModel, a: SetRow, b: SetRow): number {
  const { columns } = model;
  const p = a.dofs;
  const q = b.dofs;
  const ca = a.coefficients;
  const cb = b.coefficients;
  let s = 0;
  if (p[p.length - 1] > q[0])
    for (let i = 0; i < p.length; i++) {
      const pi = p[i];
      const column = columns[pi] ?? columnOf(model, pi);
      let t = 0;
      for (let j = 0; j < q.length; j++) {
        const qj = q[j];
        t += cb[j] * (qj >= pi ? column[qj] : (columns[qj] ?? columnOf(model, qj))[pi]);
      }
      s += ca[i] * t;
    }
  else if (q.length === 4) {
    // Most pairs: two displacements in different places.
    const q0 = q[0];
    const q1 = q[1];
    const q2 = q[2];
    const q3 = q[3];
    const c0 = cb[0];
    const c1 = cb[1];
    const c2 = cb[2];
    const c3 = cb[3];
    for (let i = 0; i < p.length; i++) {
      const column = columns[p[i]] ?? columnOf(model, p[i]);
      s += ca[i] * (c0 * column[q0] + c1 * column[q1] + c2 * column[q2] + c3 * column[q3]);
    }
  } else
    for (let i = 0; i < p.length; i++) {
      const column = columns[p[i]] ?? columnOf(model, p[i]);
      s += ca[i] * rowValue(b, column);
    }
  const e = a.element;
  if (e !== null && e === b.element) s += innerFlexibility(e, e.length, e.phi, a.inside, b.inside);
  return s;
}

/** One fixed order of two rows. */
function comesAfter(a: SetRow, b: SetRow): boolean {
  if (a.dofs[0] !== b.dofs[0]) return a.dofs[0] > b.dofs[0];
  if (a.dofs.length !== b.dofs.length) return a.dofs.length > b.dofs.length;
  return a.coefficients[0] > b.coefficients[0];
}
