// Plate girders piece by piece: one mesh of real plates for a whole set, laid out once and bent for every pose.
import type { PlanSet } from "../plan/index.ts";
import { type Curve, platesOf, pointOn } from "./curves.ts";
import { numberOf } from "./pen.ts";
import type { Frame, Vec3 } from "./vec.ts";

/** Largest distance (m) between two rows of points along a piece. */
const longest = 1;

/**
 * The mesh. Every vertex knows its place on the straight set (`place`: girder, station, side, height), so that bending
 * is one pass. `edges` are two coordinates per vertex that run from 0 to 1 between the edges of its face.
 */
export interface GirderMesh {
  positions: Float32Array;
  normals: Float32Array;
  edges: Float32Array;
  tones: Uint8Array;
  triangles: Uint32Array;
  /** Per vertex: number of its row. */
  rowOf: Uint32Array;
  side: Float32Array;
  height: Float32Array;
  /** Per row: girder and station. */
  rowGirder: Uint16Array;
  rowStation: Float64Array;
  /** Per girder: name and its first triangle; one more entry closes the last. */
  names: string[];
  firstTriangle: number[];
  origin: Vec3;
}

interface Draft {
  vertices: {
    row: number;
    side: number;
    height: number;
    normal: Vec3;
    edge: [number, number];
    tone: number;
  }[];
  triangles: number[];
  rows: { girder: number; station: number }[];
}

/** Rows of one piece: numbers of the rows, and for each how far it lies along the piece and along its panel. */
interface Run {
  rows: number[];
  alongPiece: number[];
  alongPanel: number[];
}

/**
 * Rows along a piece, at most `longest` apart and one at every stop. Panels lie between stops; their coordinate runs
 * up in one and down in the next, so that it comes to 0 or 1 at each stop.
 */
function addRows(draft: Draft, girder: number, stops: readonly number[]): Run {
  const run: Run = { rows: [], alongPiece: [], alongPanel: [] };
  const [from, to] = [stops[0], stops[stops.length - 1]];
  const add = (station: number, inPanel: number) => {
    draft.rows.push({ girder, station });
    run.rows.push(draft.rows.length - 1);
    run.alongPiece.push((station - from) / (to - from));
    run.alongPanel.push(inPanel);
  };
  add(from, 0);
  stops.slice(1).forEach((end, k) => {
    const parts = Math.max(1, Math.ceil((end - stops[k]) / longest - 1e-9));
    for (let i = 1; i <= parts; i++) {
      add(stops[k] + ((end - stops[k]) * i) / parts, k % 2 === 0 ? i / parts : 1 - i / parts);
    }
  });
  return run;
}

/** A face swept along rows between two corners of the section. */
function addStrip(
  draft: Draft,
  rows: readonly number[],
  along: readonly number[],
  a: readonly [number, number],
  b: readonly [number, number],
  normal: Vec3,
  tone: number,
): void {
  const first = draft.vertices.length;
  rows.forEach((row, i) => {
    const t = along[i];
    draft.vertices.push({ row, side: a[0], height: a[1], normal, edge: [0, t], tone });
    draft.vertices.push({ row, side: b[0], height: b[1], normal, edge: [1, t], tone });
    if (i === 0) return;
    const k = first + 2 * i;
    draft.triangles.push(k - 2, k + 1, k - 1, k - 2, k, k + 1);
  });
}

function addEnd(
  draft: Draft,
  row: number,
  y: readonly [number, number],
  z: readonly [number, number],
  way: 1 | -1,
  tone: number,
) {
  const first = draft.vertices.length;
  for (const [j, k] of [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ])
    draft.vertices.push({ row, side: y[j], height: z[k], normal: [way, 0, 0], edge: [j, k], tone });
  const [a, b, c, d] = [0, 1, 2, 3].map((i) => first + i);
  if (way > 0) draft.triangles.push(a, b, c, a, c, d);
  else draft.triangles.push(a, c, b, a, d, c);
}

