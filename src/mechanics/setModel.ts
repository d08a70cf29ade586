// The set as a frame, factorised once: mesh, stiffness, its own loads, and the flexibility of any point on demand.
//
// The mesh comes from the set alone (piece ends, cross-frames, elements of at most 1 m), never from the supports,
// so that the same set gives the same bits whatever it was asked before.

import {
  type Banded,
  type BandedFactor,
  banded,
  bandedAdd,
  bandedFactor,
  bandedSolve,
} from "../numeric/index.ts";
import { type Section, sectionOf } from "../section/index.ts";
import { displacementRow, type Stiffnesses, shearRatio, verticalStiffness } from "./frame.ts";
import type { State, StateGirder } from "./state/types.ts";

/** The part of a State that describes the set itself. */
export type SetData = Pick<State, "E" | "G" | "shear" | "girders" | "crossFrames" | "pointMasses">;

interface Element {
  from: number;
  length: number;
  node1: number;
  node2: number;
  phi: number;
}

interface GirderLine {
  name: string;
  y: number;
  from: number;
  to: number;
  camber: readonly (readonly [number, number])[];
  elements: Element[];
}

/** A run of mass along a girder, for centres of gravity and tipping moments. */
export interface MassRun {
  y: number;
  from: number;
  to: number;
  massPerMetre: number;
  height: number;
}
export interface MassPoint {
  x: number;
  y: number;
  z: number;
  mass: number;
}

/** One linear form on the unknowns of the set, with everything that a pose needs to know of it. */
export interface SetRow {
  index: number;
  key: string;
  dofs: number[];
  coefficients: number[];
  /** Value in each motion without stiffness. */
  modes: Float64Array;
  /** Displacement of the free set under unit gravity along -z, +y, +x (m per m/s2). */
  sag: Float64Array;
  /** Displacement field per unit force on the row; filled when first needed. */
  column: Float64Array | null;
  /** Flexibility against other rows by index; NaN where not yet asked. */
  flexibility: Float64Array;
}

export interface SetModel {
  data: SetData;
  girders: GirderLine[];
  /** Height of the member axes above the soffit. */
  axisHeight: number;
  nodeX: Float64Array;
  nodeY: Float64Array;
  matrix: Banded;
  factor: BandedFactor;
  /** Motions without stiffness: heave, lean (two girders or more), level, then any the frame itself has. */
  modeNames: string[];
  modes: Float64Array[];
  /** Index of lean and level among the modes; lean -1 for one girder. */
  lean: number;
  level: number;
  /** Point about which the rigid motions turn. */
  origin: number;
  /** Displacement fields under unit gravity along -z, +y, +x. */
  sagFields: Float64Array[];
  /** Resultants of those loads on every mode. */
  sagModes: Float64Array[];
  mass: number;
  cg: [number, number, number];
  runs: MassRun[];
  points: MassPoint[];
  length: number;
  sections: Map<string, { from: number; to: number; section: Section }[]>;
  rows: SetRow[];
  rowIndex: Map<string, SetRow>;
  wind: Map<string, WindCase>;
}

/** The free set under a side force on one girder at mid-height, per unit of pressure times factor. */
export interface WindCase {
  field: Float64Array;
  modes: Float64Array;
  /** Resultant side force per unit, its height above the soffit and station. */
  force: number;
  height: number;
  x: number;
}

const LONGEST_ELEMENT = 1.0;

function stationsOf(data: SetData): number[] {
  const cuts = new Set<number>();
  for (const g of data.girders)
    for (const p of g.pieces) {
      cuts.add(p.from);
      cuts.add(p.to);
    }
  for (const f of data.crossFrames ?? []) cuts.add(f.at);
  const sorted = [...cuts].sort((a, b) => a - b);
  const stations = [sorted[0]];
  for (let i = 1; i < sorted.length; i++) {
    const gap = sorted[i] - sorted[i - 1];
    const parts = Math.ceil(gap / LONGEST_ELEMENT - 1e-9);
    for (let k = 1; k < parts; k++) stations.push(sorted[i - 1] + (gap * k) / parts);
    stations.push(sorted[i]);
  }
  return stations;
}

