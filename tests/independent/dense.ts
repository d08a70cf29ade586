// A second solver that shares no code with the first: the whole set as a space frame with 12 unknowns per element, its
// own mesh with nodes at all supports, nothing condensed, solved by a dense factorisation from a package.
//
// Vertical loads only. Signs and datum are those of the State: displacements from the unstressed straight set.

import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { State, StateHoist } from "../../src/mechanics/index.ts";
import { elementStiffness, sectionOf } from "./element.ts";

const LONGEST = 0.5;
/** Unknowns of a node: u, v, w, turns about x, y, z. */
const W = 2;
const RX = 3;
const RY = 4;

/** A spring on a linear form of the unknowns; it pushes only, unless two-sided. */
interface Spring {
  name: string;
  row: Map<number, number>;
  datum: number;
  stiffness: number;
  twoSided: boolean;
}

interface Frame {
  size: number;
  K: Float64Array;
  f: Float64Array;
  node: (girder: string, x: number) => number;
}

function frameOf(state: State, extraUnknowns: number): Frame {
  const along = new Map<string, number[]>();
  const add = (girder: string, x: number) => along.get(girder)?.push(x);
  for (const g of state.girders) {
    along.set(g.name, []);
    for (const p of g.pieces) {
      add(g.name, p.from);
      add(g.name, p.to);
    }
    for (const c of state.crossFrames ?? []) add(g.name, c.at);
  }
  for (const b of state.bearings ?? []) add(b.girder, b.at);
  for (const h of state.hoists ?? []) for (const g of h.girders) add(g, h.at);
  for (const l of state.lashings ?? []) add(l.girder, l.at);
  for (const m of state.pointMasses ?? []) add(m.girder, m.at);
  for (const t of state.trains ?? [])
    for (const bunk of t.bunks) for (const g of t.bunkGirders) add(g, t.at + bunk);
  let count = 0;
  const lines = state.girders.map((g) => {
    const cuts = [...new Set(along.get(g.name))].sort((a, b) => a - b);
    const stations = [cuts[0]];
    for (const x of cuts.slice(1)) {
      const before = stations[stations.length - 1];
      if (x - before < 1e-9) continue;
      const parts = Math.ceil((x - before) / LONGEST);
      for (let i = 1; i <= parts; i++) stations.push(i === parts ? x : before + ((x - before) * i) / parts);
    }
    const first = count;
    count += stations.length;
    return { girder: g, stations, first };
  });
  const node = (girder: string, x: number) => {
    const line = lines.find((l) => l.girder.name === girder);
    const i = line ? line.stations.findIndex((s) => Math.abs(s - x) < 1e-9) : -1;
    if (!line || i < 0) throw new Error(`no node at ${x} of ${girder}`);
    return line.first + i;
  };
  const size = 6 * count + extraUnknowns;
  const K = new Float64Array(size * size);
  const f = new Float64Array(size);
  const put = (
    a: number,
    b: number,
    k: number[][],
    local: (dof: number) => { dof: number; sign: number },
  ) => {
    for (let i = 0; i < 12; i++)
      for (let j = 0; j < 12; j++) {
        const p = local(i % 6);
        const q = local(j % 6);
        const row = 6 * (i < 6 ? a : b) + p.dof;
        const column = 6 * (j < 6 ? a : b) + q.dof;
        K[row * size + column] += p.sign * q.sign * k[i][j];
      }
  };
  const g = state.gravity;
  for (const { girder, stations, first } of lines)
    for (let i = 1; i < stations.length; i++) {
      const L = stations[i] - stations[i - 1];
      const mid = (stations[i] + stations[i - 1]) / 2;
      const piece = girder.pieces.find((p) => mid > p.from && mid < p.to);
      if (!piece) throw new Error(`no piece at ${mid}`);
      const s = sectionOf(piece);
      const GAs = state.shear === false || s.web === 0 ? Number.POSITIVE_INFINITY : state.G * s.web;
      const k = elementStiffness(L, state.E * s.A, state.G * s.J, state.E * s.Iy, state.E * s.Iz, GAs);
      put(first + i - 1, first + i, k, (dof) => ({ dof, sign: 1 }));
      const q = piece.massPerMetre * g;
      f[6 * (first + i - 1) + W] -= (q * L) / 2;
      f[6 * (first + i) + W] -= (q * L) / 2;
      // Fixed-end moments q L^2 / 12 as slopes; as turns about y they change sign.
      f[6 * (first + i - 1) + RY] += (q * L * L) / 12;
      f[6 * (first + i) + RY] -= (q * L * L) / 12;
    }
  const across = [...state.girders].sort((a, b) => a.y - b.y);
  for (const c of state.crossFrames ?? [])
    for (let i = 1; i < across.length; i++) {
      const [right, left] = [across[i - 1], across[i]];
      const a = node(right.name, c.at);
      const b = node(left.name, c.at);
      const k = elementStiffness(
        left.y - right.y,
        state.E * c.area,
        state.G * c.torsion,
        state.E * c.inPlaneInertia,
        state.E * c.planInertia,
        Number.POSITIVE_INFINITY,
      );
      // The member's x lies along y, its y along -x, its z along z.
      const local = (dof: number) =>
        [
          { dof: 1, sign: 1 },
          { dof: 0, sign: -1 },
          { dof: 2, sign: 1 },
          { dof: 4, sign: 1 },
          { dof: 3, sign: -1 },
          { dof: 5, sign: 1 },
        ][dof];
      put(a, b, k, local);
      for (const n of [a, b]) f[6 * n + W] -= (c.mass * g) / (across.length - 1) / 2;
    }
  for (const m of state.pointMasses ?? []) {
    f[6 * node(m.girder, m.at) + W] -= m.mass * g;
    f[6 * node(m.girder, m.at) + RX] -= m.mass * g * (m.off ?? 0);
  }
  // Nothing acts in plan: three soft springs keep the frame there.
  const one = lines[0];
  const far = one.first + one.stations.length - 1;
  for (const dof of [6 * one.first, 6 * one.first + 1, 6 * far + 1]) K[dof * size + dof] += 1e6;
  if (state.girders.length === 1) K[(6 * one.first + RX) * size + 6 * one.first + RX] += 1e9;
  return { size, K, f, node };
}

