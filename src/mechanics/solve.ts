// One pose solved: vertical problem, horizontal problem, the tensions and stops that couple them, in at most 5 passes.

import {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  contactWorkspace,
  solveContact,
} from "./contact.ts";
import { condense, type Device, devicesOf, type Layout, layoutOf, type RowLoad } from "./devices.ts";
import { type Hold, type HorizontalResult, type Pendulum, solveHorizontal } from "./horizontal.ts";
import { prepareSet, rowAt, type SetModel, windCase } from "./setModel.ts";
import { findMechanism, nameMechanism } from "./stability.ts";
import type { State } from "./state/types.ts";

/** A solved pose before it is put into words; all in SI. */
export interface Solution {
  status: "solved" | "mechanism" | "unsettled";
  motion: string;
  state: State;
  model: SetModel;
  layout: Layout;
  devices: Device[];
  problem: Condensed;
  contact: ContactResult;
  /** Tension of every hoist that the second-order terms and sideways forces were built with, N. */
  tension: Float64Array;
  /** Net load on the picks of every hoist, N. */
  hoistForce: Float64Array;
  /** Loads on rows of the set beside the devices: given hoist loads, moments of sideways forces. */
  loads: RowLoad[];
  stops: Int8Array;
  /** Force per cylinder, N, and its stroke, m out positive. */
  cylinderForce: Float64Array;
  stroke: Float64Array;
  /** Sideways forces that were in force in the vertical problem. */
  horizontal: HorizontalResult | null;
  holds: { hold: Hold; name: string; device: number }[];
  passes: number;
  residual: { force: number; moment: number };
}

const MOST_PASSES = 5;
const RIGID_SIDE = 1e9;

export interface SolveOptions {
  /** The prepared set; made from the State when left out. */
  model?: SetModel;
  workspace?: ContactWorkspace;
  /** A neighbour's solution, whose contacts are tried first. */
  near?: Solution | null;
}

/**
 * Solves the statics of a State: mechanics never clip a negative reaction, they open the contact and solve again.
 * Throws RangeError when a support lies off the set. The answer depends on the State alone.
 */
