// Bending moment, shear and torsion along every girder of a solved pose, exact between the nodes: the ends of each
// element from its stiffness, what lies inside it by statics from there on.
//
// Signs: M > 0 sags (tension in the bottom flange); V = dM/dx, the sum of what acts upward on the part behind the
// section; T is the torque about x that the part behind exerts on the part ahead.

import { vector } from "../numeric/index.ts";
import { recoverField } from "./answer.ts";
import type { Diagrams, GirderDiagram, PointAction } from "./diagramData.ts";
import { displacementRow } from "./frame.ts";
import type { SetModel, SetRow, WindCase } from "./setModel.ts";
import type { Solution } from "./solution.ts";

/** Which side of a section is meant where a diagram jumps: just behind it or just ahead. */
export type Side = -1 | 1;

/** What stands nearer than this to a node stands at it, m. */
const SAME_PLACE = 1e-9;

/**
 * Diagrams of a solved pose, kept with it. Costs about a tenth of a millisecond for a 60 m set of two girders.
 * Throws RangeError when the pose has no numbers (mechanism, unsettled).
 * Equilibrium and the element's own stiffness alone; source of the latter in frame.ts.
 */
export function diagramsOf(s: Solution): Diagrams {
  if (s.status !== "solved")
    throw new RangeError(
      `the pose is ${s.status}: there are no diagrams; mend the supports until the pose is solved`,
    );
  s.diagrams ??= makeDiagrams(s);
  return s.diagrams;
}

function makeDiagrams(s: Solution): Diagrams {
  const { model } = s;
  const field = recoverField(s);
  const own = ownActions(s);
  const actions = actionsOf(s);
  const up = s.layout.up;
  const g = s.state.gravity;
  const wind = windOn(s);
  const girders = model.girders.map((line, index): GirderDiagram => {
    const { elements } = line;
    const n = elements.length;
    const points = merged(own[index], inOrder(actions[index]));
    const d: GirderDiagram = {
      name: line.name,
      elements,
      moment: vector(n),
      shear: vector(n),
      torsion: vector(n),
      down: vector(n),
      aboutX: vector(n),
      aboutY: vector(n),
      points,
      first: new Int32Array(n + 1),
    };
    let next = 0;
    for (let i = 0; i < n; i++) {
      const e = elements[i];
      d.first[i] = next;
      const end = i === n - 1 ? Number.POSITIVE_INFINITY : elements[i + 1].from - SAME_PLACE;
      for (; next < points.length && points[next].x < end; next++)
        points[next].x = Math.max(points[next].x, e.from);
      d.down[i] = e.massPerMetre * g * up[2];
      // Gravity along +y is -up[1] g, along +x is -up[0] g; it acts at the centroid, the axis lies below or above.
      d.aboutX[i] = e.massPerMetre * e.arm * g * up[1];
      if (wind !== null && wind.girder === index) d.aboutX[i] += wind.value * wind.couples[i];
      d.aboutY[i] = -e.massPerMetre * e.arm * g * up[0];
      startOf(d, i, next, field);
    }
    d.first[n] = next;
    return d;
  });
  return { girders };
}

/** What an element's start feels: its stiffness on the ends' displacements, less what its own loads put there. */
function startOf(d: GirderDiagram, i: number, end: number, field: Float64Array): void {
  const e = d.elements[i];
  const { length: L, phi, EI } = e;
  const a = 3 * e.node1;
  const b = 3 * e.node2;
  const k = EI / (L * L * L * (1 + phi));
  const w = field[a] - field[b];
  let force = k * (12 * w - 6 * L * (field[a + 2] + field[b + 2])) + (d.down[i] * L) / 2;
  let couple =
    k * L * (-6 * w + L * ((4 + phi) * field[a + 2] + (2 - phi) * field[b + 2])) -
    (d.down[i] * L * L) / 12 -
    (d.aboutY[i] * L) / 2;
  let twist = (e.GJ / L) * (field[a + 1] - field[b + 1]) - (d.aboutX[i] * L) / 2;
  for (let p = d.first[i]; p < end; p++) {
    const { x, force: F, aboutX, aboutY } = d.points[p];
    const xi = Math.min(1, Math.max(0, (x - e.from) / L));
    if (F !== 0) {
      const row = displacementRow(xi, L, phi);
      force -= F * row[0];
      couple -= F * row[1];
    }
    couple -= aboutY * (1 - xi);
    twist -= aboutX * (1 - xi);
  }
  d.shear[i] = force;
  d.moment[i] = couple;
  d.torsion[i] = twist;
}

/** What masses inside the elements of every girder bring, in order; the same for all poses of one inclination. */
interface OwnActions {
  gravity: number;
  up: readonly [number, number, number];
  girders: PointAction[][];
}
const masses = new WeakMap<SetModel, OwnActions>();

