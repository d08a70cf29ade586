// Sets on three supports: neither a rigid beam nor equal springs tell who carries what; the uncondensed solver agrees.
// Source: statics of an elastic beam on springs; the second solver is our own (dense.ts). All numbers are invented.

import { describe, expect, test } from "vitest";
import {
  type State,
  type StateGirder,
  type StateHoist,
  type StateTrain,
  solveState,
} from "../../src/mechanics/index.ts";
import { solveDense } from "./dense.ts";

const g = 9.80665;

const girder = (name: string, y: number, L: number, flange: number, depth: number): StateGirder => ({
  name,
  y,
  camber: [0, 0.25, 0.5, 0.75, 1].map((s): [number, number] => [s * L, 0.24 * s * (1 - s)]),
  pieces: [
    {
      from: 0,
      to: 0.35 * L,
      topFlange: [flange, 0.03],
      web: [depth, 0.014],
      bottomFlange: [flange, 0.04],
      massPerMetre: Math.round(9000 * (0.07 * flange + 0.014 * depth)),
    },
    {
      from: 0.35 * L,
      to: L,
      topFlange: [flange, 0.022],
      web: [depth, 0.012],
      bottomFlange: [flange, 0.028],
      massPerMetre: Math.round(9000 * (0.05 * flange + 0.012 * depth)),
    },
  ],
});

const train = (name: string, at: number, rest: Partial<StateTrain> = {}): StateTrain => ({
  name,
  at,
  lines: 6,
  pitch: 1.4,
  gauge: 1.8,
  cylinderStiffness: 4e6,
  mass: 24e3,
  cgHeight: 0.95,
  bunkHeight: 1.85,
  bunks: [-1.2, 1.2],
  bunkGirders: ["L", "R"],
  bunkStiffness: 2e9,
  ...rest,
});

const sides = (...names: string[]) =>
  Object.fromEntries(
    names.flatMap((name) =>
      ["L", "R"].map((side) => [
        `${name} ${side === "L" ? "left" : "right"}`,
        [1, 2, 3, 4, 5, 6].map((line) => `${name}:${line}${side}`),
      ]),
    ),
  );

const hook = (name: string, at: number, takeUp: number, rest: Partial<StateHoist> = {}): StateHoist => ({
  name,
  at,
  girders: ["L", "R"],
  rigging: "spreader",
  mode: "takeUp",
  takeUp,
  stiffness: 1.5e6,
  pickHeight: 2.1,
  pinHeight: 0.5,
  ...rest,
});

const twin = (L: number, right: [number, number], rest: Partial<State>): State => ({
  format: "handspan-state",
  version: 1,
  gravity: g,
  E: 2.1e11,
  G: 8.1e10,
  girders: [girder("L", 1.5, L, 0.5, 1.9), girder("R", -1.5, L, ...right)],
  crossFrames: Array.from({ length: Math.floor(L / 6) + 1 }, (_, i) => ({
    at: i === 0 ? 0.3 : Math.min(L - 0.3, 6 * i),
    area: 3e-3,
    inPlaneInertia: 8e-4,
    planInertia: 2e-6,
    torsion: 1e-7,
    mass: 350,
    height: 0.9,
  })),
  ...rest,
});

interface Case {
  what: string;
  state: State;
  /** The three supports as lists of names of forces, with their station, stiffness and tare. */
  supports: { names: string[]; x: number; k: number; d: number; tare: number }[];
}

/** What the set stands or hangs on, summed over the width: its place, stiffness and datum for the rigid beam. */
const onTrain = (t: StateTrain) => ({
  names: [`group ${t.name} left`, `group ${t.name} right`],
  x: t.at,
  k: 2 * t.lines * t.cylinderStiffness,
  d: 0,
  tare: t.mass * g,
});
const onHook = (h: StateHoist) => ({
  names: [`hoist ${h.name}`],
  x: h.at,
  k: h.stiffness,
  d: h.takeUp ?? 0,
  tare: 0,
});

