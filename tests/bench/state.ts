// The State that the bench rolls along: 60 m, two girders of three field pieces, two trains of 8 lines, the far hook.
// All numbers are invented.

import type { State, StateGirder, StateTrain } from "../../src/mechanics/index.ts";

const girder = (name: string, y: number): StateGirder => ({
  name,
  y,
  camber: [
    [0, 0],
    [15, 0.06],
    [30, 0.08],
    [45, 0.06],
    [60, 0],
  ],
  pieces: [
    [0, 18.5, 0.6, 0.03, 0.014],
    [18.5, 41.5, 0.7, 0.045, 0.016],
    [41.5, 60, 0.6, 0.03, 0.014],
  ].map(([from, to, width, thickness, web]) => ({
    from,
    to,
    topFlange: [width, thickness],
    web: [2.4, web],
    bottomFlange: [width, thickness * 1.2],
    massPerMetre: Math.round(8900 * (2.2 * width * thickness + 2.4 * web)),
  })),
});

const girders = [girder("L", 1.6), girder("R", -1.6)];
const crossFrames = Array.from({ length: 11 }, (_, i) => ({
  at: i === 0 ? 0.5 : i === 10 ? 59.5 : 6 * i,
  area: 3e-3,
  inPlaneInertia: 9e-4,
  planInertia: 2e-6,
  torsion: 1e-7,
  mass: 420,
  height: 1.2,
}));
const pointMasses = [18.5, 41.5].flatMap((at) =>
  girders.map((g) => ({ girder: g.name, at, mass: 380, height: 1.2 })),
);

const train = (name: string, at: number): StateTrain => ({
  name,
  at,
  lines: 8,
  pitch: 1.4,
  gauge: 1.8,
  cylinderStiffness: 4e6,
  strokeUp: 0.35,
  strokeDown: 0.35,
  mass: 34e3,
  cgHeight: 0.95,
  bunkHeight: 1.9,
  bunks: [-1.4, 1.4],
  bunkGirders: ["L", "R"],
  bunkStiffness: 2e9,
});

const lines = (name: string, side: string) =>
  [1, 2, 3, 4, 5, 6, 7, 8].map((line) => `${name}:${line}${side}`);
const groups = {
  "rear left": lines("rear", "L"),
  "rear right": lines("rear", "R"),
  "front left": lines("front", "L"),
  "front right": lines("front", "R"),
};

/** The set rolled forward by `x` m over its front train, with the far hook `higher` m up. */
export function rollingState(x: number, higher = 0): State {
  return {
    format: "handspan-state",
    version: 1,
    gravity: 9.80665,
    E: 2.1e11,
    G: 8.1e10,
    shear: true,
    girders,
    crossFrames,
    pointMasses,
    trains: [train("rear", 7.03 + x / 50), train("front", 45.07 - x)],
    groups,
    hoists: [
      {
        name: "far",
        at: 57.2,
        girders: ["L", "R"],
        rigging: "spreader",
        mode: "takeUp",
        takeUp: 0.02 + higher,
        stiffness: 1.5e6,
        pickHeight: 2.5,
        pinHeight: 0.6,
      },
    ],
  };
}

/** The set at rest half way, its front groups lifted by `lift` m, the far hook at a given load: only datums change. */
export function jackedState(lift: number): State {
  const state = rollingState(10);
  return {
    ...state,
    groupLift: { "front left": lift, "front right": lift },
    hoists: state.hoists?.map((h) => ({ ...h, mode: "load" as const, takeUp: null, load: 180e3 })),
  };
}
