// Lateral-torsional buckling against closed forms. Sources: S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability,
// 2nd ed., chapter 6 (coefficients from memory); N. S. Trahair, Flexural-Torsional Buckling of Structures (monosymmetric
// beams under uniform moment, from memory). Own meshes of 12 elements: bounds beside each check.

import { describe, expect, test } from "vitest";
import {
  addElement,
  addForm,
  assembly,
  type BucklingElement,
  sidewaysAt,
  twistAt,
  uprightAt,
} from "../../src/mechanics/buckling/index.ts";
import { leastFactor } from "../../src/numeric/index.ts";
import { sectionOf } from "../../src/section/index.ts";
import { within } from "../reference/close.ts";

const E = 2.1e11;
const G = 8.1e10;
const N = 12;

interface Beam {
  L: number;
  plates: Parameters<typeof sectionOf>[0];
  moment: (x: number) => number;
  shear: (x: number) => number;
  /** Point loads: station, force up, height above the shear centre. */
  loads?: [number, number, number][];
  /** Ends that hold twist and sideways; "clamp" holds turns and warping too. */
  ends: ["fork" | "clamp" | "free", "fork" | "clamp" | "free"];
}

/** Least factor of a single beam. */
function factorOf({ L, plates, moment, shear, loads = [], ends }: Beam): number {
  const s = sectionOf(plates);
  const a = assembly(6 * (N + 1));
  const reference = s.centroid;
  for (let i = 0; i < N; i++) {
    const start = (i * L) / N;
    const element: BucklingElement = {
      length: L / N,
      EIz: E * s.weakInertia,
      EIy: E * s.strongInertia,
      GA: Number.POSITIVE_INFINITY,
      GJ: G * s.torsion,
      EIw: E * s.warping,
      shearCentre: s.shearCentre,
      wagner: s.wagner,
      down: 0,
      downHeight: s.shearCentre,
      reference,
    };
    addElement(a, i, i + 1, element, (x) => ({ M: moment(start + x), V: shear(start + x) }));
  }
  const stiff = 1e14;
  ends.forEach((end, i) => {
    const node = i * N;
    if (end === "free") return;
    addForm(a, "k", uprightAt(node), stiff);
    addForm(a, "k", sidewaysAt(node, s.shearCentre, reference), stiff);
    addForm(a, "k", twistAt(node), stiff);
    if (end === "clamp")
      for (const q of s.warping > 0 ? [1, 3, 5] : [1, 5])
        addForm(a, "k", { dofs: [6 * node + q], factors: [1] }, stiff);
  });
  for (const [x, force, height] of loads) addForm(a, "g", twistAt(Math.round((x / L) * N)), force * height);
  const found = leastFactor(a.k, a.g, a.n);
  expect(found?.residual).toBeLessThan(1e-6);
  return found?.factor ?? Number.NaN;
}

const strip: Beam["plates"] = { topFlange: [0, 0], web: [0.6, 0.02], bottomFlange: [0, 0] };
const equal: Beam["plates"] = { topFlange: [0.6, 0.045], web: [2.31, 0.016], bottomFlange: [0.6, 0.045] };
const unequal: Beam["plates"] = { topFlange: [0.35, 0.022], web: [1.6, 0.014], bottomFlange: [0.55, 0.036] };

const { weakInertia, torsion } = sectionOf(strip);
const B = Math.sqrt(E * weakInertia * G * torsion);