function ownActions({ model, state, layout: { up } }: Solution): PointAction[][] {
  const g = state.gravity;
  const known = masses.get(model);
  if (known !== undefined && known.gravity === g && known.up[0] === up[0] && known.up[1] === up[1])
    return known.girders;
  const girders = model.girders.map(({ elements }) => {
    const list: PointAction[] = [];
    for (const e of elements) {
      for (const [at, mass] of e.masses)
        list.push({ x: e.from + at, force: -mass * g * up[2], aboutX: 0, aboutY: 0, support: "" });
      for (const [at, off, arm] of e.turning)
        list.push({
          x: e.from + at,
          force: 0,
          aboutX: g * (arm * up[1] - off * up[2]),
          aboutY: -g * arm * up[0],
          support: "",
        });
    }
    return inOrder(list);
  });
  masses.set(model, { gravity: g, up, girders });
  return girders;
}

const inOrder = (list: PointAction[]): PointAction[] => list.sort((a, b) => a.x - b.x);

/** Two lists that are in order, as one; at one place the first comes first. */
function merged(a: readonly PointAction[], b: readonly PointAction[]): PointAction[] {
  const out: PointAction[] = [];
  let i = 0;
  for (const action of b) {
    while (i < a.length && a[i].x <= action.x) out.push(a[i++]);
    out.push(action);
  }
  while (i < a.length) out.push(a[i++]);
  return out;
}

/** The forces and couples on every girder of devices, and of loads of the horizontal problem. */
function actionsOf(s: Solution): PointAction[][] {
  const { model, devices, contact } = s;
  const girderOf = girderOfNode(model);
  const all: PointAction[][] = model.girders.map(() => []);
  const put = (row: SetRow, value: number, support: string) => {
    const kind = row.element === null ? row.dofs[0] % 3 : 0;
    all[girderOf[Math.floor(row.dofs[0] / 3)]].push({
      x: row.station,
      force: kind === 0 ? value : 0,
      aboutX: kind === 1 ? value : 0,
      aboutY: kind === 2 ? value : 0,
      support: kind === 0 ? support : "",
    });
  };
  for (let j = 0; j < devices.length; j++) {
    const F = contact.F[j];
    if (F === 0) continue;
    const { kind, of, name, rows, factors } = devices[j];
    const support = kind === "lean of hoist" ? s.layout.wiring.hoistNames[of] : name;
    for (let i = 0; i < rows.length; i++) put(rows[i], F * factors[i], support);
  }
  // Vertical loads beside the devices are those of given hoist loads and of couples at the pins of spreaders.
  for (const { row, value } of s.loads) {
    let support = "";
    for (let i = 0; i < s.layout.hoists.length && support === ""; i++)
      if (s.layout.hoists[i].at === row.station) support = s.layout.wiring.hoistNames[i];
    put(row, value, support);
  }
  const wind = windOn(s);
  if (wind !== null)
    for (const [x, couple] of wind.turns)
      all[wind.girder].push({ x, force: 0, aboutX: couple * wind.value, aboutY: 0, support: "" });
  return all;
}

/** Girder of every node, by index; found once per prepared set. */
function girderOfNode(model: SetModel): Int32Array {
  const known = nodes.get(model);
  if (known !== undefined) return known;
  const owner = new Int32Array(model.nodeX.length);
  model.girders.forEach(({ elements }, index) => {
    for (const { node1, node2 } of elements) {
      owner[node1] = index;
      owner[node2] = index;
    }
  });
  nodes.set(model, owner);
  return owner;
}
const nodes = new WeakMap<SetModel, Int32Array>();

/** The wind case that blows in a pose, with its value; null in the calm. */
function windOn(s: Solution): (WindCase & { value: number }) | null {
  const { wind } = s.state;
  const blows = wind === undefined || wind.pressure === 0 ? undefined : s.model.wind.get(wind.toward);
  if (wind === undefined || blows === undefined) return null;
  return { ...blows, value: wind.pressure * wind.factor };
}

/** Bending moment of a girder at a station, N m; `side` tells which where it jumps. Throws RangeError off the girder. */
export function momentAt(d: Diagrams, girder: number, x: number, side: Side = -1): number {
  return at(d.girders[girder], x, side).M;
}

/** Shear of a girder at a station, N; `side` tells which where it jumps. Throws RangeError off the girder. */
export function shearAt(d: Diagrams, girder: number, x: number, side: Side): number {
  return at(d.girders[girder], x, side).V;
}

/** Torsion of a girder at a station, N m; `side` tells which where it jumps. Throws RangeError off the girder. */
export function torsionAt(d: Diagrams, girder: number, x: number, side: Side = -1): number {
  return at(d.girders[girder], x, side).T;
}

