// A set as quadratic shell elements (S8R) of its true plates: webs, flanges, and diaphragm plates as cross-frames.
// Proves section properties, web shear, warping and buckling; nodes of a web stand on its flanges' inner faces.

import type { State, StateAnswer, StateGirder, StatePiece } from "../../src/mechanics/index.ts";
import { sectionOf } from "../../src/section/index.ts";
import { Deck, real } from "./deck.ts";
import { addSupports, addWatches, type Steel, stationsOf, supportsOf } from "./supports.ts";

/** Elements over the height of a web, over half a flange, over a diaphragm; the longest along a girder, m. */
const IN_WEB = 4;
const IN_HALF_FLANGE = 1;
const IN_DIAPHRAGM = 4;
const LONGEST = 0.75;

/** Nodes by their place, so that plates that meet share them. */
export class ShellMesh {
  readonly deck = new Deck();
  private known = new Map<string, number>();

  /** The node at a place, made when first asked for. */
  at(x: number, y: number, z: number): number {
    const key = [x, y, z].map((v) => (Math.round(v * 1e6) + 0).toString()).join(" ");
    let node = this.known.get(key);
    if (node === undefined) {
      node = this.deck.node(x, y, z);
      this.known.set(key, node);
    }
    return node;
  }

  /**
   * A plate spanned by two rows of corner places, `place(a, b)` with both running over its lists; elements are set
   * between neighbours, their middle nodes half way. `offset`: how many thicknesses its nodes stand above its middle.
   * @returns the name of its set of elements
   */
  plate(
    place: (a: number, b: number) => [number, number, number],
    a: readonly number[],
    b: readonly number[],
    thickness: number,
    material: string,
    offset = 0,
  ): string {
    const list: number[][] = [];
    const node = (p: number, q: number) => this.at(...place(p, q));
    for (let i = 1; i < a.length; i++)
      for (let j = 1; j < b.length; j++) {
        const [p, r] = [a[i - 1], a[i]];
        const [s, u] = [b[j - 1], b[j]];
        const [q, t] = [(p + r) / 2, (s + u) / 2];
        list.push([
          ...[node(p, s), node(r, s), node(r, u), node(p, u)],
          ...[node(q, s), node(r, t), node(q, u), node(p, t)],
        ]);
      }
    const set = this.deck.elements("S8R", list);
    const side = offset === 0 ? "" : `,OFFSET=${offset}`;
    this.deck.add(`*SHELL SECTION,ELSET=${set},MATERIAL=${material}${side}`, real(thickness));
    return set;
  }
}

/** Evenly spaced numbers from one to another. */
function even(from: number, to: number, parts: number): number[] {
  return Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts);
}

/** Ends of the elements along a girder. */
export function endsBetween(fixed: readonly number[], longest = LONGEST): number[] {
  const cuts = [...fixed].sort((a, b) => a - b);
  const ends = [cuts[0]];
  for (const x of cuts.slice(1)) {
    const from = ends[ends.length - 1];
    if (x - from < 1e-6) continue;
    ends.push(...even(from, x, Math.ceil((x - from) / longest - 1e-9)).slice(1));
  }
  return ends;
}

/** Height of the places of a girder's web, m above the soffit. */
export function webHeights(piece: StatePiece): number[] {
  const bottom = piece.bottomFlange[1];
  return even(bottom, bottom + piece.web[0], IN_WEB);
}

/** Writes one girder; gives the sets of its elements, piece by piece. */
export function addGirder(
  mesh: ShellMesh,
  state: Pick<State, "E" | "G">,
  girder: Pick<StateGirder, "y" | "pieces">,
  ends: readonly number[],
): string[][] {
  const { y, pieces } = girder;
  const heights = webHeights(pieces[0]);
  return pieces.map((piece) => {
    const along = ends.filter((x) => x > piece.from - 1e-6 && x < piece.to + 1e-6);
    if (String(webHeights(piece)) !== String(heights) || piece.topFlange[0] !== pieces[0].topFlange[0])
      throw new RangeError("pieces whose webs or flanges do not meet are not written as shells");
    const density = piece.massPerMetre / sectionOf(piece).area;
    const material = mesh.deck.material(state.E, state.G, density);
    const flange = (z: number, [width, thickness]: readonly [number, number], offset: number) =>
      mesh.plate(
        (x, across) => [x, y + across, z],
        along,
        even(-width / 2, width / 2, 2 * IN_HALF_FLANGE),
        thickness,
        material,
        offset,
      );
    return [
      flange(heights[0], piece.bottomFlange, 0.5),
      flange(heights[IN_WEB], piece.topFlange, -0.5),
      mesh.plate((x, z) => [x, y, z], along, heights, piece.web[1], material),
    ];
  });
}

