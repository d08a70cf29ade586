// Masses of a corner: all of them by one factor, and a self-balancing change that moves the centre of gravity.
//
// Every mass m at (x, y) becomes m (1 + a (x - X) + b (y - Y)) with (X, Y) the CG: the total stays, and a and b are such
// that the CG moves by exactly what was stated. Girders change in parts no longer than the mesh, so that the frame
// and its factor are those of the set as planned, to the last bit of the mesh.

import type { SetData, SetModel } from "../../mechanics/index.ts";

interface Lump {
  mass: number;
  x: number;
  y: number;
}

/**
 * The set with its masses times `factor` and its CG moved by `along` (m, forward) and `across` (m, left). Across is left
 * out for a lone girder, whose lean is held. Throws RangeError when a mass would have to fall below zero.
 */
export function withMasses(model: SetModel, factor: number, along: number, across: number): SetData {
  const { data } = model;
  if (along === 0 && across === 0) return scaled(data, () => factor);
  const cut = cutAtMesh(model);
  const lumps = lumpsOf(cut);
  let mass = 0;
  let X = 0;
  let Y = 0;
  for (const l of lumps) {
    mass += l.mass;
    X += l.mass * l.x;
    Y += l.mass * l.y;
  }
  X /= mass;
  Y /= mass;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const l of lumps) {
    xx += (l.mass * (l.x - X) ** 2) / mass;
    xy += (l.mass * (l.x - X) * (l.y - Y)) / mass;
    yy += (l.mass * (l.y - Y) ** 2) / mass;
  }
  const wide = yy > 1e-9;
  const det = xx * yy - xy * xy;
  const a = wide ? (along * yy - across * xy) / det : along / xx;
  const b = wide ? (across * xx - along * xy) / det : 0;
  const at = (x: number, y: number) => 1 + a * (x - X) + b * (y - Y);
  const least = Math.min(...lumps.map((l) => at(l.x, l.y)));
  if (!(least > 0))
    throw new RangeError(
      `spread: a CG ${along} m along and ${across} m across asks for masses below zero; at most ${(1 / (1 - least)).toFixed(2)} of that is allowed: state a smaller shift`,
    );
  return scaled(cut, (x, y) => factor * at(x, y));
}

/** The masses of a set times a factor of their place. */
function scaled(data: SetData, at: (x: number, y: number) => number): SetData {
  const yOf = (girder: string) => data.girders.find((g) => g.name === girder)?.y ?? 0;
  return {
    ...data,
    girders: data.girders.map((g) => ({
      ...g,
      pieces: g.pieces.map((p) => ({ ...p, massPerMetre: p.massPerMetre * at((p.from + p.to) / 2, g.y) })),
    })),
    crossFrames: (data.crossFrames ?? []).map((f) => ({ ...f, mass: f.mass * at(f.at, frameY(data)) })),
    pointMasses: (data.pointMasses ?? []).map((p) => ({
      ...p,
      mass: p.mass * at(p.at, yOf(p.girder) + (p.off ?? 0)),
    })),
  };
}

/** A frame hangs half on each of its two girders, bay by bay: the middle of its mass across. */
function frameY(data: SetData): number {
  const ys = data.girders.map((g) => g.y).sort((a, b) => a - b);
  if (ys.length === 1) return ys[0];
  let sum = 0;
  for (let i = 1; i < ys.length; i++) sum += (ys[i - 1] + ys[i]) / 2 / (ys.length - 1);
  return sum;
}

function lumpsOf(data: SetData): Lump[] {
  const lumps: Lump[] = [];
  for (const g of data.girders)
    for (const p of g.pieces)
      lumps.push({ mass: p.massPerMetre * (p.to - p.from), x: (p.from + p.to) / 2, y: g.y });
  for (const f of data.crossFrames ?? []) lumps.push({ mass: f.mass, x: f.at, y: frameY(data) });
  for (const p of data.pointMasses ?? []) {
    const y = data.girders.find((g) => g.name === p.girder)?.y ?? 0;
    lumps.push({ mass: p.mass, x: p.at, y: y + (p.off ?? 0) });
  }
  return lumps.filter((l) => l.mass > 0);
}

/** The same set with its pieces cut at the nodes of its own mesh, which therefore stays as it is. */
function cutAtMesh(model: SetModel): SetData {
  return {
    ...model.data,
    girders: model.data.girders.map((g, i) => {
      const stations = model.girders[i].elements.map((e) => e.from);
      return {
        ...g,
        pieces: g.pieces.flatMap((p) => {
          const cuts = [p.from, ...stations.filter((x) => x > p.from && x < p.to), p.to];
          return cuts.slice(1).map((to, k) => ({ ...p, from: cuts[k], to }));
        }),
      };
    }),
  };
}
