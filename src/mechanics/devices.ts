// From a State to devices: bunks, groups, cylinder stops, hoists, lashings, bearings, lean and level of hanging parts.
// Every support becomes one scalar law on one row; this file is the only one that knows which is which.

import { type DeckPoint, type Layout, meanPoint } from "./layout.ts";
import { rowAt } from "./rows.ts";
import { camberAt, type SetModel, type SetRow } from "./setModel.ts";
import { apexAside } from "./slings/legs.ts";
import type { StateHoist } from "./state/types.ts";

export type DeviceKind =
  | "group"
  | "stop"
  | "bunk"
  | "hoist"
  | "bearing"
  | "lashing"
  | "lean of hoist"
  | "level of hoist";

export interface Device {
  kind: DeviceKind;
  name: string;
  /** Index of the group, hoist, train, bearing or lashing in the State's own list. */
  of: number;
  /** Pushes (or pulls) only; a device that acts both ways and has no stiffness is left out of the pose. */
  oneSided: boolean;
  stiffness: number;
  datum: number;
  rows: SetRow[];
  factors: number[];
  /** Decks by index with their part of the row: heave, lean, level. */
  decks: number[];
  deckFactors: number[];
  /** Line of a separate pair, cylinder id of a stop. */
  part: string;
  /** Where it acts on the set: station and y. */
  x: number;
  y: number;
}

/** Where a cylinder is: carried by its group's oil, at the end of its travel out, or in. */
export type StopState = 0 | 1 | -1;

const NOTHING: number[] = [];
const NO_ROWS: SetRow[] = [];
const ONE = [1];
const MINUS_ONE = [-1];

/**
 * Moment arm of a hoist's tension about its picks, less the height of the CG above them: T times this is the
 * stiffness against lean of what hangs there. The sling length drops out. Derivation: equilibrium of hook, spreader
 * and parallel slings, small angles; for slings to one point the pin is part of the rigid triangle.
 */
export function leanArm(h: StateHoist, cgHeight: number): number {
  const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
  return e + h.pickHeight - cgHeight;
}

/** How much longer the sling of each of some girders is than their mean, m; null where all are alike. */
function unevenSlings(h: StateHoist, model: SetModel, girders: readonly number[]): number[] | null {
  const { longer } = h;
  if (longer === undefined) return null;
  const own = girders.map((g) => longer[model.girders[g].name] ?? 0);
  const mean = own.reduce((sum, x) => sum + x / own.length, 0);
  return own.map((x) => x - mean);
}

/**
 * How far to the right of the middle of its picks a hoist pulls on the level set, m, where its slings are of unequal
 * length; 0 otherwise. On a spreader, longer slings on the left by D let it hang level while the set leans, so that in
 * the level set the spreader leans by D over the picks' distance and its lower pins swing out by `pinHeight` times
 * that; slings to a point put the point itself aside, with the pin at its own height above the picks.
 */
export function pullAside(h: StateHoist, model: SetModel, girders: readonly number[]): number {
  const uneven = girders.length > 1 ? unevenSlings(h, model, girders) : null;
  if (uneven === null || h.rigging === "separate") return 0;
  const between = model.girders[girders[0]].y - model.girders[girders[girders.length - 1]].y;
  const [left, right] = [uneven[0], uneven[uneven.length - 1]];
  const e = h.pinHeight ?? 0;
  if (h.rigging === "spreader") return (e * (left - right)) / between;
  const even = Math.hypot(e, between / 2);
  return -apexAside(even + left, even + right, between);
}

/** What unequal slings put to the lean at which a hoist turns the set neither way, rad. */
export function leanAside(h: StateHoist, model: SetModel, girders: readonly number[]): number {
  const arm = leanArm(h, model.cg[2]);
  return arm === 0 ? 0 : -pullAside(h, model, girders) / arm;
}

/**
 * Devices of a layout for given tensions of the hoists and given stops of the cylinders. The list's order and names
 * hang on the layout and the stops alone.
 */
