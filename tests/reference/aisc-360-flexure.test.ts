// ANSI/AISC 360-22, chapter F: the factor of the moment shape (F1-1), compact rolled beams (F2-1 to F2-8), and what holds
// between the sections for other webs. Table values of W18x50 and W36x150 from the AISC shapes database (Manual table
// 1-1). Kips, inches and ksi.

import { describe, expect, test } from "vitest";
import { aiscStrength } from "../../src/checks/girders/aiscFlexure.ts";
import { aiscShape } from "../../src/checks/girders/momentShape.ts";
import { type FlangePlates, type FlangeSection, flangeSection } from "../../src/checks/girders/section.ts";
import { nominalMoment } from "../../src/checks/girders/strength.ts";
import { within } from "./close.ts";

const E = 29000;
const FT = 12;

/** A rolled beam with its table values; warping constant I_y h_o^2 / 4. */
function rolled(
  plates: Pick<FlangePlates, "b_c" | "t_c" | "t_w"> & { d: number },
  table: Pick<FlangeSection, "I_x" | "I_y" | "J" | "S_xc" | "Z_x" | "r_y" | "h_o">,
): FlangeSection {
  const { b_c, t_c, t_w, d } = plates;
  const h = d - 2 * t_c;
  const made = flangeSection(null, { b_c, t_c, h, t_w, b_t: b_c, t_t: t_c });
  return { ...made, ...table, S_xt: table.S_xc, C_w: (table.I_y * table.h_o ** 2) / 4 };
}

const W18x50 = rolled(
  { b_c: 7.5, t_c: 0.57, t_w: 0.355, d: 18 },
  { I_x: 800, I_y: 40.1, J: 1.24, S_xc: 88.9, Z_x: 101, r_y: 1.65, h_o: 17.43 },
);
const W36x150 = rolled(
  { b_c: 12, t_c: 0.94, t_w: 0.625, d: 35.9 },
  { I_x: 9040, I_y: 270, J: 10.1, S_xc: 504, Z_x: 581, r_y: 2.47, h_o: 34.96 },
);
const steel = { E, F_y: 50 };

describe("F1-1, within 0.2 % of the printed or recomputed factor", () => {
  /** Moment along a length of 1 between braces; the greatest is given where it lies between quarter points. */
  const factor = (M: (x: number) => number, greatest?: number) => {
    const at = (x: number) => Math.abs(M(x));
    const most = greatest ?? Math.max(...[0, 0.25, 0.5, 0.75, 1].map(at));
    return aiscShape(null, most, at(0.25), at(0.5), at(0.75));
  };
  const span = (x: number) => x * (1 - x);
  test.each([
    ["uniform", factor(() => 1), 1],
    ["one end zero, straight", factor((x) => x), 1.667],
    ["equal and opposite ends", factor((x) => 1 - 2 * x), 2.273],
    ["simple span, uniform load", factor(span), 1.136],
    ["simple span, load in the middle", factor((x) => Math.min(x, 1 - x)), 1.316],
    ["uniform load, braced in the middle", factor((x) => span(x / 2)), 1.299],
    ["uniform load, braced at thirds: middle", factor((x) => span((1 + x) / 3)), 1.014],
    ["uniform load, braced at thirds: end", factor((x) => span(x / 3)), 1.46],
  ])("%s", (_, found, expected) => {
    within(found, expected, 2e-3);
  });

  test("the formula would give 2.33 to a free cantilever under its own weight, which is why it is 1 by rule", () => {
    within(
      factor((x) => (1 - x) ** 2),
      2.33,
      5e-3,
    );
  });
});

describe("W18x50, 50 ksi", () => {
  const at = (feet: number) => aiscStrength(null, W18x50, steel, feet * FT);
  test("L_p 5.83 ft, L_r 16.97 ft, M_p 420.8 kip ft (0.5 %)", () => {
    // The lengths are not handed out: nothing buckles up to L_p, and from L_r on the strength is elastic.
    expect(at(5.83 * 0.995).short).toBe(true);
    expect(at(5.83 * 1.005).short).toBe(false);
    within(at(6).cap / FT, 420.8, 5e-3);
    const straight = (a: number, b: number, c: number) =>
      Math.abs(at(a).base - 2 * at(b).base + at(c).base) / at(b).base;
    // Straight between them, bent beyond: second differences over 1 ft.
    expect(straight(15, 15.9, 16.8)).toBeLessThan(1e-12);
    expect(straight(17.1, 18, 18.9)).toBeGreaterThan(1e-3);
    // At L_r it is 0.7 F_y S_x.
    within(at(16.97).base, 0.7 * 50 * 88.9, 5e-3);
  });

  test("M_n 339.5 kip ft at 11.67 ft with C_b 1.01 (0.5 %); AISC design example F.1-2 about 339, from memory", () => {
    const M_n = nominalMoment(null, at(11.67), 1.01) / FT;
    within(M_n, 339.5, 5e-3);
    within(M_n, 339, 5e-3);
    expect(at(11.67).chapter).toBe("F2");
  });
});

