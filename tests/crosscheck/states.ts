// The states that are written for the finite-element program: two sets whose girders have the stiffness of rectangles,
// none of them statically determinate. All numbers are invented.

import type {
  State,
  StateBearing,
  StateCrossFrame,
  StateGirder,
  StateHoist,
  StateTrain,
} from "../../src/mechanics/index.ts";
import { platesLike, torsionOf } from "./rectangle.ts";

export const steel = {
  format: "handspan-state",
  version: 1,
  gravity: 9.80665,
  E: 2.1e11,
  G: 8.1e10,
} as const;

/** A girder of pieces [from, to, height, width], each with plates of a rectangle's stiffness. */
function girder(
  name: string,
  y: number,
  rise: number,
  pieces: readonly (readonly [number, number, number, number])[],
): StateGirder {
  const length = pieces[pieces.length - 1][1];
  return {
    name,
    y,
    camber: [0, 0.25, 0.5, 0.75, 1].map((s): [number, number] => [s * length, 4 * s * (1 - s) * rise]),
    pieces: pieces.map(([from, to, h, b]) => ({
      from,
      to,
      ...platesLike({ h, b }),
      massPerMetre: Math.round(9000 * h * b),
    })),
  };
}

/**
 * Cross-frames as slender beams: shear, which a State's cross-frame has not, softens them by 3 to 5 %. They are narrow, since a
 * beam of the program holds the girder that it meets over its own width.
 */
function frames(stations: readonly number[], h: number, b: number, mass: number): StateCrossFrame[] {
  return stations.map((at) => ({
    at,
    area: h * b,
    inPlaneInertia: (b * h ** 3) / 12,
    planInertia: (h * b ** 3) / 12,
    torsion: torsionOf({ h, b }),
    mass,
    height: 1,
  }));
}

const twin: State = {
  ...steel,
  girders: [
    girder("L", 1.5, 0.08, [
      [0, 12, 1.2, 0.055],
      [12, 25, 1.3, 0.06],
      [25, 36, 1.2, 0.05],
    ]),
    girder("R", -1.5, 0.085, [
      [0, 12, 1.15, 0.055],
      [12, 25, 1.25, 0.06],
      [25, 36, 1.15, 0.05],
    ]),
  ],
  crossFrames: frames([0.5, 6, 12, 18, 24, 30, 35.5], 0.3, 0.06, 380),
  pointMasses: [
    { girder: "L", at: 12, mass: 420, height: 1 },
    { girder: "R", at: 12, mass: 420, height: 1 },
    { girder: "L", at: 31, mass: 900, height: 1.5 },
  ],
  ask: { droopAt: [0, 9, 18, 27, 36] },
};

const three: State = {
  ...steel,
  girders: [
    girder("A", 2.8, 0.05, [
      [0, 14, 1.1, 0.055],
      [14, 28, 1.1, 0.05],
    ]),
    girder("B", 0, 0.053, [
      [0, 14, 1.1, 0.06],
      [14, 28, 1.1, 0.06],
    ]),
    girder("C", -2.8, 0.05, [
      [0, 14, 1.05, 0.055],
      [14, 28, 1.05, 0.055],
    ]),
  ],
  crossFrames: frames([0.4, 7, 14, 21, 27.6], 0.35, 0.06, 640),
  pointMasses: [{ girder: "A", at: 10, mass: 700, height: 1 }],
  ask: { droopAt: [0, 7, 14, 21, 28] },
};

const train = (name: string, at: number, girders: string[], rest: Partial<StateTrain> = {}): StateTrain => ({
  name,
  at,
  lines: 6,
  pitch: 1.4,
  gauge: 1.8,
  cylinderStiffness: 4e6,
  strokeUp: 0.35,
  strokeDown: 0.35,
  mass: 24e3,
  cgHeight: 0.95,
  bunkHeight: 1.85,
  bunks: [-1.2, 1.2],
  bunkGirders: girders,
  bunkStiffness: 5e8,
  ...rest,
});

/** Left and right group of every train. */
function sides(...names: string[]): Record<string, string[]> {
  const of = (name: string, side: string) => [1, 2, 3, 4, 5, 6].map((line) => `${name}:${line}${side}`);
  return Object.fromEntries(
    names.flatMap((name) => [
      [`${name} left`, of(name, "L")],
      [`${name} right`, of(name, "R")],
    ]),
  );
}

