// A stiff body on flat areas of ground that gives way in proportion to pressure and cannot pull: where does it press, how hard?
//
// The pressure is p = max(0, a + b x + c y) over the areas, with its force and moments equal to the load's. That is the
// one minimum of the convex energy E(a, b, c) = 1/2 sum of the integrals of p^2 - V (a + b ex + c ey); Newton's method
// on it, with steps halved until the energy falls, cannot run away. Integrals are exact: areas clipped by the line p = 0.

/** A convex area in plan: corners in order, m. */
export type Area = readonly (readonly [number, number])[];

/** Areas below one stiff body, with what no load changes. */
export interface Footing {
  /** Corners x, y of all areas, and where each area ends among the corners. */
  corners: Float64Array;
  ends: number[];
  /** Whole area, m2; its centroid and second moments about it. */
  A: number;
  xc: number;
  yc: number;
  Ixx: number;
  Ixy: number;
  Iyy: number;
  /** Corners of the convex hull of all areas, anticlockwise. */
  hull: [number, number][];
  /** Greatest distance between two corners, m. */
  size: number;
}

/** How a footing presses: p = max(0, a + b x + c y), Pa. */
export interface Pressing {
  /** `overturned`: the load lies outside all ground that it could stand on; then no number is given. */
  status: "solved" | "overturned" | "unsettled";
  a: number;
  b: number;
  c: number;
  /** Greatest pressure and its corner, Pa and m; least one over all areas, 0 where some of it has lifted. */
  most: number;
  x: number;
  y: number;
  least: number;
  /** Area that presses, m2. */
  contact: number;
  /** Force and moment out of balance, as parts of V and of V times size. */
  residual: number;
  passes: number;
}

/** Out of balance that is left at most, as a part of the load: far above rounding, far below any datum. */
const BALANCED = 1e-12;
const MOST_PASSES = 100;

/** Area, first and second moments of what lies in contact, about the corner that presses most; and their central form. */
interface Moments {
  A: number;
  xc: number;
  yc: number;
  Ixx: number;
  Ixy: number;
  Iyy: number;
}

const scratch = {
  A: 0,
  Sx: 0,
  Sy: 0,
  Qxx: 0,
  Qxy: 0,
  Qyy: 0,
};
const now: Moments = { A: 0, xc: 0, yc: 0, Ixx: 0, Ixy: 0, Iyy: 0 };
const next: Moments = { ...now };

/** Adds a triangle (0, p, q) about its own corner o, all relative to the origin of the sums. */
function addTriangle(ox: number, oy: number, px: number, py: number, qx: number, qy: number): void {
  const t = ((px - ox) * (qy - oy) - (qx - ox) * (py - oy)) / 2;
  const sx = ox + px + qx;
  const sy = oy + py + qy;
  scratch.A += t;
  scratch.Sx += (t * sx) / 3;
  scratch.Sy += (t * sy) / 3;
  scratch.Qxx += (t / 12) * (ox * ox + px * px + qx * qx + sx * sx);
  scratch.Qxy += (t / 12) * (ox * oy + px * py + qx * qy + sx * sy);
  scratch.Qyy += (t / 12) * (oy * oy + py * py + qy * qy + sy * sy);
}

