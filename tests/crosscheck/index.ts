// What the benchmark asks of the cross-check: how long the general-purpose program takes for one state.

import { answerOf, type State, solveStatics } from "../../src/mechanics/index.ts";
import { findCalculix } from "../tools/calculix.mjs";
import { beamDeck } from "./beams.ts";
import { runStatics } from "./program.ts";

/**
 * Time of CalculiX for one State as beams with known contacts, its whole process with reading and writing, s. Null when
 * the program is not installed.
 * @throws {RangeError} on states that the writer does not know: grade, crossfall, wind, one girder, stops
 */
export function timeOfCalculix(state: State): number | null {
  if (findCalculix() === undefined) return null;
  const solution = solveStatics(state);
  if (solution.status !== "solved") throw new RangeError(`the state is ${solution.status}`);
  return runStatics(beamDeck(state, answerOf(solution))).time_s;
}
