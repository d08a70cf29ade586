// The sheet over the canvas on which labels and dimensions are drawn: what it shows, and where the world lies on it.
import type { Vec3 } from "../sequence/index.ts";
import type { System } from "../units/index.ts";
import type { Margins } from "./eyes.ts";
import type { Model } from "./model.ts";
import { isElevation, type View } from "./types.ts";

export interface Sheet {
  view: View;
  /** Size of the canvas, px. */
  width: number;
  height: number;
  margins: Margins;
  /** Room at the top left that belongs to others, px. */
  corner: { width: number; height: number };
  /** Size of the letters, px, and fonts as in CSS: ordinary and strong. */
  letter: number;
  font: string;
  strong: string;
  units: System;
  model: Model;
  selected: string | null;
  exaggeration: number;
  /** Factor on its loads at which the shape drawn buckles; null when none is drawn. */
  buckles: number | null;
  /** Pixels per metre; 0 in a perspective. */
  scale: number;
  /** Where a point of the world lies on the sheet, px. */
  at: (p: Vec3) => { x: number; y: number; behind: boolean };
}

/** Room that the overlay needs around the model in each view, for letters of this size. */
export function marginsFor(view: View, letter: number): Margins {
  const side = Math.round(1.2 * letter);
  if (isElevation(view)) {
    return { left: side, right: side, top: Math.round(2.4 * letter), bottom: Math.round(7 * letter) };
  }
  if (view === "free") return { left: side, right: side, top: side, bottom: side };
  const bottom = Math.round((view === "plan" ? 3.6 : 2.4) * letter);
  return { left: side, right: side, top: Math.round(2.4 * letter), bottom };
}
