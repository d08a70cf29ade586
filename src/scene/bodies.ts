// Bodies on the graphics side: the buffers of meshes and instances, and the one pass that fills them for a pose.
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  InstancedBufferAttribute,
  type InstancedMesh,
  type LineSegments,
  type Mesh,
} from "three";
import type { Faces, GirderMesh, Instances, Part, Pen } from "../shape/index.ts";
import type { FormName } from "./forms.ts";
import type { Palette } from "./palette.ts";

/** The objects in the scene that a model is shown by; filled in as they are mounted. */
export interface Shown {
  moving: Partial<Record<FormName, InstancedMesh | null>>;
  fixed: Partial<Record<FormName, InstancedMesh | null>>;
  girders: Mesh | null;
  ground: Mesh | null;
  nearSide: Mesh | null;
  lines: LineSegments | null;
}

export const formNames: readonly FormName[] = ["boxes", "rods", "drums"];

/** Geometry of a mesh of shape; colours are written by `colourFaces`. */
export function geometryOf(of: Faces | GirderMesh, moves: boolean): BufferGeometry {
  const made = new BufferGeometry();
  const position = new BufferAttribute(of.positions, 3);
  if (moves) position.setUsage(DynamicDrawUsage);
  made.setAttribute("position", position);
  made.setAttribute("normal", new BufferAttribute(of.normals, 3));
  made.setAttribute("edge", new BufferAttribute(of.edges, 2));
  made.setAttribute("color", new BufferAttribute(new Float32Array(of.positions.length), 3));
  made.setIndex(new BufferAttribute(of.triangles, 1));
  return made;
}

/** How far a marked body is drawn toward the marking colour. */
const markBy = 0.5;

function writeColour(into: Float32Array, at: number, tone: number, marked: boolean, palette: Palette): void {
  const mark = [palette.marked.r, palette.marked.g, palette.marked.b];
  for (let k = 0; k < 3; k++) {
    const c = palette.tones[3 * tone + k];
    into[3 * at + k] = marked ? c + markBy * (mark[k] - c) : c;
  }
}

/** Colours of a mesh's vertices; `markedVertex` tells which are marked. */
export function colourFaces(
  mesh: Mesh | null,
  toneOf: Uint8Array,
  palette: Palette,
  markedVertex: (v: number) => boolean = () => false,
): void {
  if (mesh === null) return;
  const colour = mesh.geometry.getAttribute("color") as BufferAttribute;
  const array = colour.array as Float32Array;
  for (let v = 0; v < toneOf.length; v++) writeColour(array, v, toneOf[v], markedVertex(v), palette);
  colour.needsUpdate = true;
}

/** Whether a part is the one of this name, or carried by the support of this name. */
export function isMarked(part: Part | undefined, name: string | null): boolean {
  return name !== null && part !== undefined && (part.name === name || part.supports.includes(name));
}

/** Hands instances to the graphics side: matrices as they are, colours by tone. */
export function fillInstances(
  mesh: InstancedMesh | null | undefined,
  of: Instances,
  parts: readonly Part[],
  marked: string | null,
  palette: Palette,
): void {
  if (mesh === null || mesh === undefined) return;
  if (mesh.instanceMatrix.array !== of.matrices) {
    mesh.instanceMatrix = new InstancedBufferAttribute(of.matrices, 16).setUsage(DynamicDrawUsage);
    mesh.instanceColor = new InstancedBufferAttribute(new Float32Array(3 * of.tones.length), 3).setUsage(
      DynamicDrawUsage,
    );
  }
  mesh.count = of.count;
  mesh.visible = of.count > 0;
  const colour = mesh.instanceColor;
  if (colour === null) return;
  const array = colour.array as Float32Array;
  const which = parts.map((part) => isMarked(part, marked));
  for (let i = 0; i < of.count; i++) writeColour(array, i, of.tones[i], which[of.parts[i]] === true, palette);
  for (const [attribute, size] of [
    [mesh.instanceMatrix, 16],
    [colour, 3],
  ] as const) {
    attribute.clearUpdateRanges();
    attribute.addUpdateRange(0, size * of.count);
    attribute.needsUpdate = true;
  }
  mesh.boundingSphere = null;
}

/** Hands the lines of a pen to the graphics side. */
export function fillLines(mesh: LineSegments | null, pen: Pen): void {
  if (mesh === null) return;
  const { geometry } = mesh;
  const old = geometry.getAttribute("position") as BufferAttribute | undefined;
  if (old === undefined || old.array !== pen.lines.positions) {
    geometry.setAttribute("position", new BufferAttribute(pen.lines.positions, 3).setUsage(DynamicDrawUsage));
  } else old.needsUpdate = true;
  geometry.setDrawRange(0, 2 * pen.lines.count);
  mesh.visible = pen.lines.count > 0;
}

/** Tells the graphics side that the girders were bent anew. */
export function fillGirders(mesh: Mesh | null, present: boolean): void {
  if (mesh === null) return;
  (mesh.geometry.getAttribute("position") as BufferAttribute).needsUpdate = true;
  mesh.geometry.boundingSphere = null;
  mesh.visible = present;
}
