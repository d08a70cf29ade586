// A set as quadratic beam elements (B32R, which the program expands to solids): girders and cross-frames as rectangles
// of equal area and strong inertia. Proves assembly, supports and contact, not section properties.

import type { State, StateAnswer, StateGirder, StatePiece } from "../../src/mechanics/index.ts";
import { sectionOf } from "../../src/section/index.ts";
import { Deck, real } from "./deck.ts";
import { type Rectangle, rectangleOf } from "./rectangle.ts";
import { addSupports, addWatches, type Steel, stationsOf } from "./supports.ts";

/** Elements of one bay between cross-frames, at least; and the longest of them, m. */
const LEAST_IN_BAY = 6;
const LONGEST = 0.5;
const IN_CROSS_FRAME = 6;

const SECTION = "SECTION=RECT";

/** Stations of all nodes that stand at element ends of a girder. */
function endsOf(state: State, girder: StateGirder): number[] {
  const frames = (state.crossFrames ?? []).map((f) => f.at).sort((a, b) => a - b);
  let bay = Number.POSITIVE_INFINITY;
  for (let i = 1; i < frames.length; i++) bay = Math.min(bay, frames[i] - frames[i - 1]);
  const longest = Math.min(LONGEST, bay / LEAST_IN_BAY);
  const last = girder.pieces[girder.pieces.length - 1].to;
  const fixed = [...frames, ...stationsOf(state, girder.name)];
  for (const p of girder.pieces) fixed.push(p.from, p.to);
  for (const m of state.pointMasses ?? []) if (m.girder === girder.name) fixed.push(m.at);
  const cuts = fixed.filter((x) => x >= girder.pieces[0].from && x <= last).sort((a, b) => a - b);
  const ends = [cuts[0]];
  for (const x of cuts.slice(1)) {
    const from = ends[ends.length - 1];
    if (x - from < 1e-6) continue;
    const parts = Math.ceil((x - from) / longest - 1e-9);
    for (let i = 1; i <= parts; i++) ends.push(i === parts ? x : from + ((x - from) * i) / parts);
  }
  return ends;
}

/** The rectangle that stands for a piece of a girder. */
export function pieceRectangle(piece: StatePiece): Rectangle {
  const { area, strongInertia } = sectionOf(piece);
  return rectangleOf(area, strongInertia);
}

/** Writes the steel of a State as beams, with its weight. */
function addBeams(deck: Deck, state: State): Steel {
  const { E, G, gravity } = state;
  const rows = new Map<string, { x: number; node: number }[]>();
  for (const g of state.girders) {
    const ends = endsOf(state, g);
    const row = ends.map((x) => ({ x, node: deck.node(x, g.y, 0) }));
    rows.set(g.name, row);
    for (const piece of g.pieces) {
      const list: number[][] = [];
      for (let i = 1; i < row.length; i++) {
        const mid = (row[i - 1].x + row[i].x) / 2;
        if (mid > piece.from && mid < piece.to)
          list.push([row[i - 1].node, deck.node(mid, g.y, 0), row[i].node]);
      }
      const set = deck.elements("B32R", list);
      const { h, b } = pieceRectangle(piece);
      const material = deck.material(E, G, piece.massPerMetre / (h * b));
      deck.add(
        `*BEAM SECTION,ELSET=${set},MATERIAL=${material},${SECTION}`,
        `${real(h)},${real(b)}`,
        "0.,0.,1.",
      );
      deck.load("*DLOAD", `${set},GRAV,${real(gravity)},0.,0.,-1.`);
    }
  }
  const at = (girder: string, x: number) => {
    const found = rows.get(girder)?.find((one) => Math.abs(one.x - x) < 1e-6);
    if (!found) throw new RangeError(`girder ${girder} has no node at ${x} m`);
    return found.node;
  };
  const order = [...state.girders].sort((a, b) => a.y - b.y);
  const bare = deck.material(E, G, 0);
  for (const f of state.crossFrames ?? []) {
    const { h, b } = rectangleOf(f.area, f.inPlaneInertia);
    for (let o = 1; o < order.length; o++) {
      const [right, left] = [order[o - 1], order[o]];
      const step = (left.y - right.y) / (2 * IN_CROSS_FRAME);
      const nodes = [at(right.name, f.at)];
      for (let i = 1; i < 2 * IN_CROSS_FRAME; i++) nodes.push(deck.node(f.at, right.y + i * step, 0));
      nodes.push(at(left.name, f.at));
      const list = Array.from({ length: IN_CROSS_FRAME }, (_, i) => nodes.slice(2 * i, 2 * i + 3));
      const set = deck.elements("B32R", list);
      deck.add(`*BEAM SECTION,ELSET=${set},MATERIAL=${bare},${SECTION}`, `${real(h)},${real(b)}`, "0.,0.,1.");
      for (const girder of [right, left]) {
        const weight = (f.mass * gravity) / (2 * (order.length - 1));
        deck.load("*CLOAD", `${at(girder.name, f.at)},3,${real(-weight)}`);
      }
    }
  }
  for (const m of state.pointMasses ?? []) {
    if (m.off) throw new RangeError("a point mass off its girder's axis is not written");
    deck.load("*CLOAD", `${at(m.girder, m.at)},3,${real(-m.mass * gravity)}`);
  }
  // In plan the set is held at three displacements; plumb loads leave it still there.
  const first = rows.get(order[0].name) as { node: number }[];
  deck.hold(first[0].node, 1);
  deck.hold(first[0].node, 2);
  deck.hold(first[first.length - 1].node, 2);
  return {
    node: at,
    beside: (girder, x) => {
      const row = rows.get(girder) as { x: number }[];
      const i = row.findIndex((one) => Math.abs(one.x - x) < 1e-6);
      return [row[Math.max(0, i - 1)].x, row[Math.min(row.length - 1, i + 1)].x];
    },
  };
}

/**
 * The deck of a State as beams, with the contacts that `answer` claims; prints every support and the droops asked for.
 * @throws {RangeError} on sets of one girder and on what the writer of supports does not know
 */
export function beamDeck(state: State, answer: StateAnswer): Deck {
  if (state.girders.length < 2 || (state.crossFrames ?? []).length < 2)
    throw new RangeError("a set of one girder, or without two cross-frames, is not held in its own plane");
  const deck = new Deck();
  const steel = addBeams(deck, state);
  addSupports(deck, steel, state, answer);
  addWatches(deck, steel, state);
  return deck;
}
