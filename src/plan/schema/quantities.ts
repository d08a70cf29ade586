// The quantities of a plan file: one reader for each kind of number, with the range in which it makes sense.
// A value outside its range is a slip of the pen or a wrong unit, and is refused with the range in words.
import * as z from "zod/mini";

// Without this zod compiles readers with `new Function`, which the page's content security policy forbids.
z.config({ jitless: true });

/** A finite number from `lo` to `hi`, both included. */
export const from = (lo: number, hi: number) => z.number().check(z.gte(lo), z.lte(hi));

/** Low, best and high value of one uncertain quantity; `checkPlan` asks low <= best <= high. */
export const band = (lo: number, hi: number) =>
  z.strictObject({ low: from(lo, hi), best: from(lo, hi), high: from(lo, hi) });

/** A pair low, high. */
export const pair = (lo: number, hi: number) => z.tuple([from(lo, hi), from(lo, hi)]);

/** Free text: may be blank, at most 4000 signs. */
export const text = z.string().check(z.maxLength(4000));

/** A name by which other parts of the file refer to this one: not blank, at most 80 signs. */
export const name = z.string().check(z.minLength(1), z.maxLength(80));

/** A list of readers of one kind, bounded so that a mistaken paste cannot stop the program. */
export const list = <T extends z.core.$ZodType>(item: T, most = 2000) =>
  z.array(item).check(z.maxLength(most));

/** A list that must hold something. */
export const someOf = <T extends z.core.$ZodType>(item: T, most = 2000) =>
  z.array(item).check(z.minLength(1), z.maxLength(most));

// Positions (m). Chainage and elevation are of the world, stations run along a set from its rear end.
export const chainage_m = from(-1e6, 1e6);
export const elevation_m = from(-500, 9000);
export const across_m = from(-100, 100);
export const station_m = from(0, 500);
export const distance_m = from(0, 500);
export const size_m = from(0.01, 200);
export const height_m = from(0, 200);

// Masses and forces.
export const mass_t = from(0, 5000);
export const force_kN = from(0, 1e5);
export const positiveForce_kN = from(0.001, 1e5);

// Stiffness: 1 kN/mm = 1 MN/m.
export const stiffness_kN_per_mm = from(1e-4, 1e6);

// Plates and levels (mm).
export const plateWidth_mm = from(50, 3000);
export const plateThickness_mm = from(3, 250);
export const webHeight_mm = from(100, 8000);
export const level_mm = from(-5000, 5000);
export const lift_mm = from(0.1, 20000);
export const stroke_mm = from(0, 2000);

// Ratios and angles.
export const pct = from(0, 100);
export const slope_pct = from(-30, 30);
export const friction = from(0, 2);
export const minutes = from(0, 100000);
export const speed_m_per_s = from(0, 100);
