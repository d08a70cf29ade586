// Bending strength of I-shaped girders by ANSI/AISC 360-22 chapter F: section F2, F3, F4 or F5 by the slenderness of
// flange and web. Everything that does not depend on the moment shape is worked out once for an unbraced length.
//
// Equations F2-1 to F2-8 and F1-1 are those of the standard; F3, F4 and F5 are written from memory.

import { type Recorder, trace } from "../trace.ts";
import { type Class, classOf, type Steel } from "./aiscClass.ts";
import type { FlangeSection } from "./section.ts";
import type { Strength } from "./strength.ts";

const F2 = "ANSI/AISC 360-22";
const MEMORY = "ANSI/AISC 360-22, written from memory";

/** Strength of a section over an unbraced length L_b (m), which the recorder knows by that symbol. */
export function aiscStrength(rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number): Strength {
  const c = classOf(rec, s, m);
  if (c.twin && c.lambda_w <= c.lambda_pw) return compactWeb(rec, s, m, L_b, c);
  if (c.lambda_w <= c.lambda_rw) return noncompactWeb(rec, s, m, L_b, c);
  return slenderWeb(rec, s, m, L_b, c);
}

/** F2 and F3: equal flanges, compact web. */
function compactWeb(rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number, c: Class): Strength {
  const { E, F_y } = m;
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause: string) =>
    trace(rec, symbol, value, formula, unit, words, F2, clause);
  const L_p = put(
    "L_p",
    1.76 * s.r_y * c.root,
    "1.76*r_y*root",
    "m",
    "up to it nothing buckles sideways",
    "F2-5",
  );
  const r_ts = put(
    "r_ts",
    Math.sqrt(Math.sqrt(s.I_y * s.C_w) / s.S_xc),
    "sqrt(sqrt(I_y*C_w)/S_xc)",
    "m",
    "effective radius of gyration",
    "F2-7",
  );
  const w = put("w", s.J / (s.S_xc * s.h_o), "J/(S_xc*h_o)", "1", "torsion in the equations", "F2-4");
  const L_r = put(
    "L_r",
    ((1.95 * r_ts * E) / (0.7 * F_y)) * Math.sqrt(w + Math.sqrt(w * w + 6.76 * ((0.7 * F_y) / E) ** 2)),
    "1.95*r_ts*E/(0.7*F_y)*sqrt(w + sqrt(w^2 + 6.76*(0.7*F_y/E)^2))",
    "m",
    "beyond it buckling is elastic",
    "F2-6",
  );
  const { M_p } = c;
  const base = put(
    "M_ltb",
    L_b <= L_r
      ? M_p - ((M_p - 0.7 * F_y * s.S_xc) * (L_b - L_p)) / (L_r - L_p)
      : ((s.S_xc * Math.PI ** 2 * E) / (L_b / r_ts) ** 2) * Math.sqrt(1 + 0.078 * w * (L_b / r_ts) ** 2),
    "L_b <= L_r ? M_p - (M_p - 0.7*F_y*S_xc)*(L_b - L_p)/(L_r - L_p) : S_xc*pi^2*E/(L_b/r_ts)^2*sqrt(1 + 0.078*w*(L_b/r_ts)^2)",
    "N m",
    "lateral-torsional buckling at C_b = 1",
    "F2-2, F2-3, F2-4",
  );
  const cap = put("M_cap", M_p, "M_p", "N m", "plastic moment", "F2-1");
  const compact = c.lambda_f <= c.lambda_pf;
  const other = compact
    ? put("M_oth", M_p, "M_p", "N m", "flange is compact: no local buckling", "F2")
    : trace(
        rec,
        "M_oth",
        c.lambda_f <= c.lambda_rf
          ? M_p - ((M_p - 0.7 * F_y * s.S_xc) * (c.lambda_f - c.lambda_pf)) / (c.lambda_rf - c.lambda_pf)
          : (0.9 * E * c.k_c * s.S_xc) / c.lambda_f ** 2,
        "lambda_f <= lambda_rf ? M_p - (M_p - 0.7*F_y*S_xc)*(lambda_f - lambda_pf)/(lambda_rf - lambda_pf) : 0.9*E*k_c*S_xc/lambda_f^2",
        "N m",
        "local buckling of the flange",
        MEMORY,
        "F3-1, F3-2",
      );
  return { standard: F2, chapter: compact ? "F2" : "F3", short: L_b <= L_p, base, cap, other };
}

