// Loads of the set itself: own weight along three axes with its centre of gravity, and the side force of wind.

import { bandedSolve } from "../numeric/index.ts";
import type { Section } from "../section/index.ts";
import { displacementRow } from "./frame.ts";
import { locate } from "./rows.ts";
import type { Element, SetModel, WindCase } from "./setModel.ts";
import type { StatePiece } from "./state/types.ts";

/** Puts mass, centre of gravity and the displacement under unit gravity along -z, +y and +x into the model. */
export function addOwnWeight(model: SetModel): void {
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
  const atPoint = (girder: number, x: number, m: number, height: number, off = 0) => {
    const { e, xi } = locate(model, girder, x);
    const row = displacementRow(xi, e.length, e.phi);
    const arm = height - model.axisHeight;
    const w1 = 3 * e.node1;
    const w2 = 3 * e.node2;
    e.masses.push([xi * e.length, m]);
    if (off !== 0 || arm !== 0) e.turning.push([xi * e.length, m * off, m * arm]);
    loads[0][w1] -= m * row[0];
    loads[0][w1 + 2] -= m * row[1];
    loads[0][w2] -= m * row[2];
    loads[0][w2 + 2] -= m * row[3];
    loads[0][w1 + 1] -= m * off * (1 - xi);
    loads[0][w2 + 1] -= m * off * xi;
    loads[1][w1 + 1] -= m * arm * (1 - xi);
    loads[1][w2 + 1] -= m * arm * xi;
    loads[2][w1 + 2] += m * arm * (1 - xi);
    loads[2][w2 + 2] += m * arm * xi;
  };
  /** An element whose ends are not its pieces' own (mesh.ts): each piece's part of it, by two Gauss points. */
  const spread = (
    pieces: readonly StatePiece[],
    sections: { section: Section }[],
    girder: number,
    e: Element,
  ) => {
    pieces.forEach((p, k) => {
      const from = Math.max(p.from, e.from);
      const half = (Math.min(p.to, model.nodeX[e.node2]) - from) / 2;
      if (half > 0)
        for (const side of [-1, 1])
          atPoint(
            girder,
            from + half + (side * half) / Math.sqrt(3),
            p.massPerMetre * half,
            sections[k].section.centroid,
          );
    });
  };
  data.girders.forEach((g, i) => {
    const sections = model.sections.get(g.name) as { section: Section }[];
    g.pieces.forEach((p, k) => {
      const height = sections[k].section.centroid;
      model.runs.push({ y: g.y, from: p.from, to: p.to, massPerMetre: p.massPerMetre, height });
      count(p.massPerMetre * (p.to - p.from), (p.from + p.to) / 2, g.y, height);
    });
    for (const e of model.girders[i].elements) {
      const k = g.pieces.findIndex((p) => model.nodeX[e.node1] >= p.from && model.nodeX[e.node2] <= p.to);
      if (k < 0) {
        spread(g.pieces, sections, i, e);
        continue;
      }
      const q = g.pieces[k].massPerMetre;
      const arm = sections[k].section.centroid - model.axisHeight;
      e.massPerMetre = q;
      e.arm = arm;
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
    const off = p.off ?? 0;
    const y = data.girders[girder].y + off;
    atPoint(girder, p.at, p.mass, p.height, off);
    count(p.mass, p.at, y, p.height);
    model.points.push({ x: p.at, y, z: p.height, mass: p.mass });
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
  const couples = new Float64Array(g.elements.length);
  const turns: [number, number][] = [];
  g.elements.forEach((e, i) => {
    for (const piece of sections) {
      // An element may reach a little into the next piece (mesh.ts).
      const from = Math.max(piece.from, e.from);
      const length = Math.min(piece.to, e.from + e.length) - from;
      if (!(length > 0)) continue;
      const { depth } = piece.section;
      const f = sign * depth * length;
      const x = from + length / 2;
      const xi = (x - e.from) / e.length;
      const arm = depth / 2 - model.axisHeight;
      load[3 * e.node1 + 1] -= f * arm * (1 - xi);
      load[3 * e.node2 + 1] -= f * arm * xi;
      force += f;
      heightSum += f * (depth / 2);
      xSum += f * x;
      if (Math.abs(length - e.length) < 1e-9 * e.length) couples[i] = (-f * arm) / length;
      else turns.push([x, -f * arm]);
    }
  });
  const modes = Float64Array.from(model.modes, (m) => dot(m, load));
  const field = load.slice();
  bandedSolve(model.factor, field);
  const result = {
    field,
    modes,
    force,
    height: heightSum / force,
    x: xSum / force,
    girder: windward,
    couples,
    turns,
  };
  model.wind.set(toward, result);
  return result;
}
