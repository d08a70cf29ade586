// One pose solved: vertical problem, horizontal problem, the tensions and stops that couple them, in at most 5 passes.

import { vector } from "../numeric/index.ts";
import { condense, setLoads, setStiffness } from "./condense.ts";
import {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  contactWorkspace,
  solveContact,
} from "./contact.ts";
import { cylindersOf, stopsOver } from "./cylinders.ts";
import { type Device, devicesOf, hang } from "./devices.ts";
import type { HorizontalResult } from "./horizontal.ts";
import { type Layout, layoutOf } from "./layout.ts";
import { windCase } from "./ownWeight.ts";
import { prepareSet } from "./prepare.ts";
import { residualOf } from "./residual.ts";
import type { SetModel } from "./setModel.ts";
import { type Coupling, settle, tensionsOf } from "./settle.ts";
import { type Acting, horizontalOf, lateralMatters, sideChange, sideLoads } from "./sideways.ts";
import type { Solution } from "./solution.ts";
import { findMechanism, nameMechanism } from "./stability.ts";
import type { State } from "./state/types.ts";

const MOST_PASSES = 5;
const MOST_STOP_ROUNDS = 60;

export interface SolveOptions {
  /** The prepared set; made from the State when left out. */
  model?: SetModel;
  workspace?: ContactWorkspace;
  /** A neighbour's solution, whose contacts are tried first. */
  near?: Solution | null;
}

/** What is left of the coupling after a solve, as a share of W L or W: below the first it stands, above the second not. */
const AGREED = 1e-11;
const AGREED_AT_LAST = 1e-9;

/**
 * Solves the statics of a State: mechanics never clip a negative reaction, they open the contact and solve again.
 * Throws RangeError when a support lies off the set. The answer depends on the State alone.
 */
export function solveStatics(state: State, options: SolveOptions = {}): Solution {
  const model = options.model ?? prepareSet(state);
  const ws = options.workspace ?? contactWorkspace();
  const layout = layoutOf(state, model);
  const { hoists, trains, cylinders } = layout;
  const acting = actingOf(layout);
  const { gravity, wind, lateral } = acting;
  const weight = model.mass * state.gravity;
  const byTakeUp = hoists.some((h) => h.mode === "takeUp");

  let coupling: Coupling = { tension: firstTension(layout, weight), side: null, holds: [] };
  let stops = layout.wiring.noStops;
  let devices = devicesOf(layout, coupling.tension, stops);
  let start = options.near && sameDevices(options.near.devices, devices) ? options.near.contact.active : null;
  let problem: Condensed | null = null;
  let contact: ContactResult | null = null;
  const cylinderForce = vector(cylinders.length);
  const stroke = vector(cylinders.length);
  let passes = 0;
  let stopRounds = 0;
  for (;;) {
    passes++;
    const { tension, side, holds } = coupling;
    const { loads, deckLoads } = sideLoads(layout, tension, side, holds, gravity);
    hang(layout, devices, tension);
    if (problem === null) {
      problem = condense(model, devices, trains.length, gravity, wind, loads, deckLoads, ws.problem);
      grow(ws, problem);
      ws.problem = problem;
    } else {
      setStiffness(devices, problem);
      // Without sideways forces the loads do not hang on the tensions.
      if (lateral) setLoads(model, devices, problem, gravity, wind, loads, deckLoads);
    }
    contact = solveContact(problem, ws, start, contact);
    start = contact.active;
    const found = tensionsOf(layout, devices, contact.F);
    const solution: Solution = {
      status: "solved",
      motion: "",
      state,
      model,
      layout,
      devices,
      problem,
      contact,
      tension,
      hoistForce: found,
      loads,
      stops,
      cylinderForce,
      stroke,
      horizontal: side,
      holds,
      passes,
      residual: { force: Number.NaN, moment: Number.NaN },
      diagrams: null,
    };
    const moves = standing(model, layout, problem, contact, devices);
    if (moves !== null) {
      if (passes >= 3 || !byTakeUp) return { ...solution, status: "mechanism", motion: moves };
      // The first tensions were a guess. When it left no equilibrium, lines that steady nothing come next; else those
      // that it led to, which may hold what it did not.
      const lost = passes === 1 && !(contact.settled && contact.stable);
      coupling = { tension: lost ? withoutTakeUps(layout) : withinReason(found, weight), side, holds };
      continue;
    }

    let moved = tensionChange(layout, devices, contact, tension, found) / (weight * model.length);
    // The first tensions of take-ups are a guess; one that does not hold is only a step on the way.
    if (byTakeUp && passes === 1 && stopRounds === 0 && moved > AGREED) {
      coupling = settle(layout, devices, problem, ws, contact, tension, acting);
      continue;
    }

    cylindersOf(layout, devices, problem, contact, stops, cylinderForce, stroke);
    // Cylinders at the end of their travel: all that change together, or one at a time when that went in a circle.
    const wanted = stopsOver(layout, stops, stroke, problem, contact);
    if (wanted !== null && stopRounds < MOST_STOP_ROUNDS) {
      stops = stopRounds < MOST_STOP_ROUNDS / 2 ? wanted : firstChange(stops, wanted);
      devices = devicesOf(layout, tension, stops);
      problem = null;
      contact = null;
      start = null;
      stopRounds++;
      passes--;
      continue;
    }

    let next: ReturnType<typeof horizontalOf> | null = null;
    if (lateral) {
      next = horizontalOf(layout, devices, contact, found, acting, side);
      for (let i = 0; i < hoists.length; i++)
        moved = Math.max(moved, (1e-2 * Math.abs(found[i] - tension[i])) / weight);
      moved = Math.max(moved, sideChange(side, holds, next.result, next.holds) / weight);
    }
    // A third pass that still swings within what the last one may leave is no nearer after a fourth.
    const enough = passes >= 3 ? AGREED_AT_LAST : AGREED;
    if (moved <= enough || passes >= MOST_PASSES) {
      solution.residual = residualOf(solution, acting);
      if (!contact.settled || wanted !== null || !(moved <= AGREED_AT_LAST))
        return { ...solution, status: "unsettled" };
      if (next !== null && next.result.moving.length === 0 && !next.result.settled)
        return { ...solution, status: "unsettled" };
      const swings = next === null ? null : swungTooFar(layout, next.result, found);
      if (swings !== null)
        return {
          ...solution,
          status: "mechanism",
          motion: swings,
          residual: { force: Number.NaN, moment: Number.NaN },
        };
      return solution;
    }
    coupling = settle(layout, devices, problem, ws, contact, tension, acting);
  }
}

