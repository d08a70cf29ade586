// Bending strength of girders during construction by AASHTO LRFD 6.10.3.2.1: flange stresses against yielding, local and
// lateral-torsional buckling (6.10.8.2) and bend-buckling of the web (6.10.1.9). All equations are written from memory.
//
// R_b is 1 (6.10.3.2.1 says so for construction) and R_h is 1, since a piece has one yield stress. Bending of the
// flanges in plan is not counted.

import { constant, type Recorder, trace } from "../trace.ts";
import type { Steel } from "./aiscClass.ts";
import type { FlangeSection } from "./section.ts";
import type { Strength } from "./strength.ts";

const AASHTO = "AASHTO LRFD Bridge Design Specifications, written from memory";

/** Strength of a section over an unbraced length L_b (m), as moments: stresses times the section modulus S_xc. */
export function aashtoStrength(rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number): Strength {
  const { E, F_y } = m;
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause: string) =>
    trace(rec, symbol, value, formula, unit, words, AASHTO, clause);
  const R_b = constant(
    rec,
    "R_b",
    1,
    "1",
    "load shedding of the web, 1 during construction",
    `${AASHTO}, 6.10.3.2.1`,
  );
  const R_h = constant(
    rec,
    "R_h",
    1,
    "1",
    "hybrid factor: one yield stress in a piece",
    `${AASHTO}, 6.10.1.10.1`,
  );
  const D_c = put("D_c", Math.max(0, s.h_c / 2), "max(0, h_c/2)", "m", "web in compression", "D6.3.1");
  const r_t = put(
    "r_t",
    s.b_c / Math.sqrt(12 * (1 + (D_c * s.t_w) / (3 * s.b_c * s.t_c))),
    "b_c/sqrt(12*(1 + D_c*t_w/(3*b_c*t_c)))",
    "m",
    "radius of gyration of the flange and a third of the web in compression",
    "6.10.8.2.3-9",
  );
  // 0.7 F_yc, not above F_yw and not below F_yc / 2, with one yield stress.
  const F_yr = put(
    "F_yr",
    0.7 * F_y,
    "0.7*F_y",
    "Pa",
    "stress at which yielding begins with residual stresses",
    "6.10.8.2.2",
  );
  const L_p = put(
    "L_p",
    r_t * Math.sqrt(E / F_y),
    "r_t*sqrt(E/F_y)",
    "m",
    "up to it nothing buckles sideways",
    "6.10.8.2.3-4",
  );
  const L_r = put(
    "L_r",
    Math.PI * r_t * Math.sqrt(E / F_yr),
    "pi*r_t*sqrt(E/F_yr)",
    "m",
    "beyond it buckling is elastic",
    "6.10.8.2.3-5",
  );
  const base = put(
    "M_ltb",
    s.S_xc *
      (L_b <= L_r
        ? (1 - ((1 - F_yr / (R_h * F_y)) * (L_b - L_p)) / (L_r - L_p)) * R_b * R_h * F_y
        : (R_b * Math.PI ** 2 * E) / (L_b / r_t) ** 2),
    "S_xc*(L_b <= L_r ? (1 - (1 - F_yr/(R_h*F_y))*(L_b - L_p)/(L_r - L_p))*R_b*R_h*F_y : R_b*pi^2*E/(L_b/r_t)^2)",
    "N m",
    "lateral-torsional buckling at C_b = 1, as a moment",
    "6.10.8.2.3-2, -3, -8",
  );
  const cap = put(
    "M_cap",
    R_b * R_h * F_y * s.S_xc,
    "R_b*R_h*F_y*S_xc",
    "N m",
    "yielding of the flange in compression",
    "6.10.8.2.3-1",
  );
  const lambda_f = put(
    "lambda_f",
    s.b_c / (2 * s.t_c),
    "b_c/(2*t_c)",
    "1",
    "slenderness of the flange",
    "6.10.8.2.2-3",
  );
  const lambda_pf = put(
    "lambda_pf",
    0.38 * Math.sqrt(E / F_y),
    "0.38*sqrt(E/F_y)",
    "1",
    "up to it the flange is compact",
    "6.10.8.2.2-4",
  );
  const lambda_rf = put(
    "lambda_rf",
    0.56 * Math.sqrt(E / F_yr),
    "0.56*sqrt(E/F_yr)",
    "1",
    "limit of a noncompact flange",
    "6.10.8.2.2-5",
  );
  const local = put(
    "M_flb",
    lambda_f <= lambda_pf
      ? cap
      : (1 - ((1 - F_yr / (R_h * F_y)) * (lambda_f - lambda_pf)) / (lambda_rf - lambda_pf)) * cap,
    "lambda_f <= lambda_pf ? M_cap : (1 - (1 - F_yr/(R_h*F_y))*(lambda_f - lambda_pf)/(lambda_rf - lambda_pf))*M_cap",
    "N m",
    "local buckling of the flange in compression",
    "6.10.8.2.2-1, -2",
  );
  const F_crw = put(
    "F_crw",
    D_c > 0 ? Math.min((0.9 * E * 9 * (s.h / D_c) ** 2) / (s.h / s.t_w) ** 2, R_h * F_y) : R_h * F_y,
    "D_c > 0 ? min(0.9*E*9*(h/D_c)^2/(h/t_w)^2, R_h*F_y) : R_h*F_y",
    "Pa",
    "bend-buckling stress of the web, k = 9 / (D_c / D)^2",
    "6.10.1.9.1",
  );
  const web = put("M_web", F_crw * s.S_xc, "F_crw*S_xc", "N m", "bend-buckling of the web", "6.10.3.2.1-3");
  const tension = put(
    "M_tfy",
    R_h * F_y * s.S_xt,
    "R_h*F_y*S_xt",
    "N m",
    "yielding of the flange in tension",
    "6.10.3.2.2-1",
  );
  const other = put(
    "M_oth",
    Math.min(local, web, tension),
    "min(M_flb, M_web, M_tfy)",
    "N m",
    "least of what no moment shape helps",
    "6.10.3.2",
  );
  return { standard: AASHTO, chapter: "6.10.3.2", short: L_b <= L_p, base, cap, other };
}
