// States that several tests share: plain beams with given E I, twin sets, one transporter; all numbers invented.

import type {
  State,
  StateBearing,
  StateCrossFrame,
  StateGirder,
  StateHoist,
  StateTrain,
} from "../../src/mechanics/index.ts";

/** A web-only girder whose strong second moment is I: b = 12 I / h^3 with h = 1 m. */
export function plainGirder(
  name: string,
  y: number,
  length: number,
  I: number,
  massPerMetre: number,
): StateGirder {
  return {
    name,
    y,
    pieces: [
      { from: 0, to: length, topFlange: [0, 0], web: [1, 12 * I], bottomFlange: [0, 0], massPerMetre },
    ],
  };
}

/** One beam, gravity 10 m/s2 so that 100 kg/m is 1 kN/m, Euler-Bernoulli, stiff seats. `q` in N/m. */
export function beamState(
  length: number,
  I: number,
  q: number,
  seats: readonly (readonly [string, number])[],
  rest: Partial<State> = {},
  stiffness = 1e12,
): State {
  return {
    format: "handspan-state",
    version: 1,
    gravity: 10,
    E: 2.1e11,
    G: 8.1e10,
    shear: false,
    girders: [plainGirder("G", 0, length, I, q / 10)],
    bearings: seats.map(([name, at]): StateBearing => ({ name, girder: "G", at, seat: 0, stiffness })),
    ...rest,
  };
}

/** Two equal girders at y = +-spacing/2, framed at both ends and in the middle; gravity 10 m/s2. */
export function twinState(
  length: number,
  spacing: number,
  I: number,
  massPerMetre: number,
  rest: Partial<State> = {},
): State {
  const frame = (at: number): StateCrossFrame => ({
    at,
    area: 3e-3,
    inPlaneInertia: 8e-4,
    planInertia: 0,
    torsion: 0,
    mass: 0,
    height: 0.5,
  });
  return {
    format: "handspan-state",
    version: 1,
    gravity: 10,
    E: 2.1e11,
    G: 8.1e10,
    shear: false,
    girders: [
      plainGirder("L", spacing / 2, length, I, massPerMetre),
      plainGirder("R", -spacing / 2, length, I, massPerMetre),
    ],
    crossFrames: [frame(0), frame(length / 2), frame(length)],
    ...rest,
  };
}

/** The transporter of the worked examples: 4 lines 1.5 m apart, gauge 1.8 m, 5 MN/m a cylinder, two bunk rows. */
export function train(name: string, at: number, rest: Partial<StateTrain> = {}): StateTrain {
  return {
    name,
    at,
    lines: 4,
    pitch: 1.5,
    gauge: 1.8,
    cylinderStiffness: 5e6,
    mass: 16e3,
    cgHeight: 1,
    bunkHeight: 2,
    bunks: [-1, 1],
    bunkGirders: ["L", "R"],
    bunkStiffness: 2e9,
    ...rest,
  };
}

/** Cylinder ids of one transporter on one side, from line `first` to line `last`. */
export function cylinders(name: string, side: "L" | "R", first: number, last: number): string[] {
  return Array.from({ length: last - first + 1 }, (_, i) => `${name}:${first + i}${side}`);
}

/** A hook over both girders, commanded by take-up, its lines stiff unless said otherwise. */
export function hook(name: string, at: number, rest: Partial<StateHoist> = {}): StateHoist {
  return {
    name,
    at,
    girders: ["L", "R"],
    rigging: "spreader",
    mode: "takeUp",
    takeUp: 0,
    stiffness: 1e9,
    pickHeight: 1,
    pinHeight: 0.5,
    ...rest,
  };
}
