// Density and modulus of steel: 490 lb/ft3 (unit conversion); EN 1991-1-1, Table A.4 and EN 1993-1-1 (from memory);
// E = 29 000 ksi, AISC 360-22, section F2 (read in the source). The States carry mass, never weight, so that one
// convention holds: mass times gravity.

import { test } from "vitest";
import { solveState } from "../../src/mechanics/index.ts";
import { toSI } from "../../src/units/index.ts";
import { beamState } from "../mechanics/states.ts";
import { within } from "./close.ts";

test("490 lb/ft3 is 7849.0 kg/m3, and 7850 kg/m3 weighs 76.98 kN/m3, not 78.5, within 0.01 %", () => {
  within(toSI(490, "lb") / toSI(1, "ft") ** 3, 7849, 1e-4);
  // One cubic metre of steel in a bar of 1 x 0.1 m and 10 m length.
  const bar = beamState(10, 0.1 / 12, 0, [
    ["a", 0],
    ["b", 10],
  ]);
  const [piece] = bar.girders[0].pieces;
  const answer = solveState({
    ...bar,
    gravity: 9.80665,
    girders: [{ ...bar.girders[0], pieces: [{ ...piece, massPerMetre: 785 }] }],
  });
  within(answer.weight, 76.98e3, 1e-4);
  within(answer.forces["bearing a"] + answer.forces["bearing b"], 76.98e3, 1e-4);
  within(78.5e3 / answer.weight, 1.0197, 1e-4);
});

test("29 000 ksi is 200 GPa, within 0.03 %", () => {
  within(toSI(29000, "ksi"), 200e9, 3e-4);
});