/** What F4 and F5 share: the radius of gyration of flange and a part of the web, and the limit of yielding. */
function flangeRadius(
  rec: Recorder | null,
  s: FlangeSection,
  c: Class,
): { r_t: number; a_w: number; L_p: number } {
  const a_w = trace(
    rec,
    "a_w",
    Math.max(0, (s.h_c * s.t_w) / (s.b_c * s.t_c)),
    "max(0, h_c*t_w/(b_c*t_c))",
    "1",
    "web in compression over flange in compression",
    MEMORY,
    "F4-12",
  );
  const r_t = trace(
    rec,
    "r_t",
    s.b_c / Math.sqrt(12 * (1 + a_w / 6)),
    "b_c/sqrt(12*(1 + a_w/6))",
    "m",
    "radius of gyration of the flange and a third of the web in compression",
    MEMORY,
    "F4-11",
  );
  const L_p = trace(
    rec,
    "L_p",
    1.1 * r_t * c.root,
    "1.1*r_t*root",
    "m",
    "up to it nothing buckles sideways",
    MEMORY,
    "F4-7",
  );
  return { r_t, a_w, L_p };
}

/** F4: webs that are not slender. */
function noncompactWeb(rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number, c: Class): Strength {
  const { E, F_y } = m;
  const { M_p, F_L } = c;
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause: string) =>
    trace(rec, symbol, value, formula, unit, words, MEMORY, clause);
  const { r_t, L_p } = flangeRadius(rec, s, c);
  const rise = put(
    "rise",
    s.I_yc / s.I_y <= 0.23
      ? 0
      : c.lambda_w <= c.lambda_pw
        ? 1
        : Math.max(0, 1 - (c.lambda_w - c.lambda_pw) / (c.lambda_rw - c.lambda_pw)),
    "I_yc/I_y <= 0.23 ? 0 : (lambda_w <= lambda_pw ? 1 : max(0, 1 - (lambda_w - lambda_pw)/(lambda_rw - lambda_pw)))",
    "1",
    "part of the way from yielding to the plastic moment that the web allows",
    "F4-9, F4-10",
  );
  const M_yc = put("M_yc", F_y * s.S_xc, "F_y*S_xc", "N m", "yielding of the flange in compression", "F4-4");
  const cap = put(
    "M_cap",
    M_yc + rise * (M_p - M_yc),
    "M_yc + rise*(M_p - M_yc)",
    "N m",
    "R_pc M_yc: yielding of the flange in compression with what the web adds",
    "F4-1",
  );
  const J_s = put(
    "J_s",
    s.I_yc / s.I_y <= 0.23 ? 0 : s.J,
    "I_yc/I_y <= 0.23 ? 0 : J",
    "m4",
    "torsion constant that counts",
    "F4.2",
  );
  const w = put("w", J_s / (s.S_xc * s.h_o), "J_s/(S_xc*h_o)", "1", "torsion in the equations", "F4-5");
  const L_r = put(
    "L_r",
    ((1.95 * r_t * E) / F_L) * Math.sqrt(w + Math.sqrt(w * w + 6.76 * (F_L / E) ** 2)),
    "1.95*r_t*E/F_L*sqrt(w + sqrt(w^2 + 6.76*(F_L/E)^2))",
    "m",
    "beyond it buckling is elastic",
    "F4-8",
  );
  const base = put(
    "M_ltb",
    L_b <= L_r
      ? cap - ((cap - F_L * s.S_xc) * (L_b - L_p)) / (L_r - L_p)
      : ((s.S_xc * Math.PI ** 2 * E) / (L_b / r_t) ** 2) * Math.sqrt(1 + 0.078 * w * (L_b / r_t) ** 2),
    "L_b <= L_r ? M_cap - (M_cap - F_L*S_xc)*(L_b - L_p)/(L_r - L_p) : S_xc*pi^2*E/(L_b/r_t)^2*sqrt(1 + 0.078*w*(L_b/r_t)^2)",
    "N m",
    "lateral-torsional buckling at C_b = 1",
    "F4-2, F4-3, F4-5",
  );
  const local = put(
    "M_flb",
    c.lambda_f <= c.lambda_pf
      ? cap
      : c.lambda_f <= c.lambda_rf
        ? cap - ((cap - F_L * s.S_xc) * (c.lambda_f - c.lambda_pf)) / (c.lambda_rf - c.lambda_pf)
        : (0.9 * E * c.k_c * s.S_xc) / c.lambda_f ** 2,
    "lambda_f <= lambda_pf ? M_cap : (lambda_f <= lambda_rf ? M_cap - (M_cap - F_L*S_xc)*(lambda_f - lambda_pf)/(lambda_rf - lambda_pf) : 0.9*E*k_c*S_xc/lambda_f^2)",
    "N m",
    "local buckling of the flange in compression",
    "F4-13, F4-14",
  );
  const M_yt = put("M_yt", F_y * s.S_xt, "F_y*S_xt", "N m", "yielding of the flange in tension", "F4-15");
  const tension = put(
    "M_tfy",
    s.S_xt < s.S_xc ? M_yt + rise * Math.max(0, M_p - M_yt) : cap,
    "S_xt < S_xc ? M_yt + rise*max(0, M_p - M_yt) : M_cap",
    "N m",
    "R_pt M_yt: yielding of the flange in tension with what the web adds",
    "F4-15 to F4-17",
  );
  const other = put(
    "M_oth",
    Math.min(local, tension),
    "min(M_flb, M_tfy)",
    "N m",
    "least of what no moment shape helps",
    "F4",
  );
  return { standard: F2, chapter: "F4", short: L_b <= L_p, base, cap, other };
}

