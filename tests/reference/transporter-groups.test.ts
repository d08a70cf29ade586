// Groups of hydraulic transporters: FHWA-HIF-07-022, chapters 1 and 6, for the principle (hydraulic capacity governs
// the number of units: read; the wording of equal shares: from memory). Figures by statics, recomputed: exact ones
// within 1e-6, those printed rounded within 0.05 %. Tonnes at 1 t = 10 kN; decks without tare.

import { describe, expect, test } from "vitest";
import { type State, type StateTrain, solveState } from "../../src/mechanics/index.ts";
import { cylinders, hook, train, twinState } from "../mechanics/states.ts";
import { within } from "./close.ts";

const solved = (state: State) => {
  const answer = solveState(state);
  expect(answer.status, answer.motion).toBe("solved");
  expect(answer.residual.force).toBeLessThan(1e-9);
  expect(answer.residual.moment).toBeLessThan(1e-9);
  return answer;
};

/** A train with no tare, so that its groups carry the set alone. */
const bare = (name: string, at: number, lines: number, rest: Partial<StateTrain> = {}) =>
  train(name, at, { lines, mass: 0, ...rest });

/** Left and right group of every named train over all its lines. */
const halves = (...trains: StateTrain[]) =>
  Object.fromEntries(
    trains.flatMap((t) =>
      (["L", "R"] as const).map((side) => [`${t.name} ${side}`, cylinders(t.name, side, 1, t.lines)]),
    ),
  );

/** 180 t in 64 m, CG in the middle, bending stiffness of the girders as given. */
const long = (I: number, trains: StateTrain[], rest: Partial<State> = {}) =>
  twinState(64, 3, I, 180e3 / 128, { trains, groups: halves(...trains), ...rest });

describe("equal load within a group", () => {
  test("ground 50 mm lower under one line: all its lines stay equal, its stroke takes it", () => {
    const trains = [bare("rear", 8, 8), bare("front", 38, 14)];
    const flat = solved(long(0.05, trains));
    const low = solved(long(0.05, trains, { ground: { "front:5L": -0.05 } }));
    const ids = cylinders("front", "L", 1, 14);
    for (const id of ids) expect(low.forces[`cylinder ${id}`]).toBe(low.forces["cylinder front:1L"]);
    // The group's ground sank by 50/14 mm on the mean; the one cylinder reaches down, the others give way for it.
    // The set hardly tips for it: within 1 % the whole 50 mm shows between two neighbouring cylinders.
    const given = (id: string) => low.strokes[id] - flat.strokes[id];
    within(given("front:5L") - given("front:4L"), 0.05, 0.01);
    let sum = 0;
    for (const id of ids) sum += low.strokes[id];
    expect(Math.abs(sum)).toBeLessThan(1e-12);
    // Left and right together carry what they carried: the set stands on two groups' centroids.
    within(
      low.forces["group front L"] + low.forces["group front R"],
      flat.forces["group front L"] + flat.forces["group front R"],
      1e-9,
    );
  });
});

describe("two groups under one set", () => {
  test("180 t with its CG at 32 m on groups at 8 m and 38 m: 36 and 144 t, 4.5 and 10.286 t a line", () => {
    for (const I of [0.02, 50]) {
      const a = solved(long(I, [bare("rear", 8, 8), bare("front", 38, 14)]));
      const rear = a.forces["group rear L"] + a.forces["group rear R"];
      const front = a.forces["group front L"] + a.forces["group front R"];
      within(rear / 1e4, 36, 1e-6);
      within(front / 1e4, 144, 1e-6);
      within(rear / 1e4 / 8, 4.5, 1e-6);
      within((a.forces["cylinder front:7L"] + a.forces["cylinder front:7R"]) / 1e4, 10.286, 5e-4);
    }
  });
  test("a far hook joins one group: group at 14 m, hook at 62 m, CG at 32 m: 67.5 and 112.5 t, 9.375 t a line", () => {
    for (const I of [0.02, 50])
      for (const stiffness of [1.5e6, 1e8]) {
        const rear = bare("rear", 14, 12);
        const a = solved(
          long(I, [rear], {
            // Picks at the height of the CG: the hook's pull then has no part in the set's own lean and level.
            hoists: [hook("far", 62, { stiffness, takeUp: 0.3, pickHeight: 0.5 })],
          }),
        );
        const group = a.forces["group rear L"] + a.forces["group rear R"];
        within(a.forces["hoist far"] / 1e4, 67.5, 1e-6);
        within(group / 1e4, 112.5, 1e-6);
        within(group / 1e4 / 12, 9.375, 1e-6);
      }
  });
});

describe("bearing on three groups", () => {
  const [W, cgX, cgY] = [190, 0.4, 0.3];
  /**
   * One transporter of 24 lines' worth of cylinders at the published centroids: 12 lines 1 m apart with their
   * centroid at x = -6 linked left and right, and 6 lines with theirs at x = +5, 1.8 m to either side.
   */
  const state = (): State => {
    const rear = bare("rear", 10 - 6, 12, { pitch: 0.4, gauge: 3.6 });
    const front = bare("front", 10 + 5, 6, { pitch: 0.4, gauge: 3.6 });
    const length = 2 * (10 + cgX);
    const all = (name: string, lines: number) => [
      ...cylinders(name, "L", 1, lines),
      ...cylinders(name, "R", 1, lines),
    ];
    return twinState(length, 3, 1, 0, {
      trains: [rear, front],
      groups: {
        rear: all("rear", 12),
        "front right": cylinders("front", "R", 1, 6),
        "front left": cylinders("front", "L", 1, 6),
      },
      // The weight as two masses at the CG's station, 0.2 : 0.3 to the left of the middle.
      pointMasses: [
        { girder: "L", at: 10 + cgX, mass: 1e3 * W * (0.5 + cgY / 3), height: 4 - 2 },
        { girder: "R", at: 10 + cgX, mass: 1e3 * W * (0.5 - cgY / 3), height: 4 - 2 },
      ],
    });
  };
  test("190 t at (0.4, 0.3) on groups at (-6, 0), (5, -1.8), (5, 1.8): 79.455, 39.439, 71.106 t", () => {
    const a = solved(state());
    within(a.cg[0] - 10, cgX, 1e-9);
    within(a.cg[1], cgY, 1e-9);
    within(a.forces["group rear"] / 1e4, 79.455, 5e-4);
    within(a.forces["group front right"] / 1e4, 39.439, 5e-4);
    within(a.forces["group front left"] / 1e4, 71.106, 5e-4);
    // Load of a line: both wheels in the rear group, one wheel of each line in the front groups.
    within((a.forces["cylinder rear:1L"] + a.forces["cylinder rear:1R"]) / 1e4, 6.621, 5e-4);
    within(a.forces["cylinder front:1R"] / 1e4, 6.573, 5e-4);
    within(a.forces["cylinder front:1L"] / 1e4, 11.851, 5e-4);
  });
  test("shortest way from the CG to an edge between centroids: 0.737 m, tip angle 10.45 degrees at 4.0 m height", () => {
    const a = solved(state());
    expect(a.tipping).not.toBeNull();
    const distance = a.tipping?.cgDistance ?? Number.NaN;
    within(distance, 0.737, 1e-3);
    const height = a.cg[2] + 2;
    within(height, 4, 1e-9);
    within((Math.atan(distance / height) * 180) / Math.PI, 10.45, 1e-3);
    expect(a.tipping?.axis).toMatch(/rear.*left|left.*rear/);
  });
});
