// Factor C_b for the shape of the moment over an unbraced length, by AISC and by AASHTO, and where the shape may not help.

import { constant, type Recorder, trace } from "../trace.ts";

/**
 * C_b by ANSI/AISC 360-22 F1-1: from the greatest moment and those at the quarter points, N m, none with a sign; times
 * R_m for a section of unequal flanges in reverse curvature (commentary to F1, from memory; never above 1 here).
 */
export function aiscShape(
  rec: Recorder | null,
  M_max: number,
  M_A: number,
  M_B: number,
  M_C: number,
  R_m = 1,
): number {
  return trace(
    rec,
    "C_b",
    (R_m * 12.5 * M_max) / (2.5 * M_max + 3 * M_A + 4 * M_B + 3 * M_C),
    "R_m*12.5*M_max/(2.5*M_max + 3*M_A + 4*M_B + 3*M_C)",
    "1",
    "shape of the moment",
    "ANSI/AISC 360-22",
    "F1-1",
  );
}

/**
 * C_b by AASHTO LRFD 6.10.8.2.3-6 and -7, from memory, for one section: moments that press the flange, N m; M_2 the
 * greater of those at the two ends, M_0 the other, M_mid in the middle.
 */
export function aashtoShape(rec: Recorder | null, M_2: number, M_mid: number, M_0: number): number {
  const M_1 = trace(
    rec,
    "M_1",
    Math.max(2 * M_mid - M_2, M_0),
    "max(2*M_mid - M_2, M_0)",
    "N m",
    "end of the straight line that stands for the shape",
    "AASHTO LRFD, written from memory",
    "6.10.8.2.3-11",
  );
  return trace(
    rec,
    "C_b",
    M_2 <= 0 || M_mid > M_2 ? 1 : Math.min(2.3, 1.75 - (1.05 * M_1) / M_2 + 0.3 * (M_1 / M_2) ** 2),
    "M_2 <= 0 ? 1 : (M_mid > M_2 ? 1 : min(2.3, 1.75 - 1.05*M_1/M_2 + 0.3*(M_1/M_2)^2))",
    "1",
    "shape of the moment",
    "AASHTO LRFD, written from memory",
    "6.10.8.2.3-6, -7",
  );
}

/** Why the shape of the moment may not help in an unbraced length; the first that holds is told. */
export type NoHelp = "tip" | "overhang" | "sections" | "lone" | "";

/** Words and source of what keeps C_b at 1. */
export const noHelpWords: Record<Exclude<NoHelp, "">, { words: string; source: string }> = {
  tip: {
    words: "one end is a free end of the girder without a brace",
    source: "ANSI/AISC 360-22 F1: 1.0 for a cantilever with a free end that is not braced",
  },
  overhang: {
    words: "beyond the last support: an overhang with a free tip",
    source:
      "ANSI/AISC 360-22 F1, AASHTO LRFD 6.10.8.2.3: 1.0 for cantilevers with a free tip; taken for every unbraced length of an overhang, and L_b once the length between braces as for loads at the centroid in BS 5950-1:2000 table 14 (from memory)",
  },
  sections: {
    words: "the section changes inside the unbraced length",
    source:
      "AASHTO LRFD 6.10.8.2.3, from memory: 1.0 with a change of section, and the least strength within the length",
  },
  lone: {
    words: "a girder alone on supports that do not brace it",
    source:
      "common practice, no source: 1.0 over the whole length of a girder without cross-frames or bracing",
  },
};

/** C_b where the shape may not help. */
export function noHelp(rec: Recorder | null, why: Exclude<NoHelp, "">): number {
  const { words, source } = noHelpWords[why];
  return constant(rec, "C_b", 1, "1", words, source);
}
