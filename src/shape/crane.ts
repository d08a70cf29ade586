// A crawler crane: mats, tracks, car body, house, ballast and mast; the boom as chords and lacing from foot to tip.
import { type Crane, matsAlong } from "../plan/index.ts";
import type { Vec3, World } from "../sequence/index.ts";
import type { Pen, Tone } from "./pen.ts";
import { add, aligned, between, distance, type Frame, heading, inWorld, minus, times } from "./vec.ts";

/** Cast ballast, t/m3: concrete-filled steel and cast iron lie between 4 and 7.2. Common practice, no source. */
const ballastDensity = 7;

/** Sizes that a plan does not give, in proportion to those that it does, m. */
export function craneSizes(c: Crane) {
  const houseWidth = Math.min(3.4, 0.55 * c.trackGauge_m + 0.4);
  const ballastDepth = Math.min(1.5, 0.28 * c.tailRadius_m);
  const ballastWidth = Math.max(houseWidth, 0.95 * c.trackGauge_m);
  const width = c.trackWidth_m ?? Math.max(0.6, 0.16 * c.trackGauge_m);
  const track = Math.min(1.7, Math.max(0.7, 0.15 * c.trackLength_m));
  return {
    trackWidth: width,
    trackHeight: track,
    floor: Math.min(track + 0.5, Math.max(0.6, c.boomFootHeight_m - 0.25)),
    houseWidth,
    houseHeight: 0.35 + Math.min(1.7, 0.28 * c.tailRadius_m),
    ballastDepth,
    ballastWidth,
    ballastHeight: Math.min(6, (c.ballast_t ?? 0) / ballastDensity / (ballastWidth * ballastDepth)),
    /** Width and depth of the boom's lattice at its middle. */
    lattice: c.wind?.boomWidth_m ?? Math.min(3, Math.max(0.9, c.boomLength_m / 26)),
  };
}

function drawTracks(pen: Pen, c: Crane, base: Frame): void {
  const { trackWidth: w, trackHeight: h, floor } = craneSizes(c);
  const half = c.trackLength_m / 2;
  pen.frame = base;
  for (const side of [-1, 1]) {
    const y = (side * c.trackGauge_m) / 2;
    pen.box(0, y, h / 2, c.trackLength_m - h, w, h, "machine dark");
    for (const end of [-1, 1]) {
      const x = end * (half - h / 2);
      pen.drum(inWorld(base, x, y - w / 2, h / 2), inWorld(base, x, y + w / 2, h / 2), h, "machine dark");
      pen.drum(
        inWorld(base, x, y - w / 2 - 0.03, h / 2),
        inWorld(base, x, y + w / 2 + 0.03, h / 2),
        h * 0.5,
        "machine",
      );
    }
    const rollers = Math.max(3, Math.round((c.trackLength_m - 2 * h) / 0.9));
    for (let i = 0; i < rollers; i++) {
      const x = -half + h + ((c.trackLength_m - 2 * h) * (i + 0.5)) / rollers;
      pen.drum(
        inWorld(base, x, y - w / 2 - 0.02, 0.28 * h),
        inWorld(base, x, y + w / 2 + 0.02, 0.28 * h),
        0.36 * h,
        "machine",
      );
    }
  }
  const inside = c.trackGauge_m - w;
  for (const x of [-0.22, 0.22]) pen.box(x * c.trackLength_m, 0, 0.6 * h, 0.7, inside, 0.5 * h, "machine");
  pen.box(0, 0, 0.62 * h, 0.5 * c.trackLength_m, 0.5 * inside, 0.5 * h, "machine");
  pen.drum(
    inWorld(base, 0, 0, 0.8 * h),
    inWorld(base, 0, 0, floor),
    Math.min(2.6, 0.45 * c.trackGauge_m),
    "machine dark",
  );
}

/** Mats lie flush with the ground, side by side along both tracks. */
function drawMats(pen: Pen, c: Crane, base: Frame): void {
  if (c.mat === undefined) return;
  const count = matsAlong(c);
  pen.frame = base;
  for (const side of [-1, 1]) {
    for (let i = 0; i < count; i++) {
      const x = (i - (count - 1) / 2) * c.mat.width_m;
      pen.box(x, (side * c.trackGauge_m) / 2, -0.13, c.mat.width_m, c.mat.length_m, 0.3, "timber");
    }
  }
}

function drawHouse(pen: Pen, c: Crane, upper: Frame, hue: Tone): void {
  const {
    floor,
    houseWidth: w,
    houseHeight,
    ballastDepth,
    ballastWidth,
    ballastHeight: high,
  } = craneSizes(c);
  const tail = -c.tailRadius_m;
  const front = Math.max(c.boomFootForward_m + 0.4, 1);
  pen.frame = upper;
  pen.block([tail + 0.4 * ballastDepth, front], [-w / 2, w / 2], [floor, floor + 0.35], "machine dark");
  pen.block([tail + ballastDepth, 0.15 * front], [-w / 2, w / 2], [floor + 0.35, floor + houseHeight], hue);
  // The cab stands right of the boom, ahead of the house.
  const cab = 0.32 * w;
  pen.block(
    [0.25 * front, front + 0.9],
    [-w / 2 - 0.25, -w / 2 - 0.25 + cab],
    [floor + 0.1, floor + 1.95],
    hue,
  );
  pen.block(
    [front + 0.88, front + 0.93],
    [-w / 2 - 0.2, -w / 2 - 0.3 + cab],
    [floor + 0.8, floor + 1.8],
    "marking",
  );
  for (const side of [-1, 1]) {
    const y = side * 0.24 * w;
    pen.block(
      [c.boomFootForward_m - 0.3, c.boomFootForward_m + 0.3],
      [y - 0.06, y + 0.06],
      [floor, c.boomFootHeight_m + 0.2],
      "machine dark",
    );
  }
  if (c.ballast_t === undefined || c.ballast_t <= 0) return;
  const slabs = Math.max(1, Math.round(high / 0.5));
  for (let i = 0; i < slabs; i++) {
    const z = [floor + (high * i) / slabs + 0.02, floor + (high * (i + 1)) / slabs] as const;
    pen.block([tail, tail + ballastDepth], [-ballastWidth / 2, ballastWidth / 2], z, "ballast");
  }
}

