// Balance of a solved pose summed from the printed answer and the coordinates of the State alone: nothing here is
// taken from the solver but its answer, and the turn about y of what hangs, which the answer does not print.

import type { Solution, State, StateAnswer, StateGirder } from "../../src/mechanics/index.ts";

/** True up in path coordinates: the normal of z = grade x - crossfall y, x along the path. */
export function upward(state: State): [number, number, number] {
  const g = state.grade ?? 0;
  const c = state.crossfall ?? 0;
  const ex = [1, 0, g].map((v) => v / Math.hypot(1, g));
  const ez = [-g, c, 1].map((v) => v / Math.hypot(g, c, 1));
  const ey = [ez[1] * ex[2] - ez[2] * ex[1], ez[2] * ex[0] - ez[0] * ex[2], ez[0] * ex[1] - ez[1] * ex[0]];
  return [ex[2], ey[2], ez[2]];
}

/** Mass, [x, y, z] of the centre, from plates and points behind station `to`; heights above the soffit. */
export function massOf(
  state: State,
  to = Number.POSITIVE_INFINITY,
): { mass: number; cg: [number, number, number] } {
  let mass = 0;
  const moment = [0, 0, 0];
  const count = (m: number, x: number, y: number, z: number) => {
    mass += m;
    moment[0] += m * x;
    moment[1] += m * y;
    moment[2] += m * z;
  };
  for (const g of state.girders)
    for (const p of g.pieces) {
      const plates = [
        { area: p.bottomFlange[0] * p.bottomFlange[1], z: p.bottomFlange[1] / 2 },
        { area: p.web[0] * p.web[1], z: p.bottomFlange[1] + p.web[0] / 2 },
        { area: p.topFlange[0] * p.topFlange[1], z: p.bottomFlange[1] + p.web[0] + p.topFlange[1] / 2 },
      ];
      const area = plates.reduce((s, x) => s + x.area, 0);
      const z = plates.reduce((s, x) => s + x.area * x.z, 0) / area;
      const end = Math.min(p.to, to);
      if (end > p.from) count(p.massPerMetre * (end - p.from), (p.from + end) / 2, g.y, z);
    }
  const across = [...state.girders].sort((a, b) => a.y - b.y);
  for (const f of state.crossFrames ?? [])
    for (let i = 1; f.at < to && i < across.length; i++)
      count(f.mass / (across.length - 1), f.at, (across[i - 1].y + across[i].y) / 2, f.height);
  for (const p of state.pointMasses ?? []) if (p.at < to) count(p.mass, p.at, yOf(state, p.girder), p.height);
  return { mass, cg: [moment[0] / mass, moment[1] / mass, moment[2] / mass] };
}

function yOf(state: State, girder: string): number {
  return (state.girders.find((g) => g.name === girder) as StateGirder).y;
}

function camber(state: State, girder: string, x: number): number {
  const points = state.girders.find((g) => g.name === girder)?.camber ?? [];
  for (let i = 1; i < points.length; i++)
    if (x <= points[i][0])
      return (
        points[i - 1][1] +
        ((points[i][1] - points[i - 1][1]) * (x - points[i - 1][0])) / (points[i][0] - points[i - 1][0])
      );
  return 0;
}

/** Forces and moments about (0, 0, 0) of the path's coordinates. */
export class Sum {
  f = [0, 0, 0];
  m = [0, 0, 0];
  add(x: number, y: number, z: number, fx: number, fy: number, fz: number): void {
    this.f[0] += fx;
    this.f[1] += fy;
    this.f[2] += fz;
    this.m[0] += y * fz - z * fy;
    this.m[1] += z * fx - x * fz;
    this.m[2] += x * fy - y * fx;
  }
}

/** What is out of balance, as shares of W and W L: the set vertical, the set sideways, the decks. */
export interface Balance {
  set: number;
  sideways: number;
  decks: number;
}

/**
 * Sum of all that acts on the set behind station `to`, about (0, 0, 0); the State must ask for the droop at every
 * hoist, in the hoists' order.
 */