/** Factorises the set. Cost is a few ms for a 60 m set; everything after it is small. */
export function prepareSet(data: SetData, refine = 1): SetModel {
  const first = data.girders[0];
  const sections = new Map<string, { from: number; to: number; section: Section }[]>();
  let heightSum = 0;
  let massSum = 0;
  for (const g of data.girders) {
    const list = g.pieces.map((p) => ({ from: p.from, to: p.to, section: sectionOf(p) }));
    sections.set(g.name, list);
    g.pieces.forEach((p, i) => {
      const m = p.massPerMetre * (p.to - p.from) || p.to - p.from;
      heightSum += m * list[i].section.centroid;
      massSum += m;
    });
  }
  const axisHeight = heightSum / massSum;

  let stations = stationsOf(data);
  for (let r = 1; r < refine; r *= 2)
    stations = stations.flatMap((x, i) => (i === 0 ? [x] : [(stations[i - 1] + x) / 2, x]));
  const nodeOf: number[][] = data.girders.map(() => new Array(stations.length).fill(-1));
  const nodeX: number[] = [];
  const nodeY: number[] = [];
  stations.forEach((x, s) => {
    data.girders.forEach((g, i) => {
      const from = g.pieces[0].from;
      const to = g.pieces[g.pieces.length - 1].to;
      if (x < from || x > to) return;
      nodeOf[i][s] = nodeX.length;
      nodeX.push(x);
      nodeY.push(g.y);
    });
  });
  const n = nodeX.length * 3;

  const elements: { nodes: [number, number]; k: Float64Array; across: boolean }[] = [];
  const girders: GirderLine[] = data.girders.map((g, i) => ({
    name: g.name,
    y: g.y,
    from: g.pieces[0].from,
    to: g.pieces[g.pieces.length - 1].to,
    camber: g.camber ?? [],
    elements: girderElements(g, i),
  }));

  function girderElements(g: StateGirder, i: number): Element[] {
    const list: Element[] = [];
    for (let s = 1; s < stations.length; s++) {
      const node1 = nodeOf[i][s - 1];
      const node2 = nodeOf[i][s];
      if (node1 < 0 || node2 < 0) continue;
      const from = stations[s - 1];
      const length = stations[s] - from;
      const mid = from + length / 2;
      const piece = g.pieces.findIndex((p) => mid >= p.from && mid <= p.to);
      const section = (sections.get(g.name) as { section: Section }[])[piece].section;
      const stiff: Stiffnesses = {
        EA: data.E * section.area,
        EIy: data.E * section.strongInertia,
        EIz: data.E * section.weakInertia,
        GJ: data.G * section.torsion,
        GA:
          data.shear === false || section.webArea === 0 ? Number.POSITIVE_INFINITY : data.G * section.webArea,
      };
      elements.push({ nodes: [node1, node2], k: verticalStiffness(stiff, length), across: false });
      list.push({ from, length, node1, node2, phi: shearRatio(stiff, length) });
    }
    return list;
  }

  const order = data.girders.map((_, i) => i).sort((a, b) => data.girders[a].y - data.girders[b].y);
  for (const f of data.crossFrames ?? []) {
    const s = stations.indexOf(f.at);
    for (let o = 1; o < order.length; o++) {
      const node1 = nodeOf[order[o - 1]][s];
      const node2 = nodeOf[order[o]][s];
      if (node1 < 0 || node2 < 0) continue;
      const length = nodeY[node2] - nodeY[node1];
      const k = verticalStiffness(
        {
          EA: data.E * f.area,
          EIy: data.E * f.inPlaneInertia,
          EIz: data.E * f.planInertia,
          GJ: data.G * f.torsion,
          GA: Number.POSITIVE_INFINITY,
        },
        length,
      );
      elements.push({ nodes: [node1, node2], k, across: true });
    }
  }

  let band = 2;
  for (const e of elements) band = Math.max(band, 3 * Math.abs(e.nodes[1] - e.nodes[0]) + 2);
  const matrix = banded(n, band);
  // A frame along +y: its own axis x' = y, so thetaX' = thetaY and thetaY' = -thetaX.
  const along = [0, 1, 2];
  const acrossDof = [0, 2, 1];
  const acrossSign = [1, 1, -1];
  for (const e of elements)
    for (let i = 0; i < 6; i++)
      for (let j = 0; j <= i; j++) {
        const value = e.k[i * 6 + j];
        if (value === 0) continue;
        const map = e.across ? acrossDof : along;
        const sign = e.across ? acrossSign[i % 3] * acrossSign[j % 3] : 1;
        const gi = e.nodes[i < 3 ? 0 : 1] * 3 + map[i % 3];
        const gj = e.nodes[j < 3 ? 0 : 1] * 3 + map[j % 3];
        bandedAdd(matrix, gi, gj, sign * value);
      }

  // Hold three far-apart displacements; what the frame itself cannot stiffen shows as vanished pivots.
  const nearest = (girder: number, x: number) => {
    let best = -1;
    for (const node of nodeOf[girder])
      if (node >= 0 && (best < 0 || Math.abs(nodeX[node] - x) < Math.abs(nodeX[best] - x))) best = node;
    return best;
  };
  const a = girders[0];
  const span = a.to - a.from;
  const last = order[order.length - 1] === 0 ? order[0] : order[order.length - 1];
  const single = girders.length === 1;
  const hold = [nearest(0, a.from + 0.2 * span) * 3, nearest(0, a.from + 0.8 * span) * 3];
  if (single) hold.push(nearest(0, a.from + 0.5 * span) * 3 + 1);
  else hold.push(nearest(last, (girders[last].from + girders[last].to) / 2) * 3);
  const factor = bandedFactor(matrix, hold);

  const start = Math.min(...girders.map((g) => g.from));
  const end = Math.max(...girders.map((g) => g.to));
  const origin = (start + end) / 2;
  const modes: Float64Array[] = [];
  const modeNames: string[] = [];
  const rigid = (name: string, heave: number, lean: number, level: number) => {
    const m = new Float64Array(n);
    for (let i = 0; i < nodeX.length; i++) {
      m[3 * i] = heave + lean * nodeY[i] - level * (nodeX[i] - origin);
      m[3 * i + 1] = lean;
      m[3 * i + 2] = level;
    }
    modes.push(m);
    modeNames.push(name);
  };
  rigid("the set moves up or down", 1, 0, 0);
  if (!single) rigid("the set leans (turns about its length)", 0, 1, 0);
  rigid("the set tips end up (turns about a line across it)", 0, 0, 1);
  const girderOfNode = (node: number) =>
    girders[nodeOf.findIndex((nodes) => nodes.includes(node))]?.name ?? first.name;
  for (const dof of factor.singular) {
    const column = new Float64Array(n);
    const unit = new Float64Array(n);
    unit[dof] = 1;
    multiplyInto(matrix, unit, column);
    for (let i = 0; i < n; i++) column[i] = -column[i];
    bandedSolve(factor, column);
    column[dof] = 1;
    modes.push(column);
    const how = ["moves by itself", "leans by itself", "tips by itself"][dof % 3];
    modeNames.push(`girder ${girderOfNode(Math.floor(dof / 3))} ${how} (no cross-frame holds it)`);
  }

  const model: SetModel = {
    data,
    girders,
    axisHeight,
    nodeX: Float64Array.from(nodeX),
    nodeY: Float64Array.from(nodeY),
    matrix,
    factor,
    modeNames,
    modes,
    lean: single ? -1 : 1,
    level: single ? 1 : 2,
    origin,
    sagFields: [],
    sagModes: [],
    mass: 0,
    cg: [0, 0, 0],
    runs: [],
    points: [],
    length: end - start,
    sections,
    rows: [],
    rowIndex: new Map(),
    wind: new Map(),
  };
  addOwnWeight(model);
  return model;
}

