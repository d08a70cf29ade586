// The living scene in a host element: canvas, fiber's root, cameras and overlay; told of new properties, it draws what changed.
import { createRoot } from "@react-three/fiber";
import { Vector3 } from "three";
import type { Part } from "../shape/index.ts";
import {
  colourFaces,
  fillGirders,
  fillInstances,
  fillLines,
  formNames,
  isMarked,
  type Shown,
} from "./bodies.ts";
import { Contents } from "./Contents.tsx";
import { Eyes } from "./eyes.ts";
import { expose, glOffAsked } from "./handle.ts";
import { drawPose, type Model, modelOf } from "./model.ts";
import { Overlay } from "./overlay.ts";
import { palette } from "./palette.ts";
import { partAt } from "./picking.ts";
import { wholeArrow } from "./reactionArrows.ts";
import { drawingOn } from "./renderer.ts";
import { marginsFor, type Sheet } from "./sheet.ts";
import { forgetWidths } from "./svg.ts";
import { isElevation, type SceneProps } from "./types.ts";
import { poseWords } from "./words.ts";

export interface Live {
  /** Draws what is new in these properties. */
  show(props: SceneProps): void;
  /** The part at a place of the host, px from its top left. */
  partAt(x: number, y: number): Part | null;
  /** Fits the present view again. */
  refit(): void;
  model(): Model | null;
  end(): void;
}