export function devicesOf(layout: Layout, tension: Float64Array, stops: Int8Array): Device[] {
  const list: Device[] = [];
  addGroups(layout, stops, list);
  addBunks(layout, list);
  addHoists(layout, list);
  addBearings(layout, list);
  addLashings(layout, list);
  hang(layout, list, tension);
  return list;
}

/** Gives lean and level of hanging parts the stiffness of these tensions. */
export function hang(layout: Layout, devices: Device[], tension: Float64Array): void {
  const cg = layout.model.cg[2];
  for (const d of devices)
    if (d.kind === "lean of hoist") d.stiffness = tension[d.of] * leanArm(layout.hoists[d.of], cg);
    else if (d.kind === "level of hoist") d.stiffness = tension[d.of] * (layout.hoists[d.of].pickHeight - cg);
}

function addGroups(layout: Layout, stops: Int8Array, list: Device[]): void {
  const { cylinders, groups, trains } = layout;
  const onDecks = (
    kind: DeviceKind,
    name: string,
    of: number,
    p: DeckPoint,
    datum: number,
    k: number,
    part: string,
  ) => {
    let x = p.x;
    for (let s = 0; s < p.decks.length; s++) x += p.factors[3 * s] * trains[p.decks[s]].at;
    list.push({
      kind,
      name,
      of,
      oneSided: true,
      stiffness: k,
      datum,
      rows: NO_ROWS,
      factors: NOTHING,
      decks: p.decks,
      deckFactors: p.factors,
      part,
      x,
      y: p.y,
    });
  };
  for (let index = 0; index < groups.length; index++) {
    const g = groups[index];
    let ground = 0;
    let compliance = 0;
    let stopped = 0;
    let n = 0;
    for (const c of g.cylinders) {
      const cylinder = cylinders[c];
      if (stops[c] === 0) {
        n++;
        ground += cylinder.ground;
        compliance += 1 / cylinder.stiffness;
        continue;
      }
      const stroke = stops[c] > 0 ? cylinder.up : -cylinder.down;
      const at = meanPoint(cylinders, [c]);
      stopped += stroke;
      const datum = cylinder.ground + stroke;
      onDecks("stop", `cylinder ${cylinder.id}`, index, at, datum, cylinder.stiffness, cylinder.id);
    }
    if (n === 0) continue;
    // Equal force f in n cylinders and a constant sum of strokes: F = n f on the mean deck level.
    const lift = (g.lift * g.cylinders.length - stopped) / n;
    const whole = n === g.cylinders.length;
    const at = whole
      ? g.mean
      : meanPoint(
          cylinders,
          g.cylinders.filter((c) => stops[c] === 0),
        );
    onDecks("group", layout.wiring.groupNames[index], index, at, ground / n + lift, (n * n) / compliance, "");
  }
}

function addBunks(layout: Layout, list: Device[]): void {
  const { model, trains, wiring } = layout;
  for (let deck = 0; deck < trains.length; deck++) {
    const t = trains[deck];
    const girders = wiring.bunkGirders[deck];
    for (let b = 0; b < t.bunks.length; b++)
      for (let i = 0; i < girders.length; i++) {
        const g = girders[i];
        const { y, name } = model.girders[g];
        const x = t.at + t.bunks[b];
        list.push({
          kind: "bunk",
          name: wiring.bunkNames[deck][b * girders.length + i],
          of: deck,
          oneSided: true,
          stiffness: t.bunkStiffness,
          datum: (t.packing?.[name] ?? 0) - camberAt(model, g, x),
          rows: [rowAt(model, g, x, "w")],
          factors: ONE,
          decks: wiring.deckLists[deck],
          deckFactors: [-1, -y, t.bunks[b]],
          part: name,
          x,
          y,
        });
      }
  }
}

