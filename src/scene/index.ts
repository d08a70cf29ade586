/**
 * scene: puts the bodies of shape into three, and labels, dimensions and reactions over them. One component, properties only.
 *
 * ```ts
 * import { placeLabels } from "./index.ts";
 * const room = { left: 0, top: 0, width: 200, height: 100 };
 * const tag = { x: 50, y: 20, width: 60, height: 16, way: "down" };
 * const placed = placeLabels([{ ...tag, id: "a" }, { ...tag, id: "b" }], room);
 * placed.get("a"); // => { left: 20, top: 23, width: 60, height: 16 }
 * placed.get("b"); // => { left: 20, top: 43, width: 60, height: 16 }
 * ```
 */
export type { SceneHandle } from "./handle.ts";
export { leaderEnd, overlaps, placeLabels, type Rect, type Tag } from "./labels.ts";
export * from "./moving/handlePlaces.ts";
export * from "./moving/movable.ts";
export { lengthWords, movedWords, standingWords } from "./moving/movedWords.ts";
export { outlinesOf } from "./moving/outlines.ts";
export { gridOf, type Held, nudged, reachAt, snapped } from "./moving/snapping.ts";
export { Scene } from "./Scene.tsx";
export type { Sight } from "./sight.ts";
export type { SceneProps, Theme, View } from "./types.ts";
