// The overlay: one SVG over the canvas that is drawn anew whenever pose, eye, size or choice change, and only then.
import { drawGrid, drawRest } from "./dimensions.ts";
import { keptFree } from "./keptFree.ts";
import type { Rect } from "./labels.ts";
import { arrowsOn, drawReactions, roomOf } from "./reactionArrows.ts";
import type { Sheet } from "./sheet.ts";
import { svg } from "./svg.ts";
import { drawWholeCranes } from "./wholeCranes.ts";

/** Hatches by which bands of one kind are told apart; the hue shows between the lines. */
function hatches(): SVGElement {
  const defs = svg("defs");
  for (const [name, turn, path] of [
    ["left", "rotate(45)", "M0 0V5"],
    ["right", "rotate(-45)", "M0 0V5"],
    ["cross", "rotate(45)", "M0 0V5M0 0H5"],
  ]) {
    const pattern = svg("pattern", {
      id: `scene-hatch-${name}`,
      width: 5,
      height: 5,
      patternUnits: "userSpaceOnUse",
      patternTransform: turn,
    });
    pattern.append(svg("path", { d: path, class: "hatch" }));
    defs.append(pattern);
  }
  return defs;
}

export class Overlay {
  readonly root: SVGElement;
  private readonly grid = svg("g");
  private readonly arrows = svg("g", { class: "arrows" });
  private readonly rest = svg("g");
  private readonly labels = svg("g");
  /** Where the small picture of whole cranes stood last. */
  private inset: Rect | null = null;

  constructor(host: HTMLElement) {
    this.root = svg("svg", { class: "scene-overlay", "aria-hidden": "true" });
    this.root.append(hatches(), this.grid, this.arrows, this.rest, this.labels);
    host.append(this.root);
  }

  draw(sheet: Sheet): void {
    const { width, height, margins, letter, view } = sheet;
    for (const part of [this.grid, this.arrows, this.rest, this.labels]) part.replaceChildren();
    drawGrid(this.grid, sheet);
    const edge = 0.3 * letter;
    const room: Rect = {
      left: edge,
      top: view === "free" ? edge : margins.top,
      width: width - 2 * edge,
      height: height - margins.bottom - (view === "free" ? edge : margins.top),
    };
    const { corner } = sheet;
    const arrows = arrowsOn(sheet);
    const kept: Rect[] = [{ left: 0, top: 0, ...corner }, ...keptFree(sheet), ...roomOf(arrows, sheet)];
    this.inset = drawWholeCranes(this.rest, sheet, kept, this.inset);
    if (this.inset !== null) kept.push(this.inset);
    const taken = drawReactions(this.arrows, this.labels, sheet, arrows, room, kept);
    drawRest(this.rest, sheet, room, taken);
  }

  end(): void {
    this.root.remove();
  }
}
