// ANSI/AISC 360-22 J10.2 and J10.3: local yielding and crippling of a web under a point load (0.2 %; formulas read in the
// standard, values recomputed). Stiffeners as columns, J10.8 with E3 and J4.4, by hand.

import { describe, expect, test } from "vitest";
import { stiffenerColumn } from "../../src/checks/girders/stiffeners.ts";
import { type WebAt, webCrippling, webYielding } from "../../src/checks/girders/web.ts";
import { within } from "./close.ts";

describe("W36x150, 50 ksi, k 1.69 in, bearing on 12 in", () => {
  const w: WebAt = { d: 35.9, t_c: 0.94, t_w: 0.625, E: 29000, F_y: 50 };
  test("yielding 639.1 kip inside the span, 507.0 kip within d of the end", () => {
    within(webYielding(null, w, 1.69, 12, 100), 639.1, 2e-3);
    within(webYielding(null, w, 1.69, 12, 35.8), 507.0, 2e-3);
    within(webYielding(null, w, 1.69, 12, 36), 639.1, 2e-3);
  });

  test("crippling 712.4 kip inside the span", () => {
    within(webCrippling(null, w, 12, 100), 712.4, 2e-3);
  });

  test("within half the depth of the end less than half of it, by the length of bearing", () => {
    // l_b / d = 0.334 > 0.2: 0.40 t_w^2 (1 + (4 l_b / d - 0.2) (t_w / t_f)^1.5) sqrt(E F_y t_f / t_w), J10-5b.
    const s = (0.625 / 0.94) ** 1.5;
    const root = Math.sqrt((29000 * 50 * 0.94) / 0.625);
    within(webCrippling(null, w, 12, 10), 0.4 * 0.625 ** 2 * (1 + ((4 * 12) / 35.9 - 0.2) * s) * root, 1e-12);
    // l_b / d = 0.139 <= 0.2: half of that inside the span, J10-5a.
    within(webCrippling(null, w, 5, 10), webCrippling(null, w, 5, 100) / 2, 1e-12);
  });
});

test("plate girder d 2400, t_w 16, t_f 45, k 53 mm, 345 MPa, 600 mm: yielding 4774.8 kN, crippling 3306.6 kN", () => {
  const w: WebAt = { d: 2.4, t_c: 0.045, t_w: 0.016, E: 200e9, F_y: 345e6 };
  within(webYielding(null, w, 0.053, 0.6, 20), 4774.8e3, 2e-3);
  within(webCrippling(null, w, 0.6, 20), 3306.6e3, 2e-3);
  within(0.75 * webCrippling(null, w, 0.6, 20), 2480e3, 2e-3);
});

describe("a pair of stiffeners 200 x 20 mm on a web 2400 x 18 mm, 345 MPa (formulas from memory, by hand)", () => {
  const column = { b_s: 0.2, t_s: 0.02, h: 2.4, t_w: 0.018 };
  const steel = { E: 210e9, F_y: 345e6 };

  test("AISC: 25 web thicknesses inside the span, 12 at an end; stocky, so squash load", () => {
    // A = 2 x 0.2 x 0.02 + 25 x 0.018^2 = 0.0161 m2; I = 0.02 x 0.418^3 / 12; 0.75 h / r = 16.4 <= 25.
    within(stiffenerColumn(null, "asd", column, steel, 20), 345e6 * 0.0161, 1e-9);
    within(stiffenerColumn(null, "lrfd", column, steel, 0.1), 345e6 * (0.008 + 12 * 0.018 ** 2), 1e-9);
  });

  test("AASHTO: 18 web thicknesses, and the column curve for every slenderness", () => {
    const A = 0.008 + 18 * 0.018 ** 2;
    const I = (0.02 * 0.418 ** 3) / 12;
    const F_e = (Math.PI ** 2 * 210e9) / (1.8 ** 2 / (I / A));
    within(stiffenerColumn(null, "aashto", column, steel, 20), 345e6 * A * 0.658 ** (345e6 / F_e), 1e-9);
  });

  test("a tall pair of narrow plates buckles: E3-2 beyond 4.71 sqrt(E / F_y) = 116", () => {
    const tall = { b_s: 0.03, t_s: 0.01, h: 6, t_w: 0.008 };
    const A = 2 * 0.03 * 0.01 + 25 * 0.008 ** 2;
    const I = (0.01 * 0.068 ** 3) / 12;
    const F_e = (Math.PI ** 2 * 210e9) / (4.5 ** 2 / (I / A));
    expect(345e6 / F_e).toBeGreaterThan(2.25);
    within(stiffenerColumn(null, "asd", tall, steel, 20), 0.877 * F_e * A, 1e-9);
  });

  test("a thin wide stiffener counts to 0.48 t sqrt(E / F_y)", () => {
    const wide = { b_s: 0.4, t_s: 0.01, h: 2.4, t_w: 0.018 };
    const b_s = 0.48 * 0.01 * Math.sqrt(210e9 / 345e6);
    expect(stiffenerColumn(null, "asd", wide, steel, 20)).toBe(
      stiffenerColumn(null, "asd", { ...wide, b_s }, steel, 20),
    );
  });
});
