// Slenderness of web and flange by ANSI/AISC 360-22 table B4.1b, with the plastic moment: what chapter F chooses by.
// Written from memory.

import { type Recorder, trace } from "../trace.ts";
import type { FlangeSection } from "./section.ts";

/** Steel of a piece, Pa. */
export interface Steel {
  E: number;
  F_y: number;
}

const F2 = "ANSI/AISC 360-22";
const MEMORY = "ANSI/AISC 360-22, written from memory";

/** Web and flange against their limits. */
export interface Class {
  twin: boolean;
  root: number;
  M_p: number;
  lambda_w: number;
  lambda_pw: number;
  lambda_rw: number;
  lambda_f: number;
  lambda_pf: number;
  lambda_rf: number;
  k_c: number;
  F_L: number;
}

/** Slenderness of web and flange with their limits. */
export function classOf(rec: Recorder | null, s: FlangeSection, { E, F_y }: Steel): Class {
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause = "") =>
    trace(rec, symbol, value, formula, unit, words, clause === "" ? "" : MEMORY, clause);
  const twin = s.b_c === s.b_t && s.t_c === s.t_t;
  const root = put("root", Math.sqrt(E / F_y), "sqrt(E/F_y)", "1", "root of modulus over yield stress");
  const S_min = put("S_min", Math.min(s.S_xc, s.S_xt), "min(S_xc, S_xt)", "m3", "least section modulus");
  const M_p = twin
    ? trace(rec, "M_p", F_y * s.Z_x, "F_y*Z_x", "N m", "plastic moment", F2, "F2-1")
    : trace(
        rec,
        "M_p",
        Math.min(F_y * s.Z_x, 1.6 * F_y * S_min),
        "min(F_y*Z_x, 1.6*F_y*S_min)",
        "N m",
        "plastic moment",
        MEMORY,
        "F4.1",
      );
  const lambda_w = put("lambda_w", s.h_c / s.t_w, "h_c/t_w", "1", "slenderness of the web");
  const lambda_rw = put(
    "lambda_rw",
    5.7 * root,
    "5.7*root",
    "1",
    "above it the web is slender",
    "table B4.1b",
  );
  const lambda_pw = twin
    ? put("lambda_pw", 3.76 * root, "3.76*root", "1", "up to it the web is compact", "table B4.1b case 15")
    : put(
        "lambda_pw",
        s.h_p > 0
          ? Math.min(((s.h_c / s.h_p) * root) / ((0.54 * M_p) / (F_y * S_min) - 0.09) ** 2, lambda_rw)
          : lambda_rw,
        "h_p > 0 ? min(h_c/h_p*root/(0.54*M_p/(F_y*S_min) - 0.09)^2, lambda_rw) : lambda_rw",
        "1",
        "up to it the web is compact",
        "table B4.1b case 16",
      );
  const F_L = put(
    "F_L",
    lambda_w > lambda_rw || s.S_xt / s.S_xc >= 0.7 ? 0.7 * F_y : Math.max((F_y * s.S_xt) / s.S_xc, 0.5 * F_y),
    "lambda_w > lambda_rw ? 0.7*F_y : (S_xt/S_xc >= 0.7 ? 0.7*F_y : max(F_y*S_xt/S_xc, 0.5*F_y))",
    "Pa",
    "stress at which yielding begins with residual stresses",
    "F4-6",
  );
  const k_c = put(
    "k_c",
    Math.min(0.76, Math.max(0.35, 4 / Math.sqrt(s.h / s.t_w))),
    "min(0.76, max(0.35, 4/sqrt(h/t_w)))",
    "1",
    "what the web lends the flange against its own buckling",
    "F3.2",
  );
  const lambda_f = put("lambda_f", s.b_c / (2 * s.t_c), "b_c/(2*t_c)", "1", "slenderness of the flange");
  const lambda_pf = put(
    "lambda_pf",
    0.38 * root,
    "0.38*root",
    "1",
    "up to it the flange is compact",
    "table B4.1b case 11",
  );
  const lambda_rf = put(
    "lambda_rf",
    0.95 * Math.sqrt((k_c * E) / F_L),
    "0.95*sqrt(k_c*E/F_L)",
    "1",
    "above it the flange is slender",
    "table B4.1b case 11",
  );
  return { twin, root, M_p, lambda_w, lambda_pw, lambda_rw, lambda_f, lambda_pf, lambda_rf, k_c, F_L };
}