function firstChange(stops: Int8Array, wanted: Int8Array): Int8Array {
  const next = stops.slice();
  const c = stops.findIndex((stop, i) => stop !== wanted[i]);
  next[c] = wanted[c];
  return next;
}

function actingOf(layout: Layout): Acting {
  const { state, model, up } = layout;
  const g = state.gravity;
  const blows = state.wind !== undefined && state.wind.pressure !== 0;
  const w = blows && state.wind ? windCase(model, state.wind.toward) : null;
  const value = state.wind ? state.wind.pressure * state.wind.factor : 0;
  return {
    gravity: [-up[0] * g, -up[1] * g, up[2] * g],
    wind: w === null ? null : { ...w, value },
    lateral: lateralMatters(state, layout, blows),
  };
}

/** Given loads, and an even guess of what the other hoists carry. */
function firstTension({ hoists }: Layout, weight: number): Float64Array {
  const tension = new Float64Array(hoists.length);
  for (let i = 0; i < hoists.length; i++)
    tension[i] = hoists[i].mode === "load" ? (hoists[i].load ?? 0) : (0.5 * weight) / hoists.length;
  return tension;
}

function withoutTakeUps({ hoists }: Layout): Float64Array {
  return Float64Array.from(hoists, (h) => (h.mode === "load" ? (h.load ?? 0) : 0));
}

function withinReason(found: Float64Array, weight: number): Float64Array {
  return found.map((T) => (Number.isFinite(T) ? Math.min(T, weight) : weight / found.length));
}

/** Whether two lists hold the same devices in the same order, so that the contacts of one can start the other. */
function sameDevices(a: readonly Device[], b: readonly Device[]): boolean {
  if (a.length !== b.length) return false;
  for (let j = 0; j < a.length; j++)
    if (a[j].kind !== b[j].kind || a[j].name !== b[j].name || a[j].part !== b[j].part) return false;
  return true;
}

/** Greatest moment, N m, that a change of tension makes on a part that hangs askew. */
function tensionChange(
  { hoists, model }: Layout,
  devices: readonly Device[],
  contact: ContactResult,
  tension: Float64Array,
  found: Float64Array,
): number {
  let most = 0;
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind !== "lean of hoist" && d.kind !== "level of hoist") continue;
    const h = hoists[d.of];
    const lever = Math.abs(h.pickHeight) + (h.pinHeight ?? 0) + Math.abs(model.cg[2]);
    const turn = Math.abs(contact.v[j] - d.datum);
    most = Math.max(most, Math.abs(found[d.of] - tension[d.of]) * lever * turn);
  }
  return most;
}

function grow(ws: ContactWorkspace, p: Condensed): void {
  const need = p.m + p.N;
  if (need > ws.capacity) Object.assign(ws, contactWorkspace(need + 16));
}

/** Lean or level of what hangs, rad, up to which small angles are taken for the truth (sine within 1.5 %). */
const MOST_TURN = 0.3;

/** What hangs and would come to rest only far beyond small angles has no equilibrium that these statics can tell. */
function turnedTooFar(model: SetModel, devices: readonly Device[], contact: ContactResult): string | null {
  for (let j = 0; j < devices.length; j++) {
    const { kind, datum } = devices[j];
    if (kind !== "lean of hoist" && kind !== "level of hoist") continue;
    if (contact.active[j] === 0 || Math.abs(contact.v[j] - datum) <= MOST_TURN) continue;
    return model.modeNames[kind === "lean of hoist" ? model.lean : model.level];
  }
  return null;
}

/** The sideways motion of a set that nothing holds, or that comes to rest only far beyond small angles; else null. */
function swungTooFar({ hoists }: Layout, side: HorizontalResult, tension: Float64Array): string | null {
  if (side.moving.length > 0) return `the set slides: ${side.moving.join(", ")}`;
  if (Math.abs(side.motion[2]) > MOST_TURN) return "the set slides: turning in plan (yaw)";
  for (let i = 0; i < hoists.length; i++)
    if (Math.hypot(side.lines[2 * i], side.lines[2 * i + 1]) > MOST_TURN * tension[i])
      return `the set swings sideways: line ${hoists[i].name} would lean by more than ${MOST_TURN}`;
  return null;
}

/** The motion that nothing holds, in words, or null when the pose stands. */
function standing(
  model: SetModel,
  layout: Layout,
  problem: Condensed,
  contact: ContactResult,
  devices: Device[],
): string | null {
  if (contact.pivotRatio > 1e-5 && contact.settled && contact.stable)
    return turnedTooFar(model, devices, contact);
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
  return turnedTooFar(model, devices, contact);
}
