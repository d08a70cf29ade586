// Random states for the laws: one to three girders, unequal plates, camber, cross-frames, trains in groups, hoists,
// bearings, lashings, grade, crossfall, wind and strokes. All numbers are invented, within what such work uses.

import fc from "fast-check";
import type {
  State,
  StateBearing,
  StateCrossFrame,
  StateGirder,
  StateHoist,
  StateLashing,
  StatePiece,
  StateTrain,
} from "../../src/mechanics/index.ts";

/** What a family of random states may contain; everything is on when left out. */
export interface Mixture {
  girders?: readonly number[];
  sideways?: boolean;
  hoists?: boolean;
  lashings?: boolean;
  strokes?: boolean;
  /** Bearings and trains only where a hand calculation is made of them. */
  plans?: readonly Plan[];
}

/** How the set is carried. */
export type Plan =
  | "two trains"
  | "one train"
  | "rear train and hook"
  | "bearings and hook"
  | "hung"
  | "bearings";

const plans: readonly Plan[] = [
  "two trains",
  "one train",
  "rear train and hook",
  "bearings and hook",
  "hung",
  "bearings",
];

/** A number with 1/1000 steps, so that failing cases print short. */
const between = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((n) => n / 1000);

/** A value, or in half of the cases none. */
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });

/** The steel of a set. */
export interface Frame {
  girders: StateGirder[];
  crossFrames: StateCrossFrame[];
  pointMasses: { girder: string; at: number; mass: number; height: number }[];
  length: number;
}

const pieceOf = fc.record({
  width: between(0.3, 0.7),
  thickness: between(0.018, 0.05),
  web: between(0.012, 0.018),
  stiffeners: between(1.02, 1.25),
});

/** The set itself. */
export function frames(counts: readonly number[]): fc.Arbitrary<Frame> {
  return fc
    .record({
      count: fc.constantFrom(...counts),
      length: between(14, 44),
      spacing: between(2.2, 4),
      depth: between(1.2, 2.4),
      cut: between(0.3, 0.7),
      camber: maybe(between(0, 0.15)),
      bay: between(4, 9),
      braced: fc.integer({ min: 0, max: 9 }).map((n) => n > 0),
      outOfStraight: between(-0.02, 0.02),
      masses: fc.array(fc.record({ at: between(0, 1), mass: between(20, 1500), height: between(0, 3) }), {
        maxLength: 3,
      }),
      frame: fc.record({
        area: fc.constant(3e-3),
        inPlaneInertia: between(0.1, 3).map((x) => x * 1e-3),
        planInertia: fc.constant(2e-6),
        torsion: fc.constant(1e-7),
        mass: between(100, 600),
      }),
    })
    .chain((r) =>
      fc.array(pieceOf, { minLength: 2 * r.count, maxLength: 2 * r.count }).map((p) => {
        const y0 = ((r.count - 1) * r.spacing) / 2;
        const girders = Array.from({ length: r.count }, (_, i): StateGirder => {
          const at = Math.round(r.cut * r.length * 100) / 100;
          const piece = (from: number, to: number, k: number): StatePiece => {
            const { width, thickness, web, stiffeners } = p[2 * i + k];
            const area = 2 * width * thickness + r.depth * web;
            return {
              from,
              to,
              topFlange: [width, thickness],
              web: [r.depth, web],
              bottomFlange: [width, thickness * 1.1],
              massPerMetre: Math.round(7850 * area * stiffeners),
            };
          };
          const rise = r.camber === undefined ? undefined : r.camber + (i === 0 ? r.outOfStraight : 0);
          return {
            name: "ABC"[i],
            y: y0 - i * r.spacing,
            ...(rise === undefined
              ? {}
              : {
                  camber: [0, 0.25, 0.5, 0.75, 1].map((s): [number, number] => [
                    s * r.length,
                    4 * s * (1 - s) * rise,
                  ]),
                }),
            pieces: [piece(0, at, 0), piece(at, r.length, 1)],
          };
        });
        const crossFrames: StateCrossFrame[] = [];
        if (r.braced && r.count > 1)
          for (let x = 0.4; x < r.length - 0.3; x += r.bay)
            crossFrames.push({ at: Math.round(x * 100) / 100, height: r.depth / 2, ...r.frame });
        const pointMasses = r.masses.map((m, i) => ({
          girder: "ABC"[i % r.count],
          at: m.at * r.length,
          mass: m.mass,
          height: m.height,
        }));
        return { girders, crossFrames, pointMasses, length: r.length };
      }),
    );
}

