// What the scene is told from outside.
import type { Plan, PlanSet } from "../plan/index.ts";
import type { Pose, SetContext } from "../sequence/index.ts";
import type { System } from "../units/index.ts";
import type { Sight } from "./sight.ts";
import type { Theme, View } from "./views.ts";

export { isElevation, type Theme, type View } from "./views.ts";

/** The shape in which a stage buckles, greatest displacement 1, and the factor on its loads at which it does. */
export interface Buckled {
  factor: number;
  /** Height above the soffit at which `sideways` is measured, m. */
  reference: number;
  shape: readonly {
    girder: string;
    x: readonly number[];
    sideways: readonly number[];
    upright: readonly number[];
    twist: readonly number[];
  }[];
}

export interface SceneProps {
  plan: Plan;
  set: PlanSet;
  ctx: SetContext;
  /** The pose to draw; null while there is none: then the site alone is drawn. */
  pose: Pose | null;
  view: View;
  /** Factor on the bending of the girders; 1 is true. */
  exaggeration: number;
  /** A buckled shape to draw the girders in; null for none. */
  buckled: Buckled | null;
  units: System;
  /** Name of a support or part, drawn marked. */
  selected: string | null;
  /** Called with the name of the support or part that was pointed at and clicked; "" for none. */
  onSelect?: (name: string) => void;
  theme: Theme;
  /** Room at the top left that others stand in, px: no label comes there. */
  corner: { width: number; height: number };
  /** Told where the world lies on the canvas, whenever that or what is drawn changes. */
  onSight?: (sight: Sight) => void;
}