describe("W36x150, 50 ksi, all three branches (0.3 %)", () => {
  test.each([
    [8, 2420.8],
    [15, 2060.3],
    [20, 1773.1],
    [24, 1543.3],
    [30, 1105.1],
    [40, 708.0],
    [60, 404.8],
  ])("at %d ft %d kip ft", (feet, expected) => {
    within(nominalMoment(null, aiscStrength(null, W36x150, steel, feet * FT), 1) / FT, expected, 3e-3);
  });

  test.each([30, 40, 60])(
    "at %d ft within 0.3 %% of the closed form of elastic buckling, G 11 200 ksi",
    (feet) => {
      const L = feet * FT;
      const { I_y, J, C_w } = W36x150;
      const closed = (Math.PI / L) * Math.sqrt(E * I_y * 11200 * J + ((Math.PI * E) / L) ** 2 * I_y * C_w);
      within(aiscStrength(null, W36x150, steel, L).base, closed, 3e-3);
    },
  );

  test("short lengths reach the plastic moment whatever the shape, long ones by the shape up to it", () => {
    expect(nominalMoment(null, aiscStrength(null, W36x150, steel, 8 * FT), 0.9)).toBe(50 * 581);
    const long = aiscStrength(null, W36x150, steel, 24 * FT);
    expect(nominalMoment(null, long, 1.2)).toBeCloseTo(1.2 * long.base, 9);
    expect(nominalMoment(null, long, 3)).toBe(50 * 581);
  });
});

describe("plate girders, F3 to F5 (equations from memory)", () => {
  // Metres and MPa.
  const girder = (b_c: number, t_c: number, t_w: number, b_t = b_c, t_t = t_c) =>
    flangeSection(null, { b_c, t_c, h: 2.4, t_w, b_t, t_t });
  const iron = { E: 200000, F_y: 345 };

  test("the section follows from the slenderness of web and flange", () => {
    const chapter = (s: FlangeSection) => aiscStrength(null, s, iron, 5).chapter;
    // h / t_w against 3.76 and 5.70 sqrt(E / F_y) = 90.5 and 137.2; b / 2 t against 0.38 sqrt(E / F_y) = 9.15.
    expect(chapter(girder(0.6, 0.045, 0.028))).toBe("F2");
    expect(chapter(girder(0.6, 0.03, 0.028))).toBe("F3");
    expect(chapter(girder(0.6, 0.045, 0.02))).toBe("F4");
    expect(chapter(girder(0.6, 0.045, 0.028, 0.5, 0.04))).toBe("F4");
    expect(chapter(girder(0.6, 0.045, 0.017))).toBe("F5");
  });

  test.each([
    ["F4", girder(0.6, 0.045, 0.02), 0.7],
    ["F4", girder(0.55, 0.032, 0.02, 0.6, 0.036), 0.7],
    ["F5", girder(0.6, 0.045, 0.016), 0.7],
  ] as const)(
    "%s: straight and elastic buckling meet where they meet in the standard",
    (chapter, s, share) => {
      const base = (L: number) => aiscStrength(null, s, iron, L).base;
      expect(aiscStrength(null, s, iron, 5).chapter).toBe(chapter);
      // The only jump of the slope is at L_r; there the moment is F_L S_xc, times R_pg in F5.
      let [a, b] = [4, 60];
      const bend = (L: number) => (base(L + 0.01) - 2 * base(L) + base(L - 0.01)) / base(L);
      while (b - a > 1e-3) {
        const m = (a + b) / 2;
        if (Math.abs(bend(m)) < 1e-9) a = m;
        else b = m;
      }
      const web = chapter === "F5" ? aiscStrength(null, s, iron, 5).cap / (iron.F_y * s.S_xc) : 1;
      within(base(a), share * iron.F_y * s.S_xc * web, 5e-3);
      // 1.95 and 6.76 are rounded: the two branches of F4 meet within 0.5 %.
      within(base(a - 0.02), base(b + 0.02), 5e-3);
    },
  );

  test("F4 elastic: unequal flanges within 10 % of the closed form for one axis of symmetry", () => {
    // Commentary to AISC F4: C_b pi^2 E I_y / L^2 (b/2 + sqrt((b/2)^2 + C_w / I_y (1 + 0.0390 J L^2 / C_w))), from memory,
    // b = 0.9 h_o (2 I_yc / I_y - 1) (1 - (I_y / I_x)^2). The standard calls its own equation a fair approximation.
    for (const s of [girder(0.5, 0.04, 0.02, 0.6, 0.04), girder(0.6, 0.04, 0.02, 0.5, 0.04)]) {
      const L = 30;
      const beta = 0.9 * s.h_o * ((2 * s.I_yc) / s.I_y - 1) * (1 - (s.I_y / s.I_x) ** 2);
      const root = Math.sqrt((beta / 2) ** 2 + (s.C_w / s.I_y) * (1 + (0.039 * s.J * L ** 2) / s.C_w));
      const closed = ((Math.PI ** 2 * iron.E * s.I_y) / L ** 2) * (beta / 2 + root);
      within(aiscStrength(null, s, iron, L).base, closed, 0.1);
    }
  });

  test("unequal flanges: the wider one in compression is the stronger way round", () => {
    const wide = aiscStrength(null, girder(0.6, 0.045, 0.02, 0.4, 0.03), iron, 12).base;
    const narrow = aiscStrength(null, girder(0.4, 0.03, 0.02, 0.6, 0.045), iron, 12).base;
    expect(wide).toBeGreaterThan(1.5 * narrow);
  });

  test("slender flanges and tension flanges limit what no moment shape helps", () => {
    const thin = aiscStrength(null, girder(0.6, 0.012, 0.02), iron, 2);
    expect(thin.other).toBeLessThan(0.8 * thin.cap);
    const weak = girder(0.6, 0.05, 0.009, 0.3, 0.02);
    expect(aiscStrength(null, weak, iron, 2).chapter).toBe("F5");
    within(aiscStrength(null, weak, iron, 2).other, iron.F_y * weak.S_xt, 1e-12);
  });
});