export function solveStatics(state: State, options: SolveOptions = {}): Solution {
  const model = options.model ?? prepareSet(state);
  const ws = options.workspace ?? contactWorkspace();
  const layout = layoutOf(state, model);
  const { up, hoists, trains, cylinders } = layout;
  const g = state.gravity;
  const gravity: [number, number, number] = [-up[0] * g, -up[1] * g, up[2] * g];
  const weight = model.mass * g;
  const wind = state.wind && state.wind.pressure !== 0 ? state.wind : null;
  const windLoad = wind ? windCase(model, wind.toward) : null;
  const windValue = wind ? wind.pressure * wind.factor : 0;

  const tension = new Float64Array(hoists.length);
  hoists.forEach((h, i) => {
    tension[i] = h.mode === "load" ? (h.load ?? 0) : (0.5 * weight) / hoists.length;
  });
  const stops = new Int8Array(cylinders.length);
  const lateral = lateralMatters(state, layout, windValue !== 0);
  let side: HorizontalResult | null = null;
  let sideHolds: Solution["holds"] = [];
  let start: Uint8Array | null = null;
  let startFor = "";
  if (options.near) {
    start = options.near.contact.active;
    startFor = keyOf(options.near.devices);
  }

  let passes = 0;
  let stopRounds = 0;
  for (;;) {
    passes++;
    const devices = devicesOf(layout, tension, stops);
    const { loads, deckLoads } = sideLoads(layout, tension, side, sideHolds, gravity);
    const problem = condense(
      model,
      devices,
      trains.length,
      gravity,
      windLoad ? { ...windLoad, value: windValue } : null,
      loads,
      deckLoads,
    );
    grow(ws, problem);
    const contact = solveContact(problem, ws, start && startFor === keyOf(devices) ? start : null);
    start = contact.active;
    startFor = keyOf(devices);
    const base = { state, model, layout, devices, problem, contact, stops, passes };
    const found = newTensions(layout, devices, contact, tension);
    const { cylinderForce, stroke } = cylindersOf(layout, devices, problem, contact, stops);
    const done = (status: Solution["status"], motion: string): Solution => {
      const solution: Solution = {
        ...base,
        status,
        motion,
        tension: tension.slice(),
        hoistForce: found,
        loads,
        cylinderForce,
        stroke,
        horizontal: side,
        holds: sideHolds,
        residual: { force: Number.NaN, moment: Number.NaN },
      };
      if (status !== "mechanism") solution.residual = residualOf(solution, gravity, windLoad, windValue);
      return solution;
    };
    const stands = standing(model, layout, problem, contact, devices);
    if (stands !== null && (passes >= 2 || !hoists.some((h) => h.mode === "takeUp")))
      return done("mechanism", stands);

    // Cylinders at the end of their travel, one change at a time.
    const change =
      stands === null ? stopChange(layout, cylinderForce, stroke, stops, problem, devices, contact) : null;
    if (change && stopRounds < 8 * cylinders.length) {
      stops[change.cylinder] = change.to;
      stopRounds++;
      passes--;
      continue;
    }

    let moved = 0;
    for (let i = 0; i < hoists.length; i++) {
      const lever = Math.abs(hoists[i].pickHeight) + (hoists[i].pinHeight ?? 0) + Math.abs(model.cg[2]);
      const turn = Math.abs(rotationOf(devices, contact, i));
      moved = Math.max(moved, (Math.abs(found[i] - tension[i]) * lever * turn) / (weight * model.length));
      if (lateral) moved = Math.max(moved, (Math.abs(found[i] - tension[i]) / weight) * lateral);
    }
    let next: HorizontalResult | null = side;
    let nextHolds = sideHolds;
    if (lateral) {
      const h = horizontalOf(layout, devices, contact, found, gravity, windLoad, windValue);
      next = h.result;
      nextHolds = h.holds;
      moved = Math.max(moved, sideChange(side, sideHolds, next, nextHolds) / weight);
    }
    const settledNow = moved <= 1e-12 && stands === null;
    if (settledNow || passes >= MOST_PASSES) {
      if (!contact.settled) return done("unsettled", "");
      if (moved > 1e-10) return done("unsettled", "");
      if (lateral && next && next.moving.length > 0)
        return done("mechanism", `the set slides: ${next.moving.join(", ")}`);
      if (!lateral) {
        const h = horizontalOf(layout, devices, contact, tension, gravity, windLoad, windValue);
        side = h.result;
        sideHolds = h.holds;
      }
      return done("solved", "");
    }
    tension.set(found);
    side = next;
    sideHolds = nextHolds;
  }
}

function keyOf(devices: Device[]): string {
  let key = "";
  for (const d of devices) key += `${d.name};`;
  return key;
}

/** Whether sideways forces exist at all; then a measure of how they feed back into heights. */
function lateralMatters(state: State, layout: Layout, wind: boolean): number {
  const lean = layout.hoists.some(
    (h) => h.ropeLength && h.offset && (h.offset[0] !== 0 || h.offset[1] !== 0),
  );
  return wind || lean || (state.grade ?? 0) !== 0 || (state.crossfall ?? 0) !== 0 ? 1e-2 : 0;
}

function grow(ws: ContactWorkspace, p: Condensed): void {
  const need = p.m + p.N;
  if (need > ws.capacity) Object.assign(ws, contactWorkspace(need + 16));
}

function newTensions(
  layout: Layout,
  devices: Device[],
  contact: ContactResult,
  old: Float64Array,
): Float64Array {
  const found = old.slice();
  layout.hoists.forEach((h, i) => {
    if (h.mode === "takeUp") found[i] = 0;
  });
  devices.forEach((d, j) => {
    if (d.kind === "hoist") found[d.of] += contact.F[j];
  });
  return found;
}