/** Moments of the part of the areas where a + b x + c y > 0; (x0, y0) is where sums are taken about. */
function clipped(f: Footing, a: number, b: number, c: number, x0: number, y0: number, out: Moments): void {
  scratch.A = scratch.Sx = scratch.Sy = scratch.Qxx = scratch.Qxy = scratch.Qyy = 0;
  const k = f.corners;
  let from = 0;
  for (const end of f.ends) {
    // Corners of the clipped area as they come, as a fan about the first of them.
    let n = 0;
    let ox = 0;
    let oy = 0;
    let px = 0;
    let py = 0;
    const put = (x: number, y: number) => {
      if (n === 0) {
        ox = x;
        oy = y;
      } else if (n > 1) addTriangle(ox, oy, px, py, x, y);
      px = x;
      py = y;
      n++;
    };
    let x1 = k[2 * end - 2] - x0;
    let y1 = k[2 * end - 1] - y0;
    const a0 = a + b * x0 + c * y0;
    let p1 = a0 + b * x1 + c * y1;
    for (let i = from; i < end; i++) {
      const x2 = k[2 * i] - x0;
      const y2 = k[2 * i + 1] - y0;
      const p2 = a0 + b * x2 + c * y2;
      if (p1 > 0 !== p2 > 0) {
        const t = p1 / (p1 - p2);
        put(x1 + t * (x2 - x1), y1 + t * (y2 - y1));
      }
      if (p2 > 0) put(x2, y2);
      x1 = x2;
      y1 = y2;
      p1 = p2;
    }
    from = end;
  }
  const s = scratch;
  out.A = s.A;
  const mx = s.A > 0 ? s.Sx / s.A : 0;
  const my = s.A > 0 ? s.Sy / s.A : 0;
  out.xc = x0 + mx;
  out.yc = y0 + my;
  out.Ixx = s.Qxx - s.A * mx * mx;
  out.Ixy = s.Qxy - s.A * mx * my;
  out.Iyy = s.Qyy - s.A * my * my;
}