/** A hook; its pendulum stiffness is given to the program as springs. */
const hook = (name: string, at: number, takeUp: number, rest: Partial<StateHoist> = {}): StateHoist => ({
  name,
  at,
  girders: ["L", "R"],
  rigging: "spreader",
  mode: "takeUp",
  takeUp,
  stiffness: 1.5e6,
  pickHeight: 1.9,
  pinHeight: 0.5,
  ...rest,
});

const seat = (girder: string, end: string, at: number, level: number, stiffness = 5e8): StateBearing => ({
  name: `${end} ${girder}`,
  girder,
  at,
  seat: level,
  stiffness,
});

/** One state to be checked. */
export interface Case {
  what: string;
  state: State;
  /** Twist governs: bunks stand beside, are printed, and are not judged. */
  twist?: boolean;
}

export const cases: readonly Case[] = [
  {
    what: "cantilever on four groups",
    state: {
      ...twin,
      trains: [train("rear", 4.3, ["L", "R"], { packing: { R: 0.006 } }), train("front", 19.1, ["L", "R"])],
      groups: sides("rear", "front"),
    },
  },
  {
    what: "two trains and a locked hook",
    state: {
      ...twin,
      trains: [train("rear", 4.3, ["L", "R"]), train("front", 20.6, ["L", "R"], { packing: { L: 0.004 } })],
      groups: sides("rear", "front"),
      hoists: [hook("far", 34.2, 0.06)],
    },
  },
  {
    what: "four groups on a bump",
    twist: true,
    state: {
      ...twin,
      trains: [train("rear", 5.1, ["L", "R"]), train("front", 27.4, ["L", "R"])],
      groups: sides("rear", "front"),
      ground: { "rear:1L": 0.03, "rear:2L": 0.05, "rear:3L": 0.04, "front:4R": -0.03, "front:5R": -0.04 },
      groupLift: { "front left": 0.01 },
    },
  },
  {
    what: "four bearings, seats warped by 9 mm",
    twist: true,
    state: {
      ...twin,
      bearings: [
        seat("L", "near", 0.7, 0),
        seat("R", "near", 0.7, 0.009),
        seat("L", "far", 35.3, 0),
        seat("R", "far", 35.3, 0),
      ],
    },
  },
  {
    what: "hung on four separate lines",
    twist: true,
    state: {
      ...twin,
      hoists: [
        hook("near", 5.2, 0.3, { rigging: "separate", stiffness: 2.4e6 }),
        hook("far", 30.4, 0.36, { rigging: "separate", stiffness: 1.6e6 }),
      ],
    },
  },
  {
    what: "three girders on bearings, middle seats apart",
    state: {
      ...three,
      bearings: [
        seat("A", "near", 0.6, 0),
        seat("B", "near", 0.6, 0.004),
        seat("C", "near", 0.6, -0.002),
        seat("A", "far", 27.4, 0.003),
        seat("B", "far", 27.4, -0.006),
        seat("C", "far", 27.4, 0),
      ],
    },
  },
  {
    what: "three girders on train, bearings and hook",
    state: {
      ...three,
      trains: [train("rear", 4.1, ["A", "B", "C"], { bunkStiffness: 2e8, packing: { B: -0.002 } })],
      groups: sides("rear"),
      bearings: [seat("A", "mid", 17.3, 0), seat("C", "mid", 17.3, 0.004)],
      hoists: [hook("far", 27.1, 0.02, { girders: ["A", "C"], rigging: "separate" })],
    },
  },
  {
    what: "lashed down, hook at a given load",
    state: {
      ...twin,
      trains: [train("rear", 4.3, ["L", "R"]), train("front", 20.6, ["L", "R"])],
      groups: sides("rear", "front"),
      hoists: [hook("far", 34.2, 0, { mode: "load", takeUp: null, load: 90e3 })],
      lashings: [
        { train: "rear", girder: "L", at: 3.1, stiffness: 5e7, pretension: 3e4 },
        { train: "rear", girder: "R", at: 3.1, stiffness: 5e7, slack: 0.004 },
      ],
    },
  },
];