function rotationOf(devices: Device[], contact: ContactResult, hoist: number): number {
  let turn = 0;
  devices.forEach((d, j) => {
    if ((d.kind === "lean of hoist" || d.kind === "level of hoist") && d.of === hoist)
      turn = Math.max(turn, Math.abs(contact.v[j] - d.datum));
  });
  return turn;
}

function standing(
  model: SetModel,
  layout: Layout,
  problem: Condensed,
  contact: ContactResult,
  devices: Device[],
): string | null {
  if (contact.pivotRatio > 1e-5 && contact.settled) return null;
  const own = model.modes.length;
  const busy = new Set<number>();
  devices.forEach((d, j) => {
    if ((d.kind === "bunk" || d.kind === "lashing") && contact.active[j])
      for (const deck of d.decks) busy.add(deck);
  });
  const rotation = (q: number) => (q < own ? q === model.lean || q === model.level : (q - own) % 3 !== 0);
  const found = findMechanism(problem, contact.active, own, rotation, (deck) => !busy.has(deck));
  if (found)
    return nameMechanism(
      found.shape,
      model.modeNames,
      layout.trains.map((t) => t.name),
    );
  return null;
}

/** Force and stroke of every cylinder; a cylinder in no group carries nothing. */
function cylindersOf(
  layout: Layout,
  devices: Device[],
  problem: Condensed,
  contact: ContactResult,
  stops: Int8Array,
): { cylinderForce: Float64Array; stroke: Float64Array } {
  const { cylinders, groups } = layout;
  const own = problem.N - 3 * layout.trains.length;
  const cylinderForce = new Float64Array(cylinders.length);
  const stroke = new Float64Array(cylinders.length);
  devices.forEach((d, j) => {
    if (d.kind === "group") {
      const free = groups[d.of].cylinders.filter((c) => stops[c] === 0);
      for (const c of free) cylinderForce[c] = contact.F[j] / free.length;
    } else if (d.kind === "stop") {
      const c = cylinders.findIndex((x) => x.id === d.part);
      cylinderForce[c] = contact.F[j];
    }
  });
  cylinders.forEach((c, i) => {
    const a = own + 3 * c.deck;
    const w = contact.a[a] + contact.a[a + 1] * c.y - contact.a[a + 2] * c.x;
    if (stops[i] !== 0) stroke[i] = stops[i] > 0 ? c.up : -c.down;
    else stroke[i] = w - c.ground + cylinderForce[i] / c.stiffness;
  });
  return { cylinderForce, stroke };
}

/** The cylinder that most violates its present condition, or null. */
function stopChange(
  layout: Layout,
  force: Float64Array,
  stroke: Float64Array,
  stops: Int8Array,
  problem: Condensed,
  devices: Device[],
  contact: ContactResult,
): { cylinder: number; to: 0 | 1 | -1 } | null {
  const { cylinders, groups } = layout;
  let worst = 1e-12;
  let change: { cylinder: number; to: 0 | 1 | -1 } | null = null;
  const offer = (size: number, cylinder: number, to: 0 | 1 | -1) => {
    if (size > worst) {
      worst = size;
      change = { cylinder, to };
    }
  };
  const own = problem.N - 3 * layout.trains.length;
  groups.forEach((g, index) => {
    const oil = devices.findIndex((d) => d.kind === "group" && d.of === index);
    const free = g.cylinders.filter((c) => stops[c] === 0);
    const pressure = oil >= 0 ? contact.F[oil] / free.length : 0;
    for (const c of g.cylinders) {
      const cyl = cylinders[c];
      if (stops[c] === 0) {
        offer(stroke[c] - cyl.up, c, 1);
        offer(-cyl.down - stroke[c], c, -1);
      } else if (oil >= 0) {
        // Released when the oil would move it off its stop, measured as the stroke that would result.
        const a = own + 3 * cyl.deck;
        const w = contact.a[a] + contact.a[a + 1] * cyl.y - contact.a[a + 2] * cyl.x;
        const would = w - cyl.ground + pressure / cyl.stiffness;
        if (stops[c] > 0 && force[c] > pressure) offer(cyl.up - would, c, 0);
        if (stops[c] < 0 && force[c] < pressure) offer(would + cyl.down, c, 0);
      }
    }
  });
  return change;
}

