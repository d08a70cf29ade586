// The cameras: parallel projections for elevation, plan and end, a perspective that can be turned, and how each is fitted.
import { MOUSE, OrthographicCamera, PerspectiveCamera, TOUCH, Vector3 } from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { pathTop } from "../shape/index.ts";
import type { Model } from "./model.ts";
import type { View } from "./types.ts";

/** Room (px) that the overlay keeps free of the model at each side. */
export interface Margins {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** The part of the world that a view must show, relative to the model's origin, m. */
interface Window {
  /** Horizontal and vertical limits on the screen. */
  across: readonly [number, number];
  up: readonly [number, number];
  /** Level of the path, below which the arrows of the reactions hang. */
  path: number;
}

/** Directions on the screen of each parallel view: to the right, up, and toward the eye. */
const elevation = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] } as const;
const directions = {
  elevation,
  cranes: elevation,
  plan: { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] },
  end: { right: [0, -1, 0], up: [0, 0, 1], toward: [-1, 0, 0] },
} as const;

/** Height (m) over the path that an elevation shows if it has room: girders, rigging and hooks. */
const headroom = 16;

/** Room (m) over the highest boom tip. */
const overTip = 2;

/** The highest elevation that the tip of any boom can have, m; -infinity without cranes. */
export function highestTip(model: Model): number {
  const tops = model.plan.cranes.map((c) => c.position.elevation_m + c.boomFootHeight_m + c.boomLength_m);
  return Math.max(Number.NEGATIVE_INFINITY, ...tops);
}

/** What a parallel view shows of a model when it opens. */
export function windowOf(model: Model, view: Exclude<View, "free">): Window {
  const { lines } = model.site;
  const [ox, , oz] = model.origin;
  const x: Window["across"] = [lines.from - ox, lines.to - ox];
  const top = Math.max(pathTop(model.plan, lines.from), pathTop(model.plan, lines.nearFace), lines.farTop);
  const z: Window["up"] = [Math.min(lines.below, top - 3) - 1 - oz, top + headroom - oz];
  const path = top - oz;
  if (view === "elevation") return { across: x, up: z, path };
  if (view === "cranes")
    return { across: x, up: [z[0], Math.max(z[1], highestTip(model) + overTip - oz)], path };
  if (view === "plan") return { across: x, up: [-lines.right, lines.left], path };
  return { across: [-lines.left, lines.right], up: z, path };
}

/** A camera with its controls, for one canvas. */
export class Eyes {
  readonly flat = new OrthographicCamera(-1, 1, 1, -1, 1, 4000);
  readonly deep = new PerspectiveCamera(28, 1, 1, 5000);
  private readonly flatControls: OrbitControls;
  private readonly deepControls: OrbitControls;
  private view: View = "elevation";
  private width = 1;
  private height = 1;
  /** Pixels per metre before zooming. */
  private scale = 1;
  /** True once someone has moved the eye since it was fitted. */
  touched = false;
  /** Grows with every change, so that the overlay knows when to draw anew. */
  changes = 0;

  constructor(host: HTMLElement, onChange: () => void) {
    for (const camera of [this.flat, this.deep]) {
      camera.up.set(0, 0, 1);
      // Fiber must not fit these cameras to the canvas: their projection is set here.
      Object.assign(camera, { manual: true });
    }
    const changed = () => {
      this.changes += 1;
      onChange();
    };
    this.flatControls = new OrbitControls(this.flat, host);
    this.flatControls.enableRotate = false;
    this.flatControls.screenSpacePanning = true;
    this.flatControls.mouseButtons = { LEFT: MOUSE.PAN, MIDDLE: MOUSE.DOLLY, RIGHT: MOUSE.PAN };
    this.flatControls.touches = { ONE: TOUCH.PAN, TWO: TOUCH.DOLLY_PAN };
    this.flatControls.minZoom = 0.4;
    this.flatControls.maxZoom = 80;
    this.deepControls = new OrbitControls(this.deep, host);
    this.deepControls.minDistance = 3;
    this.deepControls.maxDistance = 2500;
    this.deepControls.maxPolarAngle = 0.55 * Math.PI;
    for (const controls of [this.flatControls, this.deepControls]) {
      controls.zoomToCursor = true;
      controls.addEventListener("change", changed);
      controls.addEventListener("start", () => {
        this.touched = true;
      });
    }
    this.deepControls.enabled = false;
  }

  /** The camera of the view that is on. */
  get camera(): OrthographicCamera | PerspectiveCamera {
    return this.view === "free" ? this.deep : this.flat;
  }

  /** Pixels per metre at the eye's present zoom; 0 for a perspective. */
  get pixelsPerMetre(): number {
    return this.view === "free" ? 0 : this.scale * this.flat.zoom;
  }