function camberOf(state: State, girder: string, x: number): number {
  const points = state.girders.find((g) => g.name === girder)?.camber ?? [];
  for (let i = 1; i < points.length; i++) {
    const [[x0, z0], [x1, z1]] = [points[i - 1], points[i]];
    if (x >= x0 && x <= x1) return z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
  }
  return 0;
}

const yOf = (state: State, girder: string) => {
  const found = state.girders.find((g) => g.name === girder);
  if (!found) throw new Error(`no girder ${girder}`);
  return found.y;
};

function springsOf(state: State, frame: Frame): Spring[] {
  const list: Spring[] = [];
  const trains = state.trains ?? [];
  const deckAt = (deck: number) => frame.size - 3 * trains.length + 3 * deck;
  /** Adds the height of a deck's point: heave, roll, pitch (nose down). */
  const deck = (row: Map<number, number>, index: number, x: number, y: number, factor: number) => {
    const d = deckAt(index);
    row.set(d, (row.get(d) ?? 0) + factor);
    row.set(d + 1, (row.get(d + 1) ?? 0) + factor * y);
    row.set(d + 2, (row.get(d + 2) ?? 0) - factor * x);
  };
  const spring = (
    name: string,
    row: Map<number, number>,
    datum: number,
    stiffness: number,
    twoSided = false,
  ) => list.push({ name, row, datum, stiffness, twoSided });
  for (const [name, ids] of Object.entries(state.groups ?? {})) {
    const row = new Map<number, number>();
    let ground = 0;
    let softness = 0;
    for (const id of ids) {
      const index = trains.findIndex((t) => id.startsWith(`${t.name}:`));
      const t = trains[index];
      const line = Number.parseInt(id.slice(t.name.length + 1), 10);
      const y = id.endsWith("L") ? t.gauge / 2 : -t.gauge / 2;
      deck(row, index, (line - 0.5 - t.lines / 2) * t.pitch, y, 1 / ids.length);
      ground += (state.ground?.[id] ?? 0) / ids.length;
      softness += 1 / t.cylinderStiffness;
    }
    spring(`group ${name}`, row, ground + (state.groupLift?.[name] ?? 0), ids.length ** 2 / softness);
  }
  trains.forEach((t, index) => {
    t.bunks.forEach((along, b) => {
      for (const girder of t.bunkGirders) {
        const row = new Map([[6 * frame.node(girder, t.at + along) + W, 1]]);
        deck(row, index, along, yOf(state, girder), -1);
        const datum = (t.packing?.[girder] ?? 0) - camberOf(state, girder, t.at + along);
        spring(`bunk ${t.name} ${girder} ${b + 1}`, row, datum, t.bunkStiffness);
      }
    });
    frame.f[deckAt(index)] -= t.mass * state.gravity;
  });
  for (const b of state.bearings ?? []) {
    const row = new Map([[6 * frame.node(b.girder, b.at) + W, 1]]);
    spring(`bearing ${b.name}`, row, b.seat - camberOf(state, b.girder, b.at), b.stiffness);
  }
  for (const l of state.lashings ?? []) {
    const index = trains.findIndex((t) => t.name === l.train);
    const row = new Map([[6 * frame.node(l.girder, l.at) + W, -1]]);
    deck(row, index, l.at - trains[index].at, yOf(state, l.girder), 1);
    const datum = (l.pretension ?? 0) / l.stiffness - (l.slack ?? 0) + camberOf(state, l.girder, l.at);
    spring(`lashing ${l.girder} ${l.at}`, row, datum, l.stiffness);
  }
  for (const h of state.hoists ?? []) {
    const share = 1 / h.girders.length;
    const nodes = h.girders.map((girder) => 6 * frame.node(girder, h.at) + W);
    if (h.mode === "load") {
      for (const n of nodes) frame.f[n] += (h.load ?? 0) * share;
      continue;
    }
    const camber = h.girders.map((girder) => camberOf(state, girder, h.at));
    if (h.rigging === "separate")
      h.girders.forEach((girder, i) => {
        const row = new Map([[nodes[i], 1]]);
        spring(`line ${h.name} ${girder}`, row, (h.takeUp ?? 0) - camber[i], h.stiffness * share);
      });
    else {
      const row = new Map(nodes.map((n) => [n, share]));
      const mean = camber.reduce((a, b) => a + b, 0) * share;
      spring(`hoist ${h.name}`, row, (h.takeUp ?? 0) - mean, h.stiffness);
    }
  }
  return list;
}

