// AASHTO LRFD Bridge Design Specifications, chapter 6, equations from memory: 6.10.8.2.3 with the section of FHWA Steel
// Bridge Design Handbook, Design Example 1 (which prints r_t 3.90 in, L_p 7.83 ft, L_r 29.39 ft; from memory, all
// recomputed); 6.10.3.4.2 after Yura, Helwig, Herman and Zhou 2008, recomputed.

import { describe, expect, test } from "vitest";
import { aashtoStrength } from "../../src/checks/girders/aashtoFlexure.ts";
import { aashtoShape } from "../../src/checks/girders/momentShape.ts";
import { flangeSection } from "../../src/checks/girders/section.ts";
import { effectiveInertia, pairMoment } from "../../src/checks/girders/twoGirders.ts";
import { within } from "./close.ts";

describe("6.10.8.2.3, top flange 16 x 1 in over 69 x 1/2 and 18 x 1 3/8 in, 50 ksi (0.2 %)", () => {
  const s = flangeSection(null, { b_c: 16, t_c: 1, h: 69, t_w: 0.5, b_t: 18, t_t: 1.375 });
  const at = (feet: number) => aashtoStrength(null, s, { E: 29000, F_y: 50 }, feet * 12);

  test("D_c 38.63 in", () => {
    within(s.h_c / 2, 38.63, 2e-3);
  });

  test("L_p 7.83 ft and L_r 29.39 ft", () => {
    expect(at(7.83 * 0.998).short).toBe(true);
    expect(at(7.83 * 1.002).short).toBe(false);
    // At L_r the stress is F_yr = 0.7 x 50 = 35 ksi, from both sides.
    within(at(29.39 * 0.9999).base / s.S_xc, 35, 2e-3);
    within(at(29.39 * 1.0001).base / s.S_xc, 35, 2e-3);
    // r_t 3.900 in: beyond it pi^2 E / (L_b / r_t)^2.
    within(at(40).base / s.S_xc, (Math.PI ** 2 * 29000) / (480 / 3.9) ** 2, 2e-3);
  });

  test("F_nc 38.75 ksi at 24 ft", () => {
    within(at(24).base / s.S_xc, 38.75, 2e-3);
  });

  test("flange 16 / 2 = 8 below 0.38 sqrt(E / F_y) = 9.15: no local buckling; web by 6.10.1.9", () => {
    // F_crw = 0.9 E k / (D / t_w)^2 with k = 9 / (D_c / D)^2 = 28.7: 39.35 ksi, below F_yc.
    const k = 9 / (38.63 / 69) ** 2;
    within(at(24).other / s.S_xc, (0.9 * 29000 * k) / 138 ** 2, 2e-3);
  });
});

describe("C_b, 6.10.8.2.3-6 and -7", () => {
  test.each([
    // Straight lines: f1 / f2 of 1, 0, 0.5, and -1, which is capped at 2.3.
    [1, 1, 1, 1],
    [1, 0.5, 0, 1.75],
    [1, 0.75, 0.5, 1.3],
    [1, 0, -1, 2.3],
    // Greater in the middle than at the ends, or no compression at either end: 1.
    [1, 1.2, 1, 1],
    [0, 1, 0, 1],
    [-1, 0.5, -1, 1],
    // Curved: the line through the end and the middle, 2 x 0.7 - 1 = 0.4.
    [1, 0.7, 0.1, 1.75 - 1.05 * 0.4 + 0.3 * 0.16],
  ])("ends %d and %d to %d: %d", (f2, mid, f0, expected) => {
    within(aashtoShape(null, f2, mid, f0), expected, 1e-12);
  });
});

describe("6.10.3.4.2: two girders 3 m apart, flanges 600 x 45, web 2310 x 16 mm, E 200 GPa (0.2 %)", () => {
  const s = flangeSection(null, { b_c: 0.6, t_c: 0.045, h: 2.31, t_w: 0.016, b_t: 0.6, t_t: 0.045 });
  const momentOver = (L: number) =>
    pairMoment(null, 200e9, 3, L, Math.sqrt(effectiveInertia(null, s) * s.I_x));

  test.each([
    [40, 49.53e6],
    [50, 31.7e6],
    [60, 22.01e6],
    [70, 16.17e6],
  ])("over %d m %d N m", (L, expected) => {
    within(momentOver(L), expected, 2e-3);
  });

  test.each([
    [40, 0.065],
    [50, 0.159],
    [60, 0.329],
    [70, 0.61],
  ])("over %d m its own weight of 16.105 kN/m is %d of it", (L, expected) => {
    within((16105 * L ** 2) / 8 / momentOver(L), expected, 5e-3);
  });

  test("the whole set as one thin-walled section (G 77 GPa, factor 1) gives 20.39 MNm over 60 m, 1.9 % more", () => {
    within((1.019 * momentOver(60)) / 1.1, 20.39e6, 2e-3);
  });

  test("unequal flanges: by their distances from the neutral axis", () => {
    const u = flangeSection(null, { b_c: 0.4, t_c: 0.03, h: 2.4, t_w: 0.016, b_t: 0.6, t_t: 0.04 });
    const c = u.h_c / 2 + 0.015;
    const I = (b: number, t: number) => (t * b ** 3) / 12;
    within(effectiveInertia(null, u), I(0.4, 0.03) + ((u.h_o - c) / c) * I(0.6, 0.04), 1e-12);
  });
});

test("two girders 2 m apart over 50 m, I_y 3e-4 and I_x 0.02 m4 each, E 210 GPa: 4.0615 MN m for C_b = 1 (worked by hand, 0.01 %)", () => {
  within(pairMoment(null, 210e9, 2, 50, Math.sqrt(3e-4 * 0.02)) / 1.1, 4.0615e6, 1e-4);
});
