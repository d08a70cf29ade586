// Sideways forces: which contacts hold the set along, across and in plan, and what that puts on heights.

import type { FieldLoad, RowLoad } from "./condense.ts";
import type { ContactResult } from "./contact.ts";
import { type Device, meanY } from "./devices.ts";
import { type Hold, type HorizontalResult, type Pendulum, solveHorizontal } from "./horizontal.ts";
import type { Layout } from "./layout.ts";
import { rowAt } from "./rows.ts";
import type { SetModel, SetRow } from "./setModel.ts";
import type { State } from "./state/types.ts";

/** What acts on a pose beside its devices. */
export interface Acting {
  gravity: readonly [number, number, number];
  wind: (FieldLoad & { force: number; height: number; x: number }) | null;
  /** Sideways forces exist, so that the horizontal problem feeds back. */
  lateral: boolean;
}

/** A contact that holds sideways, its name, and its place in the list of devices. */
export interface NamedHold {
  hold: Hold;
  /** Limit that the State gives (friction or stop), N; Infinity when it gives none. */
  stated: number;
  name: string;
  device: number;
  /** Transporter whose deck it pushes; -1 for a bearing. */
  deck: number;
}

/**
 * A contact cannot hold sideways more than this times what it presses with, stated friction or not: one that is about
 * to open hands its side force on before it does. Far above any real friction need of a contact that carries.
 */
const GRIP = 1;
/** Side stiffness of every contact when none was given, N/m: they share by statics. */
const RIGID_SIDE = 1e9;

/** Whether sideways forces exist at all. */
export function lateralMatters(state: State, layout: Layout, wind: boolean): boolean {
  if (wind || (state.grade ?? 0) !== 0 || (state.crossfall ?? 0) !== 0) return true;
  for (const h of layout.hoists)
    if (h.ropeLength && h.offset && (h.offset[0] !== 0 || h.offset[1] !== 0)) return true;
  return false;
}

/**
 * Moments of the sideways forces about the axis of the set and the ground under each deck. `loads` is a list that is
 * needed no more: it is written over and handed back.
 */
export function sideLoads(
  layout: Layout,
  tension: Float64Array,
  side: HorizontalResult | null,
  holds: NamedHold[],
  gravity: readonly [number, number, number],
  loads: RowLoad[] = [],
): { loads: RowLoad[]; deckLoads: Float64Array } {
  const { model, trains, hoists, up } = layout;
  const deckLoads = new Float64Array(3 * trains.length);
  const axis = model.axisHeight;
  let n = 0;
  for (let i = 0; i < trains.length; i++) {
    const { mass, cgHeight } = trains[i];
    deckLoads[3 * i] -= mass * gravity[2];
    deckLoads[3 * i + 1] -= mass * gravity[1] * cgHeight;
    deckLoads[3 * i + 2] += mass * gravity[0] * cgHeight;
  }
  for (let i = 0; i < hoists.length; i++) {
    const h = hoists[i];
    const girders = layout.hoistGirders[i];
    const T = tension[i];
    if (h.mode === "load")
      for (const g of girders) n = put(loads, n, rowAt(model, g, h.at, "w"), (T * up[2]) / girders.length);
    const fx = T * up[0] + (side ? side.lines[2 * i] : 0);
    const fy = T * up[1] + (side ? side.lines[2 * i + 1] : 0);
    const arm = (h.pickHeight - axis) / girders.length;
    if (fx !== 0) for (const g of girders) n = put(loads, n, rowAt(model, g, h.at, "y"), fx * arm);
    if (fy === 0) continue;
    for (const g of girders) n = put(loads, n, rowAt(model, g, h.at, "x"), -fy * arm);
    const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
    if (e !== 0 && girders.length > 1) {
      const left = girders[0];
      const right = girders[girders.length - 1];
      const couple = (-fy * e) / (model.girders[left].y - model.girders[right].y);
      n = put(loads, n, rowAt(model, left, h.at, "w"), couple);
      n = put(loads, n, rowAt(model, right, h.at, "w"), -couple);
    }
  }
  for (let i = 0; side !== null && i < holds.length; i++) {
    const { hold, deck } = holds[i];
    const girder = girderAt(model, hold.y);
    const fx = side.holds[2 * i];
    const fy = side.holds[2 * i + 1];
    if (fx !== 0) n = put(loads, n, rowAt(model, girder, hold.x, "y"), -fx * axis);
    if (fy !== 0) n = put(loads, n, rowAt(model, girder, hold.x, "x"), fy * axis);
    if (deck >= 0) {
      deckLoads[3 * deck + 1] += trains[deck].bunkHeight * fy;
      deckLoads[3 * deck + 2] -= trains[deck].bunkHeight * fx;
    }
  }
  loads.length = n;
  return { loads, deckLoads };
}