/** Chords and lacing between two square sections of half-widths `a` and `b`; panels about as long as wide. */
function drawLattice(
  pen: Pen,
  at: Frame,
  x: readonly [number, number],
  half: readonly [number, number],
  hue: Tone,
) {
  const width = half[0] + half[1];
  const panels = Math.max(1, Math.round((x[1] - x[0]) / Math.max(width, 0.8)));
  const corner = (i: number, sy: number, sz: number): Vec3 => {
    const t = i / panels;
    const h = half[0] + t * (half[1] - half[0]);
    return inWorld(at, x[0] + t * (x[1] - x[0]), sy * h, sz * h);
  };
  const chord = Math.max(0.09, 0.075 * Math.max(...half) + 0.05);
  const corners = [
    [1, 1],
    [1, -1],
    [-1, -1],
    [-1, 1],
  ] as const;
  corners.forEach(([sy, sz], k) => {
    const [ny, nz] = corners[(k + 1) % 4];
    pen.rod(corner(0, sy, sz), corner(panels, sy, sz), chord, hue);
    for (let i = 0; i < panels; i++) {
      const [a, b] =
        (i + k) % 2 === 0
          ? [corner(i, sy, sz), corner(i + 1, ny, nz)]
          : [corner(i, ny, nz), corner(i + 1, sy, sz)];
      pen.rod(a, b, 0.5 * chord, "lattice");
    }
    pen.rod(corner(panels, sy, sz), corner(panels, ny, nz), 0.5 * chord, "lattice");
  });
}

/** Where a boom of a length changes its width: distance from the foot and half-width, from butt to head, m. */
export function boomOutline(c: Crane, length: number): [at: number, half: number][] {
  const half = craneSizes(c).lattice / 2;
  const butt = Math.min(0.16 * length, 7);
  const head = Math.min(0.14 * length, 6);
  return [
    [0.25, 0.3],
    [butt, half],
    [length - head, half],
    [length - 0.2, 0.28],
  ];
}

/** The boom from foot pin to tip sheaves: a butt that widens, a long middle, a head that narrows. */
export function drawBoom(pen: Pen, c: Crane, foot: Vec3, tip: Vec3, hue: Tone): void {
  const l = distance(foot, tip);
  const across: Vec3 = [tip[1] - foot[1], foot[0] - tip[0], 0];
  const at = aligned(foot, minus(tip, foot), [0, 0, 1]);
  const outline = boomOutline(c, l);
  for (let i = 1; i < outline.length; i++) {
    const [[from, a], [to, b]] = [outline[i - 1], outline[i]];
    drawLattice(pen, at, [from, to], [a, b], hue);
  }
  const axis = times(across, 0.45 / Math.max(1e-9, Math.hypot(across[0], across[1])));
  pen.drum(add(tip, axis), minus(tip, axis), 0.8, "machine dark");
  pen.drum(add(foot, times(axis, 1.2)), minus(foot, times(axis, 1.2)), 0.35, "machine dark");
}

/** The mast behind the boom and its lines to boom tip and house: they hold the boom up. */
function drawMast(pen: Pen, c: Crane, upper: Frame, tip: Vec3): void {
  const { floor, houseWidth: w } = craneSizes(c);
  const l = Math.min(14, Math.max(4, 0.2 * c.boomLength_m));
  const foot = (side: number) =>
    inWorld(upper, c.boomFootForward_m - 0.6, side * 0.3 * w, c.boomFootHeight_m);
  const head = (side: number) =>
    inWorld(upper, c.boomFootForward_m - 0.6 - 0.42 * l, side * 0.18 * w, c.boomFootHeight_m + 0.9 * l);
  for (const side of [-1, 1]) {
    pen.rod(foot(side), head(side), 0.24, "lattice");
    pen.line(head(side), tip, "rope");
    pen.line(head(side), inWorld(upper, -c.tailRadius_m + 0.8, side * 0.35 * w, floor + 0.4), "rope");
  }
  for (const t of [0.3, 0.65, 1])
    pen.rod(between(foot(-1), head(-1), t), between(foot(1), head(1), t), 0.14, "lattice");
}

/** Draws a crane with its boom over the tip that the world has. */
export function drawCrane(pen: Pen, c: Crane, hook: string, place: World["cranes"][string]): void {
  const { foot, tip } = place;
  const hue: Tone = c.kind === "far" ? "far crane" : "near crane";
  const toTip = heading([foot[0], foot[1], foot[2] - c.boomFootHeight_m], tip[0] - foot[0], tip[1] - foot[1]);
  const centre = inWorld(toTip, -c.boomFootForward_m, 0, 0);
  const turn = ((c.facing_deg ?? 0) * Math.PI) / 180;
  const base = heading(centre, Math.cos(turn), Math.sin(turn));
  const upper: Frame = { ...toTip, o: centre };
  pen.part({ name: c.name === "" ? c.id : c.name, what: "crane", supports: [hook] });
  drawMats(pen, c, base);
  drawTracks(pen, c, base);
  drawHouse(pen, c, upper, hue);
  drawBoom(pen, c, foot, tip, hue);
  drawMast(pen, c, upper, tip);
}
