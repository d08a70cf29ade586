// Devices over a prepared set brought into arrays: their flexibility, motions, displacements and datums.

import type { Condensed } from "./contact.ts";
import type { Device } from "./devices.ts";
import { flexibility } from "./rows.ts";
import type { SetModel, SetRow } from "./setModel.ts";

/** A point load on the set through one of its rows (N or N m). */
export interface RowLoad {
  row: SetRow;
  value: number;
}

/** Fills flexibility, motions and displacements of the devices; arrays are row-major as in Condensed. */
export function condense(
  model: SetModel,
  devices: Device[],
  deckCount: number,
  gravity: [number, number, number],
  windField: { field: Float64Array; modes: Float64Array; value: number } | null,
  loads: RowLoad[],
  deckLoads: Float64Array,
): Condensed {
  const m = devices.length;
  const own = model.modes.length;
  const N = own + 3 * deckCount;
  const C = new Float64Array(m * m);
  const G = new Float64Array(m * N);
  const u = new Float64Array(m);
  const d = new Float64Array(m);
  const k = new Float64Array(m);
  const oneSided = new Uint8Array(m);
  const load = new Float64Array(N);
  for (let q = 0; q < own; q++) {
    load[q] =
      gravity[2] * model.sagModes[0][q] +
      gravity[1] * model.sagModes[1][q] +
      gravity[0] * model.sagModes[2][q];
    if (windField) load[q] += windField.value * windField.modes[q];
    for (const l of loads) load[q] += l.value * l.row.modes[q];
  }
  for (let i = 0; i < 3 * deckCount; i++) load[own + i] = deckLoads[i];
  for (let a = 0; a < m; a++) {
    const da = devices[a];
    d[a] = da.datum;
    k[a] = da.stiffness;
    oneSided[a] = da.oneSided ? 1 : 0;
    for (let i = 0; i < da.rows.length; i++) {
      const row = da.rows[i];
      const f = da.factors[i];
      let sag = gravity[2] * row.sag[0] + gravity[1] * row.sag[1] + gravity[0] * row.sag[2];
      for (const l of loads) sag += l.value * flexibility(model, row, l.row);
      if (windField) {
        let w = 0;
        for (let c = 0; c < row.dofs.length; c++) w += row.coefficients[c] * windField.field[row.dofs[c]];
        sag += windField.value * w;
      }
      u[a] += f * sag;
      for (let q = 0; q < own; q++) G[a * N + q] += f * row.modes[q];
    }
    for (let s = 0; s < da.decks.length; s++)
      for (let q = 0; q < 3; q++) G[a * N + own + 3 * da.decks[s] + q] += da.deckFactors[3 * s + q];
    for (let b = 0; b <= a; b++) {
      const db = devices[b];
      let sum = 0;
      for (let i = 0; i < da.rows.length; i++)
        for (let j = 0; j < db.rows.length; j++)
          sum += da.factors[i] * db.factors[j] * flexibility(model, da.rows[i], db.rows[j]);
      C[a * m + b] = sum;
      C[b * m + a] = sum;
    }
  }
  return { m, N, C, G, u, d, k, oneSided, load };
}
