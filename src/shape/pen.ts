// The pen: draws boxes, rods, drums and lines into plain typed arrays, each with its tone and the part it belongs to.
// A picture is drawn anew for every pose into the same arrays: no allocation once they have grown.
import { aligned, type Frame, inWorld, type Vec3 } from "./vec.ts";

/** What a body is made of or which kind of support it is; the scene gives every tone its colour. */
export const tones = [
  "steel",
  "steel dark",
  "frame",
  "machine",
  "machine dark",
  "tyre",
  "ballast",
  "lattice",
  "rope",
  "timber",
  "concrete",
  "concrete dark",
  "path",
  "ground",
  "ground cut",
  "water",
  "road",
  "marking",
  "obstacle",
  "fitting",
  "far crane",
  "near crane",
  "front train",
  "rear train",
  "far bearings",
  "near bearings",
] as const;
export type Tone = (typeof tones)[number];

const toneIndex = new Map<Tone, number>(tones.map((tone, i) => [tone, i]));

/** Number of a tone in `tones`. */
export function numberOf(tone: Tone): number {
  return toneIndex.get(tone) ?? 0;
}

/** A thing that can be pointed at: its own name, what it is, and the supports whose load tells what it carries. */
export interface Part {
  name: string;
  what: "girder" | "cross-frame" | "fitting" | "transporter" | "crane" | "rigging" | "bearing" | "site";
  supports: readonly string[];
}

/** Bodies of one form: 16 numbers each (columns of the matrix that turns the unit body into this one, m). */
export interface Instances {
  count: number;
  matrices: Float32Array;
  tones: Uint8Array;
  parts: Uint16Array;
}

/** Straight lines: six numbers each, two ends. */
export interface Lines {
  count: number;
  positions: Float32Array;
  tones: Uint8Array;
}

function instances(capacity: number): Instances {
  return {
    count: 0,
    matrices: new Float32Array(16 * capacity),
    tones: new Uint8Array(capacity),
    parts: new Uint16Array(capacity),
  };
}

function grown<T extends Float32Array | Uint8Array | Uint16Array>(old: T, size: number): T {
  const made = new (old.constructor as new (n: number) => T)(size);
  made.set(old);
  return made;
}

/**
 * Draws bodies. Unit bodies reach from -0.5 to 0.5 in x, y and z; rods (six sides) and drums (round) have x as axis.
 * Coordinates given to `box` are those of `frame`; all other points are of the world. What is stored counts from `origin`,
 * so that single precision holds to a tenth of a millimetre at any chainage.
 */
export class Pen {
  readonly origin: Vec3;
  readonly parts: Part[] = [];
  readonly boxes: Instances = instances(256);
  readonly rods: Instances = instances(256);
  readonly drums: Instances = instances(64);
  readonly lines: Lines = { count: 0, positions: new Float32Array(6 * 64), tones: new Uint8Array(64) };
  frame: Frame = { o: [0, 0, 0], ex: [1, 0, 0], ey: [0, 1, 0], ez: [0, 0, 1] };

  constructor(origin: Vec3) {
    this.origin = origin;
  }

  /** Begins a new picture: everything drawn before is gone. */
  clear(): void {
    this.boxes.count = 0;
    this.rods.count = 0;
    this.drums.count = 0;
    this.lines.count = 0;
    this.parts.length = 0;
  }

  /** What is drawn next belongs to this part. */
  part(part: Part): void {
    this.parts.push(part);
  }

  /** A box of size lx, ly, lz about the centre x, y, z in the frame. */
  box(x: number, y: number, z: number, lx: number, ly: number, lz: number, tone: Tone): void {
    this.put(this.boxes, this.frame, inWorld(this.frame, x, y, z), lx, ly, lz, tone);
  }

  /** A box between two limits of every axis of the frame. */
  block(
    x: readonly [number, number],
    y: readonly [number, number],
    z: readonly [number, number],
    tone: Tone,
  ) {
    this.box(
      (x[0] + x[1]) / 2,
      (y[0] + y[1]) / 2,
      (z[0] + z[1]) / 2,
      x[1] - x[0],
      y[1] - y[0],
      z[1] - z[0],
      tone,
    );
  }

  /** A bar of rectangular section from a to b; `depth` lies along `up`. */
  bar(a: Vec3, b: Vec3, width: number, depth: number, up: Vec3, tone: Tone): void {
    this.along(this.boxes, a, b, width, depth, up, tone);
  }

  /** A thin round bar from a to b. */
  rod(a: Vec3, b: Vec3, diameter: number, tone: Tone): void {
    this.along(this.rods, a, b, diameter, diameter, [0, 0, 1], tone);
  }

  /** A drum, wheel or pin from a to b. */
  drum(a: Vec3, b: Vec3, diameter: number, tone: Tone): void {
    this.along(this.drums, a, b, diameter, diameter, [0, 0, 1], tone);
  }

  /** A line of no thickness, such as a rope seen from afar. */
  line(a: Vec3, b: Vec3, tone: Tone): void {
    const l = this.lines;
    if (l.count === l.tones.length) {
      l.positions = grown(l.positions, 12 * l.count);
      l.tones = grown(l.tones, 2 * l.count);
    }
    for (let k = 0; k < 3; k++) {
      l.positions[6 * l.count + k] = a[k] - this.origin[k];
      l.positions[6 * l.count + 3 + k] = b[k] - this.origin[k];
    }
    l.tones[l.count] = numberOf(tone);
    l.count += 1;
  }

  private along(into: Instances, a: Vec3, b: Vec3, width: number, depth: number, up: Vec3, tone: Tone): void {
    const d: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const l = Math.hypot(d[0], d[1], d[2]);
    if (!(l > 0)) return;
    const middle: Vec3 = [a[0] + d[0] / 2, a[1] + d[1] / 2, a[2] + d[2] / 2];
    this.put(into, aligned(middle, d, up), middle, l, width, depth, tone);
  }

  private put(into: Instances, f: Frame, c: Vec3, lx: number, ly: number, lz: number, tone: Tone): void {
    const n = into.count;
    if (n === into.tones.length) {
      into.matrices = grown(into.matrices, 32 * n);
      into.tones = grown(into.tones, 2 * n);
      into.parts = grown(into.parts, 2 * n);
    }
    const m = into.matrices;
    const i = 16 * n;
    for (let k = 0; k < 3; k++) {
      m[i + k] = f.ex[k] * lx;
      m[i + 4 + k] = f.ey[k] * ly;
      m[i + 8 + k] = f.ez[k] * lz;
      m[i + 12 + k] = c[k] - this.origin[k];
    }
    m[i + 3] = 0;
    m[i + 7] = 0;
    m[i + 11] = 0;
    m[i + 15] = 1;
    into.tones[n] = numberOf(tone);
    into.parts[n] = Math.max(0, this.parts.length - 1);
    into.count = n + 1;
  }
}

/** Volume (m3) of one instance's bounding box: |ex| |ey| |ez|. */
export function volumeOf(of: Instances, i: number): number {
  const m = of.matrices;
  const column = (k: number) => Math.hypot(m[16 * i + k], m[16 * i + k + 1], m[16 * i + k + 2]);
  return column(0) * column(4) * column(8);
}

/** Centre of one instance in the world. */
export function centreOf(pen: Pen, of: Instances, i: number): Vec3 {
  return [12, 13, 14].map((k, axis) => of.matrices[16 * i + k] + pen.origin[axis]) as Vec3;
}
