// A set made very stiff shares its weight as a rigid body on springs does. The closed form stands here.
// Source: rigid plate on springs, F_i = k_i (d_i - h - a y_i + b x_i) with three equations of statics; common practice.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type State, solveState } from "../../src/mechanics/index.ts";
import { massOf } from "./balance.ts";
import { type Frame, frames, states } from "./states.ts";

const seed = 58211;
const runs = { seed, numRuns: 500 };

interface Spring {
  x: number;
  y: number;
  k: number;
  d: number;
}

/** Forces of springs under a rigid plate with the given resultant, by Cramer's rule; some may come out as pulls. */
function plate(springs: Spring[], loads: { x: number; y: number; W: number }[]): number[] {
  const total = springs.reduce((s, p) => s + p.k, 0);
  const x0 = springs.reduce((s, p) => s + p.k * p.x, 0) / total;
  const y0 = springs.reduce((s, p) => s + p.k * p.y, 0) / total;
  // About the centre of stiffness heave parts from the turns: F = k (d - h - a (x - x0) - b (y - y0)).
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let lift = 0;
  let liftX = 0;
  let liftY = 0;
  for (const { x, y, k, d } of springs) {
    xx += k * (x - x0) ** 2;
    xy += k * (x - x0) * (y - y0);
    yy += k * (y - y0) ** 2;
    lift += k * d;
    liftX += k * d * (x - x0);
    liftY += k * d * (y - y0);
  }
  for (const { x, y, W } of loads) {
    lift -= W;
    liftX -= W * (x - x0);
    liftY -= W * (y - y0);
  }
  const det = xx * yy - xy * xy;
  const h = lift / total;
  const a = (liftX * yy - liftY * xy) / det;
  const b = (liftY * xx - liftX * xy) / det;
  return springs.map(({ x, y, k, d }) => k * (d - h - a * (x - x0) - b * (y - y0)));
}

const stiffened = (s: State): State => ({ ...s, E: s.E * 1e9, G: s.G * 1e9 });

const seatsOf = (frame: Frame) =>
  fc
    .array(
      fc.record({
        at: fc.integer({ min: 0, max: 1000 }),
        k: fc.integer({ min: 1, max: 100 }),
        seat: fc.integer({ min: -5, max: 5 }),
      }),
      { minLength: 3 * frame.girders.length, maxLength: 3 * frame.girders.length },
    )
    .map((list) =>
      list.map(({ at, k, seat }, i) => ({
        name: `seat ${i}`,
        girder: frame.girders[i % frame.girders.length].name,
        // Thirds of the length, so that the seats spread.
        at: frame.length * Math.min(1, (Math.floor(i / frame.girders.length) + at / 1000) / 3),
        seat: seat / 1000,
        stiffness: k * 1e6,
      })),
    );

test(`500 random sets on seats of unlike height and stiffness, E times 1e9, within 1e-5 W (seed ${seed})`, () => {
  let compared = 0;
  const arbitrary = frames([2, 2, 3])
    .filter((f) => f.crossFrames.length > 0)
    .chain((frame) => seatsOf(frame).map((bearings) => ({ frame, bearings })));
  fc.assert(
    fc.property(arbitrary, ({ frame, bearings }) => {
      const state: State = {
        format: "handspan-state",
        version: 1,
        gravity: 9.81,
        E: 2.1e11,
        G: 8.1e10,
        girders: frame.girders.map(({ name, y, pieces }) => ({ name, y, pieces })),
        crossFrames: frame.crossFrames,
        pointMasses: frame.pointMasses,
        bearings,
      };
      const { mass, cg } = massOf(state);
      const W = mass * 9.81;
      const y = (girder: string) => frame.girders.find((g) => g.name === girder)?.y ?? Number.NaN;
      const expected = plate(
        bearings.map((b) => ({ x: b.at, y: y(b.girder), k: b.stiffness, d: b.seat })),
        [{ x: cg[0], y: cg[1], W }],
      );
      // The closed form knows no lifting off: it is asked only where all seats press.
      fc.pre(expected.every((F) => F > 1e-6 * W));
      compared++;
      const answer = solveState(stiffened(state));
      expect(answer.status).toBe("solved");
      bearings.forEach((b, i) => {
        expect(Math.abs(answer.forces[`bearing ${b.name}`] - expected[i])).toBeLessThan(1e-5 * W);
      });
    }),
    runs,
  );
  expect(compared).toBeGreaterThanOrEqual(500);
});

test(`500 random sets on two trains, E times 1e9: groups share as springs at their centroids (seed ${seed + 1})`, () => {
  let compared = 0;
  const arbitrary = states({
    girders: [2, 3],
    plans: ["two trains"],
    sideways: false,
    hoists: false,
    lashings: false,
    strokes: false,
  });
  fc.assert(
    fc.property(arbitrary, (drawn) => {
      fc.pre((drawn.crossFrames ?? []).length > 0);
      const state: State = {
        ...drawn,
        girders: drawn.girders.map(({ name, y, pieces }) => ({ name, y, pieces })),
        // Hard bunks without packing, two rows each, make set and decks one rigid body.
        trains: drawn.trains?.map((t) => ({ ...t, bunks: [-0.9, 0.9], packing: {}, bunkStiffness: 1e13 })),
      };
      const answer = solveState(stiffened(state));
      if (answer.status !== "solved") return;
      fc.pre(Object.entries(answer.forces).every(([name, F]) => !name.startsWith("bunk ") || F > 0));
      const trains = state.trains ?? [];
      const springs: Spring[] = Object.entries(state.groups ?? {}).map(([name, ids]) => {
        const spots = ids.map((id) => {
          const t = trains.find((train) => id.startsWith(`${train.name}:`));
          if (!t) throw new Error(`no train for ${id}`);
          const line = Number.parseInt(id.slice(t.name.length + 1), 10);
          return {
            x: t.at + (line - (t.lines + 1) / 2) * t.pitch,
            y: (id.endsWith("L") ? t.gauge : -t.gauge) / 2,
            k: t.cylinderStiffness,
            z: state.ground?.[id] ?? 0,
          };
        });
        const mean = (of: (s: (typeof spots)[number]) => number) =>
          spots.reduce((sum, s) => sum + of(s), 0) / spots.length;
        return {
          x: mean((s) => s.x),
          y: mean((s) => s.y),
          k: spots[0].k * spots.length,
          d: mean((s) => s.z) + (state.groupLift?.[name] ?? 0),
        };
      });
      const { mass, cg } = massOf(state);
      const g = state.gravity;
      const expected = plate(springs, [
        { x: cg[0], y: cg[1], W: mass * g },
        ...trains.map((t) => ({ x: t.at, y: 0, W: t.mass * g })),
      ]);
      fc.pre(expected.every((F) => F > 0));
      compared++;
      // The bunks are springs yet, a millionth of the cylinders' compliance: 1e-5 of the weight.
      Object.keys(state.groups ?? {}).forEach((name, i) => {
        expect(Math.abs(answer.forces[`group ${name}`] - expected[i])).toBeLessThan(1e-5 * mass * g);
      });
    }),
    { ...runs, seed: seed + 1, maxSkipsPerRun: 1000 },
  );
  expect(compared).toBeGreaterThan(250);
});