/** Convex hull, anticlockwise (Andrew's monotone chain). */
function hullOf(points: [number, number][]): [number, number][] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (list: [number, number][]) => {
    const out: [number, number][] = [];
    for (const p of list) {
      for (let n = out.length; n >= 2; n--) {
        const [u, v] = [out[n - 2], out[n - 1]];
        if ((v[0] - u[0]) * (p[1] - u[1]) - (v[1] - u[1]) * (p[0] - u[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** A footing of convex areas that do not overlap. Throws a RangeError when one of them has no area. */
export function footingOf(areas: readonly Area[]): Footing {
  const corners: number[] = [];
  const ends: number[] = [];
  for (const area of areas) {
    let twice = 0;
    area.forEach(([x, y], i) => {
      const [u, v] = area[(i + 1) % area.length];
      twice += x * v - u * y;
    });
    if (!(Math.abs(twice) > 0))
      throw new RangeError("an area below a footing has no size: give it three corners");
    for (const [x, y] of twice > 0 ? area : [...area].reverse()) corners.push(x, y);
    ends.push(corners.length / 2);
  }
  const points = areas.flat().map(([x, y]): [number, number] => [x, y]);
  let size = 0;
  for (const [x, y] of points) for (const [u, v] of points) size = Math.max(size, Math.hypot(x - u, y - v));
  const f: Footing = {
    corners: Float64Array.from(corners),
    ends,
    A: 0,
    xc: 0,
    yc: 0,
    Ixx: 0,
    Ixy: 0,
    Iyy: 0,
    hull: hullOf(points),
    size,
  };
  clipped(f, 1, 0, 0, points[0][0], points[0][1], now);
  return Object.assign(f, now);
}

/** Distance of a point inside the hull of a footing, m; negative outside it. */
export function insideHull(f: Footing, x: number, y: number): number {
  const { hull } = f;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < hull.length; i++) {
    const p = hull[i];
    const q = hull[(i + 1) % hull.length];
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
    least = Math.min(least, (dx * (y - p[1]) - dy * (x - p[0])) / Math.hypot(dx, dy));
  }
  return least;
}

export function pressing(): Pressing {
  return {
    status: "solved",
    a: 0,
    b: 0,
    c: 0,
    most: 0,
    x: 0,
    y: 0,
    least: 0,
    contact: 0,
    residual: 0,
    passes: 0,
  };
}

/** Greatest and least of the plane over all corners; the corner of the greatest becomes x, y. */
function atCorners(f: Footing, o: Pressing): void {
  const k = f.corners;
  o.most = Number.NEGATIVE_INFINITY;
  o.least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < k.length; i += 2) {
    const p = o.a + o.b * k[i] + o.c * k[i + 1];
    if (p > o.most) {
      o.most = p;
      o.x = k[i];
      o.y = k[i + 1];
    }
    if (p < o.least) o.least = p;
  }
}

/** The plane that balances V at (x, y) over a contact, written into o. */
function planeOver(m: Moments, V: number, x: number, y: number, o: Pressing): void {
  const [u, v] = [V * (x - m.xc), V * (y - m.yc)];
  const det = m.Ixx * m.Iyy - m.Ixy * m.Ixy;
  o.b = (m.Iyy * u - m.Ixy * v) / det;
  o.c = (m.Ixx * v - m.Ixy * u) / det;
  o.a = V / m.A - o.b * m.xc - o.c * m.yc;
}

/** Energy of a plane over its own contact, N m per unit of bedding. */
function energy(m: Moments, V: number, x: number, y: number, a: number, b: number, c: number): number {
  const p = a + b * m.xc + c * m.yc;
  return (m.A * p * p + m.Ixx * b * b + 2 * m.Ixy * b * c + m.Iyy * c * c) / 2 - V * (a + b * x + c * y);
}

/**
 * How a footing presses under V (N, downward, above 0) at (x, y) m, written into `out`. Full contact costs a few
 * multiplications; with lift-off, Newton's method settles force and moments to 1e-12 of V and V times size.
 */
export function pressUnder(f: Footing, V: number, x: number, y: number, out: Pressing): Pressing {
  const o = out;
  o.status = "solved";
  o.residual = 0;
  o.passes = 0;
  planeOver(f, V, x, y, o);
  atCorners(f, o);
  o.contact = f.A;
  if (o.least >= 0) return o;
  if (!(insideHull(f, x, y) > 1e-9 * f.size)) {
    o.status = "overturned";
    o.a = o.b = o.c = o.most = o.least = o.contact = Number.NaN;
    return o;
  }
  clipped(f, o.a, o.b, o.c, o.x, o.y, now);
  let E = energy(now, V, x, y, o.a, o.b, o.c);
  for (;;) {
    const { a, b, c } = o;
    const force = now.A * (a + b * now.xc + c * now.yc) - V;
    const mx = now.Ixx * b + now.Ixy * c - V * (x - now.xc);
    const my = now.Ixy * b + now.Iyy * c - V * (y - now.yc);
    o.residual = Math.max(Math.abs(force) / V, Math.hypot(mx, my) / (V * f.size));
    if (o.residual <= BALANCED) break;
    if (o.passes >= MOST_PASSES) {
      o.status = "unsettled";
      break;
    }
    o.passes++;
    planeOver(now, V, x, y, o);
    const [da, db, dc] = [o.a - a, o.b - b, o.c - c];
    // Slope of the energy along the step: below zero, since its second derivative is positive.
    const slope = force * (da + db * now.xc + dc * now.yc) + mx * db + my * dc;
    for (let t = 1; ; t /= 2) {
      o.a = a + t * da;
      o.b = b + t * db;
      o.c = c + t * dc;
      atCorners(f, o);
      clipped(f, o.a, o.b, o.c, o.x, o.y, next);
      const e = energy(next, V, x, y, o.a, o.b, o.c);
      // Near the end the energy changes by less than its own rounding: the whole step is taken then.
      if (e <= E + 1e-4 * t * slope || -slope < 1e-13 * Math.abs(E) || t < 1e-6) {
        E = e;
        Object.assign(now, next);
        break;
      }
    }
  }
  atCorners(f, o);
  o.least = 0;
  o.contact = now.A;
  return o;
}

/** Load of one of the areas, N, by the pressure found for the whole. */
export function loadOn(area: Area, { a, b, c }: Pick<Pressing, "a" | "b" | "c">): number {
  const f = footingOf([area]);
  const m: Moments = { A: 0, xc: 0, yc: 0, Ixx: 0, Ixy: 0, Iyy: 0 };
  clipped(f, a, b, c, f.xc, f.yc, m);
  return m.A * (a + b * m.xc + c * m.yc);
}

/** A rectangle along x and y about a middle, m. */
export function rectangle(x: number, y: number, length: number, width: number): Area {
  const [l, w] = [length / 2, width / 2];
  return [
    [x - l, y - w],
    [x + l, y - w],
    [x + l, y + w],
    [x - l, y + w],
  ];
}
