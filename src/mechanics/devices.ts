// From a State to condensed devices: bunks, groups, cylinder stops, hoists, lashings, bearings, lean and level of
// hanging parts. Every support becomes one scalar law on one row; this file is the only one that knows which is which.

import { rowAt } from "./rows.ts";
import { camberAt, type SetModel, type SetRow } from "./setModel.ts";
import type { State, StateHoist, StateTrain } from "./state/types.ts";

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
  /** Index of the hoist, train, bearing or lashing in the State's own list. */
  of: number;
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

/** Path-frame components of the true upward direction: [x, y, z], unit length. */
export function trueUp(grade: number, crossfall: number): [number, number, number] {
  const m = Math.sqrt(1 + grade * grade);
  const n = Math.sqrt(1 + grade * grade + crossfall * crossfall);
  return [grade / m, -crossfall / (n * m), 1 / n];
}

export interface Cylinder {
  id: string;
  deck: number;
  x: number;
  y: number;
  ground: number;
  stiffness: number;
  /** Limits of stroke, m, out positive. */
  up: number;
  down: number;
  group: number;
  line: number;
  side: "L" | "R";
}

export interface GroupData {
  name: string;
  cylinders: number[];
  lift: number;
}

/** Where a cylinder is: carried by its group's oil, at the end of its travel out, or in. */
export type StopState = 0 | 1 | -1;

/** The parts of a State that the devices are built from, read once per State. */
export interface Layout {
  state: State;
  model: SetModel;
  trains: readonly StateTrain[];
  hoists: readonly StateHoist[];
  cylinders: Cylinder[];
  groups: GroupData[];
  up: [number, number, number];
  /** Girder indices of each hoist, from left (greatest y) to right. */
  hoistGirders: number[][];
}

export function layoutOf(state: State, model: SetModel): Layout {
  const trains = state.trains ?? [];
  const cylinders: Cylinder[] = [];
  const index = new Map<string, number>();
  trains.forEach((t, deck) => {
    for (let line = 1; line <= t.lines; line++)
      for (const side of ["L", "R"] as const) {
        const id = `${t.name}:${line}${side}`;
        index.set(id, cylinders.length);
        cylinders.push({
          id,
          deck,
          x: (line - (t.lines + 1) / 2) * t.pitch,
          y: side === "L" ? t.gauge / 2 : -t.gauge / 2,
          ground: state.ground?.[id] ?? 0,
          stiffness: t.cylinderStiffness,
          up: t.strokeUp ?? Number.POSITIVE_INFINITY,
          down: t.strokeDown ?? Number.POSITIVE_INFINITY,
          group: -1,
          line,
          side,
        });
      }
  });
  const groups = Object.entries(state.groups ?? {}).map(([name, ids], g) => {
    const list = ids.map((id) => {
      const c = index.get(id);
      if (c === undefined) throw new RangeError(`group ${name} names the cylinder ${id}, which no train has`);
      cylinders[c].group = g;
      return c;
    });
    return { name, cylinders: list, lift: state.groupLift?.[name] ?? 0 };
  });
  const girderIndex = (name: string) => model.girders.findIndex((g) => g.name === name);
  const hoists = state.hoists ?? [];
  return {
    state,
    model,
    trains,
    hoists,
    cylinders,
    groups,
    up: trueUp(state.grade ?? 0, state.crossfall ?? 0),
    hoistGirders: hoists.map((h) =>
      h.girders.map(girderIndex).sort((a, b) => model.girders[b].y - model.girders[a].y),
    ),
  };
}

/**
 * Moment arm of a hoist's tension about its picks, less the height of the CG above them: T times this is the
 * stiffness against lean of what hangs there. The sling length drops out. Derivation: equilibrium of hook, spreader
 * and parallel slings, small angles; for slings to one point the pin is part of the rigid triangle.
 */
export function leanArm(h: StateHoist, cgHeight: number): number {
  const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
  return e + h.pickHeight - cgHeight;
}