const cases: Case[] = [];
{
  const [rear, front] = [train("rear", 7), train("front", 27)];
  const far = hook("far", 41, 0.03);
  cases.push({
    what: "two trains and the far hook by take-up",
    state: twin(42, [0.5, 1.9], { trains: [rear, front], groups: sides("rear", "front"), hoists: [far] }),
    supports: [onTrain(rear), onTrain(front), onHook(far)],
  });
}
{
  const [rear, front] = [train("rear", 6), train("front", 24)];
  const far = hook("far", 38, 0.02, { rigging: "point", pinHeight: 4 });
  cases.push({
    what: "girders of unlike plates, on two trains and the far hook",
    state: twin(40, [0.62, 1.9], {
      trains: [rear, { ...front, packing: { L: 0.003 } }],
      groups: sides("rear", "front"),
      groupLift: { "rear left": 0.004 },
      ground: { "front:2L": 0.02, "rear:5R": -0.015 },
      hoists: [far],
      pointMasses: [{ girder: "R", at: 20, mass: 1200, height: 1.2 }],
    }),
    supports: [onTrain(rear), onTrain(front), onHook(far)],
  });
}
{
  const [rear, front] = [train("rear", 4.5), train("front", 31)];
  const near = hook("near", 15, 0.09, { rigging: "separate", stiffness: 2.4e6 });
  cases.push({
    what: "a rear and a front train with the near hook between them",
    state: twin(38, [0.5, 1.9], { trains: [rear, front], groups: sides("rear", "front"), hoists: [near] }),
    supports: [onTrain(rear), onTrain(front), onHook(near)],
  });
}
{
  const [near, far] = [hook("near", 17, 0.18), hook("far", 37, 0.3)];
  const k = 5e9;
  cases.push({
    what: "rear bearings and two hooks",
    state: twin(38, [0.56, 1.9], {
      hoists: [near, far],
      bearings: ["L", "R"].map((name) => ({
        name: `rear ${name}`,
        girder: name,
        at: 0.5,
        seat: name === "L" ? 0.003 : 0,
        stiffness: k,
      })),
    }),
    supports: [
      { names: ["bearing rear L", "bearing rear R"], x: 0.5, k: 2 * k, d: 0.0015, tare: 0 },
      onHook(near),
      onHook(far),
    ],
  });
}

/** A rigid beam on springs: F = k (d - h - b x), two equations of statics. */
function rigidBeam(springs: { x: number; k: number; d: number }[], weight: number, at: number): number[] {
  const s = (of: (p: (typeof springs)[number]) => number) => springs.reduce((sum, p) => sum + of(p), 0);
  const K = s((p) => p.k);
  const mid = s((p) => p.k * p.x) / K;
  const h = (s((p) => p.k * p.d) - weight) / K;
  const b = (s((p) => p.k * p.d * (p.x - mid)) - weight * (at - mid)) / s((p) => p.k * (p.x - mid) ** 2);
  return springs.map((p) => p.k * (p.d - h - b * (p.x - mid)));
}

const camberAt = (state: State, x: number) => {
  const L = state.girders[0].pieces[1].to;
  const points = state.girders[0].camber ?? [];
  const i = Math.min(3, Math.floor((4 * x) / L));
  const [[x0, z0], [x1, z1]] = [points[i], points[i + 1]];
  return z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
};

