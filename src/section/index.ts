/**
 * section: from plates to section properties.
 *
 * ```ts
 * import { sectionOf } from "./index.ts";
 * const s = sectionOf({ topFlange: [0.6, 0.045], web: [2.31, 0.016], bottomFlange: [0.6, 0.045] });
 * Math.round(s.area * 1e5); // => 9096
 * Math.round(s.depth * 1000); // => 2400
 * ```
 */
export * from "./plates.ts";
