// States that several tests share: plain beams with given E I, twin sets, trains; all numbers invented.

import type { State, StateBearing, StateGirder } from "../../src/mechanics/index.ts";

/** A web-only girder whose strong second moment is I at E = 210e9: b = 12 I / h^3 with h = 1 m. */
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

/** One beam, gravity 10 m/s2 so that 100 kg/m is 1 kN/m, Euler-Bernoulli, stiff seats. */
export function beamState(
  length: number,
  I: number,
  q: number,
  seats: [string, number][],
  rest: Partial<State> = {},
): State {
  return {
    format: "handspan-state",
    version: 1,
    gravity: 10,
    E: 2.1e11,
    G: 8.1e10,
    shear: false,
    girders: [plainGirder("G", 0, length, I, q / 10)],
    bearings: seats.map(([name, at]): StateBearing => ({ name, girder: "G", at, seat: 0, stiffness: 1e13 })),
    ...rest,
  };
}
