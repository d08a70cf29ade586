// Pointing: which part of the model lies under the pointer.
import { type Camera, type InstancedMesh, type Object3D, Raycaster, Vector2 } from "three";
import type { Part, Pen } from "../shape/index.ts";
import { formNames, type Shown } from "./bodies.ts";
import type { Model } from "./model.ts";

const raycaster = new Raycaster();

/** The part at a place on the canvas (-1..1, -1..1 from bottom left), nearest first; null where there is none. */
export function partAt(shown: Shown, model: Model, camera: Camera, x: number, y: number): Part | null {
  raycaster.setFromCamera(new Vector2(x, y), camera);
  const instanced = new Map<Object3D, Pen>();
  for (const form of formNames) {
    const [moving, fixed] = [shown.moving[form], shown.fixed[form]];
    if (moving?.visible) instanced.set(moving, model.pen);
    if (fixed?.visible) instanced.set(fixed, model.site.bodies);
  }
  const girders = shown.girders?.visible ? [shown.girders] : [];
  const ground = [shown.ground, shown.nearSide].filter((mesh) => mesh?.visible) as Object3D[];
  const [hit] = raycaster.intersectObjects([...instanced.keys(), ...girders, ...ground], false);
  if (hit === undefined || ground.includes(hit.object)) return null;
  const pen = instanced.get(hit.object);
  if (pen !== undefined) {
    const form = formNames.find((name) =>
      [shown.moving[name], shown.fixed[name]].includes(hit.object as InstancedMesh),
    );
    return form === undefined || hit.instanceId === undefined
      ? null
      : pen.parts[pen[form].parts[hit.instanceId]];
  }
  const { firstTriangle, names } = model.girders;
  const g = firstTriangle.findIndex((first) => first > (hit.faceIndex ?? 0)) - 1;
  return g < 0 ? null : { name: names[g], what: "girder", supports: [] };
}
