// How costs grow: preparing a set with the fineness of its mesh and with its girders, a pose with neither (its size is
// that of its supports), and memory not at all over a million poses. Beside it the whole process of CalculiX.

import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import {
  contactWorkspace,
  prepareSet,
  type Solution,
  type State,
  solveStatics,
} from "../../src/mechanics/index.ts";
import { timeOfCalculix } from "../crosscheck/index.ts";
import { rollingState } from "./state.ts";

/** Least time of a call in microseconds. */
type Timer = (call: (i: number) => void, budget_ms?: number) => number;
type Row = (what: string, value: string, aim?: string, met?: boolean) => void;

/** The same set and trains with more girders: each a copy of one of the two, side by side. */
function withGirders(count: number, x: number): State {
  const state = rollingState(x);
  const spacing = 3.2;
  const names = Array.from({ length: count }, (_, i) => `G${i + 1}`);
  const girders = names.map((name, i) => ({
    ...state.girders[i % 2],
    name,
    y: spacing * ((count - 1) / 2 - i),
  }));
  return {
    ...state,
    girders,
    pointMasses: [],
    trains: (state.trains ?? []).map((t) => ({
      ...t,
      bunkGirders: [names[0], names[count - 1]],
      packing: {},
    })),
    hoists: (state.hoists ?? []).map((h) => ({ ...h, girders: [names[0], names[count - 1]] })),
  };
}

const ms = (us: number): string => `${(us / 1000).toFixed(2)} ms`;

/** Time of a pose of a roll in microseconds, on a set prepared with this fineness. */
function poseTime(time: Timer, stateAt: (x: number) => State, refine: number): number {
  const model = prepareSet(stateAt(0), refine);
  const workspace = contactWorkspace();
  const states = Array.from({ length: 400 }, (_, i) => stateAt((20 * i) / 400));
  let near: Solution | null = null;
  return time((i) => {
    near = solveStatics(states[i % 400], { model, workspace, near });
    if (near.status !== "solved") throw new Error(`a pose of the bench is ${near.status}: ${near.motion}`);
  }, 400);
}

export function printGrowth(time: Timer, row: Row): void {
  console.log("Finer meshes, two girders");
  const mesh = [1, 2, 4, 8].map((refine) => {
    const { nodeX } = prepareSet(rollingState(0), refine);
    const prepared = time(() => {
      prepareSet(rollingState(0), refine);
    }, 400);
    const pose = poseTime(time, rollingState, refine);
    row(`${refine} times, ${nodeX.length} nodes`, `${ms(prepared)}, pose ${pose.toFixed(1)} us`);
    return { nodes: nodeX.length, prepared, pose };
  });
  const [first, last] = [mesh[0], mesh[mesh.length - 1]];
  const growth = last.prepared / first.prepared / (last.nodes / first.nodes);
  row(
    "preparing over nodes, 8 times against once",
    growth.toFixed(2),
    "aim: linear, within 1.5",
    growth <= 1.5,
  );
  const poses = last.pose / first.pose;
  row("a pose, 8 times against once", poses.toFixed(2), "aim: the same, within 1.2", poses <= 1.2);

  console.log("More girders");
  for (const count of [2, 3, 4, 5, 6]) {
    const prepared = time(() => {
      prepareSet(withGirders(count, 0));
    }, 400);
    const pose = poseTime(time, (x) => withGirders(count, x), 1);
    row(`${count} girders`, `${ms(prepared)}, pose ${pose.toFixed(1)} us`);
  }

  console.log("CalculiX for the same pose, its whole process");
  const calculix = timeOfCalculix(rollingState(0));
  row("first pose of the roll", calculix === null ? "not installed" : `${calculix.toFixed(2)} s`);

  const model = prepareSet(rollingState(0));
  const workspace = contactWorkspace();
  const states = Array.from({ length: 1000 }, (_, i) => rollingState((20 * i) / 1000));
  let near: Solution | null = null;
  const run = (count: number) => {
    for (let i = 0; i < count; i++) near = solveStatics(states[i % 1000], { model, workspace, near });
  };
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const heap = () => {
    collect();
    return process.memoryUsage().heapUsed / 1e6;
  };
  run(10_000);
  const before = heap();
  run(1_000_000);
  const grown = heap() - before;
  console.log("Memory over 1,000,000 poses");
  row("heap grown", `${grown.toFixed(2)} MB`, "aim: below 1 MB", grown < 1);
}