/** Writes the steel of a State as plates, with its weight. Cross-frames are plates as high as the web. */
function addPlates(mesh: ShellMesh, state: State): Steel {
  const { deck } = mesh;
  const { gravity } = state;
  const rows = new Map<string, number[]>();
  const bottom = new Map<string, number>();
  for (const g of state.girders) {
    const { pieces } = g;
    const ends = endsBetween(
      [
        ...pieces.flatMap((p) => [p.from, p.to]),
        ...(state.crossFrames ?? []).map((f) => f.at),
        ...(state.pointMasses ?? []).filter((m) => m.girder === g.name).map((m) => m.at),
        ...stationsOf(state, g.name),
      ].filter((x) => x >= pieces[0].from && x <= pieces[pieces.length - 1].to),
    );
    rows.set(g.name, ends);
    bottom.set(g.name, pieces[0].bottomFlange[1]);
    for (const sets of addGirder(mesh, state, g, ends))
      for (const set of sets) deck.load("*DLOAD", `${set},GRAV,${real(gravity)},0.,0.,-1.`);
  }
  const heights = webHeights(state.girders[0].pieces[0]);
  const middle = heights[IN_WEB / 2];
  const order = [...state.girders].sort((a, b) => a.y - b.y);
  const bare = deck.material(state.E, state.G, 0);
  for (const f of state.crossFrames ?? [])
    for (let o = 1; o < order.length; o++) {
      const [right, left] = [order[o - 1], order[o]];
      const across = even(right.y, left.y, IN_DIAPHRAGM);
      const thickness = f.area / (heights[IN_WEB] - heights[0]);
      mesh.plate((y, z) => [f.at, y, z], across, heights, thickness, bare);
      const weight = (f.mass * gravity) / (2 * (order.length - 1));
      for (const g of [right, left]) deck.load("*CLOAD", `${mesh.at(f.at, g.y, middle)},3,${real(-weight)}`);
    }
  for (const m of state.pointMasses ?? []) {
    const g = state.girders.find((one) => one.name === m.girder) as StateGirder;
    deck.load("*CLOAD", `${mesh.at(m.at, g.y, middle)},3,${real(-m.mass * gravity)}`);
  }
  const node = (girder: string, x: number) => {
    const g = state.girders.find((one) => one.name === girder) as StateGirder;
    return mesh.at(x, g.y, bottom.get(girder) as number);
  };
  return {
    node,
    beside: (girder, x) => {
      const row = rows.get(girder) as number[];
      const i = row.findIndex((one) => Math.abs(one - x) < 1e-6);
      return [row[Math.max(0, i - 1)], row[Math.min(row.length - 1, i + 1)]];
    },
  };
}

/** How stiffly a bearing that holds sideways does so when the State gives no stiffness, N/m: as good as rigid. */
const RIGID_SIDE = 1e9;

/**
 * The deck of a State on bearings as shells, for buckling: bearings that hold sideways do so at the soffit, and one end
 * of every girder is held along. `middle`: nodes at mid-height of the webs, whose shape is asked for.
 */
export function bucklingDeck(state: State, answer: StateAnswer): { deck: Deck; middle: number[] } {
  const mesh = new ShellMesh();
  const steel = addPlates(mesh, state);
  const { deck } = mesh;
  for (const g of state.girders) deck.hold(steel.node(g.name, g.pieces[0].from), 1);
  for (const b of state.bearings ?? [])
    if (b.holds === "guided" || b.holds === "fixed") {
      const row = [[steel.node(b.girder, b.at), 2, 1]] as const;
      const stiffness = b.sideStiffness ?? RIGID_SIDE;
      deck.spring({ name: `side of ${b.name}`, row, stiffness, datum: 0, open: false });
    }
  addSupports(deck, steel, state, answer);
  const middle = state.girders.flatMap((g) => {
    const height = webHeights(g.pieces[0])[IN_WEB / 2];
    return supportsOf(state, g.name)
      .concat(
        (state.crossFrames ?? []).map((f) => f.at),
        state.ask?.droopAt ?? [],
      )
      .map((x) => mesh.at(x, g.y, height));
  });
  return { deck, middle };
}

/** The deck of a State as shells, with the contacts that `answer` claims, held in plan at three places. */
export function shellDeck(state: State, answer: StateAnswer): Deck {
  const mesh = new ShellMesh();
  const steel = addPlates(mesh, state);
  const { deck } = mesh;
  const first = state.girders[0];
  const last = first.pieces[first.pieces.length - 1].to;
  const start = steel.node(first.name, first.pieces[0].from);
  deck.hold(start, 1);
  deck.hold(start, 2);
  deck.hold(steel.node(first.name, last), 2);
  addSupports(deck, steel, state, answer);
  addWatches(deck, steel, state);
  return deck;
}
