// Reactions on the sheet: an arrow per band, as long as its share of the set is big, and its label with name and number.

import { colourOf } from "../app/index.ts";
import type { Reaction } from "../shape/index.ts";
import { print } from "../units/index.ts";
import { leaderEnd, placeLabels, type Rect, type Tag } from "./labels.ts";
import type { Sheet } from "./sheet.ts";
import { rounded, svg, textWidth } from "./svg.ts";
import type { View } from "./types.ts";

/** One arrow: `x`, `tip` and `tail` in px; in a plan a disc of radius `disc`. */
interface Arrow {
  reaction: Reaction;
  x: number;
  tip: number;
  tail: number;
  disc: number;
}

/** Length (px per letter size) of an arrow that carries the whole set. */
export const wholeArrow = (view: View): number => (view === "cranes" ? 6 : 13);

/** Hatch that tells bands of one kind apart: by side where the name has one. */
export function hatchOf(reaction: Reaction, among: number): "plain" | "left" | "right" | "cross" {
  if (among < 2) return "plain";
  const { name } = reaction.support;
  if (/\bleft\b|\bL\b/i.test(name)) return "left";
  if (/\bright\b|\bR\b/i.test(name)) return "right";
  return reaction.nth % 2 === 0 ? "plain" : "cross";
}

const half = (sheet: Sheet) => 0.28 * sheet.letter;

/** Moves arrows that would cover each other side by side, about their common middle. */
function spread(arrows: Arrow[], apart: number): void {
  const order = [...arrows].sort((a, b) => a.x - b.x || b.reaction.at[1] - a.reaction.at[1]);
  const top = (a: Arrow) => Math.min(a.tip, a.tail) - 6;
  const bottom = (a: Arrow) => Math.max(a.tip, a.tail) + 6;
  let cluster: Arrow[] = [];
  const settle = () => {
    const middle = cluster.reduce((sum, a) => sum + a.x, 0) / cluster.length;
    cluster.forEach((a, i) => {
      a.x = middle + (i - (cluster.length - 1) / 2) * apart;
    });
  };
  let last = Number.NEGATIVE_INFINITY;
  for (const arrow of order) {
    const meets =
      arrow.x - last < apart && cluster.some((a) => top(a) < bottom(arrow) && top(arrow) < bottom(a));
    if (!meets) {
      if (cluster.length > 1) settle();
      cluster = [];
    }
    cluster.push(arrow);
    last = arrow.x;
  }
  if (cluster.length > 1) settle();
}

/** Arrows of all reactions in sight. */
export function arrowsOn(sheet: Sheet): Arrow[] {
  const { model, view, letter } = sheet;
  const arrows = model.reactions.flatMap((reaction): Arrow[] => {
    const p = sheet.at(reaction.at);
    if (p.behind) return [];
    const part = model.weight > 0 ? reaction.share / model.weight : 0;
    const long = part * wholeArrow(view) * letter;
    if (view === "plan") {
      const disc = letter * (0.4 + 1.1 * Math.sqrt(Math.abs(part)));
      return [{ reaction, x: p.x, tip: p.y, tail: p.y, disc }];
    }
    const shift = reaction.from === "above" ? -long : 0;
    return [{ reaction, x: p.x, tip: p.y + shift, tail: p.y + long + shift, disc: 0 }];
  });
  if (view !== "plan") spread(arrows, 2 * 2 * half(sheet) + 3);
  return arrows;
}

/** Outline of an arrow that points from tail to tip; a short one is all head. */
function outline(a: Arrow, w: number): string {
  const way = Math.sign(a.tip - a.tail) || -1;
  const long = Math.abs(a.tip - a.tail);
  const head = Math.min(long, 3.4 * w);
  const neck = a.tip - way * head;
  const p = (dx: number, y: number) => `${rounded(a.x + dx)},${rounded(y)}`;
  if (long <= head) return [p(0, a.tip), p(2 * w, a.tail), p(-2 * w, a.tail)].join(" ");
  return [
    p(0, a.tip),
    p(2 * w, neck),
    p(w, neck),
    p(w, a.tail),
    p(-w, a.tail),
    p(-w, neck),
    p(-2 * w, neck),
  ].join(" ");
}

/** Draws one sign twice: in its hue with the dark outline, then the hatch over it. */
function drawTwice(
  into: SVGElement,
  name: string,
  attributes: Record<string, string | number>,
  hue: string,
  hatch: string,
) {
  into.append(svg(name, { ...attributes, class: "sign", fill: hue }));
  if (hatch !== "plain")
    into.append(svg(name, { ...attributes, class: "over", fill: `url(#scene-hatch-${hatch})` }));
}

