// A small true elevation beside a large one that has no room for tall booms: whole cranes, the set and the gap.
import { colourOf } from "../app/index.ts";
import type { Vec3 } from "../sequence/index.ts";
import { pathTop } from "../shape/index.ts";
import { print } from "../units/index.ts";
import { highestTip } from "./eyes.ts";
import { overlaps, type Rect } from "./labels.ts";
import type { Sheet } from "./sheet.ts";
import { rounded, svg } from "./svg.ts";

/** Widest and smallest picture, and its distance from other things, px. */
const widest = 330;
const smallest = 118;
const apart = 6;

/** Whether a boom tip is out of sight. */
function anyCropped(sheet: Sheet): boolean {
  return Object.values(sheet.model.world?.cranes ?? {}).some(({ tip }) => {
    const { x, y } = sheet.at(tip);
    return y < 0 || y > sheet.height || x < 0 || x > sheet.width;
  });
}

/** Booms and ropes as they stand on the sheet, in pieces that follow them. */
function boomsOn(sheet: Sheet): Rect[] {
  const half = 10;
  return Object.values(sheet.model.world?.cranes ?? {}).flatMap(({ foot, tip, hook }) => {
    const [a, b] = [sheet.at(foot), sheet.at(tip)];
    const boom = Array.from({ length: 25 }, (_, i): Rect => {
      const [x, y] = [a.x + ((b.x - a.x) * i) / 24, a.y + ((b.y - a.y) * i) / 24];
      return { left: x - half, top: y - half, width: 2 * half, height: 2 * half };
    });
    if (hook === null) return boom;
    return [...boom, { left: b.x - half, top: b.y, width: 2 * half, height: sheet.at(hook).y - b.y }];
  });
}

/** A free place, in the sky or else below the ground: where it stood before if it still can, else the largest leftmost. */
function placeFor(sheet: Sheet, ratio: number, kept: readonly Rect[], before: Rect | null): Rect | null {
  const { corner, letter, model } = sheet;
  const ground = sheet.at([model.site.lines.from, 0, pathTop(model.plan, model.site.lines.from)]).y;
  const taken = [...kept, ...boomsOn(sheet)];
  const free = (rect: Rect) => !taken.some((other) => overlaps(rect, other, apart));
  if (before !== null && before.left + before.width < sheet.width && free(before)) return before;
  const foot = sheet.height - sheet.margins.bottom;
  for (const [top, bottom] of [
    [apart, ground],
    [corner.height + apart, ground],
    [ground + apart, foot],
  ]) {
    const room = (bottom - top - apart - 1.5 * letter) / ratio;
    for (let width = Math.min(widest, 0.27 * sheet.width, room); width >= smallest; width *= 0.85) {
      const height = width * ratio + 1.5 * letter;
      for (let left = 2 * apart; left + width < sheet.width - apart; left += 2 * apart) {
        const rect = { left, top, width, height };
        if (free(rect)) return rect;
      }
    }
  }
  return null;
}

/**
 * Draws it where some boom is cropped, clear of what is `kept` free; gives the room that it takes, or null when it is not
 * needed or finds no place. `before` is where it stood last.
 */
export function drawWholeCranes(
  into: SVGElement,
  sheet: Sheet,
  kept: readonly Rect[],
  before: Rect | null,
): Rect | null {
  const { model, letter } = sheet;
  const { world, site, plan } = model;
  if (sheet.view !== "elevation" || world === null || !anyCropped(sheet)) return null;
  const { from, to, below, nearFace, farFace, farTop } = site.lines;
  const high = highestTip(model) + 2;
  const [wide, tall] = [to - from, high - below + 1];
  const place = placeFor(sheet, tall / wide, kept, before);
  if (place === null) return null;
  const { left, top, width, height } = place;
  const scale = width / wide;
  const x = (chainage: number) => left + (chainage - from) * scale;
  const y = (elevation: number) => top + height - (elevation - below + 1) * scale;
  const at = (p: Vec3) => `${rounded(x(p[0]))} ${rounded(y(p[2]))}`;
  const line = (points: readonly string[], look: string, attributes: Record<string, string> = {}) =>
    group.append(svg("path", { d: `M${points.join("L")}`, class: look, ...attributes }));

  const group = svg("g", { class: "whole-cranes" });
  const inset = { x: left, y: top, width, height };
  group.append(svg("rect", { class: "plate", ...inset, rx: 2 }));
  group.append(
    svg("text", { x: left + 0.4 * letter, y: top + 1.15 * letter, class: "quiet" }, "whole cranes, to scale"),
  );
  const ground: [number, number][] = [
    [from, pathTop(plan, from)],
    [nearFace, pathTop(plan, nearFace)],
    [nearFace, below],
    [farFace, below],
    [farFace, farTop],
    [to, farTop],
  ];
  line(
    ground.map(([chainage, elevation]) => at([chainage, 0, elevation])),
    "ground",
  );
  for (const [id, { centre, foot, tip, hook }] of Object.entries(world.cranes)) {
    const crane = plan.cranes.find((one) => one.id === id);
    if (crane === undefined) continue;
    const stroke = colourOf(`${crane.kind} crane`);
    const [half, level] = [crane.trackLength_m / 2, crane.position.elevation_m];
    line([at([centre[0] - half, 0, level]), at([centre[0] + half, 0, level])], "tracks");
    line([at([foot[0], 0, level]), at(foot), at(tip)], "boom-edge");
    line([at([foot[0], 0, level]), at(foot), at(tip)], "boom", { stroke });
    if (hook !== null) line([at(tip), at(hook)], "rope");
    const words = print(tip[2] - level, "length", sheet.units);
    const near = x(tip[0]) > left + width / 2;
    const beside = { x: x(tip[0]) + (near ? -4 : 4), y: y(tip[2]) + 0.8 * letter };
    group.append(
      svg("text", { ...beside, "text-anchor": near ? "end" : "start", class: "quiet halo" }, words),
    );
  }
  line([at(world.tail), at(world.nose)], "set");
  into.append(group);
  return place;
}
