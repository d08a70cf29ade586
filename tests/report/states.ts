// A state small enough to know its answer by hand.
import type { State } from "../../src/mechanics/index.ts";

/** A beam on two seats, 30 m long, the front one at `front`; 5 kN/m. */
export function beam(front: number): State {
  const piece = {
    from: 0,
    to: 30,
    topFlange: [0, 0] as const,
    web: [1, 0.12] as const,
    bottomFlange: [0, 0] as const,
    massPerMetre: 500,
  };
  const seat = (name: string, at: number) => ({ name, girder: "G", at, seat: 0, stiffness: 1e10 });
  return {
    format: "handspan-state",
    version: 1,
    gravity: 10,
    E: 2.1e11,
    G: 8.1e10,
    shear: false,
    girders: [{ name: "G", y: 0, pieces: [piece] }],
    bearings: [seat("rear", 0), seat("front", front)],
  };
}