/** Height of the centre of gravity above the soffit. */
function heightOfWeight(state: State): number {
  let mass = 0;
  let moment = 0;
  const count = (m: number, z: number) => {
    mass += m;
    moment += m * z;
  };
  for (const g of state.girders)
    for (const p of g.pieces) count(p.massPerMetre * (p.to - p.from), sectionOf(p).z);
  for (const c of state.crossFrames ?? []) count(c.mass, c.height);
  for (const p of state.pointMasses ?? []) count(p.mass, p.height);
  return moment / mass;
}

/** Restoring moments of what hangs at a tension T: lean over the pin, level over the picks. */
function hangingSprings(state: State, frame: Frame, h: StateHoist, T: number): Spring[] {
  const z = heightOfWeight(state);
  const order = [...h.girders].sort((a, b) => yOf(state, b) - yOf(state, a));
  const [left, right] = [order[0], order[order.length - 1]];
  const list: Spring[] = [];
  const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
  const width = yOf(state, left) - yOf(state, right);
  if (width > 0)
    list.push({
      name: `lean ${h.name}`,
      row: new Map([
        [6 * frame.node(left, h.at) + W, 1 / width],
        [6 * frame.node(right, h.at) + W, -1 / width],
      ]),
      datum: -(camberOf(state, left, h.at) - camberOf(state, right, h.at)) / width,
      stiffness: T * (e + h.pickHeight - z),
      twoSided: true,
    });
  list.push({
    name: `level ${h.name}`,
    row: new Map(h.girders.map((girder) => [6 * frame.node(girder, h.at) + RY, 1 / h.girders.length])),
    datum: 0,
    stiffness: T * (h.pickHeight - z),
    twoSided: true,
  });
  return list;
}

