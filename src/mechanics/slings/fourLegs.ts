// Four slings from one hook to a rigid load: one tension too many for statics, so that stretch and errors of length share it.
//
// The hook hangs plumb above the centre of gravity and all legs run through it, so that three sums of force are all the
// statics there are. The tensions are those of equal strain energy: T = W b + X s, where b balances a unit weight and s
// balances nothing. X follows from the legs' closing: sum s (T L/EA + e) = 0. A sling cannot push: X is held where the
// first leg slackens, which is the least of the complementary energy over X, convex in one unknown, and so exact.
// Small displacements; errors of length far below the lengths.

/** Distance to a pick from the point below the hook, and the hook's height above it, m. */
export type Vec3 = readonly [number, number, number];

/** What does not change with the load. */
export interface FourLegs {
  /** Tensions that balance a unit weight: of the legs taken as equally strained as statics let them. */
  unit: readonly number[];
  /** Tensions that balance nothing; greatest of them 1 in size. */
  self: readonly number[];
  /** Lengths, m. */
  length: readonly number[];
  /** Length over EA of every leg, m/N. */
  compliance: readonly number[];
}

const det3 = (a: Vec3, b: Vec3, c: Vec3): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) -
  a[1] * (b[0] * c[2] - b[2] * c[0]) +
  a[2] * (b[0] * c[1] - b[1] * c[0]);

/**
 * Four legs from the hook to picks at `picks` (x, y from the plumb line, and depth below the hook, m), each with its EA
 * (N). Throws a RangeError unless four picks lie below the hook and not all in one plane with it.
 */
export function fourLegsOf(picks: readonly Vec3[], EA: readonly number[]): FourLegs {
  if (picks.length !== 4 || EA.length !== 4 || picks.some((p) => !(p[2] > 0)) || EA.some((k) => !(k > 0)))
    throw new RangeError(
      `${picks.length} picks and ${EA.length} stiffnesses; allowed: four picks below the hook, each with an EA above 0`,
    );
  const length = picks.map((p) => Math.hypot(...p));
  // Pull of a unit tension on the load: toward the hook.
  const u = picks.map((p, i): Vec3 => [-p[0] / length[i], -p[1] / length[i], p[2] / length[i]]);
  // By Cramer's rule the four determinants of three balance each other.
  const self = [0, 1, 2, 3].map((i) => {
    const [a, b, c] = [0, 1, 2, 3].filter((k) => k !== i);
    return (i % 2 === 0 ? 1 : -1) * det3(u[a], u[b], u[c]);
  });
  const size = Math.max(...self.map(Math.abs));
  if (!(size > 1e-12))
    throw new RangeError("the four legs lie in one plane: allowed: picks on both sides of the hook");
  const s = self.map((x) => x / size);
  // One leg left out, the largest of the self-stress, three sums of force give the others.
  const out = s.findIndex((x) => Math.abs(x) === 1);
  const kept = [0, 1, 2, 3].filter((k) => k !== out);
  const down: Vec3 = [0, 0, 1];
  const whole = det3(u[kept[0]], u[kept[1]], u[kept[2]]);
  const b = [0, 0, 0, 0];
  kept.forEach((k, i) => {
    const columns = kept.map((m, j) => (j === i ? down : u[m]));
    b[k] = det3(columns[0], columns[1], columns[2]) / whole;
  });
  const compliance = length.map((L, i) => L / EA[i]);
  const over = s.reduce((sum, x, i) => sum + x * x * compliance[i], 0);
  const X = -s.reduce((sum, x, i) => sum + x * b[i] * compliance[i], 0) / over;
  return { unit: b.map((x, i) => x + X * s[i]), self: s, length, compliance };
}

/**
 * Tensions (N) of four legs under a weight (N), each made longer than its place by `error` (m; short is negative).
 * Null where no share without a push exists: the plumb line runs outside the picks.
 */
export function fourLegTensions(legs: FourLegs, weight: number, error: readonly number[]): number[] | null {
  const { unit, self, compliance } = legs;
  let over = 0;
  let closing = 0;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 4; i++) {
    over += self[i] * self[i] * compliance[i];
    // The strains of the unit tensions close by themselves.
    closing += self[i] * error[i];
    const T = weight * unit[i];
    if (self[i] > 0) low = Math.max(low, -T / self[i]);
    else if (self[i] < 0) high = Math.min(high, -T / self[i]);
    else if (T < 0) return null;
  }
  if (low > high + 1e-12 * Math.abs(high)) return null;
  const X = Math.min(Math.max(-closing / over, low), high);
  return unit.map((x, i) => Math.max(0, weight * x + X * self[i]));
}

/**
 * Skew load factor of four matched slings laid single, on each diagonal pair in turn: 1.25.
 * 0027/ND Rev 11.2 (2016), 5.6.12.
 */
export const skewFactor = 1.25;