/** Four long faces and two ends of one plate; on a web the lines of the stiffeners are drawn. */
function addPlate(draft: Draft, run: Run, width: number, from: number, to: number, web: boolean): void {
  const { rows } = run;
  const y = [-width / 2, width / 2] as const;
  const n = numberOf(web ? "steel" : "steel dark");
  const sides = web ? run.alongPanel : run.alongPiece;
  addStrip(draft, rows, run.alongPiece, [y[0], to], [y[1], to], [0, 0, 1], n);
  addStrip(draft, rows, run.alongPiece, [y[1], from], [y[0], from], [0, 0, -1], n);
  addStrip(draft, rows, sides, [y[1], to], [y[1], from], [0, 1, 0], n);
  addStrip(draft, rows, sides, [y[0], from], [y[0], to], [0, -1, 0], n);
  addEnd(draft, rows[0], y, [from, to], -1, n);
  addEnd(draft, rows[rows.length - 1], y, [from, to], 1, n);
}

/** Stations of the stiffeners of a girder, ascending: at every cross-frame and where the plan names them. */
function stiffenedAt(set: PlanSet, line: string): number[] {
  const own = (set.stiffeners ?? []).filter((one) => one.girder === line);
  return [...set.crossFrames, ...own].map((one) => one.at_m).sort((a, b) => a - b);
}

/** Lays out the mesh of a set, straight; `bend` gives it its place. */
export function layOutGirders(set: PlanSet, origin: Vec3): GirderMesh {
  const draft: Draft = { vertices: [], triangles: [], rows: [] };
  const firstTriangle = [0];
  set.girders.forEach((girder, g) => {
    const stiffened = stiffenedAt(set, girder.line);
    for (const piece of girder.pieces) {
      const { from_m: from, to_m: to } = piece;
      const inside = stiffened.filter((s, i) => s > from + 0.02 && s < to - 0.02 && s !== stiffened[i - 1]);
      const rows = addRows(draft, g, [from, ...inside, to]);
      const { top, web, bottom } = platesOf(piece);
      addPlate(draft, rows, bottom.width, bottom.from, bottom.to, false);
      addPlate(draft, rows, web.width, web.from, web.to, true);
      addPlate(draft, rows, top.width, top.from, top.to, false);
    }
    firstTriangle.push(draft.triangles.length / 3);
  });
  const { vertices, rows } = draft;
  return {
    positions: new Float32Array(3 * vertices.length),
    normals: Float32Array.from(vertices.flatMap((v) => v.normal)),
    edges: Float32Array.from(vertices.flatMap((v) => v.edge)),
    tones: Uint8Array.from(vertices, (v) => v.tone),
    triangles: Uint32Array.from(draft.triangles),
    rowOf: Uint32Array.from(vertices, (v) => v.row),
    side: Float32Array.from(vertices, (v) => v.side),
    height: Float32Array.from(vertices, (v) => v.height),
    rowGirder: Uint16Array.from(rows, (r) => r.girder),
    rowStation: Float64Array.from(rows, (r) => r.station),
    names: set.girders.map((girder) => girder.line),
    firstTriangle,
    origin,
  };
}

/** Puts every vertex where the curves of this pose have it; positions count from the mesh's origin. */
export function bend(mesh: GirderMesh, frame: Frame, curves: readonly Curve[]): void {
  const rows = mesh.rowStation.length;
  const base = new Float64Array(3 * rows);
  const turn = new Float64Array(rows);
  for (let r = 0; r < rows; r++) {
    const curve = curves[mesh.rowGirder[r]];
    const s = mesh.rowStation[r];
    const p = pointOn(frame, curve, s, 0, 0);
    for (let k = 0; k < 3; k++) base[3 * r + k] = p[k] - mesh.origin[k];
    turn[r] = curve.twist(s);
  }
  const { ey, ez } = frame;
  const { positions, rowOf, side, height } = mesh;
  for (let v = 0; v < rowOf.length; v++) {
    const r = rowOf[v];
    const y = side[v] - height[v] * turn[r];
    const z = height[v] + side[v] * turn[r];
    for (let k = 0; k < 3; k++) positions[3 * v + k] = base[3 * r + k] + y * ey[k] + z * ez[k];
  }
}

/** Volume enclosed by the triangles of one girder, m3 (divergence theorem; the plates are closed bodies). */
export function girderVolume(mesh: GirderMesh, girder: number): number {
  const { positions: p, triangles: t } = mesh;
  let six = 0;
  for (let i = 3 * mesh.firstTriangle[girder]; i < 3 * mesh.firstTriangle[girder + 1]; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}
