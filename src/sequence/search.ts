// Searches on one variable: where a signed quantity crosses zero, and where a quantity peaks.

/**
 * Zero of g between a and b, where g(a) and g(b) differ in sign: regula falsi with the Illinois weighting, kept
 * honest by bisection. Returns the side on which g has the sign of g(b), within `tolerance` of the crossing.
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
  for (let i = 0; i < 200 && Math.abs(b - a) > tolerance; i++) {
    let x = Number.isFinite(ga) && Number.isFinite(gb) ? (a * gb - b * ga) / (gb - ga) : (a + b) / 2;
    const room = 0.25 * tolerance * Math.sign(b - a);
    if (!((x - a) * (b - x) > 0) || i % 4 === 3) x = (a + b) / 2;
    else if (Math.abs(x - a) < tolerance / 2) x = a + room;
    else if (Math.abs(b - x) < tolerance / 2) x = b - room;
    const gx = g(x);
    if (Number.isNaN(gx) || gx > 0 === gb > 0) {
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
