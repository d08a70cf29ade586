// Buckling: the shell model against closed forms, to prove the writer; then ours against the shell model.
//
// Closed forms: S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability, 2nd ed., sections 6.2 (uniform moment) and
// 6.5 (load in the middle, at the axis; coefficients from memory). They let no section change its shape, hence stiffeners.

import { afterAll, describe, expect, test } from "vitest";
import { answerOf, bucklingOf, solveStatics } from "../../src/mechanics/index.ts";
import { sectionOf } from "../../src/section/index.ts";
import { runBuckling } from "./program.ts";
import { addGirder, bucklingDeck, endsBetween, ShellMesh, webHeights } from "./shells.ts";
import { bucklingCases, steel } from "./states.ts";
import { percent, table } from "./table.ts";

const printed = table(["buckling", "factor or coefficient", "shells", "apart, %", "sideways", "ccx, s"]);
afterAll(() => {
  console.log(`\nBuckling against the finite-element program\n${printed.text()}`);
});

/** The shape must be that of girders: webs' middles move at least this share of what anything moves. */
const OF_GIRDERS = 0.3;

const plates = {
  topFlange: [0.4, 0.03],
  web: [1.2, 0.016],
  bottomFlange: [0.4, 0.03],
  massPerMetre: 0,
} as const;
const section = sectionOf(plates);
const EIz = steel.E * section.weakInertia;
const EIw = steel.E * section.warping;
const GJ = steel.G * section.torsion;
const STIFFENED = 8;

/** A beam on forks at its ends, free to warp there, with stiffeners; `push` loads its places. */
function forked(length: number) {
  const mesh = new ShellMesh();
  const { deck } = mesh;
  const piece = { from: 0, to: length, ...plates };
  const stiffeners = Array.from({ length: STIFFENED + 1 }, (_, i) => (i * length) / STIFFENED);
  addGirder(mesh, steel, { y: 0, pieces: [piece] }, endsBetween(stiffeners));
  const heights = webHeights(piece);
  const half = plates.topFlange[0] / 2;
  const bare = deck.material(steel.E, steel.G, 0);
  for (const x of stiffeners) mesh.plate((y, z) => [x, y, z], [-half, 0, half], heights, 0.008, bare);
  const middle = heights[heights.length / 2 - 0.5];
  const halves = heights.flatMap((z, i) => (i === 0 ? [z] : [(heights[i - 1] + z) / 2, z]));
  for (const x of [0, length]) {
    for (const z of halves) deck.hold(mesh.at(x, 0, z), 2);
    deck.hold(mesh.at(x, 0, middle), 3);
  }
  deck.hold(mesh.at(0, 0, middle), 1);
  const push = (x: number, y: number, z: number, dof: number, force: number) =>
    deck.load("*CLOAD", `${mesh.at(x, y, z)},${dof},${force}`);
  return { deck, push, middle, heights, half, watched: stiffeners.map((x) => mesh.at(x, 0, middle)) };
}

describe("shells against closed forms, within 4 %: the plates bend between stiffeners, the beam's section does not", () => {
  // The printed coefficient for G J L^2 / E Iw.
  test.each([
    [4, 31.9],
    [16, 21.8],
  ])("load in the middle, G J L^2 / E Iw = %d: %d sqrt(E Iz G J) / L^2", (ratio, coefficient) => {
    const length = Math.sqrt((ratio * EIw) / GJ);
    const { deck, push, middle, watched } = forked(length);
    push(length / 2, 0, middle, 3, -1000);
    const run = runBuckling(deck, watched);
    const found = (run.factor * 1000 * length ** 2) / Math.sqrt(EIz * GJ);
    const apart = found / coefficient - 1;
    printed.add([
      `load in the middle, ${ratio}`,
      coefficient.toFixed(1),
      found.toFixed(2),
      percent(apart),
      run.sideways.toFixed(2),
      run.time_s.toFixed(1),
    ]);
    expect(run.sideways).toBeGreaterThan(OF_GIRDERS);
    expect(Math.abs(apart)).toBeLessThan(0.04);
  });

  test("uniform moment: pi / L sqrt(E Iz G J (1 + pi^2 E Iw / G J L^2))", () => {
    const length = 20;
    const { deck, push, heights, half, watched } = forked(length);
    // Couples of forces on the flanges: parts 1/6, 2/3, 1/6 of an edge of one quadratic element.
    const [bottom, top] = [heights[0], heights[heights.length - 1]];
    const parts = [
      [-half, 1 / 12],
      [-half / 2, 1 / 3],
      [0, 1 / 6],
      [half / 2, 1 / 3],
      [half, 1 / 12],
    ];
    const force = 1e5 / (top - bottom);
    for (const [y, share] of parts)
      for (const [z, sign] of [
        [bottom, 1],
        [top, -1],
      ]) {
        push(0, y, z, 1, -sign * share * force);
        push(length, y, z, 1, sign * share * force);
      }
    const run = runBuckling(deck, watched);
    const found = run.factor * 1e5;
    const exact = (Math.PI / length) * Math.sqrt(EIz * GJ * (1 + (Math.PI ** 2 * EIw) / (GJ * length ** 2)));
    const apart = found / exact - 1;
    printed.add([
      "uniform moment, kN m",
      (exact / 1000).toFixed(1),
      (found / 1000).toFixed(1),
      percent(apart),
      run.sideways.toFixed(2),
      run.time_s.toFixed(1),
    ]);
    expect(run.sideways).toBeGreaterThan(OF_GIRDERS);
    expect(Math.abs(apart)).toBeLessThan(0.04);
  });
});

describe("ours against shells, within 10 %: webs without stiffeners bend, which lowers the shells' factor by up to 5 %", () => {
  test.each(bucklingCases)("$what", ({ what, state }) => {
    const solution = solveStatics(state);
    expect(solution.status).toBe("solved");
    const ours = bucklingOf(solution)?.factor ?? Number.NaN;
    const { deck, middle } = bucklingDeck(state, answerOf(solution));
    const run = runBuckling(deck, middle);
    const apart = ours / run.factor - 1;
    printed.add([
      what,
      ours.toFixed(3),
      run.factor.toFixed(3),
      percent(apart),
      run.sideways.toFixed(2),
      run.time_s.toFixed(1),
    ]);
    expect(run.sideways).toBeGreaterThan(OF_GIRDERS);
    expect(Math.abs(apart)).toBeLessThan(0.1);
  });
});
