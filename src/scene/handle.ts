// What tests may ask of the scene: added to the one object on the window, beside what the page has put there.
import type { Vec3, World } from "../sequence/index.ts";

export interface SceneHandle {
  /** Frames drawn so far. */
  frames: number;
  /** Draw calls and triangles of the last frame; zeros while drawing is off. */
  info(): { calls: number; triangles: number };
  /** A point of the world (chainage, y left, elevation, m) on the page, CSS px. */
  project(point: Vec3): [number, number];
  /** Where everything stands that is drawn now; null without a pose. */
  positions(): World | null;
  /** Turns drawing off and on; everything else goes on. */
  setGlOff(off: boolean): void;
}

/** Puts the scene's answers on `window.__handspan`; gives the function that takes them away. */
export function expose(handle: SceneHandle): () => void {
  const place = globalThis as { __handspan?: object };
  place.__handspan = Object.assign(place.__handspan ?? {}, handle);
  return () => {
    if (place.__handspan === undefined) return;
    for (const key of Object.keys(handle)) Reflect.deleteProperty(place.__handspan, key);
  };
}

/** True when the page was asked to make no WebGL renderer: `?gl=off`. */
export function glOffAsked(): boolean {
  return new URLSearchParams(globalThis.location?.search ?? "").get("gl") === "off";
}