/** Starts a scene in a host. `onAble` tells whether there is WebGL. */
export function startScene(host: HTMLElement, onAble: (able: boolean) => void): Live {
  const canvas = document.createElement("canvas");
  canvas.setAttribute("role", "img");
  host.prepend(canvas);
  const overlay = new Overlay(host);
  const shown: Shown = { moving: {}, fixed: {}, girders: null, ground: null, nearSide: null, lines: null };
  const drawing = drawingOn(canvas, glOffAsked(), () => {
    handle.frames = drawing.frames;
    const seen = (globalThis as { __handspan?: { frames?: number } }).__handspan;
    if (seen !== undefined) seen.frames = drawing.frames;
  });
  onAble(drawing.able || drawing.off);
  const root = createRoot(canvas);
  const eyes = new Eyes(host, () => redraw());
  let props: SceneProps | null = null;
  let model: Model | null = null;
  let size = sizeOf(host);
  /** Counts what changed that the overlay shows. */
  let news = 0;
  let drawn = "";

  root.configure({
    gl: () => drawing.gl,
    camera: eyes.camera,
    frameloop: "demand",
    flat: true,
    dpr: [1, 2],
    size: { ...size, top: 0, left: 0 },
  });
  const store = root.render(null);

  function redraw(): void {
    store.getState().invalidate();
  }

  function letters(): { letter: number; font: string; strong: string } {
    const style = getComputedStyle(host);
    const letter = Number.parseFloat(style.fontSize) || 13;
    return {
      letter,
      font: `400 ${letter}px ${style.fontFamily}`,
      strong: `600 ${letter}px ${style.fontFamily}`,
    };
  }

  /** Fills the graphics side with the pose and the colours of the present choice. */
  function fill(): void {
    if (model === null || props === null) return;
    const colours = palette(props.theme);
    const { selected } = props;
    for (const form of formNames) {
      fillInstances(shown.moving[form], model.pen[form], model.pen.parts, selected, colours);
      fillInstances(shown.fixed[form], model.site.bodies[form], model.site.bodies.parts, selected, colours);
    }
    fillLines(shown.lines, model.pen);
    fillGirders(shown.girders, model.world !== null);
    const { girders } = model;
    colourFaces(shown.girders, girders.tones, colours, (v) => {
      const name = girders.names[girders.rowGirder[girders.rowOf[v]]];
      return isMarked({ name, what: "girder", supports: [] }, selected);
    });
    colourFaces(shown.ground, model.site.ground.tones, colours);
    colourFaces(shown.nearSide, model.site.nearSide.tones, colours);
    if (shown.nearSide !== null) shown.nearSide.visible = !isElevation(props.view);
  }

  const mounted = () => {
    fill();
    redraw();
  };

  const at = new Vector3();
  function onSheet(p: readonly [number, number, number]) {
    const [x, y, z] = model?.origin ?? [0, 0, 0];
    return eyes.onCanvas(at.set(p[0] - x, p[1] - y, p[2] - z));
  }

  /** Before every frame: the overlay follows the eye. */
  function beforeFrame(): void {
    if (model === null || props === null) return;
    const key = `${eyes.changes} ${news}`;
    if (key === drawn) return;
    drawn = key;
    eyes.camera.updateMatrixWorld();
    const type = letters();
    const sheet: Sheet = {
      ...{ view: props.view, units: props.units, selected: props.selected },
      ...{ exaggeration: props.exaggeration, buckles: props.buckled?.factor ?? null },
      ...{ corner: props.corner, model, ...size, ...type },
      margins: marginsFor(props.view, type.letter),
      scale: eyes.pixelsPerMetre,
      at: onSheet,
    };
    overlay.draw(sheet);
    props.onSight?.({
      ...{ view: props.view, ...size, scale: eyes.pixelsPerMetre },
      ...{ plan: model.plan, set: model.set, world: model.world, situation: props.pose?.situation ?? null },
      at: onSheet,
    });
  }

  function open(): void {
    if (model === null || props === null) return;
    const { letter } = letters();
    eyes.open(model, props.view, marginsFor(props.view, letter), wholeArrow(props.view) * letter);
    store.setState({ camera: eyes.camera });
    redraw();
  }

  const watcher = new ResizeObserver(() => {
    const first = size.width < 2 || size.height < 2;
    size = sizeOf(host);
    eyes.resize(size.width, size.height);
    store.getState().setSize(size.width, size.height);
    if (first || !eyes.touched) open();
    redraw();
  });
  watcher.observe(host);
  eyes.resize(size.width, size.height);
  document.fonts?.ready.then(() => {
    forgetWidths();
    news += 1;
    redraw();
  });

  const handle = {
    frames: 0,
    info: drawing.info,
    project: (p: readonly [number, number, number]): [number, number] => {
      eyes.camera.updateMatrixWorld();
      const { x, y } = onSheet(p);
      const { left, top } = canvas.getBoundingClientRect();
      return [left + x, top + y];
    },
    positions: () => model?.world ?? null,
    setGlOff: (off: boolean) => {
      drawing.off = off || !drawing.able;
      redraw();
    },
  };
  const conceal = expose(handle);

  return {
    show(next) {
      const old = props;
      props = next;
      const newModel = model === null || old?.plan !== next.plan || old.set !== next.set;
      if (newModel) model = modelOf(next.plan, next.set);
      if (model === null) return;
      const newPose =
        newModel ||
        old?.pose !== next.pose ||
        old.ctx !== next.ctx ||
        old.exaggeration !== next.exaggeration ||
        old.buckled !== next.buckled;
      if (newPose) drawPose(model, next.ctx, next.pose, next.exaggeration, next.buckled);
      news += 1;
      if (newModel || old?.theme !== next.theme) {
        store.getState().scene.background = palette(next.theme).background;
        root.render(
          <Contents
            model={model}
            theme={next.theme}
            shown={shown}
            onMounted={mounted}
            onFrame={beforeFrame}
          />,
        );
      }
      fill();
      if (old === null || old.view !== next.view || old.set.id !== next.set.id) open();
      canvas.setAttribute("aria-label", poseWords(next, model));
      redraw();
    },
    partAt(x, y) {
      if (model === null) return null;
      return partAt(shown, model, eyes.camera, (2 * x) / size.width - 1, 1 - (2 * y) / size.height);
    },
    refit: open,
    model: () => model,
    end() {
      conceal();
      watcher.disconnect();
      eyes.end();
      root.unmount();
      overlay.end();
      canvas.remove();
    },
  };
}

function sizeOf(host: HTMLElement): { width: number; height: number } {
  return { width: host.clientWidth, height: host.clientHeight };
}
