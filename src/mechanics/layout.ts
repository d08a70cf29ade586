// The parts of a State that the devices are built from. What only says who belongs to whom is kept with the prepared
// set from one pose to the next, and made anew as soon as one word or number of it differs.

import type { SetModel } from "./setModel.ts";
import type { State, StateHoist, StateTrain } from "./state/types.ts";

export interface Cylinder {
  id: string;
  deck: number;
  /** From the deck's centre. */
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

/** The mean of some cylinders' deck points: decks with their heave, lean and level parts, and where it lies. */
export interface DeckPoint {
  decks: number[];
  factors: number[];
  /** Mean of the cylinders' x from their decks' centres, and of their y. */
  x: number;
  y: number;
}

export interface GroupData {
  name: string;
  cylinders: readonly number[];
  /** Commanded mean lift, m. */
  lift: number;
  /** Where its force acts while no cylinder stands at a stop. */
  mean: DeckPoint;
}

/** Who belongs to whom: unchanged while a set rolls. */
interface Wiring {
  trains: StateTrain[];
  bunkGirders: number[][];
  bunkNames: string[][];
  /** Every deck as a list of one. */
  deckLists: number[][];
  cylinders: Cylinder[];
  groups: GroupData[];
  groupNames: string[];
  /** Every cylinder within its travel. */
  noStops: Int8Array;
  hoists: { name: string; girders: string[] }[];
  hoistNames: string[];
  hoistGirders: number[][];
  bearings: { name: string; girder: string }[];
  bearingNames: string[];
  bearingGirders: number[];
  lashings: { train: string; girder: string }[];
  lashingDecks: number[];
  lashingGirders: number[];
}

export interface Layout {
  state: State;
  model: SetModel;
  trains: readonly StateTrain[];
  hoists: readonly StateHoist[];
  cylinders: readonly Cylinder[];
  groups: readonly GroupData[];
  /** True upward direction in the coordinates of the path. */
  up: readonly [number, number, number];
  /** Girder indices of each hoist, from left (greatest y) to right. */
  hoistGirders: readonly number[][];
  wiring: Wiring;
}

/** Path-frame components of the true upward direction: [x, y, z], unit length. */
export function trueUp(grade: number, crossfall: number): [number, number, number] {
  const m = Math.sqrt(1 + grade * grade);
  const n = Math.sqrt(1 + grade * grade + crossfall * crossfall);
  return [grade / m, -crossfall / (n * m), 1 / n];
}

/** Reads a State. Throws RangeError when a group names a cylinder that no train has. */
export function layoutOf(state: State, model: SetModel): Layout {
  const known = model.wiring as Wiring | null;
  const wiring = known !== null && sameWiring(known, state) ? known : wire(state, model);
  model.wiring = wiring;
  return {
    state,
    model,
    trains: state.trains ?? [],
    hoists: state.hoists ?? [],
    cylinders: onGround(wiring, state),
    groups: lifted(wiring, state),
    up: trueUp(state.grade ?? 0, state.crossfall ?? 0),
    hoistGirders: wiring.hoistGirders,
    wiring,
  };
}

/** Mean of the deck points of some cylinders, by their indices. */
export function meanPoint(cylinders: readonly Cylinder[], wheels: readonly number[]): DeckPoint {
  const decks: number[] = [];
  const factors: number[] = [];
  const share = 1 / wheels.length;
  let x = 0;
  let y = 0;
  for (const c of wheels) {
    const cylinder = cylinders[c];
    let slot = decks.indexOf(cylinder.deck);
    if (slot < 0) {
      slot = decks.length;
      decks.push(cylinder.deck);
      factors.push(0, 0, 0);
    }
    factors[3 * slot] += share;
    factors[3 * slot + 1] += cylinder.y * share;
    factors[3 * slot + 2] -= cylinder.x * share;
    x += cylinder.x * share;
    y += cylinder.y * share;
  }
  return { decks, factors, x, y };
}

/** The cylinders with this State's ground levels. */
function onGround({ cylinders }: Wiring, { ground }: State): Cylinder[] {
  if (ground === undefined) return cylinders;
  let level = true;
  for (const c of cylinders) if ((ground[c.id] ?? 0) !== 0) level = false;
  if (level) return cylinders;
  return cylinders.map((c) => ({
    id: c.id,
    deck: c.deck,
    x: c.x,
    y: c.y,
    ground: ground[c.id] ?? 0,
    stiffness: c.stiffness,
    up: c.up,
    down: c.down,
    group: c.group,
    line: c.line,
    side: c.side,
  }));
}

/** The groups with this State's commanded lifts. */
function lifted({ groups }: Wiring, { groupLift }: State): GroupData[] {
  if (groupLift === undefined) return groups;
  return groups.map((g) => ({
    name: g.name,
    cylinders: g.cylinders,
    lift: groupLift[g.name] ?? 0,
    mean: g.mean,
  }));
}

function wire(state: State, model: SetModel): Wiring {
  const trains = state.trains ?? [];
  const hoists = state.hoists ?? [];
  const bearings = state.bearings ?? [];
  const lashings = state.lashings ?? [];
  const girderIndex = (name: string) => model.girders.findIndex((g) => g.name === name);
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
          ground: 0,
          stiffness: t.cylinderStiffness,
          up: t.strokeUp ?? Number.POSITIVE_INFINITY,
          down: t.strokeDown ?? Number.POSITIVE_INFINITY,
          group: -1,
          line,
          side,
        });
      }
  });
  const groups = Object.entries(state.groups ?? {}).map(([name, ids], g): GroupData => {
    const list = ids.map((id) => {
      const c = index.get(id);
      if (c === undefined) throw new RangeError(`group ${name} names the cylinder ${id}, which no train has`);
      cylinders[c].group = g;
      return c;
    });
    return { name, cylinders: list, lift: 0, mean: meanPoint(cylinders, list) };
  });
  return {
    trains: trains.map((t) => ({ ...t, bunkGirders: [...t.bunkGirders], bunks: [...t.bunks] })),
    bunkGirders: trains.map((t) => t.bunkGirders.map(girderIndex)),
    bunkNames: trains.map((t) =>
      t.bunks.flatMap((_, b) => t.bunkGirders.map((girder) => `bunk ${t.name} ${girder} ${b + 1}`)),
    ),
    deckLists: trains.map((_, deck) => [deck]),
    cylinders,
    groups,
    groupNames: groups.map((g) => `group ${g.name}`),
    noStops: new Int8Array(cylinders.length),
    hoists: hoists.map((h) => ({ name: h.name, girders: [...h.girders] })),
    hoistNames: hoists.map((h) => `hoist ${h.name}`),
    hoistGirders: hoists.map((h) =>
      h.girders.map(girderIndex).sort((a, b) => model.girders[b].y - model.girders[a].y),
    ),
    bearings: bearings.map((b) => ({ name: b.name, girder: b.girder })),
    bearingNames: bearings.map((b) => `bearing ${b.name}`),
    bearingGirders: bearings.map((b) => girderIndex(b.girder)),
    lashings: lashings.map((l) => ({ train: l.train, girder: l.girder })),
    lashingDecks: lashings.map((l) => trains.findIndex((t) => t.name === l.train)),
    lashingGirders: lashings.map((l) => girderIndex(l.girder)),
  };
}

