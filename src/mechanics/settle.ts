// Between two solves of a pose: tensions and sideways forces that agree with the contacts as they are.
//
// The stiffness of hanging parts and all sideways forces hang on the tensions of the lines, and these on them. With the
// contacts held as the last solve left them this is a small fixed-point problem over that solve's own factor, so the
// next solve starts from its answer and as a rule only confirms it.

import { setLoads } from "./condense.ts";
import { type Condensed, type ContactResult, type ContactWorkspace, solveAgain } from "./contact.ts";
import type { Device } from "./devices.ts";
import type { HorizontalResult } from "./horizontal.ts";
import type { Layout } from "./layout.ts";
import { type Acting, horizontalOf, type NamedHold, sideChange, sideLoads } from "./sideways.ts";

/** Tensions of the hoists and the sideways forces that belong to them. */
export interface Coupling {
  tension: Float64Array;
  side: HorizontalResult | null;
  holds: NamedHold[];
}

const MOST_ROUNDS = 40;
const AGREED = 1e-14;

/** The coupling to try next, from the last solve of this workspace. `tension` is what that solve was built with. */
export function settle(
  layout: Layout,
  devices: readonly Device[],
  problem: Condensed,
  ws: ContactWorkspace,
  contact: ContactResult,
  tension: Float64Array,
  acting: Acting,
): Coupling {
  const { hoists, model } = layout;
  const n = contact.n;
  const place = new Int32Array(problem.m).fill(-1);
  for (let i = 0; i < n - problem.N; i++) place[ws.index[i]] = i;
  const hanging: number[] = [];
  const lines: number[] = [];
  for (let j = 0; j < devices.length; j++) {
    if (place[j] < 0 || hoists[devices[j].of]?.mode !== "takeUp") continue;
    const { kind } = devices[j];
    if (kind === "hoist") lines.push(j);
    else if (kind === "lean of hoist" || kind === "level of hoist") hanging.push(j);
  }
  const columns = hanging.map((j) => {
    const column = new Float64Array(n);
    column[place[j]] = 1;
    solveAgain(ws, column);
    return column;
  });

  const weight = model.mass * layout.state.gravity;
  const before = ws.x.slice(0, n);
  const x = before.slice();
  const scratch = acting.lateral ? { ...problem, u: problem.u.slice(), load: problem.load.slice() } : problem;
  const now: Coupling = { tension: tensionsOf(layout, devices, contact.F), side: null, holds: [] };
  const forces = { active: contact.active, F: contact.F.slice() };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const T = now.tension;
    let swing = 0;
    if (acting.lateral) {
      const h = horizontalOf(layout, devices, forces, T, acting);
      swing = sideChange(now.side, now.holds, h.result, h.holds);
      now.side = h.result;
      now.holds = h.holds;
      const { loads, deckLoads } = sideLoads(layout, T, now.side, now.holds, acting.gravity);
      setLoads(model, devices, scratch, acting.gravity, acting.wind, loads, deckLoads);
      for (let i = 0; i < n - problem.N; i++) x[i] = problem.u[ws.index[i]] - scratch.u[ws.index[i]];
      for (let q = 0; q < problem.N; q++) x[n - problem.N + q] = problem.load[q] - scratch.load[q];
      solveAgain(ws, x);
      for (let i = 0; i < n; i++) x[i] += before[i];
    } else x.set(before);
    if (!restiffen(devices, problem, hanging, place, columns, tension, T, x)) break;
    for (let j = 0; j < devices.length; j++) if (place[j] >= 0) forces.F[j] = x[place[j]];
    const found = tensionsOf(layout, devices, forces.F);
    let change = swing;
    for (let i = 0; i < found.length; i++) change = Math.max(change, Math.abs(found[i] - T[i]));
    if (!(change <= weight)) break;
    now.tension = found;
    if (change <= AGREED * weight) break;
  }
  return now;
}

/**
 * Corrects a solution for new stiffnesses of the hanging devices, T / T0 times those it was made with: the rank of the
 * change is their number (Sherman, Morrison and Woodbury). False when a tension vanished or the small system fails.
 */
function restiffen(
  devices: readonly Device[],
  { k }: Condensed,
  hanging: readonly number[],
  place: Int32Array,
  columns: readonly Float64Array[],
  before: Float64Array,
  now: Float64Array,
  x: Float64Array,
): boolean {
  const s = hanging.length;
  const softer = hanging.map((j) => (before[devices[j].of] / now[devices[j].of] - 1) / k[j]);
  const a = new Float64Array(s * s);
  const b = new Float64Array(s);
  for (let i = 0; i < s; i++) {
    b[i] = x[place[hanging[i]]];
    for (let c = 0; c < s; c++) a[i * s + c] = columns[c][place[hanging[i]]] * softer[c] + (i === c ? 1 : 0);
  }
  if (!eliminate(a, b, s)) return false;
  for (let c = 0; c < s; c++) {
    const push = softer[c] * b[c];
    if (push !== 0) for (let i = 0; i < x.length; i++) x[i] -= columns[c][i] * push;
  }
  return true;
}

/** Gauss elimination with the greatest pivot of each column; a and b are overwritten, the solution stands in b. */
function eliminate(a: Float64Array, b: Float64Array, n: number): boolean {
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r * n + c]) > Math.abs(a[p * n + c])) p = r;
    const pivot = a[p * n + c];
    if (!(Math.abs(pivot) > 1e-12) || !Number.isFinite(pivot)) return false;
    if (p !== c) {
      for (let q = c; q < n; q++) [a[c * n + q], a[p * n + q]] = [a[p * n + q], a[c * n + q]];
      [b[c], b[p]] = [b[p], b[c]];
    }
    for (let r = c + 1; r < n; r++) {
      const f = a[r * n + c] / pivot;
      for (let q = c; q < n; q++) a[r * n + q] -= f * a[c * n + q];
      b[r] -= f * b[c];
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    for (let q = r + 1; q < n; q++) b[r] -= a[r * n + q] * b[q];
    b[r] /= a[r * n + r];
  }
  return true;
}

/** Net load on the picks of every hoist, N: as given, or the sum of its lines. */
export function tensionsOf(layout: Layout, devices: readonly Device[], F: Float64Array): Float64Array {
  const { hoists } = layout;
  const found = new Float64Array(hoists.length);
  for (let i = 0; i < hoists.length; i++) if (hoists[i].mode === "load") found[i] = hoists[i].load ?? 0;
  for (let j = 0; j < devices.length; j++) if (devices[j].kind === "hoist") found[devices[j].of] += F[j];
  return found;
}
