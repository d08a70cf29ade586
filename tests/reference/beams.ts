// Straight beams for published cases: supports that push only or hold both ways, clamps, springs, point loads and
// moments, built from the parts of the statics (prepareSet, rowAt, condense, solveContact), in any consistent units.

import {
  type Condensed,
  condense,
  contactWorkspace,
  type Device,
  flexibility,
  prepareSet,
  rowAt,
  solveContact,
} from "../../src/mechanics/index.ts";

/** A stretch of beam with its bending stiffness and its load per length, downward positive. */
export interface Stretch {
  from: number;
  to: number;
  EI: number;
  load: number;
}

export interface Support {
  at: number;
  /** "w" acts on the displacement, "turn" on the slope; a support of both kinds is a clamp. */
  kind: "w" | "turn";
  /** Left out: rigid against the beam. */
  stiffness?: number;
  /** Settled (negative) or raised level of the support. */
  level?: number;
  pushesOnly?: boolean;
}

/** A point load down, or a moment anticlockwise positive (x to the right, z up). */
export interface PointLoad {
  at: number;
  kind: "w" | "turn";
  value: number;
}

export interface BeamAnswer {
  /** Upward forces, or moments anticlockwise positive, in the order of the supports. */
  forces: number[];
  settled: boolean;
  /** Displacement of the beam, up positive. */
  w(at: number): number;
  /** Slope dw/dx. */
  turn(at: number): number;
  /** Bending moment just left of a station, sagging positive, by statics from the forces and loads. */
  moment(at: number): number;
}

const E = 2.1e11;

/** Solves a beam. Stretches must join; `turn` supports and loads must stand where stretches meet or end. */
export function solveBeam(
  stretches: readonly Stretch[],
  supports: readonly Support[],
  loads: readonly PointLoad[] = [],
): BeamAnswer {
  // The unit of gravity is 1, so that the load per length stands for the mass per length.
  const model = prepareSet({
    E,
    G: E / 2.6,
    shear: false,
    girders: [
      {
        name: "beam",
        y: 0,
        pieces: stretches.map((s) => ({
          from: s.from,
          to: s.to,
          topFlange: [0, 0],
          web: [1, (12 * s.EI) / E],
          bottomFlange: [0, 0],
          massPerMetre: s.load,
        })),
      },
    ],
  });
  const stiffest = Math.max(...stretches.map((s) => s.EI));
  const row = (at: number, kind: "w" | "turn") => rowAt(model, 0, at, kind === "w" ? "w" : "y");
  // The slope unknown of the frame is theta_y = -dw/dx.
  const sign = (kind: "w" | "turn") => (kind === "w" ? 1 : -1);
  const devices = supports.map(
    (s, i): Device => ({
      kind: "bearing",
      name: `support ${i}`,
      of: i,
      oneSided: s.pushesOnly === true,
      stiffness: s.stiffness ?? (s.pushesOnly ? 1e4 : 1e8) * stiffest,
      datum: s.level ?? 0,
      rows: [row(s.at, s.kind)],
      factors: [sign(s.kind)],
      decks: [],
      deckFactors: [],
      part: "",
      x: s.at,
      y: 0,
    }),
  );
  const rowLoads = loads.map((l) => ({ row: row(l.at, l.kind), value: -l.value }));
  const problem: Condensed = condense(model, devices, 0, [0, 0, 1], null, rowLoads, new Float64Array(0));
  const contact = solveContact(problem, contactWorkspace(problem.m + problem.N + 8), null);
  const value = (at: number, kind: "w" | "turn") => {
    const r = row(at, kind);
    let v = r.sag[0];
    for (let q = 0; q < problem.N; q++) v += contact.a[q] * r.modes[q];
    devices.forEach((d, j) => {
      v += contact.F[j] * d.factors[0] * flexibility(model, r, d.rows[0]);
    });
    for (const l of rowLoads) v += l.value * flexibility(model, r, l.row);
    return sign(kind) * v;
  };
  const forces = [...contact.F];
  return {
    forces,
    settled: contact.settled,
    w: (at) => value(at, "w"),
    turn: (at) => value(at, "turn"),
    moment: (at) => {
      let m = 0;
      supports.forEach((s, i) => {
        if (s.at < at) m += s.kind === "w" ? forces[i] * (at - s.at) : -forces[i];
      });
      for (const l of loads) if (l.at < at) m -= l.kind === "w" ? l.value * (at - l.at) : l.value;
      for (const s of stretches) {
        const to = Math.min(s.to, at);
        if (to > s.from) m -= s.load * (to - s.from) * (at - (s.from + to) / 2);
      }
      return m;
    },
  };
}

/** Equal or unequal spans in a row under uniform loads, on supports at their ends. */
export function spans(lengths: readonly number[], loads: readonly number[], EI: number): Stretch[] {
  let from = 0;
  return lengths.map((length, i) => {
    const stretch = { from, to: from + length, EI, load: loads[i] };
    from += length;
    return stretch;
  });
}

/** Supports at the ends of such spans, holding both ways unless told otherwise. */
export function supportsOf(lengths: readonly number[], pushesOnly = false): Support[] {
  let at = 0;
  return [0, ...lengths].map((length): Support => {
    at += length;
    return { at, kind: "w", pushesOnly };
  });
}