/** A plate across, as high as the webs: its sway counts web shear, which a State's cross-frame has not of itself. */
function diaphragms(
  stations: readonly number[],
  h: number,
  t: number,
  spacing: number,
  mass: number,
): StateCrossFrame[] {
  const area = h * t;
  const inertia = (t * h ** 3) / 12;
  const shear = (12 * steel.E * inertia) / (((steel.G * 5) / 6) * area * spacing ** 2);
  return stations.map((at) => ({
    at,
    area,
    inPlaneInertia: inertia / (1 + shear),
    planInertia: (h * t ** 3) / 12,
    torsion: (h * t ** 3) / 3,
    mass,
    height: 0.025 + h / 2,
  }));
}

const plated = (name: string, y: number, L: number, thinner: number): StateGirder => ({
  name,
  y,
  pieces: [
    [0, 0.3 * L, 0.03],
    [0.3 * L, 0.7 * L, 0.04],
    [0.7 * L, L, 0.03],
  ].map(([from, to, top]) => ({
    from,
    to,
    topFlange: [0.4, top - thinner],
    web: [1.6, 0.014],
    bottomFlange: [0.5, 0.025],
    massPerMetre: Math.round(8900 * (0.4 * top + 1.6 * 0.014 + 0.5 * 0.025)),
  })),
});

const plates: State = {
  ...steel,
  girders: [plated("L", 1.4, 40, 0), plated("R", -1.4, 40, 0.004)],
  crossFrames: diaphragms([0.6, 8, 16, 24, 32, 39.4], 1.6, 0.01, 2.8, 420),
  pointMasses: [{ girder: "L", at: 24, mass: 800, height: 0.8 }],
  ask: { droopAt: [0, 10, 20, 30, 40] },
};

/** States of true plates, written as shells. */
export const plateCases: readonly Case[] = [
  {
    what: "shells: two trains and a locked hook",
    twist: true,
    state: {
      ...plates,
      trains: [
        train("rear", 4.3, ["L", "R"], { bunkStiffness: 1e8 }),
        train("front", 17.6, ["L", "R"], { bunkStiffness: 1e8, packing: { L: 0.004 } }),
      ],
      groups: sides("rear", "front"),
      hoists: [hook("far", 38.2, 0.03)],
    },
  },
  {
    what: "shells: four groups on a bump",
    twist: true,
    state: {
      ...plates,
      trains: [
        train("rear", 4.3, ["L", "R"], { bunkStiffness: 1e8 }),
        train("front", 30.6, ["L", "R"], { bunkStiffness: 1e8 }),
      ],
      groups: sides("rear", "front"),
      ground: { "rear:1L": 0.03, "rear:2L": 0.05, "front:4R": -0.03, "front:5R": -0.04 },
    },
  },
  {
    what: "shells: four bearings, seats warped by 6 mm",
    twist: true,
    state: {
      ...plates,
      bearings: [
        seat("L", "near", 0.6, 0, 1e8),
        seat("R", "near", 0.6, 0.006, 1e8),
        seat("L", "far", 39.4, 0, 1e8),
        seat("R", "far", 39.4, 0, 1e8),
      ],
    },
  },
];

/** Bearings under both girders at two stations that hold the set across, and at one place along. */
const held = (near: number, far: number): StateBearing[] => [
  { ...seat("L", "near", near, 0), holds: "fixed" },
  { ...seat("R", "near", near, 0), holds: "guided" },
  { ...seat("L", "far", far, 0), holds: "guided" },
  { ...seat("R", "far", far, 0), holds: "guided" },
];

const slender = (name: string, y: number): StateGirder => ({
  name,
  y,
  pieces: [
    {
      from: 0,
      to: 44,
      topFlange: [0.26, 0.02],
      web: [1.2, 0.02],
      bottomFlange: [0.26, 0.02],
      massPerMetre: 300,
    },
  ],
});

/** Sets that buckle sideways before any of their plates does. */
export const bucklingCases: readonly Case[] = [
  {
    what: "twin on bearings, frames every 8 m",
    state: { ...plates, bearings: held(0.6, 39.4) },
  },
  {
    what: "twin on bearings, one frame between",
    state: {
      ...plates,
      crossFrames: diaphragms([0.6, 20, 39.4], 1.6, 0.01, 2.8, 420),
      bearings: held(0.6, 39.4),
    },
  },
  {
    what: "slender twin reaching 19 m beyond",
    state: {
      ...steel,
      girders: [slender("L", 1), slender("R", -1)],
      crossFrames: diaphragms([0.6, 12.5, 25, 34, 43.4], 1.2, 0.01, 2, 260),
      bearings: held(0.6, 25),
      ask: { droopAt: [0, 11, 22, 33, 44] },
    },
  },
];
