// What a rule keeps of a section in an unbraced length, and the nominal moment that it gives for a moment shape.

import { type Recorder, trace } from "../trace.ts";

/** What a rule keeps of one section in one unbraced length; moments in N m. */
export interface Strength {
  standard: string;
  /** Section of the standard, as 'F4'. */
  chapter: string;
  /** The unbraced length is so short that nothing buckles sideways. */
  short: boolean;
  /** Strength against lateral-torsional buckling at C_b = 1, before its cap. */
  base: number;
  /** Cap of it: plastic moment or yielding. */
  cap: number;
  /** Least of what does not depend on the moment shape: flange local buckling, tension flange, web. */
  other: number;
}

/** Nominal moment, N m, with the factor C_b of the moment shape: AISC chapter F and AASHTO 6.10.3.2 have the same form. */
export function nominalMoment(rec: Recorder | null, k: Strength, C_b: number): number {
  return trace(
    rec,
    "M_n",
    k.short ? Math.min(k.cap, k.other) : Math.min(C_b * k.base, k.cap, k.other),
    "L_b <= L_p ? min(M_cap, M_oth) : min(C_b*M_ltb, M_cap, M_oth)",
    "N m",
    "nominal moment",
    k.standard,
    k.chapter,
  );
}
