// The supports of a State for the finite-element program, read from the State anew and not from the solver's devices.

import type { State, StateAnswer, StateGirder, StateHoist } from "../../src/mechanics/index.ts";
import { type Deck, real, type Term } from "./deck.ts";

/** The set as it stands in a deck: what its supports need of it. */
export interface Steel {
  /** The node of a girder's soffit or axis at a station. */
  node(girder: string, x: number): number;
  /** Stations of the nodes next to it before and behind, for slopes. */
  beside(girder: string, x: number): [number, number];
}

/** Stations of a girder at which something supports it. */
export function supportsOf(state: State, girder: string): number[] {
  const list: number[] = [];
  for (const b of state.bearings ?? []) if (b.girder === girder) list.push(b.at);
  for (const h of state.hoists ?? []) if (h.girders.includes(girder)) list.push(h.at);
  for (const l of state.lashings ?? []) if (l.girder === girder) list.push(l.at);
  for (const t of state.trains ?? [])
    if (t.bunkGirders.includes(girder)) for (const bunk of t.bunks) list.push(t.at + bunk);
  return list;
}

/** Stations at which a girder needs a node, for its supports and for what is asked of it. */
export function stationsOf(state: State, girder: string): number[] {
  return [...supportsOf(state, girder), ...(state.ask?.droopAt ?? [])];
}

/** Height of the unstressed soffit above the straight datum, linear between camber points. */
function camberAt({ camber = [] }: StateGirder, x: number): number {
  if (camber.length === 0) return 0;
  const after = camber.findIndex(([at]) => at >= x);
  if (after < 0) return camber[camber.length - 1][1];
  if (after === 0) return camber[0][1];
  const [x0, z0] = camber[after - 1];
  const [x1, z1] = camber[after];
  return z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
}

/** Names of girders under a hoist from left to right. */
function acrossOf(state: State, hoist: StateHoist): StateGirder[] {
  return state.girders.filter((g) => hoist.girders.includes(g.name)).sort((a, b) => b.y - a.y);
}

/**
 * Writes every support of a State. Those that carry nothing in `answer` are left open, and their gaps are printed. The
 * stiffness that hanging parts have against lean and level is a spring with the tension of `answer`.
 * @throws {RangeError} on what this writer does not know: slopes, wind, cylinders at the end of their travel
 */
export function addSupports(deck: Deck, steel: Steel, state: State, answer: StateAnswer): void {
  if (state.grade || state.crossfall || state.wind?.pressure)
    throw new RangeError("a state with grade, crossfall or wind: only plumb loads are written");
  addTrains(deck, steel, state, answer);
  const girder = (name: string) => state.girders.find((g) => g.name === name) as StateGirder;
  for (const b of state.bearings ?? []) {
    const name = `bearing ${b.name}`;
    const datum = b.seat - camberAt(girder(b.girder), b.at);
    const row: Term[] = [[steel.node(b.girder, b.at), 3, 1]];
    deck.spring({ name, row, stiffness: b.stiffness, datum, open: answer.forces[name] === 0 });
  }
  for (const h of state.hoists ?? []) addHoist(deck, steel, state, answer, h);
}

