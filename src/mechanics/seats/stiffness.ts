// How the bearings share when their seats are not where they were drawn: the set's stiffness against warp of its seats.

import { ldlFactor, ldlSolve } from "../../numeric/index.ts";
import { flexibility, rowAt } from "../rows.ts";
import type { Solution } from "../solution.ts";

/**
 * Change of the bearings' forces (N) by a change of their seats' levels (m), row by row, n x n and symmetric, in the
 * order of the State's bearings, as long as each of them carries and nothing else does. Raising all seats alike, or as
 * a plane, changes nothing. From the condensed flexibility C of the set, the springs k of the bearings and the rigid
 * motions R: (C + 1/k) dF + R da = dz and R^T dF = 0. Null where the bearings do not hold the set.
 */
export function seatStiffness({ model, state }: Solution): Float64Array | null {
  const bearings = state.bearings ?? [];
  const n = bearings.length;
  const m = model.modes.length;
  const size = n + m;
  const rows = bearings.map((b) =>
    rowAt(
      model,
      model.girders.findIndex((g) => g.name === b.girder),
      b.at,
      "w",
    ),
  );
  const a = new Float64Array(size * size);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) a[i * size + j] = flexibility(model, rows[i], rows[j]);
    a[i * size + i] += 1 / bearings[i].stiffness;
    for (let q = 0; q < m; q++) a[(n + q) * size + i] = rows[i].modes[q];
  }
  if (n < m || !ldlFactor(a, size)) return null;
  const K = new Float64Array(n * n);
  const x = new Float64Array(size);
  for (let j = 0; j < n; j++) {
    x.fill(0);
    x[j] = 1;
    ldlSolve(a, size, x);
    for (let i = 0; i < n; i++) K[i * n + j] = x[i];
  }
  return K;
}