function addHoists(layout: Layout, list: Device[]): void {
  const { model, hoists, up, wiring } = layout;
  for (let index = 0; index < hoists.length; index++) {
    const h = hoists[index];
    const girders = layout.hoistGirders[index];
    const n = girders.length;
    const rows = girders.map((g) => rowAt(model, g, h.at, "w"));
    const add = (
      kind: DeviceKind,
      name: string,
      oneSided: boolean,
      stiffness: number,
      datum: number,
      on: SetRow[],
      factors: number[],
      part: string,
      y: number,
    ) =>
      list.push({
        kind,
        name,
        of: index,
        oneSided,
        stiffness,
        datum,
        rows: on,
        factors,
        decks: NOTHING,
        deckFactors: NOTHING,
        part,
        x: h.at,
        y,
      });
    if (h.mode === "takeUp") {
      const name = wiring.hoistNames[index];
      const takeUp = h.takeUp ?? 0;
      if (h.rigging === "separate") {
        const uneven = unevenSlings(h, model, girders);
        for (let i = 0; i < n; i++) {
          const g = model.girders[girders[i]];
          const datum = takeUp - (uneven?.[i] ?? 0) - camberAt(model, girders[i], h.at) * up[2];
          add("hoist", name, true, h.stiffness / n, datum, [rows[i]], [up[2]], g.name, g.y);
        }
      } else {
        let datum = takeUp;
        for (const g of girders) datum -= (camberAt(model, g, h.at) * up[2]) / n;
        const factors = girders.map(() => up[2] / n);
        add("hoist", name, true, h.stiffness, datum, rows, factors, "", meanY(model, girders));
      }
    }
    if (n > 1) {
      const left = girders[0];
      const right = girders[n - 1];
      const between = model.girders[left].y - model.girders[right].y;
      const camber = camberAt(model, left, h.at) - camberAt(model, right, h.at);
      const datum = -camber / between + leanAside(h, model, girders);
      const pair = [rows[0], rows[n - 1]];
      add("lean of hoist", h.name, false, 0, datum, pair, [1 / between, -1 / between], "", 0);
    }
    const turns = girders.map((g) => rowAt(model, g, h.at, "y"));
    const factors = girders.map(() => 1 / n);
    add("level of hoist", h.name, false, 0, 0, turns, factors, "", 0);
  }
}

function addBearings(layout: Layout, list: Device[]): void {
  const { state, model, wiring } = layout;
  const bearings = state.bearings ?? [];
  for (let index = 0; index < bearings.length; index++) {
    const b = bearings[index];
    const g = wiring.bearingGirders[index];
    list.push({
      kind: "bearing",
      name: wiring.bearingNames[index],
      of: index,
      oneSided: true,
      stiffness: b.stiffness,
      datum: b.seat - camberAt(model, g, b.at),
      rows: [rowAt(model, g, b.at, "w")],
      factors: ONE,
      decks: NOTHING,
      deckFactors: NOTHING,
      part: "",
      x: b.at,
      y: model.girders[g].y,
    });
  }
}

function addLashings(layout: Layout, list: Device[]): void {
  const { state, model, trains, wiring } = layout;
  const lashings = state.lashings ?? [];
  for (let index = 0; index < lashings.length; index++) {
    const l = lashings[index];
    const g = wiring.lashingGirders[index];
    const deck = wiring.lashingDecks[index];
    const { y } = model.girders[g];
    list.push({
      kind: "lashing",
      name: `lashing ${l.girder} ${l.at}`,
      of: index,
      oneSided: true,
      stiffness: l.stiffness,
      datum: -(l.slack ?? 0) + (l.pretension ?? 0) / l.stiffness + camberAt(model, g, l.at),
      rows: [rowAt(model, g, l.at, "w")],
      factors: MINUS_ONE,
      decks: [deck],
      deckFactors: [1, y, -(l.at - trains[deck].at)],
      part: "",
      x: l.at,
      y,
    });
  }
}

/** Mean y of some girders. */
export function meanY(model: SetModel, girders: readonly number[]): number {
  let y = 0;
  for (const g of girders) y += model.girders[g].y / girders.length;
  return y;
}