  /** Fits a view to a model, as it opens; `below` the ground (px) there shall be room for arrows and labels. */
  open(model: Model, view: View, margins: Margins, below: number): void {
    this.view = view;
    this.touched = false;
    this.flatControls.enabled = view !== "free";
    this.deepControls.enabled = view === "free";
    if (view === "free") this.openDeep(model);
    else this.openFlat(model, view, margins, below);
    this.changes += 1;
  }

  private openFlat(model: Model, view: Exclude<View, "free">, margins: Margins, below: number): void {
    const { across, up, path } = windowOf(model, view);
    const wide = Math.max(50, this.width - margins.left - margins.right);
    const high = Math.max(50, this.height - margins.top - margins.bottom);
    this.scale = Math.min(wide / (across[1] - across[0]), high / (up[1] - up[0]));
    if (view === "cranes") this.scale = Math.min(this.scale, Math.max(40, high - below) / (up[1] - path));
    const middle = (across[0] + across[1]) / 2 - (margins.left - margins.right) / 2 / this.scale;
    // An elevation stands on its foot, so that spare room is above; the others are centred.
    const spare = up[1] - high / this.scale;
    const foot =
      view === "plan"
        ? (up[0] + up[1]) / 2 - high / 2 / this.scale
        : Math.max(spare, Math.min(up[0], path - below / this.scale));
    const centre = foot - margins.bottom / this.scale + this.height / 2 / this.scale;
    const d = directions[view];
    const target = new Vector3();
    for (const [k, axis] of (["x", "y", "z"] as const).entries()) {
      target[axis] = d.right[k] * middle + d.up[k] * centre;
    }
    this.flat.up.set(d.up[0], d.up[1], d.up[2]);
    this.flat.position.set(d.toward[0], d.toward[1], d.toward[2]).multiplyScalar(1500).add(target);
    this.flat.zoom = 1;
    this.flat.lookAt(target);
    this.flatControls.target.copy(target);
    this.project();
    this.flatControls.update();
  }

  /** From the right and behind, as near as the whole operation allows. */
  private openDeep(model: Model): void {
    const { lines } = model.site;
    const [ox, , oz] = model.origin;
    const corners = [lines.from, lines.to].flatMap((x) =>
      [-lines.right, lines.left].flatMap((y) =>
        [lines.below, lines.farTop + headroom].map((z) => new Vector3(x - ox, y, z - oz)),
      ),
    );
    const target = new Vector3((lines.from + lines.to) / 2 - ox, 0, lines.farTop - oz);
    const toward = new Vector3(-0.3, -0.8, 0.4).normalize();
    this.project();
    const seen = (d: number) => {
      this.deep.position.copy(toward).multiplyScalar(d).add(target);
      this.deep.lookAt(target);
      this.deep.updateMatrixWorld();
      return corners.map((corner) => corner.clone().project(this.deep));
    };
    const fits = (p: Vector3) => p.z < 1 && Math.abs(p.x) < 0.96 && Math.abs(p.y) < 0.92;
    for (let d = 20; d < 2000; d *= 1.04) {
      // The middle of what is seen comes to the middle of the screen before it is judged.
      const now = seen(d);
      const middle = (k: "x" | "y") =>
        (Math.min(...now.map((p) => p[k])) + Math.max(...now.map((p) => p[k]))) / 2;
      if (now.some((p) => p.z >= 1)) continue;
      const high = d * Math.tan((this.deep.fov * Math.PI) / 360);
      const move = new Vector3(middle("x") * high * this.deep.aspect, middle("y") * high, 0);
      target.add(move.applyQuaternion(this.deep.quaternion));
      if (seen(d).every(fits)) break;
    }
    this.deepControls.target.copy(target);
    this.deepControls.update();
  }

  /** Tells the size of the canvas, px; the scale stays as it is. */
  resize(width: number, height: number): void {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.project();
    this.changes += 1;
  }

  private project(): void {
    const [w, h] = [this.width / 2 / this.scale, this.height / 2 / this.scale];
    Object.assign(this.flat, { left: -w, right: w, top: h, bottom: -h });
    this.flat.updateProjectionMatrix();
    this.deep.aspect = this.width / this.height;
    this.deep.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
  }

  /** A point relative to the model's origin on the canvas: px from its top left; `behind` the eye it is not seen. */
  onCanvas(point: Vector3): { x: number; y: number; behind: boolean } {
    const p = point.clone().project(this.camera);
    return { x: ((p.x + 1) / 2) * this.width, y: ((1 - p.y) / 2) * this.height, behind: p.z > 1 };
  }

  end(): void {
    this.flatControls.dispose();
    this.deepControls.dispose();
  }
}
