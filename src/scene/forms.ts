// The unit bodies that all instances are made of, with the attribute by which the material draws their edges.
import { BoxGeometry, BufferAttribute, type BufferGeometry, CylinderGeometry } from "three";

/** A cube of 1 m about the origin; every face has all its edges. */
function box(): BufferGeometry {
  const made = new BoxGeometry(1, 1, 1);
  made.setAttribute("edge", made.getAttribute("uv"));
  return made;
}

/** A prism of 1 m along x, 1 m across; edges only around its ends when `rims`. */
function round(sides: number, rims: boolean): BufferGeometry {
  const made = new CylinderGeometry(0.5, 0.5, 1, sides, 1);
  made.rotateZ(-Math.PI / 2);
  const normal = made.getAttribute("normal");
  const uv = made.getAttribute("uv");
  const edge = new Float32Array(2 * uv.count);
  for (let v = 0; v < uv.count; v++) {
    const cap = Math.abs(normal.getX(v)) > 0.5;
    // On a cap: from its middle (0.5) to its rim (0).
    const out = Math.hypot(uv.getX(v) - 0.5, uv.getY(v) - 0.5);
    edge[2 * v] = 0.5;
    edge[2 * v + 1] = !rims ? 0.5 : cap ? 0.5 - out : uv.getY(v);
  }
  made.setAttribute("edge", new BufferAttribute(edge, 2));
  return made;
}

/** One geometry per form of shape's bodies. */
export function unitForms() {
  return { boxes: box(), rods: round(6, false), drums: round(20, true) };
}
export type Forms = ReturnType<typeof unitForms>;
export type FormName = keyof Forms;