/** Moments of the sideways forces about the axis of the set and the ground under each deck. */
function sideLoads(
  layout: Layout,
  tension: Float64Array,
  side: HorizontalResult | null,
  holds: Solution["holds"],
  gravity: [number, number, number],
): { loads: RowLoad[]; deckLoads: Float64Array } {
  const { model, trains, hoists, up } = layout;
  const loads: RowLoad[] = [];
  const deckLoads = new Float64Array(3 * trains.length);
  const axis = model.axisHeight;
  trains.forEach((t, i) => {
    deckLoads[3 * i] -= t.mass * gravity[2];
    deckLoads[3 * i + 1] -= t.mass * gravity[1] * t.cgHeight;
    deckLoads[3 * i + 2] += t.mass * gravity[0] * t.cgHeight;
  });
  hoists.forEach((h, i) => {
    const girders = layout.hoistGirders[i];
    const T = tension[i];
    if (h.mode === "load")
      for (const g of girders)
        loads.push({ row: rowAt(model, g, h.at, "w"), value: (T * up[2]) / girders.length });
    const fx = T * up[0] + (side ? side.lines[2 * i] : 0);
    const fy = T * up[1] + (side ? side.lines[2 * i + 1] : 0);
    if (fx !== 0)
      for (const g of girders)
        loads.push({ row: rowAt(model, g, h.at, "y"), value: (fx * (h.pickHeight - axis)) / girders.length });
    if (fy !== 0) {
      for (const g of girders)
        loads.push({
          row: rowAt(model, g, h.at, "x"),
          value: (-fy * (h.pickHeight - axis)) / girders.length,
        });
      const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
      if (e !== 0 && girders.length > 1) {
        const left = girders[0];
        const right = girders[girders.length - 1];
        const couple = (-fy * e) / (model.girders[left].y - model.girders[right].y);
        loads.push({ row: rowAt(model, left, h.at, "w"), value: couple });
        loads.push({ row: rowAt(model, right, h.at, "w"), value: -couple });
      }
    }
  });
  if (side)
    holds.forEach(({ hold, name }, i) => {
      const fx = side.holds[2 * i];
      const fy = side.holds[2 * i + 1];
      const g = model.girders.findIndex((girder) => girder.y === hold.y);
      if (fx !== 0) loads.push({ row: rowAt(model, g, hold.x, "y"), value: -fx * axis });
      if (fy !== 0) loads.push({ row: rowAt(model, g, hold.x, "x"), value: fy * axis });
      if (hold.train >= 0 || name.startsWith("bunk ")) {
        const deck = deckOf(layout, name);
        deckLoads[3 * deck + 1] += trains[deck].bunkHeight * fy;
        deckLoads[3 * deck + 2] -= trains[deck].bunkHeight * fx;
      }
    });
  return { loads, deckLoads };
}

function deckOf(layout: Layout, bunkName: string): number {
  return layout.trains.findIndex((t) => bunkName.startsWith(`bunk ${t.name} `));
}

