// Small vectors cut from large ones: a typed array of more than a few numbers is costly to make, a view of one is not.

const SLAB = 2048;
let slab = new Float64Array(SLAB);
let used = 0;

/**
 * A new vector of zeros. Its buffer is shared with others cut before and after it: copy it (`slice`) before it is
 * transferred to another thread.
 */
export function vector(n: number): Float64Array {
  if (used + n > slab.length) {
    slab = new Float64Array(Math.max(SLAB, n));
    used = 0;
  }
  used += n;
  return slab.subarray(used - n, used);
}