const trainOf = (name: string, girders: string[], strokes: boolean) =>
  fc
    .record({
      lines: fc.integer({ min: 2, max: 8 }),
      gauge: between(1.6, 3),
      cylinderStiffness: between(2, 8).map((x) => x * 1e6),
      mass: between(8000, 30000),
      rows: fc.constantFrom(1, 2),
      bunkStiffness: fc.constantFrom(2e8, 2e9),
      bunkSideStiffness: fc.constantFrom(0, 5e7),
      packing: between(-0.006, 0.006),
      braked: fc.boolean(),
      bunkFriction: maybe(between(0.02, 0.4)),
      brakeLimit: maybe(between(1, 60)),
      stroke: maybe(between(0.02, 0.35)),
      bumps: fc.array(fc.record({ line: fc.nat(7), left: fc.boolean(), height: between(-0.05, 0.05) }), {
        maxLength: 3,
      }),
    })
    .map((r) => {
      const train: StateTrain = {
        name,
        at: 0,
        lines: r.lines,
        pitch: 1.4,
        gauge: r.gauge,
        cylinderStiffness: r.cylinderStiffness,
        mass: r.mass,
        cgHeight: 0.95,
        bunkHeight: 1.85,
        bunks: r.rows === 1 ? [0] : [-0.9, 0.9],
        bunkGirders: girders,
        bunkStiffness: r.bunkStiffness,
        bunkSideStiffness: r.bunkSideStiffness,
        packing: { [girders[0]]: r.packing },
        braked: r.braked,
        ...(r.bunkFriction === undefined ? {} : { bunkFriction: r.bunkFriction }),
        ...(r.brakeLimit === undefined ? {} : { brakeLimit: r.brakeLimit * 1000 }),
        ...(strokes && r.stroke !== undefined ? { strokeUp: r.stroke, strokeDown: r.stroke } : {}),
      };
      const ground: Record<string, number> = {};
      for (const b of r.bumps) ground[`${name}:${(b.line % r.lines) + 1}${b.left ? "L" : "R"}`] = b.height;
      return { train, ground };
    });

const hoistOf = (name: string, girders: string[]) =>
  fc
    .record({
      rigging: fc.constantFrom("spreader" as const, "point" as const, "separate" as const),
      mode: fc.constantFrom("takeUp" as const, "takeUp" as const, "load" as const),
      takeUp: between(-0.05, 0.5),
      share: between(0.05, 0.45),
      stiffness: between(0.8, 4).map((x) => x * 1e6),
      pickHeight: between(1.2, 2.6),
      pinHeight: between(0.3, 6),
      ropeLength: maybe(between(15, 60)),
      offset: maybe(fc.tuple(between(-0.3, 0.3), between(-0.3, 0.3))),
    })
    .map((r) => ({
      share: r.share,
      hoist: {
        name,
        at: 0,
        girders,
        rigging: r.rigging,
        mode: r.mode,
        takeUp: r.mode === "takeUp" ? r.takeUp : null,
        load: null,
        stiffness: r.stiffness,
        pickHeight: r.pickHeight,
        pinHeight: r.rigging === "spreader" ? Math.min(1, r.pinHeight) : r.pinHeight,
        ...(r.ropeLength === undefined ? {} : { ropeLength: r.ropeLength }),
        ...(r.offset === undefined || r.ropeLength === undefined ? {} : { offset: r.offset }),
      } satisfies StateHoist,
    }));

