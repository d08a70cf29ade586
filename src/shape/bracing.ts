// What joins and stiffens the girders: splices, cross-frames as crossed angles, stiffeners, lateral bracing, attachments.
import type { CrossFrame, PlanSet } from "../plan/index.ts";
import { type Curve, pieceAt, platesOf, pointOn } from "./curves.ts";
import type { Pen } from "./pen.ts";
import { aligned, type Frame, type Vec3 } from "./vec.ts";

/** Leg (m) of an equal angle of this area whose legs are ten times as long as thick: area = 2 b b/10. */
export function angleLeg(area_mm2: number): number {
  return Math.min(0.25, Math.max(0.05, Math.sqrt(5 * area_mm2) / 1000));
}

/** An angle section from a to b: two legs at right angles, drawn as plates a tenth of the leg thick. */
function angle(pen: Pen, a: Vec3, b: Vec3, leg: number): void {
  const t = leg / 10;
  pen.bar(a, b, t, leg, [0, 0, 1], "frame");
  const f = aligned(a, [b[0] - a[0], b[1] - a[1], b[2] - a[2]], [0, 0, 1]);
  const side = (p: Vec3): Vec3 =>
    [0, 1, 2].map((k) => p[k] + (f.ey[k] - f.ez[k]) * (leg / 2)) as unknown as Vec3;
  pen.bar(side(a), side(b), leg, t, [0, 0, 1], "frame");
}

/** Curves from left to right. */
function across(curves: readonly Curve[]): Curve[] {
  return [...curves].sort((a, b) => b.girder.y_m - a.girder.y_m);
}

function drawFrame(pen: Pen, at: Frame, curves: readonly Curve[], frame: CrossFrame): void {
  const s = frame.at_m;
  const leg = angleLeg(frame.area_mm2);
  const row = across(curves);
  row.slice(1).forEach((right, i) => {
    const left = row[i];
    pen.part({
      name: `cross-frame ${left.girder.line}-${right.girder.line} at ${s} m`,
      what: "cross-frame",
      supports: [],
    });
    const corner = (curve: Curve, side: 1 | -1, high: boolean) => {
      const { web } = platesOf(pieceAt(curve.girder, s));
      const inset = Math.min(0.15, (web.to - web.from) / 6);
      const height = high ? web.to - inset : web.from + inset;
      return pointOn(at, curve, s, side * (web.width / 2 + 0.02), height);
    };
    const [tl, bl] = [corner(left, -1, true), corner(left, -1, false)];
    const [tr, br] = [corner(right, 1, true), corner(right, 1, false)];
    angle(pen, tl, tr, leg);
    angle(pen, bl, br, leg);
    angle(pen, tl, br, leg);
    angle(pen, bl, tr, leg);
  });
}

/** Plates on both sides of the web from flange to flange. */
function drawStiffener(pen: Pen, at: Frame, curve: Curve, s: number): void {
  const { top, web, bottom } = platesOf(pieceAt(curve.girder, Math.min(s, lastStation(curve) - 1e-6)));
  const width = (Math.min(top.width, bottom.width) - web.width) / 2;
  for (const side of [-1, 1]) {
    const y = side * (web.width / 2 + width / 2);
    const foot = pointOn(at, curve, s, y, web.from);
    const head = pointOn(at, curve, s, y, web.to);
    pen.bar(foot, head, width, 0.016, at.ex, "steel");
  }
}

function lastStation(curve: Curve): number {
  const pieces = curve.girder.pieces;
  return pieces[pieces.length - 1].to_m;
}

/** Cover plates on web and flanges over a joint. */
function drawSplice(pen: Pen, at: Frame, curve: Curve, s: number): void {
  const { top, web, bottom, depth } = platesOf(pieceAt(curve.girder, s - 1e-6));
  const half = Math.min(0.45, depth / 4);
  pen.part({ name: `splice ${curve.girder.line} at ${s} m`, what: "fitting", supports: [] });
  const plate = (side: number, height: number, width: number, thick: number) => {
    const a = pointOn(at, curve, s - half, side, height);
    const b = pointOn(at, curve, s + half, side, height);
    pen.bar(a, b, width, thick, at.ez, "fitting");
  };
  const clear = 0.08;
  for (const side of [-1, 1]) {
    plate(side * (web.width / 2 + 0.01), (web.from + web.to) / 2, 0.02, web.to - web.from - 2 * clear);
  }
  plate(0, top.to + 0.01, top.width, 0.02);
  plate(0, bottom.from - 0.01, bottom.width, 0.02);
}

/** A cube of steel of twice the attachment's mass-equal edge: its place is true, its size only a sign of its mass. */
function signSize(mass_t: number): number {
  return Math.min(0.6, Math.max(0.15, 2 * Math.cbrt(mass_t / 7.85)));
}

function drawLateralBracing(pen: Pen, at: Frame, set: PlanSet, curves: readonly Curve[]): void {
  const row = across(curves);
  for (const run of set.lateralBracing ?? []) {
    pen.part({ name: `lateral bracing ${run.from_m} to ${run.to_m} m`, what: "fitting", supports: [] });
    const inside = set.crossFrames.map((f) => f.at_m).filter((s) => s > run.from_m && s < run.to_m);
    const stops = [run.from_m, ...inside.sort((a, b) => a - b), run.to_m];
    stops.slice(1).forEach((to, i) => {
      row.slice(1).forEach((right, k) => {
        const [a, b] = i % 2 === 0 ? [row[k], right] : [right, row[k]];
        const height = (curve: Curve, s: number) => platesOf(pieceAt(curve.girder, s - 1e-6)).web.to - 0.1;
        pen.rod(
          pointOn(at, a, stops[i], 0, height(a, stops[i])),
          pointOn(at, b, to, 0, height(b, to)),
          0.09,
          "frame",
        );
      });
    });
  }
}

/** Draws all of it for a pose. */
export function drawBracing(pen: Pen, at: Frame, set: PlanSet, curves: readonly Curve[]): void {
  const named = (line: string) => curves.filter((curve) => curve.girder.line === line);
  for (const frame of set.crossFrames) drawFrame(pen, at, curves, frame);
  for (const curve of curves) {
    pen.part({ name: curve.girder.line, what: "girder", supports: [] });
    for (const frame of set.crossFrames) drawStiffener(pen, at, curve, frame.at_m);
    for (const plate of set.stiffeners ?? []) {
      if (plate.girder === curve.girder.line) drawStiffener(pen, at, curve, plate.at_m);
    }
  }
  for (const splice of set.splices) {
    for (const curve of named(splice.girder)) drawSplice(pen, at, curve, splice.at_m);
  }
  drawLateralBracing(pen, at, set, curves);
  for (const one of set.attachments) {
    pen.part({ name: one.name, what: "fitting", supports: [] });
    for (const curve of named(one.girder)) {
      const size = signSize(one.mass_t);
      const c = pointOn(at, curve, one.at_m, one.y_m ?? 0, one.height_m);
      pen.bar([c[0] - size / 2, c[1], c[2]], [c[0] + size / 2, c[1], c[2]], size, size, [0, 0, 1], "fitting");
    }
  }
}
