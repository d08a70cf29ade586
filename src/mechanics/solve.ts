// One pose solved: vertical problem, horizontal problem, the tensions and stops that couple them, in at most 5 passes.

import { condense, type RowLoad } from "./condense.ts";
import {
  type Condensed,
  type ContactResult,
  type ContactWorkspace,
  contactWorkspace,
  solveContact,
} from "./contact.ts";
import { cylindersOf, stopChange } from "./cylinders.ts";
import { type Device, devicesOf, type Layout, layoutOf } from "./devices.ts";
import type { HorizontalResult } from "./horizontal.ts";
import { windCase } from "./ownWeight.ts";
import { prepareSet } from "./prepare.ts";
import { residualOf } from "./residual.ts";
import type { SetModel } from "./setModel.ts";
import { horizontalOf, lateralMatters, type NamedHold, sideChange, sideLoads } from "./sideways.ts";
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
  holds: NamedHold[];
  passes: number;
  residual: { force: number; moment: number };
}

const MOST_PASSES = 5;

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
  let sideHolds: NamedHold[] = [];
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
