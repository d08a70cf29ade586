// A pose that nothing holds is a status with the motion in words, and has no numbers.
// Source: statics (rank of the supports); common practice, no published numbers.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type State, type StateHoist, type StateTrain, solveState } from "../../src/mechanics/index.ts";
import { massOf } from "./balance.ts";
import { states } from "./states.ts";

const seed = 40961;

const braced = (count: readonly number[]) =>
  states({ girders: count, plans: ["one train"], sideways: false, hoists: false, lashings: false }).filter(
    (s) => (s.crossFrames ?? []).length > 0,
  );

const bare = (s: State): State => ({ ...s, trains: [], groups: {}, groupLift: {}, ground: {}, bearings: [] });

const lengthOf = (s: State) => s.girders[0].pieces[1].to;

function expectMechanism(state: State, motion: RegExp): void {
  const a = solveState(state);
  expect(a.status).toBe("mechanism");
  expect(a.motion).toMatch(motion);
  expect(a.forces).toEqual({});
  expect(a.strokes).toEqual({});
  expect(a.gaps).toEqual({});
  expect(a.droop).toEqual({});
  expect(a.tipping).toBeNull();
  expect(a.horizontal).toBeNull();
  expect(a.residual.force).toBeNaN();
  expect(a.residual.moment).toBeNaN();
}

/** The train alone under the middle of the set, with these groups. */
function onGroups(s: State, groupOf: (line: number, side: string, lines: number) => string): State {
  const train: StateTrain = { ...(s.trains ?? [])[0], lines: 6, packing: {}, at: massOf(s).cg[0] };
  const groups: Record<string, string[]> = {};
  for (let line = 1; line <= 6; line++)
    for (const side of ["L", "R"]) {
      const name = groupOf(line, side, 6);
      groups[name] ??= [];
      groups[name].push(`${train.name}:${line}${side}`);
    }
  return { ...bare(s), trains: [train], groups };
}

const bearing = (s: State, girder: number, at: number) => ({
  name: `at ${girder} ${at}`,
  girder: s.girders[girder].name,
  at: at * lengthOf(s),
  seat: 0,
  stiffness: 1e9,
});

const hook = (s: State, at: number, rest: Partial<StateHoist>): StateHoist => ({
  name: `hook ${at}`,
  at: at * lengthOf(s),
  girders: s.girders.map((g) => g.name),
  rigging: "spreader",
  mode: "takeUp",
  takeUp: 0.2,
  stiffness: 2e6,
  pickHeight: 2,
  pinHeight: 0.5,
  ...rest,
});

const cases: [string, RegExp, (s: State) => State][] = [
  ["nothing carries it", /moves up or down/, bare],
  ["one group left and one right: pitch", /pitch|end up/, (s) => onGroups(s, (_, side) => side)],
  ["one group for all", /roll|leans|pitch|end up/, (s) => onGroups(s, () => "all")],
  [
    "three groups whose centroids lie on one line: roll",
    /roll|leans/,
    (s) => onGroups(s, (line) => (line <= 2 ? "rear" : line <= 4 ? "middle" : "front")),
  ],
  [
    "bearings in one line across",
    /end up/,
    (s) => ({ ...bare(s), bearings: [bearing(s, 0, 0.5), bearing(s, s.girders.length - 1, 0.5)] }),
  ],
  [
    "bearings under one outer girder only",
    /leans|up or down/,
    (s) => ({ ...bare(s), bearings: [bearing(s, 0, 0.1), bearing(s, 0, 0.9)] }),
  ],
  [
    "the centre of gravity beyond the front bearings: it tips",
    /end up|up or down/,
    (s) => ({
      ...bare(s),
      bearings: [0.02, 0.2].flatMap((at) => s.girders.map((_, i) => bearing(s, i, at))),
    }),
  ],
  [
    "hung from two spreaders whose pins and picks lie too low",
    /leans|end up/,
    (s) => ({
      ...bare(s),
      hoists: [0.2, 0.8].map((at) => hook(s, at, { pickHeight: 0.05, pinHeight: 0.05 })),
    }),
  ],
  [
    "a hook that stays slack helps nothing",
    /end up|up or down/,
    (s) => ({
      ...bare(s),
      bearings: [0.02, 0.2].flatMap((at) => s.girders.map((_, i) => bearing(s, i, at))),
      hoists: [hook(s, 0.1, { takeUp: 0 })],
    }),
  ],
];

cases.forEach(([what, motion, make], i) => {
  test(`500 random sets: ${what} (seed ${seed + i})`, () => {
    fc.assert(
      fc.property(braced([2, 3]), (s) => {
        // The centre of gravity is kept between the girders' middles: no load beside the girders' own.
        const even = {
          ...s,
          pointMasses: [],
          girders: s.girders.map((g) => ({ ...g, pieces: s.girders[0].pieces })),
        };
        expectMechanism(make(even), motion);
      }),
      { seed: seed + i, numRuns: 500 },
    );
  });
});

test(`500 random sets of girders that no frame joins: each leans by itself (seed ${seed + 20})`, () => {
  const loose = states({ girders: [2, 3], plans: ["bearings"], sideways: false }).map((s) => ({
    ...s,
    crossFrames: [],
  }));
  fc.assert(
    fc.property(loose, (s) => {
      expectMechanism(s, /girder [ABC] leans by itself/);
    }),
    { seed: seed + 20, numRuns: 500 },
  );
});
