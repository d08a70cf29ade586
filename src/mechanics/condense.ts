// Devices over a prepared set brought into arrays: their flexibility, motions, displacements and datums.

import { vector } from "../numeric/index.ts";
import type { Condensed } from "./contact.ts";
import type { Device } from "./devices.ts";
import { flexibility, rowValue } from "./rows.ts";
import type { SetModel, SetRow } from "./setModel.ts";

/** A point load on the set through one of its rows (N or N m). */
export interface RowLoad {
  row: SetRow;
  value: number;
}

/** A load case of the set with its factor. */
export interface FieldLoad {
  field: Float64Array;
  modes: Float64Array;
  value: number;
}

/**
 * Fills flexibility, motions and displacements of the devices; arrays are row-major as in Condensed. `into` is an
 * earlier problem that is needed no more: its arrays are used again when they fit.
 */
export function condense(
  model: SetModel,
  devices: readonly Device[],
  deckCount: number,
  gravity: readonly [number, number, number],
  wind: FieldLoad | null,
  loads: readonly RowLoad[],
  deckLoads: Float64Array,
  into: Condensed | null = null,
): Condensed {
  const m = devices.length;
  const own = model.modes.length;
  const N = own + 3 * deckCount;
  const problem = into !== null && into.m === m && into.N === N ? into : blankProblem(m, N);
  problem.stamp = ++fillings;
  problem.reach?.clear();
  const { C, G, d } = problem;
  C.fill(0);
  G.fill(0);
  for (let a = 0; a < m; a++) {
    const da = devices[a];
    d[a] = da.datum;
    for (let i = 0; i < da.rows.length; i++) {
      const { modes } = da.rows[i];
      for (let q = 0; q < own; q++) G[a * N + q] += da.factors[i] * modes[q];
    }
    for (let s = 0; s < da.decks.length; s++)
      for (let q = 0; q < 3; q++) G[a * N + own + 3 * da.decks[s] + q] += da.deckFactors[3 * s + q];
  }
  fillFlexibility(model, devices, C);
  setStiffness(devices, problem);
  setLoads(model, devices, problem, gravity, wind, loads, deckLoads);
  return problem;
}

let fillings = 0;

function blankProblem(m: number, N: number): Condensed {
  return {
    m,
    N,
    stamp: 0,
    C: new Float64Array(m * m),
    G: new Float64Array(m * N),
    u: new Float64Array(m),
    d: new Float64Array(m),
    k: new Float64Array(m),
    oneSided: new Uint8Array(m),
    load: new Float64Array(N),
  };
}

/** Scratch for the flexibilities between distinct rows. */
let between = new Float64Array(256);

/** C between all devices, by way of the flexibility between all distinct rows: some devices share them. */
function fillFlexibility(model: SetModel, devices: readonly Device[], C: Float64Array): void {
  const m = devices.length;
  const distinct: SetRow[] = [];
  const owner: number[] = [];
  const at: number[] = [];
  const factor: number[] = [];
  for (let a = 0; a < m; a++) {
    const { rows, factors } = devices[a];
    for (let i = 0; i < rows.length; i++) {
      let r = distinct.indexOf(rows[i]);
      if (r < 0) r = distinct.push(rows[i]) - 1;
      owner.push(a);
      at.push(r);
      factor.push(factors[i]);
    }
  }
  const n = distinct.length;
  if (between.length < n * n) between = new Float64Array(n * n);
  for (let r = 0; r < n; r++)
    for (let s = 0; s <= r; s++) {
      const value = flexibility(model, distinct[r], distinct[s]);
      between[r * n + s] = value;
      between[s * n + r] = value;
    }
  const parts = owner.length;
  for (let i = 0; i < parts; i++) {
    const a = owner[i] * m;
    const row = at[i] * n;
    const f = factor[i];
    for (let j = 0; j < parts; j++) C[a + owner[j]] += f * factor[j] * between[row + at[j]];
  }
}

/** Takes over the devices' stiffnesses; one that acts both ways and has none is left out. */
export function setStiffness(devices: readonly Device[], { k, oneSided }: Condensed): void {
  for (let a = 0; a < devices.length; a++) {
    k[a] = devices[a].stiffness;
    oneSided[a] = devices[a].oneSided ? 1 : k[a] === 0 ? 2 : 0;
  }
}

/** Takes over other loads: `load` and `u` are written anew. */
export function setLoads(
  model: SetModel,
  devices: readonly Device[],
  problem: Condensed,
  gravity: readonly [number, number, number],
  wind: FieldLoad | null,
  loads: readonly RowLoad[],
  deckLoads: Float64Array,
): void {
  const { N, u, load } = problem;
  const own = model.modes.length;
  const [gx, gy, gz] = gravity;
  for (let q = 0; q < own; q++) {
    load[q] = gz * model.sagModes[0][q] + gy * model.sagModes[1][q] + gx * model.sagModes[2][q];
    if (wind) load[q] += wind.value * wind.modes[q];
  }
  for (let q = own; q < N; q++) load[q] = deckLoads[q - own];
  for (let a = 0; a < devices.length; a++) {
    const { rows, factors } = devices[a];
    let sum = 0;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      let sag = gz * row.sag[0] + gy * row.sag[1] + gx * row.sag[2];
      if (wind) sag += wind.value * rowValue(row, wind.field);
      sum += factors[i] * sag;
    }
    u[a] = sum;
  }
  for (const { row, value } of loads) {
    const reach = reachOf(model, devices, problem, row);
    for (let q = 0; q < own; q++) load[q] += value * row.modes[q];
    for (let a = 0; a < devices.length; a++) u[a] += value * reach[a];
  }
}

/** Displacement along every device per unit of load on a row: kept while only the loads' values change. */
function reachOf(
  model: SetModel,
  devices: readonly Device[],
  problem: Condensed,
  load: SetRow,
): Float64Array {
  problem.reach ??= new Map();
  const known = problem.reach.get(load);
  if (known !== undefined) return known;
  const reach = vector(devices.length);
  for (let a = 0; a < devices.length; a++) {
    const { rows, factors } = devices[a];
    for (let i = 0; i < rows.length; i++) reach[a] += factors[i] * flexibility(model, rows[i], load);
  }
  problem.reach.set(load, reach);
  return reach;
}
