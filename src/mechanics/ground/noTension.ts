// A stiff body on flat areas of ground that gives way in proportion to pressure and cannot pull: where does it press, how hard?
//
// The pressure is p = max(0, a + b x + c y) over the areas, with its force and moments equal to the load's. That is the
// one minimum of the convex energy E(a, b, c) = 1/2 sum of the integrals of p^2 - V (a + b ex + c ey); Newton's method
// on it, with steps halved until the energy falls, cannot run away. Integrals are exact: areas clipped by the line p = 0.

import { hullOf, type PlanPoint } from "../standing/index.ts";

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
  hull: PlanPoint[];
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

const now: Moments = { A: 0, xc: 0, yc: 0, Ixx: 0, Ixy: 0, Iyy: 0 };
const next: Moments = { ...now };

/**
 * Moments of the part of the areas where a + b x + c y > 0; (x0, y0) is where sums are taken about. Areas by their edges
 * (Green's theorem): an edge from (x1, y1) to (x2, y2) brings its triangle with the origin.
 */
function clipped(f: Footing, a: number, b: number, c: number, x0: number, y0: number, out: Moments): void {
  const { corners: k, ends } = f;
  const a0 = a + b * x0 + c * y0;
  // Twice the area, six times the first moments, twelve and twenty-four times the second ones.
  let A = 0;
  let Sx = 0;
  let Sy = 0;
  let Qxx = 0;
  let Qxy = 0;
  let Qyy = 0;
  let from = 0;
  for (let e = 0; e < ends.length; e++) {
    const end = ends[e];
    let x1 = k[2 * end - 2] - x0;
    let y1 = k[2 * end - 1] - y0;
    let p1 = a0 + b * x1 + c * y1;
    // Where the area leaves the half that presses, and where it comes back: their edge closes it.
    let outX = 0;
    let outY = 0;
    let inX = 0;
    let inY = 0;
    let cut = false;
    for (let i = from; i <= end; i++) {
      let u1 = x1;
      let v1 = y1;
      let u2 = 0;
      let v2 = 0;
      if (i < end) {
        const x2 = k[2 * i] - x0;
        const y2 = k[2 * i + 1] - y0;
        const p2 = a0 + b * x2 + c * y2;
        u2 = x2;
        v2 = y2;
        const on1 = p1 > 0;
        const on2 = p2 > 0;
        if (on1 !== on2) {
          const t = p1 / (p1 - p2);
          const x = x1 + t * (x2 - x1);
          const y = y1 + t * (y2 - y1);
          cut = true;
          if (on1) {
            outX = u2 = x;
            outY = v2 = y;
          } else {
            inX = u1 = x;
            inY = v1 = y;
          }
        }
        x1 = x2;
        y1 = y2;
        p1 = p2;
        if (!on1 && !on2) continue;
      } else {
        if (!cut) break;
        u1 = outX;
        v1 = outY;
        u2 = inX;
        v2 = inY;
      }
      const w = u1 * v2 - u2 * v1;
      A += w;
      Sx += w * (u1 + u2);
      Sy += w * (v1 + v2);
      Qxx += w * (u1 * u1 + u1 * u2 + u2 * u2);
      Qxy += w * (2 * u1 * v1 + u1 * v2 + u2 * v1 + 2 * u2 * v2);
      Qyy += w * (v1 * v1 + v1 * v2 + v2 * v2);
    }
    from = end;
  }
  out.A = A / 2;
  const mx = A > 0 ? Sx / (3 * A) : 0;
  const my = A > 0 ? Sy / (3 * A) : 0;
  out.xc = x0 + mx;
  out.yc = y0 + my;
  out.Ixx = Qxx / 12 - out.A * mx * mx;
  out.Ixy = Qxy / 24 - out.A * mx * my;
  out.Iyy = Qyy / 12 - out.A * my * my;
}

function copy(m: Moments, to: Moments): void {
  to.A = m.A;
  to.xc = m.xc;
  to.yc = m.yc;
  to.Ixx = m.Ixx;
  to.Ixy = m.Ixy;
  to.Iyy = m.Iyy;
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
    hull: hullOf(points.map(([x, y]) => ({ x, y }))),
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
    const q = hull[i + 1 < hull.length ? i + 1 : 0];
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    const d = (dx * (y - p.y) - dy * (x - p.x)) / Math.sqrt(dx * dx + dy * dy);
    if (d < least) least = d;
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
  const u = V * (x - m.xc);
  const v = V * (y - m.yc);
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
    o.residual = Math.max(Math.abs(force) / V, Math.sqrt(mx * mx + my * my) / (V * f.size));
    if (o.residual <= BALANCED) break;
    if (o.passes >= MOST_PASSES) {
      o.status = "unsettled";
      break;
    }
    o.passes++;
    planeOver(now, V, x, y, o);
    const da = o.a - a;
    const db = o.b - b;
    const dc = o.c - c;
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
        copy(next, now);
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
