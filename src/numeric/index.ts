/**
 * numeric: symmetric factorisations in flat typed arrays, and the distance of convex bodies.
 *
 * ```ts
 * import { ldlFactor, ldlSolve, symmetricEigen } from "./index.ts";
 * const a = Float64Array.of(4, 2, 2, 3); // the matrix [[4, 2], [2, 3]], row by row
 * symmetricEigen(a, 2).values.length; // => 2
 * ldlFactor(a, 2); // => true
 * const x = Float64Array.of(10, 9);
 * ldlSolve(a, 2, x);
 * [...x]; // => [1.5, 2]
 * import { convexDistance, newGap } from "./index.ts";
 * const xyz = Float64Array.of(0, 0, 0, 10, 0, 0, 5, 3, -1, 5, 3, 1); // two axes, 3 m apart
 * const capsule = { first: 0, count: 2, radius: 0.5, disc: 0 };
 * convexDistance(capsule, xyz, { ...capsule, first: 2 }, xyz, newGap()); // => 2
 * ```
 */
export * from "./banded.ts";
export { type Convex, reach } from "./convex/body.ts";
export { convexDistance } from "./convex/distance.ts";
export { type Gap, newGap } from "./convex/gap.ts";
export * from "./dense.ts";
export * from "./dualSimplex.ts";
export * from "./eliminate.ts";
export * from "./pencil.ts";
export * from "./slab.ts";