/** Writes a load to a place of a list; the next place. */
function put(loads: RowLoad[], n: number, row: SetRow, value: number): number {
  if (n === loads.length) loads.push({ row, value });
  else {
    loads[n].row = row;
    loads[n].value = value;
  }
  return n + 1;
}

function girderAt({ girders }: SetModel, y: number): number {
  for (let g = 0; g < girders.length; g++) if (girders[g].y === y) return g;
  return -1;
}

/** Solves the horizontal problem of a pose for given tensions; `near` is its answer for others, from which it begins. */
export function horizontalOf(
  layout: Layout,
  devices: readonly Device[],
  contact: Pick<ContactResult, "active" | "F">,
  tension: Float64Array,
  { gravity, wind }: Pick<Acting, "gravity" | "wind">,
  near: HorizontalResult | null = null,
): { result: HorizontalResult; holds: NamedHold[] } {
  const { state, model, trains, hoists, up } = layout;
  const holds: NamedHold[] = [];
  const bearings = state.bearings ?? [];
  // Where no contact was given a side stiffness, all hold alike and statics share the force out.
  const given =
    trains.some((t) => (t.bunkSideStiffness ?? 0) > 0) || bearings.some((b) => (b.sideStiffness ?? 0) > 0);
  const list: Hold[] = [];
  const add = (hold: Hold, stated: number, { name }: Device, device: number, deck: number) => {
    list.push(hold);
    holds.push({ hold, stated, name, device, deck });
  };
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (!contact.active[j] || !(contact.F[j] > 0)) continue;
    if (d.kind === "bunk") {
      const t = trains[d.of];
      const k = given ? (t.bunkSideStiffness ?? 0) : RIGID_SIDE;
      const braked = t.braked ?? true;
      const stated = t.bunkFriction === undefined ? Number.POSITIVE_INFINITY : t.bunkFriction * contact.F[j];
      const limit = Math.min(stated, GRIP * contact.F[j]);
      const train = braked ? d.of : -1;
      add({ x: d.x, y: d.y, kx: braked ? k : 0, ky: k, limit, train }, stated, d, j, d.of);
    } else if (d.kind === "bearing") {
      const b = bearings[d.of];
      const kind = b.holds ?? "free";
      if (kind === "free") continue;
      const k = given ? (b.sideStiffness ?? 0) : RIGID_SIDE;
      const stated = Math.min(
        b.sideLimit ?? Number.POSITIVE_INFINITY,
        b.friction === undefined ? Number.POSITIVE_INFINITY : b.friction * contact.F[j],
      );
      const limit = Math.min(stated, GRIP * contact.F[j]);
      add({ x: d.x, y: d.y, kx: kind === "fixed" ? k : 0, ky: k, limit, train: -1 }, stated, d, j, -1);
    }
  }
  let fx = model.mass * gravity[0];
  let fy = model.mass * gravity[1];
  let mz = fy * (model.cg[0] - model.origin) - fx * model.cg[1];
  if (wind) {
    fy += wind.value * wind.force;
    mz += wind.value * wind.force * (wind.x - model.origin);
  }
  const pendulums: Pendulum[] = [];
  for (let i = 0; i < hoists.length; i++) {
    const h = hoists[i];
    const y = meanY(model, layout.hoistGirders[i]);
    const T = tension[i];
    fx += T * up[0];
    fy += T * up[1];
    // A pull across at a pin above the picks shifts load between the lines, and on a grade this turns the set as if the
    // pull stood a little further on; what holds the lean of a one-girder set does the reverse.
    const pin = h.rigging === "separate" || h.girders.length < 2 ? 0 : (h.pinHeight ?? 0);
    const x = h.at + ((model.lean < 0 ? -h.pickHeight : pin) * up[0]) / up[2];
    mz += T * up[1] * (x - model.origin) - T * up[0] * pullY(devices, contact.F, i, y);
    const stiffness = h.ropeLength ? T / h.ropeLength : 0;
    pendulums.push({ x, y, stiffness, offsetX: h.offset?.[0] ?? 0, offsetY: h.offset?.[1] ?? 0 });
  }
  mz += turnedMoment(layout, devices, contact.F, { gravity, wind });
  const limits = trains.map((t) => t.brakeLimit ?? Number.POSITIVE_INFINITY);
  const scale = model.mass * state.gravity;
  const result = solveHorizontal(list, pendulums, fx, fy, mz, model.origin, scale, limits, near);
  return { result, holds };
}