/** Element of a diagram that holds a station: at a node the one behind it for side -1, the one ahead for 1. */
function elementAt({ elements, name }: GirderDiagram, x: number, side: Side): number {
  const last = elements.length - 1;
  const end = elements[last].from + elements[last].length;
  if (!(x >= elements[0].from - 1e-9 && x <= end + 1e-9))
    throw new RangeError(
      `station ${x} m lies off girder ${name}; ${elements[0].from} to ${end} m is allowed: ask for a station on it`,
    );
  let low = 0;
  let high = last;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (side < 0 ? elements[mid].from < x : elements[mid].from <= x) low = mid;
    else high = mid - 1;
  }
  return low;
}

const out = { M: 0, V: 0, T: 0 };

function at(d: GirderDiagram, x: number, side: Side): { M: number; V: number; T: number } {
  const i = elementAt(d, x, side);
  const a = Math.max(0, x - d.elements[i].from);
  out.V = d.shear[i] - d.down[i] * a;
  out.M = d.moment[i] + d.shear[i] * a - (d.down[i] * a * a) / 2 + d.aboutY[i] * a;
  out.T = d.torsion[i] + d.aboutX[i] * a;
  for (let p = d.first[i]; p < d.first[i + 1]; p++) {
    const { x: xp, force, aboutX, aboutY } = d.points[p];
    if (side < 0 ? xp >= x : xp > x) break;
    out.V += force;
    out.M += force * (x - xp) + aboutY;
    out.T += aboutX;
  }
  return out;
}

/** Greatest and least moment between two stations, N m, with where they are; exact inside the elements. */
export interface Extremes {
  most: { x: number; M: number };
  least: { x: number; M: number };
}

/** Greatest and least bending moment of a girder between two stations. Throws RangeError off the girder. */
export function greatestIn(d: Diagrams, girder: number, from: number, to: number): Extremes {
  const g = d.girders[girder];
  const found = {
    most: { x: from, M: Number.NEGATIVE_INFINITY },
    least: { x: from, M: Number.POSITIVE_INFINITY },
  };
  const end = elementAt(g, to, -1);
  for (let i = elementAt(g, from, 1); i <= end; i++) {
    const e = g.elements[i];
    const q = g.down[i];
    const c = g.aboutY[i];
    let start = e.from;
    let V = g.shear[i];
    let M = g.moment[i];
    for (let p = g.first[i]; p <= g.first[i + 1]; p++) {
      const point = p < g.first[i + 1] ? g.points[p] : null;
      const stop = point === null ? e.from + e.length : point.x;
      const a = Math.max(start, from);
      const b = Math.min(stop, to);
      // A piece without point actions, cut to the asked stations: both ends, and where the slope is zero. Between
      // actions at one place there is no section.
      if (b >= a && stop > start) {
        look(found, a, along(M, V + c, q, a - start));
        look(found, b, along(M, V + c, q, b - start));
        const flat = start + (V + c) / q;
        if (flat > a && flat < b) look(found, flat, along(M, V + c, q, flat - start));
      }
      const run = stop - start;
      M = along(M, V + c, q, run);
      V -= q * run;
      if (point !== null) {
        V += point.force;
        M += point.aboutY;
      }
      start = stop;
    }
  }
  return found;
}

/** Moment at a distance from where it is M with the slope V, under q spread along. */
function along(M: number, V: number, q: number, r: number): number {
  return M + V * r - (q * r * r) / 2;
}

function look({ most, least }: Extremes, x: number, M: number): void {
  if (M > most.M) {
    most.x = x;
    most.M = M;
  }
  if (M < least.M) {
    least.x = x;
    least.M = M;
  }
}

/** The supports that act on a girder, in order of their stations: force up, N, all of one support at a place together. */
export function pointForcesOn(d: Diagrams, girder: number): { x: number; force: number; support: string }[] {
  const list: { x: number; force: number; support: string }[] = [];
  for (const { x, force, support } of d.girders[girder].points) {
    if (support === "" || force === 0) continue;
    const known = list.find((one) => one.support === support && one.x === x);
    if (known === undefined) list.push({ x, force, support });
    else known.force += force;
  }
  return list;
}

/** What a cross-frame carries in its own plane between two girders; indices of the girders, the one of less y first. */
export interface CrossFrameForces {
  x: number;
  girders: [number, number];
  /** Shear that it hands up to the girder of greater y and down to the other, N. */
  shear: number;
  /** Couples that it exerts on its two girders about x, N m. */
  couples: [number, number];
}

/** Forces of all cross-frames of a solved pose, from their stiffness. */
export function crossFrameForces(s: Solution): CrossFrameForces[] {
  const field = recoverField(s);
  return s.model.crossElements.map(({ x, girders, nodes, k }) => {
    // A frame's own axis runs along y: its unknowns are w, turn about y, turn about -x.
    const u = nodes.flatMap((node) => [field[3 * node], field[3 * node + 2], -field[3 * node + 1]]);
    const end = (i: number) => u.reduce((sum, value, j) => sum + k[6 * i + j] * value, 0);
    return { x, girders, shear: -end(3), couples: [end(2), end(5)] };
  });
}