function sameWiring(w: Wiring, state: State): boolean {
  const { trains = [], hoists = [], bearings = [], lashings = [], groups = {} } = state;
  if (w.trains.length !== trains.length || w.hoists.length !== hoists.length) return false;
  if (w.bearings.length !== bearings.length || w.lashings.length !== lashings.length) return false;
  for (let i = 0; i < trains.length; i++) {
    const a = w.trains[i];
    const b = trains[i];
    if (a.name !== b.name || a.lines !== b.lines || a.pitch !== b.pitch || a.gauge !== b.gauge) return false;
    if (a.cylinderStiffness !== b.cylinderStiffness || a.bunks.length !== b.bunks.length) return false;
    if (a.strokeUp !== b.strokeUp || a.strokeDown !== b.strokeDown) return false;
    if (!sameWords(a.bunkGirders, b.bunkGirders)) return false;
  }
  for (let i = 0; i < hoists.length; i++)
    if (w.hoists[i].name !== hoists[i].name || !sameWords(w.hoists[i].girders, hoists[i].girders))
      return false;
  for (let i = 0; i < bearings.length; i++)
    if (w.bearings[i].name !== bearings[i].name || w.bearings[i].girder !== bearings[i].girder) return false;
  for (let i = 0; i < lashings.length; i++)
    if (w.lashings[i].train !== lashings[i].train || w.lashings[i].girder !== lashings[i].girder)
      return false;
  return sameGroups(w, groups);
}

function sameGroups(
  { groups, cylinders }: Wiring,
  now: Readonly<Record<string, readonly string[]>>,
): boolean {
  let g = 0;
  for (const name in now) {
    if (g >= groups.length || groups[g].name !== name) return false;
    const known = groups[g++].cylinders;
    const ids = now[name];
    if (known.length !== ids.length) return false;
    for (let i = 0; i < ids.length; i++) if (cylinders[known[i]].id !== ids[i]) return false;
  }
  return g === groups.length;
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