describe("narrow strip, loads at its axis (Timoshenko and Gere), within 0.3 % of the printed coefficient", () => {
  const L = 8;
  test("simple span, uniform moment: pi sqrt(E Iz G J) / L", () => {
    const factor = factorOf({ L, plates: strip, moment: () => 1, shear: () => 0, ends: ["fork", "fork"] });
    within(factor, (Math.PI * B) / L, 3e-3);
  });
  test("simple span, uniform load: 28.3 sqrt(E Iz G J) / L^2", () => {
    const moment = (x: number) => (x * (L - x)) / 2;
    const factor = factorOf({ L, plates: strip, moment, shear: (x) => L / 2 - x, ends: ["fork", "fork"] });
    within(factor * L, (28.3 * B) / L ** 2, 3e-3);
  });
  test("simple span, load in the middle: 16.94 sqrt(E Iz G J) / L^2", () => {
    const moment = (x: number) => Math.min(x, L - x) / 2;
    const factor = factorOf({
      L,
      plates: strip,
      moment,
      shear: (x) => (x < L / 2 ? 0.5 : -0.5),
      ends: ["fork", "fork"],
    });
    within(factor, (16.94 * B) / L ** 2, 3e-3);
  });
  test("cantilever, load at its end: 4.013 sqrt(E Iz G J) / L^2", () => {
    const factor = factorOf({
      L,
      plates: strip,
      moment: (x) => x - L,
      shear: () => 1,
      ends: ["clamp", "free"],
    });
    within(factor, (4.013 * B) / L ** 2, 3e-3);
  });
  test("cantilever, uniform load: 12.85 sqrt(E Iz G J) / L^2", () => {
    const moment = (x: number) => -((L - x) ** 2) / 2;
    const factor = factorOf({ L, plates: strip, moment, shear: (x) => L - x, ends: ["clamp", "free"] });
    within(factor * L, (12.85 * B) / L ** 2, 3e-3);
  });
  test("load a above the axis: less by 1.74 (a / L) sqrt(E Iz / G J), within 1 % for a = L / 100", () => {
    const a = L / 100;
    const moment = (x: number) => Math.min(x, L - x) / 2;
    const shear = (x: number) => (x < L / 2 ? 0.5 : -0.5);
    const beam: Beam = { L, plates: strip, moment, shear, ends: ["fork", "fork"] };
    const less = 1.74 * (a / L) * Math.sqrt((E * weakInertia) / (G * torsion));
    within(factorOf({ ...beam, loads: [[L / 2, -1, a]] }), ((16.94 * B) / L ** 2) * (1 - less), 1e-2);
    within(factorOf({ ...beam, loads: [[L / 2, -1, -a]] }), ((16.94 * B) / L ** 2) * (1 + less), 1e-2);
  });
});

describe("simple span under uniform moment, exact formulas, within 0.1 %", () => {
  test.each([12, 24, 40])("equal flanges, %d m", (L) => {
    const s = sectionOf(equal);
    const [EIz, EIw, GJ] = [E * s.weakInertia, E * s.warping, G * s.torsion];
    const exact = (Math.PI / L) * Math.sqrt(EIz * GJ + (Math.PI / L) ** 2 * EIz * EIw);
    within(
      factorOf({ L, plates: equal, moment: () => 1, shear: () => 0, ends: ["fork", "fork"] }),
      exact,
      1e-3,
    );
  });
  test.each([1, -1])("unequal flanges, moment sign %d", (sign) => {
    const L = 15;
    const s = sectionOf(unequal);
    const [EIz, EIw, GJ] = [E * s.weakInertia, E * s.warping, G * s.torsion];
    const P = (Math.PI ** 2 * EIz) / L ** 2;
    const r = EIw / EIz + GJ / P;
    const b = (-sign * s.wagner) / 2;
    const exact = P * (b + Math.sqrt(b * b + r));
    within(
      factorOf({ L, plates: unequal, moment: () => sign, shear: () => 0, ends: ["fork", "fork"] }),
      exact,
      1e-3,
    );
  });
});

/** GJ L^2 / E Iw, and the coefficient printed for it. */
const printed: [number, number][] = [
  [1, 15.7],
  [4, 9.76],
  [10, 7.58],
  [24, 6.19],
  [40, 5.64],
];

describe("cantilever with equal flanges, load at its end (Timoshenko and Gere, table 6-1), within 1 % of the printed coefficient", () => {
  test.each(printed)("G J L^2 / E Iw = %d: %d sqrt(E Iz G J) / L^2", (ratio, coefficient) => {
    const s = sectionOf(equal);
    const L = Math.sqrt((ratio * E * s.warping) / (G * s.torsion));
    const factor = factorOf({
      L,
      plates: equal,
      moment: (x) => x - L,
      shear: () => 1,
      ends: ["clamp", "free"],
    });
    within(factor, (coefficient * Math.sqrt(E * s.weakInertia * G * s.torsion)) / L ** 2, 1e-2);
  });
});