function horizontalOf(
  layout: Layout,
  devices: Device[],
  contact: ContactResult,
  tension: Float64Array,
  gravity: [number, number, number],
  windLoad: { force: number; x: number } | null,
  windValue: number,
): { result: HorizontalResult; holds: Solution["holds"] } {
  const { state, model, trains, hoists, up } = layout;
  const holds: Solution["holds"] = [];
  const bearings = state.bearings ?? [];
  // Where no contact was given a side stiffness, all hold alike and statics share the force out.
  const given =
    trains.some((t) => (t.bunkSideStiffness ?? 0) > 0) || bearings.some((b) => (b.sideStiffness ?? 0) > 0);
  devices.forEach((d, j) => {
    if (!contact.active[j] || !(contact.F[j] > 0)) return;
    if (d.kind === "bunk") {
      const t = trains[d.of];
      const k = given ? (t.bunkSideStiffness ?? 0) : RIGID_SIDE;
      const braked = t.braked ?? true;
      const limit = t.bunkFriction === undefined ? Number.POSITIVE_INFINITY : t.bunkFriction * contact.F[j];
      holds.push({
        hold: { x: d.x, y: d.y, kx: braked ? k : 0, ky: k, limit, train: braked ? d.of : -1 },
        name: d.name,
        device: j,
      });
    } else if (d.kind === "bearing") {
      const b = bearings[d.of];
      const kind = b.holds ?? "free";
      if (kind === "free") return;
      const k = given ? (b.sideStiffness ?? 0) : RIGID_SIDE;
      const limit = Math.min(
        b.sideLimit ?? Number.POSITIVE_INFINITY,
        b.friction === undefined ? Number.POSITIVE_INFINITY : b.friction * contact.F[j],
      );
      holds.push({
        hold: { x: d.x, y: d.y, kx: kind === "fixed" ? k : 0, ky: k, limit, train: -1 },
        name: d.name,
        device: j,
      });
    }
  });
  let fx = model.mass * gravity[0];
  let fy = model.mass * gravity[1];
  let mz = fy * (model.cg[0] - model.origin) - fx * model.cg[1];
  if (windLoad) {
    fy += windValue * windLoad.force;
    mz += windValue * windLoad.force * (windLoad.x - model.origin);
  }
  const pendulums: Pendulum[] = hoists.map((h, i) => {
    let y = 0;
    for (const g of layout.hoistGirders[i]) y += model.girders[g].y / layout.hoistGirders[i].length;
    const T = tension[i];
    fx += T * up[0];
    fy += T * up[1];
    mz += T * up[1] * (h.at - model.origin) - T * up[0] * y;
    const stiffness = h.ropeLength ? T / h.ropeLength : 0;
    return { x: h.at, y, stiffness, offsetX: h.offset?.[0] ?? 0, offsetY: h.offset?.[1] ?? 0 };
  });
  const limits = trains.map((t) => t.brakeLimit ?? Number.POSITIVE_INFINITY);
  const scale = model.mass * state.gravity;
  const result = solveHorizontal(
    holds.map((h) => h.hold),
    pendulums,
    fx,
    fy,
    mz,
    model.origin,
    scale,
    limits,
  );
  return { result, holds };
}

function sideChange(
  a: HorizontalResult | null,
  aHolds: Solution["holds"],
  b: HorizontalResult | null,
  bHolds: Solution["holds"],
): number {
  if (!b) return 0;
  if (!a || aHolds.length !== bHolds.length || aHolds.some((h, i) => h.name !== bHolds[i].name)) {
    let most = 0;
    for (const f of b.holds) most = Math.max(most, Math.abs(f));
    for (const f of b.lines) most = Math.max(most, Math.abs(f));
    if (a) for (const f of a.holds) most = Math.max(most, Math.abs(f));
    return most;
  }
  let change = 0;
  for (let i = 0; i < b.holds.length; i++) change = Math.max(change, Math.abs(a.holds[i] - b.holds[i]));
  for (let i = 0; i < b.lines.length; i++) change = Math.max(change, Math.abs(a.lines[i] - b.lines[i]));
  return change;
}

/**
 * Out-of-balance force and moments of the set and of every deck, summed from coordinates on the undeformed geometry
 * with the named second-order terms (lean and level of hanging parts); as shares of W and W L.
 */