export function actionsOn(
  state: State,
  answer: StateAnswer,
  solution: Solution,
  to = Number.POSITIVE_INFINITY,
): Sum {
  const up = upward(state);
  const g = state.gravity;
  const set = new Sum();
  const behind = massOf(state, to);
  const { cg } = massOf(state);
  if (behind.mass > 0) set.add(...behind.cg, ...(up.map((u) => -behind.mass * g * u) as typeof up));
  const { wind } = state;
  if (wind) {
    const sign = wind.toward === "+y" ? 1 : -1;
    const windward = [...state.girders].sort((a, b) => sign * (a.y - b.y))[0];
    for (const p of windward.pieces) {
      const end = Math.min(p.to, to);
      if (end <= p.from) continue;
      const depth = p.topFlange[1] + p.web[0] + p.bottomFlange[1];
      const force = sign * wind.pressure * wind.factor * depth * (end - p.from);
      set.add((p.from + end) / 2, 0, depth / 2, 0, force, 0);
    }
  }
  const contacts = answer.horizontal?.contacts ?? {};
  for (const t of state.trains ?? [])
    t.bunks.forEach((along, row) => {
      if (t.at + along >= to) return;
      for (const girder of t.bunkGirders) {
        const name = `bunk ${t.name} ${girder} ${row + 1}`;
        const [fx, fy] = contacts[name]?.force ?? [0, 0];
        set.add(t.at + along, yOf(state, girder), 0, fx, fy, answer.forces[name]);
      }
    });
  for (const l of state.lashings ?? [])
    if (l.at < to)
      set.add(l.at, yOf(state, l.girder), 0, 0, 0, -answer.forces[`lashing ${l.girder} ${l.at}`]);
  for (const b of state.bearings ?? []) {
    if (b.at >= to) continue;
    const [fx, fy] = contacts[`bearing ${b.name}`]?.force ?? [0, 0];
    set.add(b.at, yOf(state, b.girder), 0, fx, fy, answer.forces[`bearing ${b.name}`]);
  }
  (state.hoists ?? []).forEach((h, i) => {
    if (h.at >= to) return;
    const ys = h.girders.map((girder) => yOf(state, girder));
    const lines = h.girders.map((girder) => answer.forces[`line ${h.name} ${girder}`]);
    const T = answer.forces[`hoist ${h.name}`];
    const mean = ys.reduce((a, b) => a + b, 0) / ys.length;
    const [fx, fy] = answer.horizontal?.lines[h.name]?.force ?? [0, 0];
    const separate = h.rigging === "separate";
    const along = (y: number, z: number, F: number) => {
      set.add(h.at, y, z, F * up[0], F * up[1], F * up[2]);
    };
    if (separate)
      ys.forEach((y, k) => {
        along(y, h.pickHeight, lines[k]);
      });
    else along(mean, h.pickHeight, T);
    set.add(h.at, mean, h.pickHeight, fx, fy, 0);
    // Second order from here on: pin, picks and weight have moved aside under one another. All act along true up, so
    // that the moment of their shifts has no part about it.
    const turned = [0, 0];
    // The lines' difference is the couple that a leaning spreader or bridle passes on, and that of the pull at its pin.
    if (!separate) turned[0] += lines.reduce((s, F, k) => s + F * ys[k], 0) - T * mean;
    const order = [...h.girders].sort((a, b) => yOf(state, b) - yOf(state, a));
    const [left, right] = [order[0], order[order.length - 1]];
    if (left !== right) {
      const rise = (girder: string) => answer.droop[girder][i] + camber(state, girder, h.at);
      const lean = (rise(left) - rise(right)) / (yOf(state, left) - yOf(state, right));
      turned[0] -= T * (h.pickHeight - cg[2]) * lean;
    }
    const level = solution.devices.findIndex((d) => d.kind === "level of hoist" && d.of === i);
    turned[1] -= T * (h.pickHeight - cg[2]) * solution.contact.v[level];
    turn(set, turned[0], turned[1], up);
  });
  return set;
}

/** Adds a couple about x and y that has no part about true up. */
function turn(set: Sum, x: number, y: number, up: readonly number[]): void {
  set.m[0] += x;
  set.m[1] += y;
  set.m[2] -= (x * up[0] + y * up[1]) / up[2];
}

/** Sums all forces. The State must ask for the droop at every hoist, in the hoists' order. */
export function balanceOf(state: State, answer: StateAnswer, solution: Solution): Balance {
  const up = upward(state);
  const { mass } = massOf(state);
  const g = state.gravity;
  const W = mass * g;
  const ends = state.girders.flatMap((x) => [x.pieces[0].from, x.pieces[x.pieces.length - 1].to]);
  const L = Math.max(...ends) - Math.min(...ends);
  const set = actionsOn(state, answer, solution);
  const contacts = answer.horizontal?.contacts ?? {};
  let decks = 0;
  for (const t of state.trains ?? []) {
    const deck = new Sum();
    const weight = t.mass * g;
    deck.add(0, 0, t.cgHeight, -weight * up[0], -weight * up[1], -weight * up[2]);
    t.bunks.forEach((along, row) => {
      for (const girder of t.bunkGirders) {
        const name = `bunk ${t.name} ${girder} ${row + 1}`;
        const [fx, fy] = contacts[name]?.force ?? [0, 0];
        deck.add(along, yOf(state, girder), 0, 0, 0, -answer.forces[name]);
        deck.add(0, 0, t.bunkHeight, -fx, -fy, 0);
      }
    });
    for (const l of state.lashings ?? [])
      if (l.train === t.name)
        deck.add(l.at - t.at, yOf(state, l.girder), 0, 0, 0, answer.forces[`lashing ${l.girder} ${l.at}`]);
    for (let line = 1; line <= t.lines; line++)
      for (const side of ["L", "R"])
        deck.add(
          (line - (t.lines + 1) / 2) * t.pitch,
          side === "L" ? t.gauge / 2 : -t.gauge / 2,
          0,
          0,
          0,
          answer.forces[`cylinder ${t.name}:${line}${side}`],
        );
    decks = Math.max(
      decks,
      Math.abs(deck.f[2]) / W,
      Math.abs(deck.m[0]) / (W * L),
      Math.abs(deck.m[1]) / (W * L),
    );
  }
  // What holds the lean of a one-girder set is such a moment too.
  if (state.girders.length === 1) turn(set, -set.m[0], 0, up);
  return {
    set: Math.max(Math.abs(set.f[2]) / W, Math.abs(set.m[0]) / (W * L), Math.abs(set.m[1]) / (W * L)),
    sideways: Math.max(Math.abs(set.f[0]) / W, Math.abs(set.f[1]) / W, Math.abs(set.m[2]) / (W * L)),
    decks,
  };
}
