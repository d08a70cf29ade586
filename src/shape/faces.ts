// Flat four-sided faces for ground, walls and water: plain arrays that never change while the plan does not.
import { numberOf, type Tone } from "./pen.ts";
import { cross, minus, unit, type Vec3 } from "./vec.ts";

/** A mesh of flat faces; `edges` as in GirderMesh: an outline is drawn where a coordinate comes to 0 or 1. */
export interface Faces {
  positions: Float32Array;
  normals: Float32Array;
  edges: Float32Array;
  tones: Uint8Array;
  triangles: Uint32Array;
}

/** Which sides of a face get an outline: all, only those along its first side, or none. */
export type Outline = "all" | "along" | "none";

/** Collects faces; the corners run anticlockwise as seen from the side that is visible. */
export class FacePen {
  private readonly origin: Vec3;
  private readonly corners: Vec3[] = [];
  private readonly normals: Vec3[] = [];
  private readonly edges: [number, number][] = [];
  private readonly toneNumbers: number[] = [];

  constructor(origin: Vec3) {
    this.origin = origin;
  }

  face(a: Vec3, b: Vec3, c: Vec3, d: Vec3, tone: Tone, outline: Outline = "all"): void {
    const normal = unit(cross(minus(c, a), minus(d, b)));
    const e = (u: number, v: number): [number, number] =>
      outline === "all" ? [u, v] : outline === "along" ? [0.5, v] : [0.5, 0.5];
    this.corners.push(a, b, c, d);
    this.normals.push(normal, normal, normal, normal);
    this.edges.push(e(0, 0), e(1, 0), e(1, 1), e(0, 1));
    const n = numberOf(tone);
    this.toneNumbers.push(n, n, n, n);
  }

  /** The faces so far. */
  done(): Faces {
    const count = this.corners.length / 4;
    const triangles = new Uint32Array(6 * count);
    for (let i = 0; i < count; i++) {
      triangles.set([4 * i, 4 * i + 1, 4 * i + 2, 4 * i, 4 * i + 2, 4 * i + 3], 6 * i);
    }
    return {
      positions: Float32Array.from(this.corners.flatMap((p) => minus(p, this.origin))),
      normals: Float32Array.from(this.normals.flat()),
      edges: Float32Array.from(this.edges.flat()),
      tones: Uint8Array.from(this.toneNumbers),
      triangles,
    };
  }
}