/** F5: slender webs. */
function slenderWeb(rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number, c: Class): Strength {
  const { E, F_y } = m;
  const put = (symbol: string, value: number, formula: string, unit: string, words: string, clause: string) =>
    trace(rec, symbol, value, formula, unit, words, MEMORY, clause);
  const { r_t, a_w, L_p } = flangeRadius(rec, s, c);
  const part = put("a_wr", Math.min(10, a_w), "min(10, a_w)", "1", "the same, 10 at most", "F5-6");
  const R_pg = put(
    "R_pg",
    Math.min(1, 1 - (part / (1200 + 300 * part)) * (c.lambda_w - 5.7 * c.root)),
    "min(1, 1 - a_wr/(1200 + 300*a_wr)*(lambda_w - 5.7*root))",
    "1",
    "what the slender web takes off",
    "F5-6",
  );
  const cap = put(
    "M_cap",
    R_pg * F_y * s.S_xc,
    "R_pg*F_y*S_xc",
    "N m",
    "yielding of the flange in compression",
    "F5-1",
  );
  const L_r = put(
    "L_r",
    Math.PI * r_t * Math.sqrt(E / (0.7 * F_y)),
    "pi*r_t*sqrt(E/(0.7*F_y))",
    "m",
    "beyond it buckling is elastic",
    "F5-5",
  );
  const base = put(
    "M_ltb",
    R_pg *
      s.S_xc *
      (L_b <= L_r ? F_y - (0.3 * F_y * (L_b - L_p)) / (L_r - L_p) : (Math.PI ** 2 * E) / (L_b / r_t) ** 2),
    "R_pg*S_xc*(L_b <= L_r ? F_y - 0.3*F_y*(L_b - L_p)/(L_r - L_p) : pi^2*E/(L_b/r_t)^2)",
    "N m",
    "lateral-torsional buckling at C_b = 1",
    "F5-2 to F5-4",
  );
  const local = put(
    "M_flb",
    R_pg *
      s.S_xc *
      (c.lambda_f <= c.lambda_pf
        ? F_y
        : c.lambda_f <= c.lambda_rf
          ? F_y - (0.3 * F_y * (c.lambda_f - c.lambda_pf)) / (c.lambda_rf - c.lambda_pf)
          : (0.9 * E * c.k_c) / c.lambda_f ** 2),
    "R_pg*S_xc*(lambda_f <= lambda_pf ? F_y : (lambda_f <= lambda_rf ? F_y - 0.3*F_y*(lambda_f - lambda_pf)/(lambda_rf - lambda_pf) : 0.9*E*k_c/lambda_f^2))",
    "N m",
    "local buckling of the flange in compression",
    "F5-7 to F5-9",
  );
  const tension = put(
    "M_tfy",
    s.S_xt < s.S_xc ? F_y * s.S_xt : cap,
    "S_xt < S_xc ? F_y*S_xt : M_cap",
    "N m",
    "yielding of the flange in tension",
    "F5-10",
  );
  const other = put(
    "M_oth",
    Math.min(local, tension),
    "min(M_flb, M_tfy)",
    "N m",
    "least of what no moment shape helps",
    "F5",
  );
  return { standard: F2, chapter: "F5", short: L_b <= L_p, base, cap, other };
}
