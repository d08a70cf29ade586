// Section properties of a girder's piece as the strength rules name them, seen from the flange in compression.
//
// Symbols are those of the rules in plain letters: b_c, t_c the flange in compression, b_t, t_t the other one, h and t_w
// the web; distances y count from the outer face of the flange in compression.

import { type Plate, sectionOf } from "../../section/index.ts";
import { type Recorder, trace } from "../trace.ts";

/** Plates of a piece (m) as seen from the flange in compression. */
export interface FlangePlates {
  b_c: number;
  t_c: number;
  h: number;
  t_w: number;
  b_t: number;
  t_t: number;
}

/** Properties of a section bent about its strong axis with one flange in compression; m, m2, m3, m4, m6. */
export interface FlangeSection extends FlangePlates {
  d: number;
  /** Between the centroids of the flanges. */
  h_o: number;
  I_x: number;
  I_y: number;
  /** Second moment of the flange in compression about the web. */
  I_yc: number;
  J: number;
  C_w: number;
  /** Elastic section moduli of the two flanges, and the plastic one. */
  S_xc: number;
  S_xt: number;
  Z_x: number;
  r_y: number;
  /** Twice the distance from the elastic and from the plastic neutral axis to the inside of the flange in compression. */
  h_c: number;
  h_p: number;
}

/** Properties of three plates, traced from the plates' own symbols. Throws RangeError as `sectionOf` does. */
export function flangeSection(rec: Recorder | null, plates: FlangePlates): FlangeSection {
  const { b_c, t_c, h, t_w, b_t, t_t } = plates;
  const near: Plate = [b_c, t_c];
  const s = sectionOf({ bottomFlange: near, web: [h, t_w], topFlange: [b_t, t_t] });
  const put = (symbol: string, value: number, formula: string, unit: string, words: string) =>
    trace(rec, symbol, value, formula, unit, words);
  const d = put("d", s.depth, "t_c + h + t_t", "m", "depth");
  const h_o = put("h_o", d - (t_c + t_t) / 2, "d - (t_c + t_t)/2", "m", "between the flanges' centroids");
  const A = put("A", s.area, "b_c*t_c + h*t_w + b_t*t_t", "m2", "area");
  const y_c = put(
    "y_c",
    s.centroid,
    "(b_c*t_c^2/2 + h*t_w*(t_c + h/2) + b_t*t_t*(d - t_t/2))/A",
    "m",
    "centroid from the outer face of the flange in compression",
  );
  const I_x = put(
    "I_x",
    s.strongInertia,
    "b_c*t_c^3/12 + b_c*t_c*(y_c - t_c/2)^2 + t_w*h^3/12 + h*t_w*(t_c + h/2 - y_c)^2 + b_t*t_t^3/12 + b_t*t_t*(d - t_t/2 - y_c)^2",
    "m4",
    "second moment about the strong axis",
  );
  const I_y = put(
    "I_y",
    s.weakInertia,
    "t_c*b_c^3/12 + h*t_w^3/12 + t_t*b_t^3/12",
    "m4",
    "second moment about the web",
  );
  const I_yc = put(
    "I_yc",
    (t_c * b_c ** 3) / 12,
    "t_c*b_c^3/12",
    "m4",
    "of the flange in compression about the web",
  );
  const J = put("J", s.torsion, "(b_c*t_c^3 + h*t_w^3 + b_t*t_t^3)/3", "m4", "torsion constant");
  const C_w = put(
    "C_w",
    s.warping,
    "h_o^2*I_yc*(t_t*b_t^3/12)/(I_yc + t_t*b_t^3/12)",
    "m6",
    "warping constant",
  );
  const S_xc = put("S_xc", I_x / y_c, "I_x/y_c", "m3", "section modulus of the flange in compression");
  const S_xt = put(
    "S_xt",
    I_x / (d - y_c),
    "I_x/(d - y_c)",
    "m3",
    "section modulus of the flange in tension",
  );
  const y_p = put(
    "y_p",
    plasticAxis(plates, A, d),
    "A/2 <= b_c*t_c ? A/(2*b_c) : (A/2 <= b_c*t_c + h*t_w ? t_c + (A/2 - b_c*t_c)/t_w : d - A/(2*b_t))",
    "m",
    "plastic neutral axis from the outer face of the flange in compression",
  );
  const Z_x = put(
    "Z_x",
    (plasticPart(b_c, 0, t_c, y_p) +
      plasticPart(t_w, t_c, t_c + h, y_p) +
      plasticPart(b_t, t_c + h, d, y_p)) /
      2,
    "(b_c*((t_c - y_p)*abs(t_c - y_p) + y_p*abs(y_p)) + t_w*((t_c + h - y_p)*abs(t_c + h - y_p) - (t_c - y_p)*abs(t_c - y_p)) + b_t*((d - y_p)*abs(d - y_p) - (t_c + h - y_p)*abs(t_c + h - y_p)))/2",
    "m3",
    "plastic section modulus",
  );
  const r_y = put("r_y", Math.sqrt(I_y / A), "sqrt(I_y/A)", "m", "radius of gyration about the web");
  const h_c = put("h_c", 2 * (y_c - t_c), "2*(y_c - t_c)", "m", "twice the web in compression, elastic");
  const h_p = put("h_p", 2 * (y_p - t_c), "2*(y_p - t_c)", "m", "twice the web in compression, plastic");
  return { ...plates, d, h_o, I_x, I_y, I_yc, J, C_w, S_xc, S_xt, Z_x, r_y, h_c, h_p };
}

/** Where half of the area lies on either side, from the outer face of the flange in compression. */
function plasticAxis({ b_c, t_c, h, t_w, b_t }: FlangePlates, A: number, d: number): number {
  if (A / 2 <= b_c * t_c) return A / (2 * b_c);
  return A / 2 <= b_c * t_c + h * t_w ? t_c + (A / 2 - b_c * t_c) / t_w : d - A / (2 * b_t);
}

/** Twice the first moment, without sign, of a rectangle of width b between z1 and z2 about y. */
function plasticPart(b: number, z1: number, z2: number, y: number): number {
  return b * ((z2 - y) * Math.abs(z2 - y) - (z1 - y) * Math.abs(z1 - y));
}
