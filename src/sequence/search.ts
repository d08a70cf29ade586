// Searches on one variable: where a signed quantity crosses zero, and where a quantity peaks.

/**
 * Where g leaves the sign of g(a) between a and b: regula falsi with the Illinois weighting. Where the
 * guess falls on an end of the bracket it is pushed off by a stride that doubles, so that a nearly straight g is
 * closed in from both sides at once; every fifth guess halves the bracket, so that nothing stalls it.
 * Returns the side on which g no longer has the sign of g(a), within `tolerance` of the change. Zero and NaN count as
 * that side, also at b itself; from g(a) = 0 it is the side on which g has the sign of g(b).
 */
export function crossing(
  g: (x: number) => number,
  a: number,
  b: number,
  ga: number,
  gb: number,
  tolerance: number,
): number {
  let side = 0;
  let stride = tolerance / 2;
  const forward = Math.sign(b - a);
  const from = Math.sign(ga);
  const left = (gx: number) => Number.isNaN(gx) || (from === 0 ? gx * gb > 0 : Math.sign(gx) !== from);
  for (let i = 1; i < 300 && Math.abs(b - a) > tolerance; i++) {
    const guess = (a * gb - b * ga) / (gb - ga);
    let x = i % 5 === 0 || !Number.isFinite(guess) ? (a + b) / 2 : guess;
    const room = Math.min(stride, Math.abs(b - a) / 2) * forward;
    if ((x - a) * forward < room * forward) x = a + room;
    else if ((b - x) * forward < room * forward) x = b - room;
    if (i % 5 !== 0 && x !== guess) stride *= 2;
    const gx = g(x);
    if (left(gx)) {
      b = x;
      gb = gx;
      if (side === 1) ga /= 2;
      side = 1;
    } else {
      a = x;
      ga = gx;
      if (side === -1) gb /= 2;
      side = -1;
    }
  }
  return b;
}

/** Place of the greatest value of g between a and b (golden section), for g with one peak there. */
export function peak(g: (x: number) => number, a: number, b: number, tolerance: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let gc = g(c);
  let gd = g(d);
  while (b - a > tolerance) {
    if (gc > gd) {
      b = d;
      d = c;
      gd = gc;
      c = b - ratio * (b - a);
      gc = g(c);
    } else {
      a = c;
      c = d;
      gc = gd;
      d = a + ratio * (b - a);
      gd = g(d);
    }
  }
  return (a + b) / 2;
}