describe.each(cases)("$what", ({ state, supports }) => {
  const answer = solveState(state);
  const found = supports.map((s) => s.names.reduce((sum, n) => sum + answer.forces[n], 0) - s.tare);

  test("stands, and all three supports carry", () => {
    expect(answer.status, answer.motion).toBe("solved");
    for (const F of found) expect(F).toBeGreaterThan(0.02 * answer.weight);
  });

  test("a rigid beam on the same springs is off by more than 5 % at one support", () => {
    // The set bends by as much as the springs give: who takes the rigid beam leaves the middle support too much or
    // too little.
    const rigid = rigidBeam(
      supports.map(({ x, k, d }) => ({ x, k, d: d - camberAt(state, x) })),
      answer.weight,
      answer.cg[0],
    );
    const worst = Math.max(...found.map((F, i) => Math.abs(rigid[i] - F) / F));
    expect(worst).toBeGreaterThan(0.05);
  });

  test("three equal springs are off by more than 5 % at one support", () => {
    // A hook with its boom is many times softer than a train or a bearing, and take-ups are no level line.
    const equal = rigidBeam(
      supports.map(({ x }) => ({ x, k: 1e7, d: 0 })),
      answer.weight,
      answer.cg[0],
    );
    const worst = Math.max(...found.map((F, i) => Math.abs(equal[i] - F) / F));
    expect(worst).toBeGreaterThan(0.05);
  });

  test("the uncondensed space frame agrees within 0.1 % of the largest reaction", { timeout: 60_000 }, () => {
    const dense = solveDense(state);
    const largest = Math.max(...found);
    expect(dense.unknowns).toBeGreaterThan(800);
    let compared = 0;
    for (const [name, F] of Object.entries(dense.forces)) {
      compared++;
      expect(Math.abs(answer.forces[name] - F), name).toBeLessThan(1e-3 * largest);
    }
    expect(compared).toBeGreaterThanOrEqual(4);
  });
});

describe("a hoist of half the stiffness", () => {
  const build = (stiffness: number, takeUp: number): State => {
    const { state } = cases[0];
    return { ...state, hoists: [{ ...(state.hoists ?? [])[0], stiffness, takeUp }] };
  };
  const onFront = (a: ReturnType<typeof solveState>) =>
    Object.entries(a.forces).reduce((sum, [n, F]) => sum + (n.startsWith("bunk front ") ? F : 0), 0);
  /** Take-up at which the front bunks carry nothing any more, by bisection. */
  const freeing = (stiffness: number) => {
    let [low, high] = [0, 1];
    for (let i = 0; i < 60; i++) {
      const mid = (low + high) / 2;
      if (onFront(solveState(build(stiffness, mid))) > 0) low = mid;
      else high = mid;
    }
    return high;
  };
  const [k1, k2] = [1.5e6, 0.75e6];
  const [h1, h2] = [freeing(k1), freeing(k2)];
  const [a, b] = [solveState(build(k1, h1 + 1e-4)), solveState(build(k2, h2 + 1e-4))];

  test("the take-up that frees the front train grows by F (1/k2 - 1/k1)", () => {
    expect(h1).toBeGreaterThan(0.02);
    expect(h2).toBeLessThan(0.9);
    // Only rear train and hook carry then, so that F follows from statics.
    const F = a.forces["hoist far"];
    expect(Math.abs(h2 - h1 - F * (1 / k2 - 1 / k1))).toBeLessThan(1e-6);
  });

  test("the shares after it are the same, and stay so as the hook goes on", () => {
    const rear = (x: typeof a) => x.forces["group rear left"] + x.forces["group rear right"];
    const W = a.weight;
    expect(onFront(a)).toBe(0);
    expect(onFront(b)).toBe(0);
    expect(Math.abs(a.forces["hoist far"] - b.forces["hoist far"])).toBeLessThan(1e-7 * W);
    expect(Math.abs(rear(a) - rear(b))).toBeLessThan(1e-7 * W);
    // Going on, the set tips about the rear train: its CG height times the angle moves the shares by second order only.
    const later = solveState(build(k1, h1 + 0.05));
    expect(Math.abs(later.forces["hoist far"] - a.forces["hoist far"])).toBeLessThan(1e-4 * W);
    // By the lever: hook at 41 m, rear train's groups at 7 m.
    const lever = (W * (a.cg[0] - 7)) / (41 - 7);
    expect(Math.abs(a.forces["hoist far"] - lever)).toBeLessThan(1e-3 * W);
  });
});