/** One dense solve for a given set of pressing springs. */
function displacements(frame: Frame, springs: Spring[], on: boolean[]): Float64Array {
  const { size } = frame;
  const K = frame.K.slice();
  const f = frame.f.slice();
  springs.forEach((s, i) => {
    if (!on[i]) return;
    for (const [a, ca] of s.row) {
      f[a] += s.stiffness * s.datum * ca;
      for (const [b, cb] of s.row) K[a * size + b] += s.stiffness * ca * cb;
    }
  });
  const left = new Matrix(size, size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) left.set(i, j, K[i * size + j]);
  const factor = new CholeskyDecomposition(left);
  if (!factor.isPositiveDefinite()) throw new Error("the supports leave a motion free");
  return Float64Array.from(factor.solve(Matrix.columnVector(Array.from(f))).to1DArray());
}

/** Which springs press: one changes at a time, the worst first; a set that comes back ends in an error. */
function contacts(frame: Frame, springs: Spring[], start: boolean[]): { F: number[]; on: boolean[] } {
  const on = springs.map((_, i) => start[i] ?? true);
  const seen = new Set<string>();
  for (;;) {
    const key = on.join();
    if (seen.has(key)) throw new Error("the contacts go in a circle");
    seen.add(key);
    const q = displacements(frame, springs, on);
    const F = springs.map((s) => {
      let v = 0;
      for (const [a, c] of s.row) v += c * q[a];
      return s.stiffness * (s.datum - v);
    });
    let worst = -1;
    let size = 1e-6;
    springs.forEach((s, i) => {
      if (s.twoSided) return;
      const wrong = on[i] ? -F[i] : F[i];
      if (wrong > size) {
        size = wrong;
        worst = i;
      }
    });
    if (worst < 0) return { F: F.map((x, i) => (on[i] ? x : 0)), on };
    on[worst] = !on[worst];
  }
}

/** Forces by the names of the first solver's answer: groups, bunks, bearings, lashings, hoists and separate lines, N. */
export function solveDense(state: State): { forces: Record<string, number>; unknowns: number } {
  const frame = frameOf(state, 3 * (state.trains ?? []).length);
  const devices = springsOf(state, frame);
  const hoists = (state.hoists ?? []).filter((h) => h.mode === "takeUp");
  let T = hoists.map(() => 0);
  let start: boolean[] = [];
  for (let pass = 0; pass < 12; pass++) {
    const hanging = hoists.flatMap((h, i) => (T[i] > 0 ? hangingSprings(state, frame, h, T[i]) : []));
    const springs = [...devices, ...hanging];
    const { F, on } = contacts(frame, springs, start);
    start = on.slice(0, devices.length);
    const forces: Record<string, number> = {};
    springs.forEach((s, i) => {
      if (!s.twoSided) forces[s.name] = F[i];
    });
    const found = hoists.map((h) =>
      h.rigging === "separate"
        ? h.girders.reduce((sum, g) => sum + forces[`line ${h.name} ${g}`], 0)
        : forces[`hoist ${h.name}`],
    );
    hoists.forEach((h, i) => {
      forces[`hoist ${h.name}`] = found[i];
    });
    const change = Math.max(0, ...found.map((x, i) => Math.abs(x - T[i]) / Math.max(1, x)));
    T = found;
    if (change < 1e-7) return { forces, unknowns: frame.size };
  }
  throw new Error("the tensions do not settle");
}
