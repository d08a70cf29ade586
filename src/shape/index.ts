/**
 * shape: pure bodies from a plan and a pose. Boxes, rods, drums, lines and meshes as plain typed arrays; no screen.
 *
 * ```ts
 * import { level, Pen, volumeOf, centreOf } from "./index.ts";
 * const pen = new Pen([1000, 0, 100]); // what is stored counts from here
 * pen.part({ name: "block", what: "site", supports: [] });
 * pen.frame = level([1010, 0, 100]);
 * pen.block([0, 2], [-1, 1], [0, 3], "concrete");
 * volumeOf(pen.boxes, 0); // => 12
 * centreOf(pen, pen.boxes, 0); // => [1011, 0, 101.5]
 * ```
 */
export { craneSizes } from "./crane.ts";
export {
  type BuckledShape,
  type Curve,
  curvesOf,
  type GirderShape,
  pointOn,
  rigidPart,
  setFrame,
} from "./curves.ts";
export type { Faces } from "./faces.ts";
export { bend, type GirderMesh, girderVolume, layOutGirders } from "./girders.ts";
export { drawnWorld } from "./idle.ts";
export {
  centreOf,
  type Instances,
  type Lines,
  numberOf,
  type Part,
  Pen,
  type Tone,
  tones,
  volumeOf,
} from "./pen.ts";
export { bearingPlaces, type Drawn, drawPicture, type Pictured } from "./picture.ts";
export { carriedAt, type Reaction, reactionsOf } from "./reactions.ts";
export { drawSite, type SiteBodies } from "./site.ts";
export { pathTop, type SiteLines, seatLevel, siteLines } from "./siteLines.ts";
export type { BodyGroup, BodyKind, SweptBody } from "./swept/form.ts";
export { type SweptBodies, sweptBodies } from "./swept/groups.ts";
export { newPlaced, type Placed, placeBodies, shapeOf } from "./swept/place.ts";
export { shapeMoves } from "./swept/shapeMoves.ts";
export { deckDepths, deckFrame } from "./transporter.ts";
export { aligned, distance, type Frame, heading, inWorld, level } from "./vec.ts";
