// What stands over the scene follows the eye: where the world lies on the canvas, told whenever that or the pose changes.
import type { Vec3 } from "../sequence/index.ts";
import type { DrawnPose } from "./moving/handlePlaces.ts";
import type { View } from "./views.ts";

/** The eye and what it sees, until the next change. */
export interface Sight extends DrawnPose {
  view: View;
  /** Size of the canvas, px. */
  width: number;
  height: number;
  /** Pixels per metre; 0 in a perspective. */
  scale: number;
  /** Where a point of the world lies on the canvas, px from its top left. */
  at(p: Vec3): { x: number; y: number; behind: boolean };
}
