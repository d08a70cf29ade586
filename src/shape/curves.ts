// The set in the world: its datum plane as a frame, and the elastic curve of every girder above it, true or exaggerated.
import { camberAt, type Girder, type PlanSet } from "../plan/index.ts";
import { datumPoint, type Situation } from "../sequence/index.ts";
import { type Frame, minus, type Vec3 } from "./vec.ts";

/** Shape of one girder as the sequence gives it: stations (m), soffit above the datum plane (m), camber included. */
export interface GirderShape {
  name: string;
  y: number;
  stations: ArrayLike<number>;
  droop: ArrayLike<number>;
  /** Rotation of the section about x, > 0 raises the left side, rad. */
  twist: ArrayLike<number>;
  /** A buckled shape drawn on top, of a size without meaning. */
  buckled?: BuckledShape;
}

/** A buckled shape of one girder: sideways and upright displacement of its soffit (m), twist (rad). */
export interface BuckledShape {
  stations: ArrayLike<number>;
  aside: ArrayLike<number>;
  rise: ArrayLike<number>;
  twist: ArrayLike<number>;
}

/** A girder's soffit as it is drawn, at any station: rise over the datum plane (m), twist (rad). */
export interface Curve {
  girder: Girder;
  rise: (s: number) => number;
  twist: (s: number) => number;
  /** Displacement of the soffit to the left, m: of a buckled shape, else none. */
  aside: (s: number) => number;
}

/** The frame of a set whose soffit datum is the plane of this situation: x along, y left, z up; s from the rear end. */
export function setFrame(situation: Situation): Frame {
  const o = datumPoint(situation, 0, 0, 0);
  const axis = (s: number, y: number, z: number) => minus(datumPoint(situation, s, y, z), o);
  return { o, ex: axis(1, 0, 0), ey: axis(0, 1, 0), ez: axis(0, 0, 1) };
}

/** Value at `x` of a curve through points, straight between them, level beyond. */
function along(xs: ArrayLike<number>, values: ArrayLike<number>, x: number): number {
  const n = xs.length;
  if (n === 0) return 0;
  let lo = 0;
  let hi = n - 1;
  if (x <= xs[0]) return values[0];
  if (x >= xs[hi]) return values[hi];
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (xs[mid] <= x) lo = mid;
    else hi = mid;
  }
  return values[lo] + ((x - xs[lo]) / (xs[hi] - xs[lo])) * (values[hi] - values[lo]);
}

/** A plane over the datum plane: height a + b s + c y, m. */
type Tilt = readonly [number, number, number];

/**
 * The plane that comes nearest to the deflected girders at the stations where they are carried: what is above or below
 * it is bending, and only bending may be exaggerated. Fewer than two stations: fitted to the whole girders.
 */
export function rigidPart(set: PlanSet, shapes: readonly GirderShape[], carriedAt: readonly number[]): Tilt {
  const apart = carriedAt.length > 1 && Math.max(...carriedAt) - Math.min(...carriedAt) > 1;
  const points = shapes.flatMap((shape) => {
    const girder = set.girders.find((one) => one.line === shape.name);
    const at = apart ? carriedAt : Array.from(shape.stations);
    return at.map((s) => ({
      s,
      y: shape.y,
      z: along(shape.stations, shape.droop, s) - (girder === undefined ? 0 : camberAt(girder, s) / 1000),
    }));
  });
  const n = Math.max(1, points.length);
  const average = (f: (p: { s: number; y: number; z: number }) => number) =>
    points.reduce((sum, p) => sum + f(p), 0) / n;
  const [s0, y0, z0] = [average((p) => p.s), average((p) => p.y), average((p) => p.z)];
  const ss = average((p) => (p.s - s0) ** 2);
  const yy = average((p) => (p.y - y0) ** 2);
  // Every girder is asked at the same stations, so that s and y do not depend on each other.
  const b = ss > 1e-9 ? average((p) => (p.s - s0) * (p.z - z0)) / ss : 0;
  const c = yy > 1e-9 ? average((p) => (p.y - y0) * (p.z - z0)) / yy : 0;
  return [z0 - b * s0 - c * y0, b, c];
}

/**
 * Curves of all girders of a set. Bending, that is what lies off the plane `rigid`, is multiplied by `exaggeration`
 * (1: true); camber and rigid motion never are. A girder without a shape is drawn straight on its camber.
 */
export function curvesOf(
  set: PlanSet,
  shapes: readonly GirderShape[],
  exaggeration: number,
  rigid: Tilt = [0, 0, 0],
): Curve[] {
  return set.girders.map((girder) => {
    const shape = shapes.find((one) => one.name === girder.line);
    const camber = (s: number) => camberAt(girder, s) / 1000;
    if (shape === undefined) return { girder, rise: camber, twist: () => 0, aside: () => 0 };
    const { stations, droop, twist, buckled } = shape;
    const more = exaggeration - 1;
    const bending = (s: number, z: number) => z - camber(s) - rigid[0] - rigid[1] * s - rigid[2] * girder.y_m;
    const extra = (of: "aside" | "rise" | "twist", s: number) =>
      buckled === undefined ? 0 : along(buckled.stations, buckled[of], s);
    return {
      girder,
      rise: (s) => {
        const z = along(stations, droop, s);
        return (more === 0 ? z : z + more * bending(s, z)) + extra("rise", s);
      },
      twist: (s) => {
        const t = along(stations, twist, s);
        return t + more * (t - rigid[2]) + extra("twist", s);
      },
      aside: (s) => extra("aside", s),
    };
  });
}

/** A point of a girder in the world: station s, `side` left of its axis and `height` above its soffit, m. */
export function pointOn(frame: Frame, curve: Curve, s: number, side: number, height: number): Vec3 {
  const turn = curve.twist(s);
  const y = curve.girder.y_m + curve.aside(s) + side - height * turn;
  const z = curve.rise(s) + height + side * turn;
  return [
    frame.o[0] + s * frame.ex[0] + y * frame.ey[0] + z * frame.ez[0],
    frame.o[1] + s * frame.ex[1] + y * frame.ey[1] + z * frame.ez[1],
    frame.o[2] + s * frame.ex[2] + y * frame.ey[2] + z * frame.ez[2],
  ];
}

/** The field piece at a station; at a joint the one that begins there. */
export function pieceAt(girder: Girder, s: number): Girder["pieces"][number] {
  const last = girder.pieces[girder.pieces.length - 1];
  return girder.pieces.find((piece) => s < piece.to_m) ?? last;
}

/** Plates of a piece in m: widths and thicknesses, and levels above the soffit. */
export function platesOf(piece: Girder["pieces"][number]) {
  const m = (pair: readonly [number, number]) => [pair[0] / 1000, pair[1] / 1000] as const;
  const [topWidth, topThickness] = m(piece.topFlange_mm);
  const [webHeight, webThickness] = m(piece.web_mm);
  const [bottomWidth, bottomThickness] = m(piece.bottomFlange_mm);
  const webTop = bottomThickness + webHeight;
  return {
    top: { width: topWidth, from: webTop, to: webTop + topThickness },
    web: { width: webThickness, from: bottomThickness, to: webTop },
    bottom: { width: bottomWidth, from: 0, to: bottomThickness },
    depth: webTop + topThickness,
  };
}
