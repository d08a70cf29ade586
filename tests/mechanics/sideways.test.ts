// Sideways forces in a pose: they go through the deck that carries them, whatever it is called.

import { expect, test } from "vitest";
import { type State, solveState } from "../../src/mechanics/index.ts";
import { cylinders, train, twinState } from "./states.ts";

/** Two transporters on a crossfall, the second with its bunks 2 m lower, so that it matters which deck is pushed. */
function onTwo(second: string): State {
  const groups: Record<string, string[]> = {};
  for (const name of ["T", second])
    for (const side of ["L", "R"] as const) groups[`${name} ${side}`] = cylinders(name, side, 1, 4);
  return twinState(20, 2, 1e-2, 1000, {
    trains: [train("T", 5, { bunkHeight: 4 }), train(second, 15)],
    groups,
    crossfall: 0.05,
  });
}

test("a transporter whose name begins with another's name and a blank takes its own sideways forces", () => {
  const plain = solveState(onTwo("U"));
  const alike = solveState(onTwo("T L"));
  expect(plain.status).toBe("solved");
  expect(alike.status).toBe("solved");
  // Statics: W sin at 0.5 m above the soffit, half of it into each deck at its own bunk height, and the decks' own.
  const sine = Math.sin(Math.atan(0.05));
  const moment = 40e4 * sine * (0.5 + (4 + 2) / 2) + 32e4 * sine * 1;
  const f = plain.forces;
  const difference = f["group T L"] + f["group U L"] - f["group T R"] - f["group U R"];
  expect(Math.abs(difference - (2 * moment) / 1.8)).toBeLessThan(1e-9 * difference);
  for (const side of ["L", "R"]) {
    expect(alike.forces[`group T ${side}`]).toBe(plain.forces[`group T ${side}`]);
    expect(alike.forces[`group T L ${side}`]).toBe(plain.forces[`group U ${side}`]);
  }
});