/** Where the pull of a hoist acts across: the mean of its picks, or what unequal separate lines make of it. */
function pullY(devices: readonly Device[], F: Float64Array, hoist: number, mean: number): number {
  let sum = 0;
  let moment = 0;
  for (let j = 0; j < devices.length; j++)
    if (devices[j].kind === "hoist" && devices[j].of === hoist) {
      sum += F[j];
      moment += F[j] * devices[j].y;
    }
  return sum > 0 ? moment / sum : mean;
}

/**
 * Plan moment of weights and lines that lean and level have moved aside. All of them act along true up, so their moment
 * has no part about it: the part about z follows from those about x and y, and a set that hangs free is not turned.
 */
function turnedMoment(
  { model, up }: Layout,
  devices: readonly Device[],
  F: Float64Array,
  { gravity, wind }: Pick<Acting, "gravity" | "wind">,
): number {
  if (up[0] === 0 && up[1] === 0) return 0;
  let aboutX = 0;
  let aboutY = 0;
  for (let j = 0; j < devices.length; j++)
    if (devices[j].kind === "lean of hoist") aboutX += F[j];
    else if (devices[j].kind === "level of hoist") aboutY += F[j];
  if (model.lean < 0) {
    // What holds the lean of a one-girder set takes all moment about its length (its lines: see horizontalOf).
    aboutX += model.cg[2] * model.mass * gravity[1];
    if (wind) aboutX += wind.height * wind.value * wind.force;
  }
  return -(up[0] * aboutX + up[1] * aboutY) / up[2];
}

/** Greatest change of a sideways force between two passes, N. */
export function sideChange(
  a: HorizontalResult | null,
  aHolds: NamedHold[],
  b: HorizontalResult | null,
  bHolds: NamedHold[],
): number {
  if (!b) return 0;
  let change = 0;
  // A contact that only one of the two has counts with all of its force: next to nothing where it hardly touches.
  let common = 0;
  for (let i = 0; i < bHolds.length; i++) {
    const k = placeOf(bHolds[i].name, aHolds, i);
    if (k >= 0) common++;
    for (let c = 0; c < 2; c++)
      change = Math.max(change, Math.abs(b.holds[2 * i + c] - (a && k >= 0 ? a.holds[2 * k + c] : 0)));
  }
  if (a && common < aHolds.length)
    for (let k = 0; k < aHolds.length; k++)
      if (placeOf(aHolds[k].name, bHolds, k) < 0)
        for (let c = 0; c < 2; c++) change = Math.max(change, Math.abs(a.holds[2 * k + c]));
  for (let i = 0; i < b.lines.length; i++)
    change = Math.max(change, Math.abs(b.lines[i] - (a ? a.lines[i] : 0)));
  return change;
}

/** Place of a hold by name, most likely `i`; -1 when there is none. */
function placeOf(name: string, holds: readonly NamedHold[], i: number): number {
  if (i < holds.length && holds[i].name === name) return i;
  for (let k = 0; k < holds.length; k++) if (holds[k].name === name) return k;
  return -1;
}
