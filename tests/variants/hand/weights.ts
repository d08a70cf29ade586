// Hand weight of a set: its parts as lumps of mass, summed. Read from the plan's plates alone, no take-off of the program.

import type { Plan } from "../../../src/plan/index.ts";

/** A part as a point: station from the rear end, y left, height above the soffit (m), weight (N). */
export interface Lump {
  x: number;
  y: number;
  z: number;
  w: number;
}

export interface Weight {
  lumps: Lump[];
  /** Sum, N, and its point, m. */
  W: number;
  x: number;
  y: number;
  z: number;
}

const G = 9.80665;
/** Girders are cut into lumps of this length at most, m: a line across them errs by less than its square over eight. */
const SLICE = 0.25;

type Piece = Plan["sets"][number]["girders"][number]["pieces"][number];

/** Area (m2), height of its centroid above the soffit (m) and second moment (m4) of a piece's three plates. */
export function section(piece: Piece): { area: number; height: number; inertia: number } {
  const [tb, tt] = piece.topFlange_mm.map((v) => v / 1000);
  const [wh, wt] = piece.web_mm.map((v) => v / 1000);
  const [bb, bt] = piece.bottomFlange_mm.map((v) => v / 1000);
  const plates = [
    { a: bb * bt, z: bt / 2, own: (bb * bt ** 3) / 12 },
    { a: wh * wt, z: bt + wh / 2, own: (wt * wh ** 3) / 12 },
    { a: tb * tt, z: bt + wh + tt / 2, own: (tb * tt ** 3) / 12 },
  ];
  const area = plates.reduce((s, p) => s + p.a, 0);
  const height = plates.reduce((s, p) => s + p.a * p.z, 0) / area;
  const inertia = plates.reduce((s, p) => s + p.own + p.a * (p.z - height) ** 2, 0);
  return { area, height, inertia };
}

/** The weight of a plan's first set: plates with what fabrication adds, splices, frames, attachments. */
export function weigh(plan: Plan): Weight {
  const [set] = plan.sets;
  const density = (set.steelDensity_kg_per_m3 ?? 7850) * (1 + (set.fabricationFactor_pct ?? 0) / 100);
  const lumps: Lump[] = [];
  const yOf = (line: string) => set.girders.find((g) => g.line === line)?.y_m ?? Number.NaN;
  for (const g of set.girders)
    for (const piece of g.pieces) {
      const { area, height } = section(piece);
      const length = piece.to_m - piece.from_m;
      const n = Math.ceil(length / SLICE);
      for (let i = 0; i < n; i++)
        lumps.push({
          x: piece.from_m + ((i + 0.5) * length) / n,
          y: g.y_m,
          z: height,
          w: (area * density * G * length) / n,
        });
    }
  for (const s of set.splices) lumps.push({ x: s.at_m, y: yOf(s.girder), z: 1.2, w: s.mass_t * 1000 * G });
  for (const f of set.crossFrames) lumps.push({ x: f.at_m, y: 0, z: f.height_m, w: f.mass_t * 1000 * G });
  for (const a of set.attachments)
    lumps.push({ x: a.at_m, y: yOf(a.girder) + (a.y_m ?? 0), z: a.height_m, w: a.mass_t * 1000 * G });
  const W = lumps.reduce((s, l) => s + l.w, 0);
  const mean = (of: (l: Lump) => number) => lumps.reduce((s, l) => s + l.w * of(l), 0) / W;
  return { lumps, W, x: mean((l) => l.x), y: mean((l) => l.y), z: mean((l) => l.z) };
}

/** Bending stiffness (N m2) of both girders together at their weakest and strongest, and web shear stiffness (N). */
export function bending(plan: Plan): { least: number; most: number; shear: number } {
  const [set] = plan.sets;
  const E = (set.E_GPa ?? 210) * 1e9;
  const inertias = set.girders.map((g) => g.pieces.map((p) => section(p).inertia));
  const sum = (of: (list: number[]) => number) => inertias.reduce((s, list) => s + of(list), 0);
  const webs = set.girders.reduce(
    (s, g) => s + Math.min(...g.pieces.map((p) => p.web_mm[0] * p.web_mm[1])) * 1e-6,
    0,
  );
  return {
    least: E * sum((l) => Math.min(...l)),
    most: E * sum((l) => Math.max(...l)),
    shear: (set.G_GPa ?? 81) * 1e9 * webs,
  };
}