/** Devices of a layout for given tensions of the hoists and given stops of the cylinders. */
export function devicesOf(layout: Layout, tension: Float64Array, stops: Int8Array): Device[] {
  const { state, model, trains, cylinders, groups, hoists, up } = layout;
  const list: Device[] = [];
  const girderIndex = (name: string) => model.girders.findIndex((g) => g.name === name);

  groups.forEach((g, index) => {
    const free = g.cylinders.filter((c) => stops[c] === 0);
    let stopped = 0;
    for (const c of g.cylinders) {
      if (stops[c] === 0) continue;
      const cyl = cylinders[c];
      const stroke = stops[c] > 0 ? cyl.up : -cyl.down;
      stopped += stroke;
      list.push(onDeck("stop", `cylinder ${cyl.id}`, index, [c], cyl.ground + stroke, cyl.stiffness, cyl.id));
    }
    if (free.length === 0) return;
    let ground = 0;
    let compliance = 0;
    for (const c of free) {
      ground += cylinders[c].ground;
      compliance += 1 / cylinders[c].stiffness;
    }
    // Equal force f in n cylinders and a constant sum of strokes: F = n f on the mean deck level.
    const n = free.length;
    const lift = (g.lift * g.cylinders.length - stopped) / n;
    list.push(onDeck("group", `group ${g.name}`, index, free, ground / n + lift, (n * n) / compliance, ""));
  });

  function onDeck(
    kind: DeviceKind,
    name: string,
    of: number,
    wheels: number[],
    datum: number,
    stiffness: number,
    part: string,
  ): Device {
    const decks: number[] = [];
    const deckFactors: number[] = [];
    let x = 0;
    let y = 0;
    for (const c of wheels) {
      const cyl = cylinders[c];
      let slot = decks.indexOf(cyl.deck);
      if (slot < 0) {
        slot = decks.length;
        decks.push(cyl.deck);
        deckFactors.push(0, 0, 0);
      }
      deckFactors[3 * slot] += 1 / wheels.length;
      deckFactors[3 * slot + 1] += cyl.y / wheels.length;
      deckFactors[3 * slot + 2] -= cyl.x / wheels.length;
      x += (trains[cyl.deck].at + cyl.x) / wheels.length;
      y += cyl.y / wheels.length;
    }
    return {
      kind,
      name,
      of,
      oneSided: true,
      stiffness,
      datum,
      rows: [],
      factors: [],
      decks,
      deckFactors,
      part,
      x,
      y,
    };
  }

  trains.forEach((t, deck) => {
    t.bunks.forEach((along, b) => {
      for (const name of t.bunkGirders) {
        const g = girderIndex(name);
        const y = model.girders[g].y;
        const x = t.at + along;
        list.push({
          kind: "bunk",
          name: `bunk ${t.name} ${name} ${b + 1}`,
          of: deck,
          oneSided: true,
          stiffness: t.bunkStiffness,
          datum: (t.packing?.[name] ?? 0) - camberAt(model, g, x),
          rows: [rowAt(model, g, x, "w")],
          factors: [1],
          decks: [deck],
          deckFactors: [-1, -y, along],
          part: name,
          x,
          y,
        });
      }
    });
  });

  hoists.forEach((h, index) => {
    const girders = layout.hoistGirders[index];
    const camber = girders.map((g) => camberAt(model, g, h.at));
    const rows = girders.map((g) => rowAt(model, g, h.at, "w"));
    const base = { of: index, decks: [], deckFactors: [], x: h.at };
    if (h.mode === "takeUp") {
      const takeUp = h.takeUp ?? 0;
      if (h.rigging === "separate")
        girders.forEach((g, i) => {
          list.push({
            ...base,
            kind: "hoist",
            name: `hoist ${h.name}`,
            part: model.girders[g].name,
            oneSided: true,
            stiffness: h.stiffness / girders.length,
            datum: takeUp - camber[i] * up[2],
            rows: [rows[i]],
            factors: [up[2]],
            y: model.girders[g].y,
          });
        });
      else {
        const share = 1 / girders.length;
        let datum = takeUp;
        for (const c of camber) datum -= c * share * up[2];
        list.push({
          ...base,
          kind: "hoist",
          name: `hoist ${h.name}`,
          part: "",
          oneSided: true,
          stiffness: h.stiffness,
          datum,
          rows,
          factors: rows.map(() => share * up[2]),
          y: meanY(model, girders),
        });
      }
    }
    const T = tension[index];
    if (!(T > 0)) return;
    const cg = model.cg[2];
    const leaning = T * leanArm(h, cg);
    if (girders.length > 1 && leaning !== 0) {
      const left = girders[0];
      const right = girders[girders.length - 1];
      const between = model.girders[left].y - model.girders[right].y;
      list.push({
        ...base,
        kind: "lean of hoist",
        name: h.name,
        part: "",
        oneSided: false,
        stiffness: leaning,
        datum: -(camber[0] - camber[camber.length - 1]) / between,
        rows: [rows[0], rows[rows.length - 1]],
        factors: [1 / between, -1 / between],
        y: 0,
      });
    }
    const tipping = T * (h.pickHeight - cg);
    if (tipping !== 0) {
      const turns = girders.map((g) => rowAt(model, g, h.at, "y"));
      list.push({
        ...base,
        kind: "level of hoist",
        name: h.name,
        part: "",
        oneSided: false,
        stiffness: tipping,
        datum: 0,
        rows: turns,
        factors: turns.map(() => 1 / turns.length),
        y: 0,
      });
    }
  });

  (state.bearings ?? []).forEach((b, index) => {
    const g = girderIndex(b.girder);
    list.push({
      kind: "bearing",
      name: `bearing ${b.name}`,
      of: index,
      oneSided: true,
      stiffness: b.stiffness,
      datum: b.seat - camberAt(model, g, b.at),
      rows: [rowAt(model, g, b.at, "w")],
      factors: [1],
      decks: [],
      deckFactors: [],
      part: "",
      x: b.at,
      y: model.girders[g].y,
    });
  });

  (state.lashings ?? []).forEach((l, index) => {
    const g = girderIndex(l.girder);
    const deck = trains.findIndex((t) => t.name === l.train);
    const y = model.girders[g].y;
    list.push({
      kind: "lashing",
      name: `lashing ${l.girder} ${l.at}`,
      of: index,
      oneSided: true,
      stiffness: l.stiffness,
      datum: -(l.slack ?? 0) + (l.pretension ?? 0) / l.stiffness + camberAt(model, g, l.at),
      rows: [rowAt(model, g, l.at, "w")],
      factors: [-1],
      decks: [deck],
      deckFactors: [1, y, -(l.at - trains[deck].at)],
      part: "",
      x: l.at,
      y,
    });
  });
  return list;
}

function meanY(model: SetModel, girders: number[]): number {
  let y = 0;
  for (const g of girders) y += model.girders[g].y / girders.length;
  return y;
}