function drawArrow(into: SVGElement, sheet: Sheet, a: Arrow, hue: string, hatch: string): void {
  if (a.disc > 0) {
    drawTwice(into, "circle", { cx: a.x, cy: a.tip, r: a.disc }, hue, hatch);
    into.append(svg("circle", { cx: a.x, cy: a.tip, r: 1.8, class: "dot" }));
  } else if (Math.abs(a.tip - a.tail) < 1) {
    into.append(svg("circle", { cx: a.x, cy: a.tip, r: half(sheet), class: "empty", stroke: hue }));
  } else drawTwice(into, "polygon", { points: outline(a, half(sheet)) }, hue, hatch);
}

function rectOf(a: Arrow, w: number): Rect {
  const r = Math.max(2 * w, a.disc);
  const top = Math.min(a.tip, a.tail) - a.disc;
  return { left: a.x - r, top, width: 2 * r, height: Math.abs(a.tip - a.tail) + 2 * a.disc };
}

/** The room that arrows take. */
export function roomOf(arrows: readonly Arrow[], sheet: Sheet): Rect[] {
  return arrows.map((a) => rectOf(a, half(sheet)));
}

interface Label {
  tag: Tag;
  name: string;
  value: string;
  arrow: Arrow;
}

function labelOf(sheet: Sheet, arrow: Arrow): Label {
  const { support, share, from } = arrow.reaction;
  const value = print(share, "load", sheet.units);
  const width = textWidth(support.name, sheet.font) + textWidth(value, sheet.strong) + 2.6 * sheet.letter;
  const up = from === "above" && sheet.view !== "plan";
  const y =
    sheet.view === "plan"
      ? arrow.tip + arrow.disc
      : up
        ? Math.min(arrow.tip, arrow.tail)
        : Math.max(arrow.tip, arrow.tail);
  return {
    tag: { id: support.name, x: arrow.x, y, width, height: 1.65 * sheet.letter, way: up ? "up" : "down" },
    name: support.name,
    value,
    arrow,
  };
}

function drawLabel(
  into: SVGElement,
  sheet: Sheet,
  label: Label,
  rect: Rect,
  hue: string,
  hatch: string,
): void {
  const { letter } = sheet;
  const marked = sheet.selected === label.name;
  const group = svg("g", { class: marked ? "label marked" : "label", "data-support": label.name });
  group.append(
    svg("rect", { class: "plate", x: rect.left, y: rect.top, width: rect.width, height: rect.height, rx: 2 }),
  );
  const side = 0.85 * letter;
  const swatch = {
    x: rect.left + 0.4 * letter,
    y: rect.top + (rect.height - side) / 2,
    width: side,
    height: side,
  };
  drawTwice(group, "rect", swatch, hue, hatch);
  const base = rect.top + rect.height / 2 + 0.36 * letter;
  const start = rect.left + 1.6 * letter;
  group.append(svg("text", { x: start, y: base }, label.name));
  const end = { x: rect.left + rect.width - 0.5 * letter, y: base, class: "value", "text-anchor": "end" };
  group.append(svg("text", end, label.value));
  into.append(group);
}

/** Draws these arrows, and their labels clear of what is `kept` free; gives all the room that is taken, for what is placed after them. */
export function drawReactions(
  arrowsInto: SVGElement,
  labelsInto: SVGElement,
  sheet: Sheet,
  arrows: readonly Arrow[],
  room: Rect,
  kept: readonly Rect[],
): Rect[] {
  const among = (kind: string) => sheet.model.reactions.filter((r) => r.support.kind === kind).length;
  const style = (a: Arrow) => {
    const { kind } = a.reaction.support;
    return { hue: colourOf(kind), hatch: hatchOf(a.reaction, among(kind)) };
  };
  for (const a of arrows) {
    const { hue, hatch } = style(a);
    drawArrow(arrowsInto, sheet, a, hue, hatch);
  }
  const labels = arrows
    .filter(
      (a) =>
        a.x > 0 && a.x < sheet.width && Math.max(a.tip, a.tail) > 0 && Math.min(a.tip, a.tail) < sheet.height,
    )
    .map((a) => labelOf(sheet, a));
  const placed = placeLabels(
    labels.map((label) => label.tag),
    room,
    kept,
  );
  for (const { tag } of labels) {
    const rect = placed.get(tag.id);
    const to = rect === undefined ? null : leaderEnd(tag.x, tag.y, rect);
    if (to !== null)
      arrowsInto.append(svg("line", { class: "leader", x1: tag.x, y1: tag.y, x2: to[0], y2: to[1] }));
  }
  for (const label of labels) {
    const rect = placed.get(label.tag.id);
    if (rect === undefined) continue;
    const { hue, hatch } = style(label.arrow);
    drawLabel(labelsInto, sheet, label, rect, hue, hatch);
  }
  return [...kept, ...placed.values()];
}
