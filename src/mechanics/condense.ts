// Devices over a prepared set brought into arrays: their flexibility, motions, displacements and datums.

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

/** Fills flexibility, motions and displacements of the devices; arrays are row-major as in Condensed. */
export function condense(
  model: SetModel,
  devices: readonly Device[],
  deckCount: number,
  gravity: readonly [number, number, number],
  wind: FieldLoad | null,
  loads: readonly RowLoad[],
  deckLoads: Float64Array,
): Condensed {
  const m = devices.length;
  const own = model.modes.length;
  const N = own + 3 * deckCount;
  const C = new Float64Array(m * m);
  const G = new Float64Array(m * N);
  const d = new Float64Array(m);
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
  for (let a = 0; a < m; a++) {
    const { rows, factors } = devices[a];
    if (rows.length === 0) continue;
    for (let b = 0; b <= a; b++) {
      const other = devices[b];
      let sum = 0;
      for (let i = 0; i < rows.length; i++)
        for (let j = 0; j < other.rows.length; j++)
          sum += factors[i] * other.factors[j] * flexibility(model, rows[i], other.rows[j]);
      C[a * m + b] = sum;
      C[b * m + a] = sum;
    }
  }
  const problem = {
    m,
    N,
    C,
    G,
    u: new Float64Array(m),
    d,
    k: new Float64Array(m),
    oneSided: new Uint8Array(m),
    load: new Float64Array(N),
  };
  setStiffness(devices, problem);
  setLoads(model, devices, problem, gravity, wind, loads, deckLoads);
  return problem;
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
  { N, u, load }: Condensed,
  gravity: readonly [number, number, number],
  wind: FieldLoad | null,
  loads: readonly RowLoad[],
  deckLoads: Float64Array,
): void {
  const own = model.modes.length;
  const [gx, gy, gz] = gravity;
  for (let q = 0; q < own; q++) {
    let sum = gz * model.sagModes[0][q] + gy * model.sagModes[1][q] + gx * model.sagModes[2][q];
    if (wind) sum += wind.value * wind.modes[q];
    for (const l of loads) sum += l.value * l.row.modes[q];
    load[q] = sum;
  }
  for (let q = own; q < N; q++) load[q] = deckLoads[q - own];
  for (let a = 0; a < devices.length; a++) {
    const { rows, factors } = devices[a];
    let sum = 0;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      let sag = gz * row.sag[0] + gy * row.sag[1] + gx * row.sag[2];
      if (wind) sag += wind.value * rowValue(row, wind.field);
      for (const l of loads) sag += l.value * flexibility(model, row, l.row);
      sum += factors[i] * sag;
    }
    u[a] = sum;
  }
}