/** Group names and their cylinders: left and right; rear and front halves of each; or three of them. */
function groupsOf(train: StateTrain, way: "two" | "three" | "four"): Record<string, string[]> {
  const groups: Record<string, string[]> = {};
  for (let line = 1; line <= train.lines; line++)
    for (const side of ["L", "R"]) {
      const half = way === "two" ? "" : line <= train.lines / 2 ? " rear" : " front";
      const which = way === "three" && half === " front" ? "" : side === "L" ? " left" : " right";
      const name = `${train.name}${half}${which}`;
      groups[name] ??= [];
      groups[name].push(`${train.name}:${line}${side}`);
    }
  return groups;
}

/** Weight of a frame in N, for loads that are a share of it. */
function weightOf(frame: Frame, gravity: number): number {
  let mass = 0;
  for (const g of frame.girders) for (const p of g.pieces) mass += p.massPerMetre * (p.to - p.from);
  for (const f of frame.crossFrames) mass += f.mass;
  for (const m of frame.pointMasses) mass += m.mass;
  return mass * gravity;
}

/** Random states of a mixture. Most stand; some are mechanisms, and the laws hold for those too. */
export function states(mixture: Mixture = {}): fc.Arbitrary<State> {
  return frames(mixture.girders ?? [1, 2, 2, 2, 3]).chain((frame) => statesOf(frame, mixture));
}

/** Several states of one and the same set. */
export function statesOfOneSet(count: number, mixture: Mixture = {}): fc.Arbitrary<State[]> {
  return frames(mixture.girders ?? [1, 2, 2, 2, 3]).chain((frame) =>
    fc.array(statesOf(frame, mixture), { minLength: count, maxLength: count }),
  );
}

