// Between two solves of a pose: tensions and sideways forces that agree with the contacts as they are.
//
// The stiffness of hanging parts and all sideways forces hang on the tensions of the lines, and these on them. With the
// contacts held as the last solve left them this is a small fixed-point problem over that solve's own factor, so the
// next solve starts from its answer and as a rule only confirms it.

import { eliminate } from "../numeric/index.ts";
import { type RowLoad, setLoads } from "./condense.ts";
import {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  solveAgain,
  spareVector,
} from "./contact.ts";
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

const MOST_ROUNDS = 120;
/** Rounds after which side forces that swing to and fro are changed only in part. */
const EAGER = 8;
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
  const active = n - problem.N;
  const { index } = ws;
  const { lateral } = acting;
  // Places in the matrix: of the lines, of what hangs on them, and of all forces that are asked for.
  const hanging: number[] = [];
  const wanted: number[] = [];
  let first = n;
  for (let i = 0; i < active; i++) {
    const { kind, of } = devices[index[i]];
    const hangs = kind === "lean of hoist" || kind === "level of hoist";
    const onLine = (hangs || kind === "hoist") && hoists[of].mode === "takeUp";
    if (onLine && hangs) hanging.push(i);
    if (onLine) first = Math.min(first, i);
    if (onLine || lateral) wanted.push(i);
  }
  // Without sideways forces only lines and what hangs are solved for: the end of the matrix.
  const from = lateral ? 0 : first;
  const columns = hanging.map((at, c) => {
    const column = spareVector(ws, 2 + c);
    column.fill(0);
    column[at] = 1;
    solveAgain(ws, column, from);
    return column;
  });

  const weight = model.mass * layout.state.gravity;
  const before = spareVector(ws, 0);
  before.set(ws.x);
  const x = spareVector(ws, 1);
  const scratch = lateral
    ? { ...problem, u: spareVector(ws, hanging.length + 3), load: spareVector(ws, hanging.length + 4) }
    : problem;
  const now: Coupling = { tension: tensionsOf(layout, devices, contact.F), side: null, holds: [] };
  const forces = { active: contact.active, F: spareVector(ws, 2 + hanging.length) };
  forces.F.set(contact.F);
  const small = { a: new Array(hanging.length ** 2).fill(0), b: new Array(hanging.length).fill(0) };
  const loads: RowLoad[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const T = now.tension;
    let swing = 0;
    if (lateral) {
      const h = horizontalOf(layout, devices, forces, T, acting, now.side);
      swing = sideChange(now.side, now.holds, h.result, h.holds);
      const step = round < EAGER ? 1 : round < 3 * EAGER ? 0.5 : 0.25;
      const next =
        step === 1 || now.side === null ? { side: h.result, holds: h.holds } : between(now, h, step);
      now.side = next.side;
      now.holds = next.holds;
      const { deckLoads } = sideLoads(layout, T, now.side, now.holds, acting.gravity, loads);
      setLoads(model, devices, scratch, acting.gravity, acting.wind, loads, deckLoads);
      for (let i = 0; i < active; i++) x[i] = problem.u[index[i]] - scratch.u[index[i]];
      for (let q = 0; q < problem.N; q++) x[active + q] = problem.load[q] - scratch.load[q];
      solveAgain(ws, x);
      for (let i = 0; i < active; i++) x[i] += before[i];
    } else for (const i of wanted) x[i] = before[i];
    const softer = hanging.map((at) => {
      const j = index[at];
      const { of } = devices[j];
      return (tension[of] / T[of] - 1) / problem.k[j];
    });
    if (!restiffen(hanging, softer, columns, wanted, x, small)) break;
    for (const i of wanted) forces.F[index[i]] = x[i];
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
 * Side forces part of the way from those there are to those found: where holding opens a contact and letting go closes
 * it again, the force between the two is the one that stands. A contact that only one of them has counts as 0 in the other.
 */
function between(
  now: Coupling,
  found: { result: HorizontalResult; holds: NamedHold[] },
  part: number,
): { side: HorizontalResult; holds: NamedHold[] } {
  const old = now.side;
  const names = new Map(found.holds.map((h, i) => [h.name, i]));
  const gone = now.holds.map((_, i) => i).filter((i) => !names.has(now.holds[i].name));
  const holds = [...found.holds, ...gone.map((i) => now.holds[i])];
  const before = new Map(now.holds.map((h, i) => [h.name, i]));
  const forces = new Float64Array(2 * holds.length);
  holds.forEach(({ name }, i) => {
    const a = before.get(name);
    for (let c = 0; c < 2; c++) {
      const from = a === undefined || old === null ? 0 : old.holds[2 * a + c];
      const to = i < found.holds.length ? found.result.holds[2 * i + c] : 0;
      forces[2 * i + c] = from + part * (to - from);
    }
  });
  const lines = found.result.lines.map((to, i) => {
    const from = old === null ? 0 : old.lines[i];
    return from + part * (to - from);
  });
  const slipping = [...found.result.slipping, ...gone.map(() => false)];
  return { side: { ...found.result, holds: forces, lines, slipping }, holds };
}

/**
 * Corrects the wanted entries of a solution for other compliances of the hanging devices: the rank of the change is
 * their number (Sherman, Morrison and Woodbury). False when a tension vanished or the small system fails.
 */
function restiffen(
  hanging: readonly number[],
  softer: readonly number[],
  columns: readonly Float64Array[],
  wanted: readonly number[],
  x: Float64Array,
  { a, b }: { a: number[]; b: number[] },
): boolean {
  const s = hanging.length;
  for (let c = 0; c < s; c++) {
    for (let i = 0; i < s; i++) a[i * s + c] = columns[c][hanging[i]] * softer[c] + (i === c ? 1 : 0);
    b[c] = x[hanging[c]];
  }
  if (!eliminate(a, b, s)) return false;
  for (let c = 0; c < s; c++) {
    const push = softer[c] * b[c];
    const column = columns[c];
    if (push !== 0) for (let i = 0; i < wanted.length; i++) x[wanted[i]] -= column[wanted[i]] * push;
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
