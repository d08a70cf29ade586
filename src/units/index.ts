/**
 * units: the only place where kN, t, kip, ft and degrees exist. Everything else computes in N, kg, m, Pa, rad and s.
 *
 * ```ts
 * import { convert, print, read, toSI } from "./index.ts";
 * toSI(10, "ft"); // => 3.048
 * convert(1, "t", "kg"); // => 1000
 * read("12 ft 6 in", "length"); // => { ok: true, value: 3.81, unit: "ft" }
 * read("14,37 m", "length").ok; // => false
 * print(123_440, "load", "SI"); // => "123.4 kN"
 * print(123_440, "load", "US"); // => "27.8 kip"
 * ```
 */
export * from "./factors.ts";
export * from "./print.ts";
export * from "./read.ts";
export * from "./typed.ts";
