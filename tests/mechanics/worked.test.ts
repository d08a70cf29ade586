// Worked examples of the erection mechanics: hand statics and beam formulas, common practice, no source.
//
// Every expected value is computed from the formula beside it and compared at 1e-6 of itself unless the line says
// otherwise; the rounded figure that a hand calculation prints is compared at its own rounding.

import { expect, test } from "vitest";
import { displacementRow, type State, solveState, solveStatics } from "../../src/mechanics/index.ts";
import { beamState, cylinders, hook, train, twinState } from "./states.ts";

/** Within `relative` of the expected value. */
const close = (value: number, expected: number, relative = 1e-6) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(
    relative * Math.abs(expected),
  );
/** Equal to a printed value at its rounding: `digits` after the point. */
const prints = (value: number, printed: number, digits: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(
    0.5001 * 10 ** -digits,
  );
const solved = (state: State) => {
  const answer = solveState(state);
  expect(answer.status, answer.motion).toBe("solved");
  expect(answer.residual.force).toBeLessThan(1e-9);
  expect(answer.residual.moment).toBeLessThan(1e-9);
  return answer;
};
const EI = 2.1e9;

const overhang = (rest: Partial<State> = {}) =>
  beamState(
    30,
    0.01,
    5e3,
    [
      ["rear", 0],
      ["front", 18],
    ],
    rest,
  );
const overhangWithHoist = (takeUp: number) =>
  overhang({ hoists: [hook("far", 30, { girders: ["G"], takeUp, stiffness: 2e6, pickHeight: 0.5 })] });
/** Tip of the overhang, down, and its drop per newton there; the seats of 1e12 N/m add 2e-5 and 5e-6 of them. */
const tipDrop =
  (5e3 * 12 * (4 * 18 * 12 ** 2 + 3 * 12 ** 3 - 18 ** 3)) / (24 * EI) +
  (125e3 * (30 / 18) - 25e3 * (12 / 18)) / 1e12;
const tipFlexibility = (12 ** 2 * 30) / (3 * EI) + ((30 / 18) ** 2 + (12 / 18) ** 2) / 1e12;

test("W1 overhang: reactions by statics, tip q c (4 a c^2 + 3 c^3 - a^3) / (24 E I)", () => {
  const a = solved(overhang({ ask: { droopAt: [30] } }));
  close(a.forces["bearing rear"], 25e3);
  close(a.forces["bearing front"], 125e3);
  close(a.droop.G[0], -tipDrop);
  prints(a.droop.G[0] * 1e3, -11.5714, 3);
});

test("W2 hoist at the tip: F = (h - w0) / (1/k + f), slack, and the front support letting go", () => {
  const share = (h: number) => (h + tipDrop) / (1 / 2e6 + tipFlexibility);
  for (const [h, hoist, rear, front] of [
    [0, 9.759, 31.506, 108.735],
    [0.01, 18.193, 37.129, 94.679],
  ]) {
    const a = solved(overhangWithHoist(h));
    const F = share(h);
    close(a.forces["hoist far"], F);
    close(a.forces["bearing rear"], 25e3 + (F * 12) / 18);
    close(a.forces["bearing front"], 125e3 - (F * 30) / 18);
    prints(a.forces["hoist far"] / 1e3, hoist, 3);
    prints(a.forces["bearing rear"] / 1e3, rear, 3);
    prints(a.forces["bearing front"] / 1e3, front, 3);
  }
  const slack = solved(overhangWithHoist(-0.02));
  expect(slack.forces["hoist far"]).toBe(0);
  close(slack.forces["bearing front"], 125e3);

  const last = 75e3 * (1 / 2e6 + tipFlexibility) - tipDrop;
  prints(last * 1e3, 77.357, 3);
  expect(solved(overhangWithHoist(last - 1e-5)).forces["bearing front"]).toBeGreaterThan(0);
  for (const h of [last + 1e-5, 0.1, 0.5]) {
    const a = solved(overhangWithHoist(h));
    expect(a.forces["bearing front"]).toBe(0);
    expect(a.gaps["bearing front"]).toBeGreaterThan(0);
    close(a.forces["bearing rear"], 75e3);
    close(a.forces["hoist far"], 75e3);
  }
});

/** 400 kN at the centre of one transporter: 24 t of set and 16 t of deck, ground 40 mm high under the rear left wheel. */
const onOneTrain = (groups: Record<string, string[]>, bump = 0.04) =>
  twinState(12, 2, 1e-3, 1000, { trains: [train("T", 6)], groups, ground: { "T:1L": bump } });
const fourGroups = {
  "rear left": cylinders("T", "L", 1, 2),
  "rear right": cylinders("T", "R", 1, 2),
  "front left": cylinders("T", "L", 3, 4),
  "front right": cylinders("T", "R", 3, 4),
};

test("W3 one deck with a bump: four groups share by stiffness, three groups by statics alone", () => {
  const state = onOneTrain(fourGroups);
  const a = solved(state);
  // Mean ground of the rear left pair d/2 = 20 mm. Unknown heave, roll, pitch of a rigid plane over four equal
  // springs: the part of the datum that no plane can follow is a quarter of it, +-d/8, on springs of 2 k.
  const part = 2 * 5e6 * (0.04 / 8);
  for (const [name, sign, printed] of [
    ["rear left", 1, 150],
    ["rear right", -1, 50],
    ["front left", -1, 50],
    ["front right", 1, 150],
  ] as const) {
    close(a.forces[`group ${name}`], 100e3 + sign * part);
    prints(a.forces[`group ${name}`] / 1e3, printed, 3);
  }
  prints(a.strokes["T:1L"] * 1e3, -17.5, 4);
  prints(a.strokes["T:2L"] * 1e3, 17.5, 4);
  close(a.forces["cylinder T:1L"], a.forces["cylinder T:2L"], 1e-15);

  // Motions of the deck: heave, roll and pitch follow those of the set, which are 0..2 of the solution.
  const deck = solveStatics(state).contact.a.subarray(3);
  prints(deck[0] * 1e3, -5, 4);
  prints(deck[1] * 1e3, 5.5556, 4);
  prints(deck[2] * 1e3, 3.3333, 4);

  for (const bump of [0, 0.04]) {
    const b = solved(
      onOneTrain(
        {
          "rear left": fourGroups["rear left"],
          "rear right": fourGroups["rear right"],
          front: [...fourGroups["front left"], ...fourGroups["front right"]],
        },
        bump,
      ),
    );
    close(b.forces["group rear left"], 100e3);
    close(b.forces["group rear right"], 100e3);
    close(b.forces["group front"], 200e3);
  }
});

test("W4 crossfall falling to the left: N_left - N_right = 2 W h sin / gauge, gravity turned exactly", () => {
  const W = 800e3;
  const state: State = {
    ...twinState(12, 2, 1e-3, 2667, {
      // CG of deck and set 3.2 m above ground: the set's own CG is 0.5 m above its soffit.
      trains: [train("T", 6, { gauge: 2, mass: 16e3, cgHeight: 1, bunkHeight: 3.25 })],
      groups: fourGroups,
      crossfall: 0.04,
    }),
  };
  const heavy = 64e3 / 24;
  const a = solved({
    ...state,
    girders: state.girders.map((g) => ({
      ...g,
      pieces: g.pieces.map((p) => ({ ...p, massPerMetre: heavy })),
    })),
  });
  const h = (64e3 * (3.25 + 0.5) + 16e3 * 1) / 80e3;
  close(h, 3.2, 1e-12);
  const left = a.forces["group rear left"] + a.forces["group front left"];
  const right = a.forces["group rear right"] + a.forces["group front right"];
  const angle = Math.atan(0.04);
  close(left + right, W * Math.cos(angle));
  close(left - right, (2 * W * h * Math.sin(angle)) / 2);
  prints(left / 1e3, 450.84, 2);
  prints(right / 1e3, 348.52, 2);
});

/** 600 kN hung from two hooks 40 m apart, CG 18 m from the rear pick and 1.5 m below the picks. */
const tandem = (difference: number, stiffness: number) =>
  twinState(50, 2, 10, 600, {
    hoists: [
      hook("rear", 7, { pickHeight: 2, stiffness, takeUp: 0 }),
      hook("front", 47, { pickHeight: 2, stiffness, takeUp: difference }),
    ],
  });

test("W5 tandem with unequal hooks: F_front = W (a + d tan) / L, whatever the lines' stiffness", () => {
  const level = solved(tandem(0, 1e9));
  close(level.forces["hoist front"], 270e3);
  const a = solved(tandem(2, 1e9));
  // The solver's angles are small: 2.0/40 instead of tan(asin(2.0/40)), 5e-6 of the share.
  close(a.forces["hoist front"], (600e3 * (18 + (1.5 * 2) / 40)) / 40);
  close(a.forces["hoist front"], (600e3 * (18 + 1.5 * Math.tan(Math.asin(2 / 40)))) / 40, 1e-5);
  prints(a.forces["hoist front"] / 1e3, 271.126, 2);
  // Soft lines stretch and so change the angle; only the angle enters the shares.
  for (const stiffness of [2e6, 1e7, 1e8]) {
    const b = solved(tandem(2, stiffness));
    close(b.forces["hoist front"], (600e3 * (18 - 1.5 * b.level)) / 40);
    close(b.forces["hoist front"] + b.forces["hoist rear"], 600e3);
  }
});

/** A twin set whose CG lies 0.05 m to the left and `below` the picks, hung at its middle or from two hooks. */
const hung = (rigging: "spreader" | "point", pin: number, below: number, hooks: number[]) =>
  twinState(20, 2, 10, 1000, {
    // 40 t of girders and 2 t on the left: y = 2 x 1 / 42 is more than 0.05, so 2 t give way to 40/19 on the axis.
    pointMasses: [{ girder: "L", at: 10, mass: 40e3 / 19, height: 0.5 }],
    hoists: hooks.map((at) => hook(`h${at}`, at, { rigging, pinHeight: pin, pickHeight: 0.5 + below })),
  });

test("W6 hung set: lean -y/(pin above CG) on slings to a point, -y/(e + d) on a spreader", () => {
  const point = solved(hung("point", 2.5, 1.5, [10]));
  close(point.cg[1], 0.05);
  close(point.lean, -0.05 / 4);
  prints(point.lean * 1e3, -12.5, 3);
  const spreader = solved(hung("spreader", 0.5, 1.5, [10]));
  close(spreader.lean, -0.05 / 2);
  prints(spreader.lean * 1e3, -25, 3);
  // From two hooks the same, since sum(T e) = W e.
  close(solved(hung("spreader", 0.5, 1.5, [4, 16])).lean, -0.05 / 2);
  // Picks below the CG: e + d = 0.25 m still stands, e + d = -0.1 m falls over sideways.
  close(solved(hung("spreader", 0.5, -0.25, [4, 16])).lean, -0.05 / 0.25);
  const falling = solveState(hung("spreader", 0.5, -0.6, [4, 16]));
  expect(falling.status).toBe("mechanism");
  expect(falling.motion).toMatch(/leans/);
  expect(falling.forces).toEqual({});
});

test("W7 one corner raised 24 mm: the open twin set passes on d / (S^2 L / (2 G J) + 4 / k)", () => {
  const S = 3;
  const L = 36;
  // A web of 1.0 x 0.03 m: J = 0.03^3 / 3 = 9e-6 m4.
  const state = (seat: number): State => ({
    ...twinState(L, S, 0.03 / 12, 1000),
    crossFrames: [0, 12, 24, 36].map((at) => ({
      at,
      area: 1,
      inPlaneInertia: 1,
      planInertia: 0,
      torsion: 0,
      mass: 0,
      height: 0.5,
    })),
    bearings: [
      { name: "rear L", girder: "L", at: 0, seat, stiffness: 50e6 },
      { name: "rear R", girder: "R", at: 0, seat: 0, stiffness: 50e6 },
      { name: "front L", girder: "L", at: L, seat: 0, stiffness: 50e6 },
      { name: "front R", girder: "R", at: L, seat: 0, stiffness: 50e6 },
    ],
  });
  const flat = solved(state(0));
  const raised = solved(state(0.024));
  const change = 0.024 / ((S * S * L) / (2 * 81e9 * 9e-6) + 4 / 50e6);
  prints(change, 108, 1);
  // Against the difference of forces of 180 kN: 1e-5 of 108 N is 1e-8 of what is subtracted.
  for (const [name, sign] of [
    ["rear L", 1],
    ["rear R", -1],
    ["front L", -1],
    ["front R", 1],
  ] as const)
    close(raised.forces[`bearing ${name}`] - flat.forces[`bearing ${name}`], sign * change, 1e-5);
});

test("W8 tipping over the front support: margin 1728/768, and nothing beyond x = 20", () => {
  const state = (front: number) =>
    beamState(40, 0.05, 6e3, [
      ["rear", 3],
      ["front", front],
    ]);
  const a = solved(state(24));
  close(a.forces["bearing rear"], (240e3 * 4) / 21);
  prints(a.forces["bearing rear"] / 1e3, 45.714, 3);
  close(a.tipping?.momentRatio ?? Number.NaN, 2.25);
  close(a.tipping?.cgDistance ?? Number.NaN, 4);
  const edge = solved(state(20.001));
  close(edge.forces["bearing rear"], (240e3 * 0.001) / 17.001, 1e-5);
  close(edge.tipping?.momentRatio ?? Number.NaN, (20.001 / 19.999) ** 2);
  expect(solveState(state(19.999)).status).toBe("mechanism");
});

test("W9 load between nodes: 100 kN at 0.3 of 5 m", () => {
  const [w1, turn1, w2, turn2] = displacementRow(0.3, 5, 0).map((x) => -100 * x);
  prints(w1, -78.4, 9);
  prints(w2, -21.6, 9);
  // The rows act on theta_y = -w', so that the slopes' loads change sign.
  prints(-turn1, -73.5, 9);
  prints(-turn2, 31.5, 9);
});

test("W10 lifting a beam off a rigid floor: lifted length 2P/q, end rise q a^4 / (24 E I), within 0.01 %", () => {
  const seats = Array.from({ length: 161 }, (_, i) => [`s${i}`, i * 0.25] as const);
  const state = beamState(40, 0.05, 6e3, seats, {
    hoists: [hook("end", 40, { girders: ["G"], mode: "load", load: 60e3, takeUp: null, pickHeight: 0.5 })],
    ask: { droopAt: [40] },
  });
  // Pieces of 0.25 m put a node at every seat.
  const [piece] = state.girders[0].pieces;
  const pieces = seats.slice(1).map(([, to]) => ({ ...piece, from: to - 0.25, to }));
  const a = solved({ ...state, girders: [{ ...state.girders[0], pieces }] });
  const rise = (6e3 * 20 ** 4) / (24 * 1.05e10);
  close(a.droop.G[0], rise, 1e-4);
  prints(rise * 1e3, 3.8095, 4);
  // Beyond 20 m the beam is clear; well inside, every seat carries its own quarter metre. At the edge itself the
  // force of the lifted length, q a / 2, sits on the seats nearest to it.
  for (let i = 82; i <= 160; i++) expect(a.gaps[`bearing s${i}`], `seat at ${i / 4} m`).toBeGreaterThan(0);
  for (let i = 12; i <= 60; i++) close(a.forces[`bearing s${i}`], 6e3 * 0.25, 1e-3);
  let edge = 0;
  for (let i = 61; i <= 81; i++) edge += a.forces[`bearing s${i}`];
  close(edge, 6e3 * (80 - 60.5) * 0.25 + 60e3, 1e-3);
});

test("W12 all left and all right cylinders in two groups: pitch is free, and no number is given", () => {
  const a = solveState(
    onOneTrain({ left: cylinders("T", "L", 1, 4), right: cylinders("T", "R", 1, 4) }, 0.04),
  );
  expect(a.status).toBe("mechanism");
  expect(a.motion).toMatch(/transporter T tips end up \(pitch free\)/);
  expect(a.forces).toEqual({});
  expect(a.strokes).toEqual({});
});

test("W13 hook locked at +10 mm, then raised 7.5 mm by the boom: dF = dz / (1/k + f)", () => {
  const change =
    solved(overhangWithHoist(0.0175)).forces["hoist far"] -
    solved(overhangWithHoist(0.01)).forces["hoist far"];
  close(change, 0.0075 / (1 / 2e6 + tipFlexibility));
  prints(change / 1e3, 6.325, 3);
});

test("W14 a tonne on the far hook takes 1.62 t off the front group and adds 0.62 t to the rear, rigid or not", () => {
  const groups: Record<string, string[]> = {};
  for (const name of ["rear", "front"])
    for (const side of ["L", "R"] as const) groups[`${name} ${side}`] = cylinders(name, side, 1, 4);
  for (const I of [0.02, 20])
    for (const lift of [0, 0.02]) {
      const state = (load: number) =>
        twinState(62, 2, I, 800, {
          trains: [train("rear", 6), train("front", 40)],
          groups,
          groupLift: { "rear L": lift },
          hoists: [hook("far", 61, { mode: "load", load, takeUp: null, pickHeight: 0.5 })],
        });
      const before = solved(state(100e3));
      const after = solved(state(110e3));
      const change = (name: string) =>
        (["L", "R"] as const).reduce(
          (sum, side) => sum + after.forces[`group ${name} ${side}`] - before.forces[`group ${name} ${side}`],
          0,
        );
      close(change("front"), (-10e3 * 55) / 34);
      close(change("rear"), (10e3 * 21) / 34);
      prints(change("front") / 10e3, -1.62, 2);
      prints(change("rear") / 10e3, 0.62, 2);
    }
});
