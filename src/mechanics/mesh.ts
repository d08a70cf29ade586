// The mesh of a set and its stiffness matrix. Nodes come from the set alone (piece ends, cross-frames, elements of at
// most 1 m), never from the supports, so that the same set gives the same bits whatever it was asked before.

import { type Banded, banded, bandedAdd } from "../numeric/index.ts";
import { type Section, sectionOf } from "../section/index.ts";
import { type Stiffnesses, shearRatio, verticalStiffness } from "./frame.ts";
import type { CrossElement, Element, GirderLine, SetData } from "./setModel.ts";
import type { StateGirder } from "./state/types.ts";

/** Nodes, elements and stiffness of a set; three unknowns per node: w, thetaX, thetaY. */
export interface Mesh {
  girders: GirderLine[];
  crossElements: CrossElement[];
  /** Node of every girder at every station; -1 where the girder is not there. */
  nodeOf: number[][];
  nodeX: number[];
  nodeY: number[];
  /** Girder indices from least y to greatest. */
  order: number[];
  sections: Map<string, { from: number; to: number; section: Section }[]>;
  axisHeight: number;
  matrix: Banded;
}

interface MeshElement {
  nodes: [number, number];
  k: Float64Array;
  across: boolean;
}

const LONGEST_ELEMENT = 1.0;

/**
 * Piece ends and cross-frames nearer to one another than this share one node, m: the stiffness of a shorter element
 * would drown that of the set in rounding (at 10 mm four parts in ten million are lost, at 0.1 mm everything).
 */
const SHORTEST_ELEMENT = 0.02;

function stationsOf(data: SetData, refine: number): number[] {
  // Of near neighbours a girder's end keeps its place, so that nothing stands beyond the nodes; then a cross-frame.
  const starts = new Set(data.girders.map((g) => g.pieces[0].from));
  const ends = new Set(data.girders.map((g) => g.pieces[g.pieces.length - 1].to));
  const frames = new Set((data.crossFrames ?? []).map((f) => f.at));
  const cuts = new Set(frames);
  for (const g of data.girders)
    for (const p of g.pieces) {
      cuts.add(p.from);
      cuts.add(p.to);
    }
  const clusters: number[][] = [];
  for (const x of [...cuts].sort((a, b) => a - b)) {
    const last = clusters[clusters.length - 1];
    if (last && x - last[last.length - 1] < SHORTEST_ELEMENT - 1e-9) last.push(x);
    else clusters.push([x]);
  }
  const sorted = clusters.map(
    (c) =>
      c.findLast((x) => ends.has(x)) ?? c.find((x) => starts.has(x)) ?? c.find((x) => frames.has(x)) ?? c[0],
  );
  let stations = [sorted[0]];
  for (let i = 1; i < sorted.length; i++) {
    const gap = sorted[i] - sorted[i - 1];
    const parts = Math.ceil(gap / LONGEST_ELEMENT - 1e-9);
    for (let k = 1; k < parts; k++) stations.push(sorted[i - 1] + (gap * k) / parts);
    stations.push(sorted[i]);
  }
  for (let r = 1; r < refine; r *= 2)
    stations = stations.flatMap((x, i) => (i === 0 ? [x] : [(stations[i - 1] + x) / 2, x]));
  return stations;
}

/** Index of the station nearest to x. */
function nearestTo(stations: readonly number[], x: number): number {
  let low = 0;
  let high = stations.length - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (stations[mid] <= x) low = mid;
    else high = mid;
  }
  return x - stations[low] <= stations[high] - x ? low : high;
}

/** Sections of all pieces, and the height of the mass-weighted mean centroid, at which all member axes are put. */
function sectionsOf(data: SetData): { sections: Mesh["sections"]; axisHeight: number } {
  const sections: Mesh["sections"] = new Map();
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
  return { sections, axisHeight: heightSum / massSum };
}

/** Meshes a set; `refine` 2, 4 ... halves the elements once, twice ... */
export function meshOf(data: SetData, refine: number): Mesh {
  const { sections, axisHeight } = sectionsOf(data);
  const stations = stationsOf(data, refine);
  const nodeOf: number[][] = data.girders.map(() => new Array(stations.length).fill(-1));
  const nodeX: number[] = [];
  const nodeY: number[] = [];
  const first = data.girders.map((g) => nearestTo(stations, g.pieces[0].from));
  const last = data.girders.map((g) => nearestTo(stations, g.pieces[g.pieces.length - 1].to));
  stations.forEach((x, s) => {
    data.girders.forEach((g, i) => {
      if (s < first[i] || s > last[i]) return;
      nodeOf[i][s] = nodeX.length;
      nodeX.push(x);
      nodeY.push(g.y);
    });
  });

  const elements: MeshElement[] = [];
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
      list.push({
        from,
        length,
        node1,
        node2,
        phi: shearRatio(stiff, length),
        EI: stiff.EIy,
        GA: stiff.GA,
        GJ: stiff.GJ,
        massPerMetre: 0,
        arm: 0,
        masses: [],
        turning: [],
      });
    }
    return list;
  }

  const order = data.girders.map((_, i) => i).sort((a, b) => data.girders[a].y - data.girders[b].y);
  const crossElements: CrossElement[] = [];
  for (const f of data.crossFrames ?? []) {
    const s = nearestTo(stations, f.at);
    const stiff: Stiffnesses = {
      EA: data.E * f.area,
      EIy: data.E * f.inPlaneInertia,
      EIz: data.E * f.planInertia,
      GJ: data.G * f.torsion,
      GA: Number.POSITIVE_INFINITY,
    };
    for (let o = 1; o < order.length; o++) {
      const node1 = nodeOf[order[o - 1]][s];
      const node2 = nodeOf[order[o]][s];
      if (node1 < 0 || node2 < 0) continue;
      const length = nodeY[node2] - nodeY[node1];
      const k = verticalStiffness(stiff, length);
      elements.push({ nodes: [node1, node2], k, across: true });
      crossElements.push({ x: f.at, girders: [order[o - 1], order[o]], nodes: [node1, node2], k });
    }
  }
  const matrix = assemble(nodeX.length * 3, elements);
  return { girders, crossElements, nodeOf, nodeX, nodeY, order, sections, axisHeight, matrix };
}

function assemble(n: number, elements: MeshElement[]): Banded {
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
  return matrix;
}
