// The renderer: three's own, or, with WebGL off or not to be had, one that draws nothing and keeps the scene graph going.
import { type Camera, type Scene, WebGLRenderer } from "three";

/** As much of a renderer as fiber asks for. */
interface Blank {
  render: (scene: Scene, camera: Camera) => void;
  setSize: () => void;
  setPixelRatio: () => void;
}

export interface Drawing {
  /** What fiber renders with. */
  gl: WebGLRenderer | Blank;
  /** False when there is no WebGL here at all. */
  able: boolean;
  off: boolean;
  frames: number;
  info(): { calls: number; triangles: number };
}

/** What three does before it draws: world matrices of scene and camera. */
function update(scene: Scene, camera: Camera): void {
  scene.updateMatrixWorld();
  if (camera.parent === null) camera.updateMatrixWorld();
}

/** A renderer for a canvas; `off` makes none. Each frame is told to `onFrame`. */
export function drawingOn(canvas: HTMLCanvasElement, off: boolean, onFrame: () => void): Drawing {
  const count = () => {
    drawing.frames += 1;
    onFrame();
  };
  const none: Blank = {
    render: (scene, camera) => {
      update(scene, camera);
      count();
    },
    setSize: () => {},
    setPixelRatio: () => {},
  };
  const drawing: Drawing = {
    gl: none,
    able: false,
    off,
    frames: 0,
    info: () => ({ calls: 0, triangles: 0 }),
  };
  if (off || !hasWebGL()) return drawing;
  const real = new WebGLRenderer({ canvas, antialias: true, alpha: false, powerPreference: "default" });
  const draw = real.render.bind(real);
  real.render = (scene, camera) => {
    if (drawing.off) none.render(scene as Scene, camera);
    else {
      draw(scene, camera);
      count();
    }
  };
  drawing.gl = real;
  drawing.able = true;
  drawing.info = () =>
    drawing.off
      ? { calls: 0, triangles: 0 }
      : { calls: real.info.render.calls, triangles: real.info.render.triangles };
  return drawing;
}

/** Asked on a canvas of its own, so that a refusal costs no message in the console. */
function hasWebGL(): boolean {
  const probe = document.createElement("canvas").getContext("webgl2");
  probe?.getExtension("WEBGL_lose_context")?.loseContext();
  return probe !== null;
}