function multiplyInto(m: Banded, x: Float64Array, y: Float64Array): void {
  const w = m.band + 1;
  for (let i = 0; i < m.n; i++)
    for (let j = Math.max(0, i - m.band); j <= i; j++) {
      const value = m.a[i * w + j - i + m.band];
      if (value === 0) continue;
      y[i] += value * x[j];
      if (i !== j) y[j] += value * x[i];
    }
}

/** Element of a girder that holds station x, and x inside it; throws a RangeError off the girder. */
function locate(model: SetModel, girder: number, x: number): { e: Element; xi: number } {
  const g = model.girders[girder];
  if (!(x >= g.from - 1e-9 && x <= g.to + 1e-9))
    throw new RangeError(
      `station ${x} m lies off girder ${g.name}; ${g.from} to ${g.to} m is allowed: move the support on to the girder`,
    );
  let low = 0;
  let high = g.elements.length - 1;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (g.elements[mid].from <= x) low = mid;
    else high = mid - 1;
  }
  const e = g.elements[low];
  return { e, xi: Math.min(1, Math.max(0, (x - e.from) / e.length)) };
}

function addOwnWeight(model: SetModel): void {
  const { data } = model;
  const n = model.factor.n;
  const loads = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  let mass = 0;
  const moment = [0, 0, 0];
  const count = (m: number, x: number, y: number, z: number) => {
    mass += m;
    moment[0] += m * x;
    moment[1] += m * y;
    moment[2] += m * z;
  };
  const atPoint = (girder: number, x: number, m: number, height: number) => {
    const { e, xi } = locate(model, girder, x);
    const row = displacementRow(xi, e.length, e.phi);
    const arm = height - model.axisHeight;
    const w1 = 3 * e.node1;
    const w2 = 3 * e.node2;
    loads[0][w1] -= m * row[0];
    loads[0][w1 + 2] -= m * row[1];
    loads[0][w2] -= m * row[2];
    loads[0][w2 + 2] -= m * row[3];
    loads[1][w1 + 1] -= m * arm * (1 - xi);
    loads[1][w2 + 1] -= m * arm * xi;
    loads[2][w1 + 2] += m * arm * (1 - xi);
    loads[2][w2 + 2] += m * arm * xi;
  };
  data.girders.forEach((g, i) => {
    const sections = model.sections.get(g.name) as { section: Section }[];
    g.pieces.forEach((p, k) => {
      const height = sections[k].section.centroid;
      model.runs.push({ y: g.y, from: p.from, to: p.to, massPerMetre: p.massPerMetre, height });
      count(p.massPerMetre * (p.to - p.from), (p.from + p.to) / 2, g.y, height);
    });
    for (const e of model.girders[i].elements) {
      const mid = e.from + e.length / 2;
      const k = g.pieces.findIndex((p) => mid >= p.from && mid <= p.to);
      const q = g.pieces[k].massPerMetre;
      const arm = sections[k].section.centroid - model.axisHeight;
      const half = (q * e.length) / 2;
      const end = (q * e.length * e.length) / 12;
      const w1 = 3 * e.node1;
      const w2 = 3 * e.node2;
      loads[0][w1] -= half;
      loads[0][w2] -= half;
      loads[0][w1 + 2] += end;
      loads[0][w2 + 2] -= end;
      loads[1][w1 + 1] -= half * arm;
      loads[1][w2 + 1] -= half * arm;
      loads[2][w1 + 2] += half * arm;
      loads[2][w2 + 2] += half * arm;
    }
  });
  const order = data.girders.map((_, i) => i).sort((a, b) => data.girders[a].y - data.girders[b].y);
  for (const f of data.crossFrames ?? []) {
    // A frame's mass hangs half on each of its two girders, bay by bay.
    const bays = Math.max(1, order.length - 1);
    for (let o = 0; o < bays; o++)
      for (const girder of order.length === 1 ? [order[0]] : [order[o], order[o + 1]]) {
        const m = f.mass / bays / (order.length === 1 ? 1 : 2);
        atPoint(girder, f.at, m, f.height);
        count(m, f.at, data.girders[girder].y, f.height);
        model.points.push({ x: f.at, y: data.girders[girder].y, z: f.height, mass: m });
      }
  }
  for (const p of data.pointMasses ?? []) {
    const girder = data.girders.findIndex((g) => g.name === p.girder);
    atPoint(girder, p.at, p.mass, p.height);
    count(p.mass, p.at, data.girders[girder].y, p.height);
    model.points.push({ x: p.at, y: data.girders[girder].y, z: p.height, mass: p.mass });
  }
  model.mass = mass;
  model.cg = mass > 0 ? [moment[0] / mass, moment[1] / mass, moment[2] / mass] : [model.origin, 0, 0];
  for (const load of loads) {
    model.sagModes.push(Float64Array.from(model.modes, (m) => dot(m, load)));
    const field = load.slice();
    bandedSolve(model.factor, field);
    model.sagFields.push(field);
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let s = 0;
  for (let i = 0; i < a.length; i++) s += a[i] * b[i];
  return s;
}

/** What a row measures: the vertical displacement, the twist, or the slope rotation of a girder's axis at a station. */
export type RowKind = "w" | "x" | "y";

/** The row of a point of a girder, made when first asked for. Throws a RangeError off the girder. */
export function rowAt(model: SetModel, girder: number, station: number, kind: RowKind): SetRow {
  const key = `${girder}${kind}${station}`;
  const known = model.rowIndex.get(key);
  if (known) return known;
  const { e, xi } = locate(model, girder, station);
  const w1 = 3 * e.node1;
  const w2 = 3 * e.node2;
  if (kind === "w") return addRow(model, key, [w1, w1 + 2, w2, w2 + 2], displacementRow(xi, e.length, e.phi));
  const turn = kind === "x" ? 1 : 2;
  return addRow(model, key, [w1 + turn, w2 + turn], [1 - xi, xi]);
}

/** Registers a linear form on the unknowns of the set under a name. */
export function addRow(model: SetModel, key: string, dofs: number[], coefficients: number[]): SetRow {
  const form = (field: Float64Array) => {
    let s = 0;
    for (let i = 0; i < dofs.length; i++) s += coefficients[i] * field[dofs[i]];
    return s;
  };
  const row: SetRow = {
    index: model.rows.length,
    key,
    dofs,
    coefficients,
    modes: Float64Array.from(model.modes, form),
    sag: Float64Array.from(model.sagFields, form),
    column: null,
    flexibility: new Float64Array(16).fill(Number.NaN),
  };
  model.rows.push(row);
  model.rowIndex.set(key, row);
  return row;
}

/** Value of a row in a displacement field of the set. */
export function rowValue(row: SetRow, field: Float64Array): number {
  let s = 0;
  for (let i = 0; i < row.dofs.length; i++) s += row.coefficients[i] * field[row.dofs[i]];
  return s;
}

/** Displacement field of the held set under a unit force on a row. */
export function columnOf(model: SetModel, row: SetRow): Float64Array {
  if (row.column) return row.column;
  const field = new Float64Array(model.factor.n);
  for (let i = 0; i < row.dofs.length; i++) field[row.dofs[i]] += row.coefficients[i];
  bandedSolve(model.factor, field);
  row.column = field;
  return field;
}

/** Displacement at row `a` per unit force at row `b`; the order of asking never changes its bits. */
export function flexibility(model: SetModel, a: SetRow, b: SetRow): number {
  if (b.index < a.flexibility.length) {
    const known = a.flexibility[b.index];
    if (known === known) return known;
  }
  const swap = a.key > b.key;
  const value = swap ? rowValue(b, columnOf(model, a)) : rowValue(a, columnOf(model, b));
  remember(a, b.index, value);
  remember(b, a.index, value);
  return value;
}

function remember(row: SetRow, index: number, value: number): void {
  if (index >= row.flexibility.length) {
    const wider = new Float64Array(Math.max(index + 1, row.flexibility.length * 2)).fill(Number.NaN);
    wider.set(row.flexibility);
    row.flexibility = wider;
  }
  row.flexibility[index] = value;
}

/** Unstressed height of a girder's soffit above the straight datum at a station, linear between camber points. */
export function camberAt(model: SetModel, girder: number, x: number): number {
  const points = model.girders[girder].camber;
  if (points.length === 0) return 0;
  if (x <= points[0][0]) return points[0][1];
  for (let i = 1; i < points.length; i++)
    if (x <= points[i][0]) {
      const [x0, z0] = points[i - 1];
      const [x1, z1] = points[i];
      return x1 === x0 ? z1 : z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
    }
  return points[points.length - 1][1];
}

/** The wind load case on the windward girder: blowing toward +y it meets the girder of least y first. */
export function windCase(model: SetModel, toward: "+y" | "-y"): WindCase {
  const known = model.wind.get(toward);
  if (known) return known;
  const sign = toward === "+y" ? 1 : -1;
  let windward = 0;
  model.girders.forEach((g, i) => {
    if (sign * g.y < sign * model.girders[windward].y) windward = i;
  });
  const load = new Float64Array(model.factor.n);
  const g = model.girders[windward];
  const sections = model.sections.get(g.name) as { from: number; to: number; section: Section }[];
  let force = 0;
  let heightSum = 0;
  let xSum = 0;
  for (const e of g.elements) {
    const mid = e.from + e.length / 2;
    const depth = (sections.find((s) => mid >= s.from && mid <= s.to) as { section: Section }).section.depth;
    const f = sign * depth * e.length;
    const arm = depth / 2 - model.axisHeight;
    load[3 * e.node1 + 1] -= (f * arm) / 2;
    load[3 * e.node2 + 1] -= (f * arm) / 2;
    force += f;
    heightSum += f * (depth / 2);
    xSum += f * mid;
  }
  const modes = Float64Array.from(model.modes, (m) => dot(m, load));
  const field = load.slice();
  bandedSolve(model.factor, field);
  const result = { field, modes, force, height: heightSum / force, x: xSum / force };
  model.wind.set(toward, result);
  return result;
}