function statesOf(frame: Frame, mixture: Mixture): fc.Arbitrary<State> {
  const lateral = mixture.sideways ?? true;
  const names = frame.girders.map((g) => g.name);
  return fc
    .record({
      plan: fc.constantFrom(...(mixture.plans ?? plans)),
      rear: trainOf("rear", names, mixture.strokes ?? true),
      front: trainOf("front", names, mixture.strokes ?? true),
      way: fc.constantFrom("two" as const, "three" as const, "four" as const),
      far: hoistOf("far", names),
      near: hoistOf("near", names),
      extraHook: fc.boolean(),
      seats: fc.array(between(-0.01, 0.01), { minLength: 6, maxLength: 6 }),
      seatStiffness: fc.constantFrom(5e7, 1e9, 5e9),
      seatFriction: maybe(between(0.02, 0.4)),
      seatLimit: maybe(between(5, 200)),
      rearAt: between(0.03, 0.25),
      frontAt: between(0.55, 0.8),
      hookAt: between(0.88, 0.99),
      lift: maybe(between(-0.02, 0.05)),
      lashed: fc.integer({ min: 0, max: 3 }),
      lashing: fc.record({ slack: between(0, 0.01), pretension: fc.constantFrom(0, 0, 2e4) }),
      sideways: fc.boolean(),
      grade: fc.oneof(fc.constant(0), between(-0.04, 0.04)),
      crossfall: fc.oneof(fc.constant(0), between(-0.04, 0.04)),
      wind: maybe(between(50, 400)),
      toward: fc.constantFrom("+y" as const, "-y" as const),
    })
    .map((r): State => {
      const gravity = 9.80665;
      const W = weightOf(frame, gravity);
      const sideways = lateral && r.sideways;
      const L = frame.length;
      const station = (s: number) => Math.round(s * L * 1000) / 1000;
      const trains: StateTrain[] = [];
      const hoists: StateHoist[] = [];
      const bearings: StateBearing[] = [];
      const lashings: StateLashing[] = [];
      let groups: Record<string, string[]> = {};
      let ground: Record<string, number> = {};
      const place = (which: typeof r.rear, at: number, way: "two" | "three" | "four") => {
        const rows = way === "two" || r.plan === "one train" ? [-0.9, 0.9] : which.train.bunks;
        const train = { ...which.train, bunks: rows, at: Math.min(L - 1, Math.max(1, station(at))) };
        trains.push(train);
        groups = { ...groups, ...groupsOf(train, way) };
        ground = { ...ground, ...which.ground };
      };
      const hang = (which: typeof r.far, at: number, share = which.share) => {
        if (mixture.hoists === false) return;
        const { offset, ...plumb } = which.hoist;
        const h: StateHoist = sideways && offset ? { ...plumb, offset } : plumb;
        // A given load that statics do not ask for would tip what only a hook and one more support carry.
        const alone = r.plan === "rear train and hook" || (r.plan === "bearings and hook" && !r.extraHook);
        if (h.mode === "load" && !alone) hoists.push({ ...h, at: station(at), load: Math.round(share * W) });
        else hoists.push({ ...h, at: station(at), mode: "takeUp", takeUp: h.takeUp ?? 0.2 });
      };
      const seat = (at: number, first: number, holds: StateBearing["holds"]) => {
        frame.girders.forEach((g, i) => {
          bearings.push({
            name: `${first === 0 ? "near" : "far"} ${g.name}`,
            girder: g.name,
            at: station(at),
            seat: r.seats[first + i],
            stiffness: r.seatStiffness,
            holds: i === 0 || r.extraHook ? holds : "free",
            ...(r.seatFriction === undefined ? {} : { friction: r.seatFriction }),
            ...(r.seatLimit === undefined ? {} : { sideLimit: r.seatLimit * 1000 }),
          });
        });
      };
      switch (r.plan) {
        case "two trains":
          place(r.rear, r.rearAt, r.way === "three" ? "two" : r.way === "four" ? "four" : "two");
          place(r.front, r.frontAt, "two");
          if (r.extraHook) hang(r.far, r.hookAt);
          break;
        case "one train":
          place(r.rear, 0.5, r.way === "two" ? "four" : r.way);
          if (r.extraHook) hang(r.far, r.hookAt, 0.05);
          break;
        case "rear train and hook":
          place(r.rear, r.rearAt, r.way);
          hang(r.far, r.hookAt, 0.45);
          break;
        case "bearings and hook":
          seat(r.rearAt / 4, 0, "fixed");
          hang(r.far, r.hookAt, 0.45);
          if (r.extraHook) seat(r.frontAt, 3, "guided");
          break;
        case "hung":
          hang({ ...r.near, hoist: { ...r.near.hoist, mode: "takeUp", takeUp: 0.3 } }, r.rearAt);
          hang({ ...r.far, hoist: { ...r.far.hoist, mode: "takeUp", takeUp: 0.3 } }, r.hookAt);
          break;
        case "bearings":
          seat(r.rearAt / 4, 0, "fixed");
          seat(r.hookAt, 3, "guided");
          break;
      }
      if (mixture.lashings !== false && r.lashed === 0)
        for (const t of trains)
          lashings.push({ train: t.name, girder: names[0], at: t.at, stiffness: 5e7, ...r.lashing });
      const groupLift: Record<string, number> = {};
      if (r.lift !== undefined)
        for (const name of Object.keys(groups)) if (name.startsWith("rear")) groupLift[name] = r.lift;
      return {
        format: "handspan-state",
        version: 1,
        gravity,
        E: 2.1e11,
        G: 8.1e10,
        shear: true,
        girders: frame.girders,
        crossFrames: frame.crossFrames,
        pointMasses: frame.pointMasses,
        trains,
        groups,
        groupLift,
        ground,
        hoists,
        bearings,
        lashings,
        grade: sideways ? r.grade : 0,
        crossfall: sideways ? r.crossfall : 0,
        ...(sideways && r.wind !== undefined
          ? { wind: { pressure: r.wind, factor: 1.8, toward: r.toward } }
          : {}),
      };
    });
}