/** Decks as rigid bodies with heave, lean and level; groups below them, bunks and lashings above. */
function addTrains(deck: Deck, steel: Steel, state: State, answer: StateAnswer): void {
  const trains = new Map((state.trains ?? []).map((t) => [t.name, t]));
  const bodies = new Map([...trains.keys()].map((name) => [name, [0, 0, 0].map(() => deck.scalar())]));
  /** Height of a deck's point, in metres from its centre. */
  const deckPoint = (train: string, x: number, y: number, factor: number): Term[] => {
    const [heave, lean, level] = bodies.get(train) as number[];
    return [
      [heave, 3, factor],
      [lean, 3, factor * y],
      [level, 3, -factor * x],
    ];
  };
  for (const [name, t] of trains) {
    deck.load("*CLOAD", `${(bodies.get(name) as number[])[0]},3,${real(-t.mass * state.gravity)}`);
    for (const girder of t.bunkGirders) {
      const g = state.girders.find((one) => one.name === girder) as StateGirder;
      t.bunks.forEach((along, i) => {
        const key = `bunk ${name} ${girder} ${i + 1}`;
        const row: Term[] = [[steel.node(girder, t.at + along), 3, 1], ...deckPoint(name, along, g.y, -1)];
        const datum = (t.packing?.[girder] ?? 0) - camberAt(g, t.at + along);
        deck.spring({ name: key, row, stiffness: t.bunkStiffness, datum, open: answer.forces[key] === 0 });
      });
    }
  }
  for (const [name, ids] of Object.entries(state.groups ?? {})) {
    // Cylinders of equal pressure and a constant volume: one spring on the mean of their deck points.
    const row: Term[] = [];
    let ground = 0;
    let give = 0;
    for (const id of ids) {
      const [, train, line, side] = /^(.*):(\d+)([LR])$/.exec(id) as RegExpExecArray;
      const t = trains.get(train);
      if (!t) throw new RangeError(`group ${name} names ${id}, which no train has`);
      const stroke = answer.strokes[id];
      if (stroke >= (t.strokeUp ?? Infinity) || stroke <= -(t.strokeDown ?? Infinity))
        throw new RangeError(`cylinder ${id} stands at a stop, which is not written`);
      const x = (Number(line) - (t.lines + 1) / 2) * t.pitch;
      const y = (side === "L" ? 0.5 : -0.5) * t.gauge;
      row.push(...deckPoint(train, x, y, 1 / ids.length));
      ground += (state.ground?.[id] ?? 0) / ids.length;
      give += 1 / t.cylinderStiffness;
    }
    const key = `group ${name}`;
    const stiffness = ids.length ** 2 / give;
    const datum = ground + (state.groupLift?.[name] ?? 0);
    deck.spring({ name: key, row, stiffness, datum, open: answer.forces[key] === 0 });
  }
  for (const l of state.lashings ?? []) {
    const g = state.girders.find((one) => one.name === l.girder) as StateGirder;
    const x = l.at - (trains.get(l.train)?.at ?? 0);
    const key = `lashing ${l.girder} ${l.at}`;
    const row: Term[] = [...deckPoint(l.train, x, g.y, 1), [steel.node(l.girder, l.at), 3, -1]];
    const datum = camberAt(g, l.at) - (l.slack ?? 0) + (l.pretension ?? 0) / l.stiffness;
    deck.spring({ name: key, row, stiffness: l.stiffness, datum, open: answer.forces[key] === 0 });
  }
}

function addHoist(deck: Deck, steel: Steel, state: State, answer: StateAnswer, h: StateHoist): void {
  const girders = acrossOf(state, h);
  const n = girders.length;
  const picks = girders.map((g) => steel.node(g.name, h.at));
  const cambers = girders.map((g) => camberAt(g, h.at));
  const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / n;
  const takeUp = h.takeUp ?? 0;
  if (h.mode === "load")
    for (const node of picks) deck.load("*CLOAD", `${node},3,${real((h.load ?? 0) / n)}`);
  else if (h.rigging === "separate")
    girders.forEach((g, i) => {
      const name = `line ${h.name} ${g.name}`;
      const stiffness = h.stiffness / n;
      const datum = takeUp - cambers[i];
      deck.spring({ name, row: [[picks[i], 3, 1]], stiffness, datum, open: answer.forces[name] === 0 });
    });
  else {
    const name = `hoist ${h.name}`;
    const row = picks.map((node): Term => [node, 3, 1 / n]);
    const datum = takeUp - mean(cambers);
    deck.spring({ name, row, stiffness: h.stiffness, datum, open: answer.forces[name] === 0 });
  }
  const tension = answer.forces[`hoist ${h.name}`];
  const pin = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
  const above = h.pickHeight - answer.cg[2];
  const lean = tension * (pin + above);
  if (n > 1 && lean !== 0) {
    const across = girders[0].y - girders[n - 1].y;
    const row: Term[] = [
      [picks[0], 3, 1 / across],
      [picks[n - 1], 3, -1 / across],
    ];
    const datum = (cambers[n - 1] - cambers[0]) / across;
    deck.spring({ name: `lean of ${h.name}`, row, stiffness: lean, datum, open: false });
  }
  const level = tension * above;
  if (level !== 0) {
    const row = girders.flatMap((g): Term[] => {
      const [before, behind] = steel.beside(g.name, h.at);
      const factor = 1 / (n * (behind - before));
      return [
        [steel.node(g.name, before), 3, factor],
        [steel.node(g.name, behind), 3, -factor],
      ];
    });
    deck.spring({ name: `level of ${h.name}`, row, stiffness: level, datum: 0, open: false });
  }
}

/** Prints the droops that the State asks for, as `droop girder index`. */
export function addWatches(deck: Deck, steel: Steel, state: State): void {
  for (const g of state.girders)
    (state.ask?.droopAt ?? [])
      .filter((x) => x >= g.pieces[0].from && x <= g.pieces[g.pieces.length - 1].to)
      .forEach((x, i) => {
        deck.watch(`droop ${g.name} ${i}`, [[steel.node(g.name, x), 3, 1]]);
      });
}
