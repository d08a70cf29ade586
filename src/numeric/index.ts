/**
 * numeric: symmetric factorisations in flat typed arrays, and nothing else.
 *
 * ```ts
 * import { ldlFactor, ldlSolve, symmetricEigen } from "./index.ts";
 * const a = Float64Array.of(4, 2, 2, 3); // the matrix [[4, 2], [2, 3]], row by row
 * symmetricEigen(a, 2).values.length; // => 2
 * ldlFactor(a, 2); // => true
 * const x = Float64Array.of(10, 9);
 * ldlSolve(a, 2, x);
 * [...x]; // => [1.5, 2]
 * ```
 */
export * from "./banded.ts";
export * from "./dense.ts";
export * from "./eliminate.ts";
export * from "./pencil.ts";
export * from "./slab.ts";