function residualOf(
  s: Solution,
  gravity: [number, number, number],
  windLoad: { force: number; height: number } | null,
  windValue: number,
): { force: number; moment: number } {
  const { model, layout, devices, contact, tension, horizontal } = s;
  const { trains, hoists, up, cylinders } = layout;
  const axis = model.axisHeight;
  const set = [0, 0, 0];
  const decks = trains.map(() => [0, 0, 0]);
  const at = (sum: number[], f: number, x: number, y: number) => {
    sum[0] += f;
    sum[1] += f * y;
    sum[2] -= f * x;
  };
  const [cx, cy, cz] = model.cg;
  at(set, -model.mass * gravity[2], cx - model.origin, cy);
  set[1] -= model.mass * gravity[1] * (cz - axis);
  set[2] += model.mass * gravity[0] * (cz - axis);
  if (windLoad) set[1] -= windValue * windLoad.force * (windLoad.height - axis);
  trains.forEach((t, i) => {
    decks[i][0] -= t.mass * gravity[2];
    decks[i][1] -= t.mass * gravity[1] * t.cgHeight;
    decks[i][2] += t.mass * gravity[0] * t.cgHeight;
  });
  devices.forEach((d, j) => {
    const F = contact.F[j];
    if (F === 0) return;
    if (d.kind === "bunk" || d.kind === "lashing") {
      const sign = d.kind === "bunk" ? 1 : -1;
      at(set, sign * F, d.x - model.origin, d.y);
      const deck = d.decks[0];
      at(decks[deck], -sign * F, d.x - trains[deck].at, d.y);
    } else if (d.kind === "bearing") at(set, F, d.x - model.origin, d.y);
    else if (d.kind === "lean of hoist") set[1] += F;
    else if (d.kind === "level of hoist") set[2] += F;
    else if (d.kind === "hoist") at(set, F * up[2], d.x - model.origin, d.y);
  });
  cylinders.forEach((c, i) => at(decks[c.deck], s.cylinderForce[i], c.x, c.y));
  hoists.forEach((h, i) => {
    let y = 0;
    for (const g of layout.hoistGirders[i]) y += model.girders[g].y / layout.hoistGirders[i].length;
    if (h.mode === "load") at(set, tension[i] * up[2], h.at - model.origin, y);
    const fx = tension[i] * up[0] + (horizontal ? horizontal.lines[2 * i] : 0);
    const fy = tension[i] * up[1] + (horizontal ? horizontal.lines[2 * i + 1] : 0);
    const e = h.rigging === "separate" || h.girders.length < 2 ? 0 : (h.pinHeight ?? 0);
    set[1] -= fy * (h.pickHeight + e - axis);
    set[2] += fx * (h.pickHeight - axis);
  });
  if (horizontal)
    s.holds.forEach(({ name }, i) => {
      const fx = horizontal.holds[2 * i];
      const fy = horizontal.holds[2 * i + 1];
      set[1] += fy * axis;
      set[2] -= fx * axis;
      if (name.startsWith("bunk ")) {
        const deck = deckOf(layout, name);
        decks[deck][1] += fy * trains[deck].bunkHeight;
        decks[deck][2] -= fx * trains[deck].bunkHeight;
      }
    });
  const W = model.mass * s.state.gravity || 1;
  let force = Math.abs(set[0]) / W;
  // A one-girder set has its lean held, so the moment about its length is not asked of the supports.
  let moment = Math.max(model.lean >= 0 ? Math.abs(set[1]) : 0, Math.abs(set[2])) / (W * model.length);
  for (const d of decks) {
    force = Math.max(force, Math.abs(d[0]) / W);
    moment = Math.max(moment, Math.abs(d[1]) / (W * model.length), Math.abs(d[2]) / (W * model.length));
  }
  return { force, moment };
}
